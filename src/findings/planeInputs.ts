/** Inputs that stand for one plane of a satellite each, and what they get. */
import type { PartId } from "../design/design.ts";
import type { PartRecord } from "../evaluate/evaluation.ts";
import type { PortPlane } from "../parts/contract.ts";
import { satelliteBandOn } from "../parts/planSatellite.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";
import { isSetByVoltsOf } from "../signal/treat.ts";

/** What a feed is that does not hold all the time what an input stands for; "quadrant": half of a polarisation. */
export type LooseFeed = "switched" | "wideband" | "single-cable" | "quadrant";

export type PlaneInput = {
  readonly port: string;
  /** Key of the plane as switches know it: "HH", or "2:HH" where there are several satellites. */
  readonly plane: string;
  /** Which of the part's satellites, counted from "1", and which quadrant of it; "V" or "H": both halves at once. */
  readonly satellite: string;
  readonly quadrant: string;
  readonly gets:
    | { readonly kind: "nothing connected" | "silence" }
    | {
        readonly kind: "plane";
        readonly dish: PartId;
        /** One dish may see several. */
        readonly satellite: string;
        readonly quadrant: string;
      }
    | { readonly kind: "loose"; readonly feed: LooseFeed; readonly dish: PartId; readonly band: Band };
};

const known = new WeakMap<PartRecord, readonly PlaneInput[]>();
const NONE: readonly PlaneInput[] = [];

/** Plane inputs of a multiswitch or stacking unit, in the order of its ports; none for other parts. */
export function planeInputs(record: PartRecord): readonly PlaneInput[] {
  // A receiver for whole polarisations has such inputs as well, but switches nothing.
  if (!record.power.switches || record.looped) return NONE;
  return remembered(known, record, () => {
    const isSeveral = record.ports.some((p) => (p.plane?.position ?? 1) > 1);
    return record.ports.flatMap(({ id, side, plane }): PlaneInput[] => {
      if (side !== "in" || !plane) return [];
      const satellite = String(plane.position);
      const quadrant = quadrantOf(plane);
      return [
        {
          port: id,
          plane: isSeveral ? `${satellite}:${quadrant}` : quadrant,
          satellite,
          quadrant,
          gets: whatArrives(record, id, quadrant),
        },
      ];
    });
  });
}

function whatArrives(record: PartRecord, port: string, quadrant: string): PlaneInput["gets"] {
  if (!record.joined[port]) return { kind: "nothing connected" };
  // A unit for quad LNBs has set their outputs itself: nothing else can come from there.
  const setsThem = record.treatment.paths?.some((path) => path.from === port && path.holds) ?? false;
  const satellite = (record.inputs[port] ?? SILENCE).bands.filter(
    (b) => b.origin.service === "satellite" && !b.isFloor && b.cut.includes(0),
  );
  const isHeld =
    setsThem || (satellite.length > 0 && satellite.every((b) => isSetByVoltsOf(record.part.id, b)));
  const bands = satellite.filter((b) => b.selected || !isHeld);
  const sort = { isWhole: quadrant.length === 1, isHeld };
  const loose = bands.find((b) => looseFeed(b, sort) !== undefined);
  const feed = loose && looseFeed(loose, sort);
  if (loose && feed) return { kind: "loose", feed, dish: loose.origin.part, band: loose };
  const band = bands.find((b) => quadrantOfBand(b) === quadrant) ?? bands[0];
  return band
    ? {
        kind: "plane",
        dish: band.origin.part,
        satellite: band.origin.satellite ?? "",
        quadrant: quadrantOfBand(band),
      }
    : { kind: "silence" };
}

function looseFeed(
  band: Band,
  { isWhole, isHeld }: { readonly isWhole: boolean; readonly isHeld: boolean },
): LooseFeed | undefined {
  if (band.stack) return "single-cable";
  if (band.conditions.length > 0 && !isHeld) return "switched";
  if (isWhole) return band.half ? "quadrant" : undefined;
  return band.half ? undefined : "wideband";
}

/** "VL"; "V" for both halves at once. */
function quadrantOf({ polarisation, half }: PortPlane): string {
  return `${polarisation}${half === undefined ? "" : half === "low" ? "L" : "H"}`;
}

function quadrantOfBand({ origin, half }: Band): string {
  return quadrantOf({ position: 1, polarisation: origin.polarisation ?? "V", ...(half ? { half } : {}) });
}

/** Whether some receiver asks this part for one plane or another. */
export function isAsked(record: PartRecord): boolean {
  return Object.values(record.switches).some((state) => state.offers.some((o) => o.kind === "commands"));
}

const isLive = ({ gets }: Pick<PlaneInput, "gets">) => gets.kind === "plane" || gets.kind === "loose";

/** Inputs that get nothing while others of the same satellite do. */
export function missingPlanes(record: PartRecord): readonly PlaneInput[] {
  const inputs = planeInputs(record);
  const live = liveSatellites(inputs);
  const undivided = new Set(
    inputs.flatMap(({ port, satellite }) =>
      (record.inputs[port] ?? SILENCE).bands.some(
        (b) => b.origin.service === "satellite" && !b.isFloor && satelliteBandOn(b) !== "Ku",
      )
        ? [satellite]
        : [],
    ),
  );
  // Satellites of other bands have no high half, so nothing is missing there.
  return inputs.filter(
    ({ satellite, quadrant, ...input }) =>
      !isLive(input) && live.has(satellite) && !(quadrant[1] === "H" && undivided.has(satellite)),
  );
}

/**
 * Inputs of a satellite that is silent as a whole while another one comes. With no lead at all it may be there for
 * later; `isAsked`: whether somebody asks for that satellite already.
 */
export function missingSatellites(
  record: PartRecord,
  isAsked: (satellite: string) => boolean,
): readonly PlaneInput[] {
  const inputs = planeInputs(record);
  const live = liveSatellites(inputs);
  if (live.size === 0) return [];
  const silent = inputs.filter((input) => !live.has(input.satellite));
  const hasLead = new Set(silent.filter(({ gets }) => gets.kind === "silence").map((i) => i.satellite));
  return silent.filter(({ satellite }) => hasLead.has(satellite) || isAsked(satellite));
}

function liveSatellites(inputs: readonly PlaneInput[]): ReadonlySet<string> {
  return new Set(inputs.filter(isLive).map((input) => input.satellite));
}
