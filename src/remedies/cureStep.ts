/** One step of a cure as facts: `src/sentences/cures/` makes words of it. */
import type { PartId, PortRef } from "../design/design.ts";
import type { SatelliteBand } from "../parts/planSatellite.ts";

/** Nothing beside the place. */
export type NoMore = Readonly<Record<never, never>>;

/** Receivers that are exchanged together with a converter, to suit it. */
export type Suited = { readonly receivers: readonly PartId[] };

type Setting = { readonly option: string; readonly from: unknown; readonly to: unknown };

/** What each idea tells beside its place. */
export type FactsByIdea = {
  // Leads and joints
  readonly "plug-in": { readonly from: PortRef; readonly to: PortRef };
  readonly "swap-leads": { readonly ports: readonly [string, string] };
  readonly "other-socket": { readonly from: string; readonly to: string };
  readonly "other-output": { readonly from: string; readonly to: string };
  readonly "wire-off": { readonly from: PortRef; readonly to: PortRef };
  readonly load: { readonly count: number };
  readonly "sound-joint": NoMore;
  readonly "cable-grade": { readonly cables: readonly PartId[]; readonly grade: string };
  readonly "new-cable": { readonly grade: string };
  readonly "right-quadrants": { readonly moves: readonly { readonly from: string; readonly to: string }[] };
  /** `cables`: how many are fitted; none where the drawing has none there. */
  readonly "missing-trunks": {
    readonly source: PartId;
    readonly ports: readonly string[];
    readonly cables: number;
  };
  // Settings and defects
  readonly mend: Setting;
  readonly "aim-dish": Setting;
  /** By how much, above what stands before it. */
  readonly "dish-raised": { readonly metres: number };
  /** Where its satellite stands. */
  readonly "dish-moved": { readonly azimuthDeg: number; readonly elevationDeg: number };
  /** How far from the first LNB the one of a feed then sits. */
  readonly "feed-placed": {
    readonly feed: number;
    readonly spacingMm: number;
    readonly isMonoblock: boolean;
  };
  readonly "turn-lnb": Setting;
  readonly "right-feed": { readonly feed: "linear" | "circular" };
  readonly "aim-aerial": Setting;
  readonly "turn-aerial": Setting;
  readonly "turn-elements": Setting;
  readonly "free-channel": Setting;
  readonly "second-aerial": { readonly bearingDeg: number; readonly channels: readonly number[] };
  readonly "narrow-aerial": { readonly beamWidthDeg: number };
  /** `isLevel`: what is set is the level that comes out, not what is added to it; `toDb` is in dBµV then. */
  readonly gain: {
    readonly option: string;
    readonly byDb: number;
    readonly toDb: number;
    readonly isLevel: boolean;
  };
  readonly "amplifier-slope": { readonly db: number };
  readonly "input-pad": Setting;
  readonly "own-user-bands": { readonly converter: PartId; readonly receivers: readonly PartId[] };
  readonly "other-user-bands": { readonly first: PartId; readonly count: number };
  readonly "more-user-bands": { readonly tuners: number };
  // Levels
  readonly pad: { readonly db: number; readonly overDb: number };
  readonly "pad-value": Setting;
  readonly "pad-away": NoMore;
  readonly "source-pad": { readonly db: number };
  readonly equaliser: { readonly db: number };
  readonly "tap-value": { readonly db: number; readonly before: number };
  readonly "graded-taps": {
    readonly taps: readonly { readonly part: PartId; readonly db: number }[];
    readonly amplifier?: PartId;
    readonly gainDb?: number;
    readonly slopeDb?: number;
  };
  readonly "smaller-splitter": { readonly ways: number; readonly legs: number; readonly used: number };
  /** What is left lying in the wall, or pulled out. */
  readonly "dead-cable-off": { readonly cables: readonly PartId[] };
  readonly "splitter-for-joint": NoMore;
  /** How well its outputs have to be kept apart, where the usual type does not do. */
  readonly "ferrite-splitter": { readonly isolationDb?: number };
  readonly "better-decoupling": { readonly isolationDb: number };
  readonly "line-amplifier": { readonly db: number };
  readonly "trunk-amplifiers": { readonly db: number; readonly count: number };
  /** `db`: gain at the top of the satellite IF. */
  readonly "trunk-amplifier": { readonly db: number };
  readonly "trunk-pads": { readonly db: number; readonly count: number };
  /** `db`: the conversion gain that the other LNB has. */
  readonly "lesser-lnb": { readonly db: number };
  /** `lines`: how many of the old trunks then carry what comes out of the unit. */
  readonly "unit-up": { readonly lines: number };
  readonly "tv-amplifier": NoMore;
  readonly "amplifier-away": NoMore;
  readonly "passive-splitter": { readonly ways: number };
  readonly "house-amplifier": { readonly db: number; readonly side: "before" | "behind" };
  readonly masthead: { readonly db: number };
  readonly "larger-dish": { readonly metres: number };
  // Filters and unwanted signals
  readonly "phone-filter": NoMore;
  readonly "filter-before": { readonly amplifier: PartId };
  readonly trap: {
    readonly carrier: string;
    readonly fromMHz: number;
    readonly toMHz: number;
    readonly db: number;
  };
  readonly "band-combiner": { readonly kind: string };
  readonly "other-channels": { readonly channels: readonly number[] };
  readonly "screen-cable": NoMore;
  /** Screening class of the better part. */
  readonly "better-screen": { readonly to: string };
  readonly "filter-away": NoMore;
  readonly "wider-type": { readonly type: number };
  readonly "other-plate": { readonly kind: string };
  // Supply
  readonly "supply-path": { readonly option: string; readonly value: unknown };
  readonly "block-away": NoMore;
  readonly "supply-on": { readonly option: string; readonly value: unknown };
  readonly "power-inserter": NoMore;
  readonly "inserter-moved": { readonly behind: PartId };
  readonly "higher-supply": { readonly volts: number };
  readonly "lower-supply": { readonly volts: number };
  readonly "mains-unit": NoMore;
  readonly "stronger-supply": { readonly needMa: number; readonly askedMa: number };
  /** What each of its inputs then delivers alone. */
  readonly "own-limits": { readonly limitMa: number };
  readonly "free-motor": { readonly drawsMa: number };
  readonly "lesser-motor": { readonly mostMa: number };
  readonly "blocked-load": NoMore;
  readonly "dc-block": NoMore;
  // Converters and receivers
  readonly "universal-converter": Suited & { readonly outputs: number };
  /** `range`: of one for the same band that takes more of it [MHz]. */
  readonly "band-converter": {
    readonly band: SatelliteBand;
    readonly outputs: number;
    readonly range?: { readonly fromMHz: number; readonly toMHz: number };
  };
  readonly "stacked-converter": Suited;
  readonly "wideband-converter": Suited;
  readonly "quattro-converter": NoMore;
  readonly "other-receiver": { readonly receivers: readonly PartId[]; readonly kind: string };
  readonly "cable-tuner": NoMore;
  /** `cables`: how many are fitted; none where the drawing has none there. */
  readonly "own-outputs": { readonly splitter: PartId; readonly cables: number };
  readonly "own-position-lines": { readonly splitter: PartId };
  readonly multiswitch: { readonly splitter: PartId };
  readonly "stack-under-roof": NoMore;
  readonly "stack-for-switch": Suited;
  readonly "separate-cables": NoMore;
  readonly "aerial-cable": { readonly joiner: PartId; readonly receivers: readonly PartId[] };
  readonly "second-cable": { readonly receiver: PartId };
};

export type IdeaId = keyof FactsByIdea;

export type CureStepOf<I extends IdeaId> = {
  readonly idea: I;
  /** The part that it is about. */
  readonly place: PartId;
  readonly facts: FactsByIdea[I];
};

/** One step: the idea, where, and what else its words need. */
export type CureStep = { readonly [I in IdeaId]: CureStepOf<I> }[IdeaId];
