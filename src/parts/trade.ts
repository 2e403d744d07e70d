/** What the trade knows of a kind: declared with it, read by cures, faults, costs and causes instead of tables. */
import type { OnSite } from "./optionTrade.ts";
import type { SatelliteBand } from "./planSatellite.ts";

/** What a part is there for. Kinds of one job can stand for one another in a cure. */
export type Job =
  | "aerial"
  | "dish"
  | "signal source"
  | "unwanted signal"
  | "converter"
  | "switch unit"
  | "position switch"
  | "motor"
  | "splitter"
  | "tap"
  | "combiner"
  | "separator"
  | "filter"
  | "mast amplifier"
  | "amplifier"
  | "pad"
  | "equaliser"
  | "supply"
  | "block"
  | "load"
  | "cable"
  | "joint"
  | "plate"
  | "riser plate"
  | "receiver"
  | "meter";

/**
 * Feed between a converter and a receiver. "switched": one quadrant at a time, as asked; "wideband": a whole
 * polarisation on each cable; "stacked": user bands; "planes": each quadrant on a cable of its own, for a unit.
 */
export type FeedKind = "switched" | "wideband" | "stacked" | "planes";

type Options = Readonly<Record<string, unknown>>;

export type Trade = {
  readonly job: Job;
  /** Placeholder of one, or of one metre, invented: only its order of magnitude means anything. */
  readonly price: number;
  /** Usual time to put one in place, a whole run for a cable [min]; common practice, no source. */
  readonly workMinutes: number;
  readonly soldBy?: "metre";
  /** Holds for all options that do not say it themselves. */
  readonly onSite?: OnSite;
  /** What its outputs usually lead to, likeliest first, where that is not what others of its job lead to. */
  readonly leadsTo?: readonly Job[];
  /** Others of its job are meant more often; common practice, no source. */
  readonly isRare?: true;
  /** Feed that a converter's outputs give, and feed that a receiver's inputs take. */
  readonly gives?: FeedKind;
  readonly takes?: FeedKind;
  /** Band of the sky that a dish or converter is made for; absent: Ku band. */
  readonly satelliteBand?: SatelliteBand;
  /** Voltage with which a mains unit in the line feeds it [V]. */
  readonly fedWithVolts?: number;
  /** What stands in a line once this is taken out of it. */
  readonly inItsPlace?: "coupler" | "sound joint" | "screened lead" | "another of its kind";
  /** It looks as if it were made for TV as well, and is not. */
  readonly madeFor?: "satellite";
  /** The part is a defect itself: whoever finds one mends it. */
  readonly defect?: true;
  /** Types of this kind with a wider range that exist; typical, from memory. */
  readonly widerTypes?: readonly { readonly name: string; readonly options: Options }[];
  /** Kinds that get into its place by mistake, for they look alike in the hand; common practice, no source. */
  readonly mistakenFor?: readonly { readonly kind: string; readonly options?: Options }[];
};
