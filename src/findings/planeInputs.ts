/** Inputs that stand for one plane of a satellite each, and what they get. */
import type { PartId } from "../design/design.ts";
import type { PartRecord } from "../evaluate/evaluation.ts";
import { type Band, SILENCE } from "../signal/band.ts";
import { remembered } from "../signal/remember.ts";

/** What a feed is that does not hold one quadrant all the time. */
export type LooseFeed = "switched" | "wideband" | "single-cable";

export type PlaneInput = {
  readonly port: string;
  /** Key of the plane as switches know it: "HH", or "2:HH" where there are several satellites. */
  readonly plane: string;
  /** Which of the part's satellites, counted from "1", and which quadrant of it; "V" or "H": both halves at once. */
  readonly satellite: string;
  readonly quadrant: string;
  readonly gets:
    | { readonly kind: "nothing connected" | "silence" }
    | { readonly kind: "plane"; readonly dish: PartId; readonly quadrant: string }
    | { readonly kind: "loose"; readonly feed: LooseFeed; readonly dish: PartId; readonly band: Band };
};

const known = new WeakMap<PartRecord, readonly PlaneInput[]>();
const NONE: readonly PlaneInput[] = [];

/** Plane inputs of a multiswitch, in the order of its ports; none for other parts. */
export function planeInputs(record: PartRecord): readonly PlaneInput[] {
  // Without a switch no input can stand for a quadrant; and most parts have none.
  if (!record.power.switches || record.looped) return NONE;
  return remembered(known, record, () => {
    const planes = planesByPort(record);
    return record.ports.flatMap(({ id }): PlaneInput[] => {
      const plane = planes.get(id);
      if (plane === undefined) return [];
      const [, satellite = "1", quadrant = ""] = /^(?:(\d+):)?([VH][LH]?)$/.exec(plane) ?? [];
      return [{ port: id, plane, satellite, quadrant, gets: whatArrives(record, id, quadrant) }];
    });
  });
}

function planesByPort(record: PartRecord): ReadonlyMap<string, string> {
  const { paths = [], stacks } = record.kind.signal(record.options, { id: record.part.id, powered: true });
  const planes = new Map<string, string>();
  const stacked = new Set((stacks ?? []).flatMap((stack) => stack.from));
  for (const path of paths) {
    if (stacked.has(path.to) && !path.loMHz) {
      const [, quadrant = "", satellite] = /^([vh][lh]?)(\d*)$/.exec(path.from) ?? [];
      if (quadrant) planes.set(path.from, `${satellite ? `${satellite}:` : ""}${quadrant.toUpperCase()}`);
      continue;
    }
    const setting = path.condition?.setting ?? "";
    // A path that converts or picks for itself is no connector meant for one quadrant.
    if (/(?:^|:)[VH][LH]$/.test(setting) && !path.loMHz && !path.from.startsWith("#"))
      planes.set(path.from, setting);
  }
  return planes;
}

function whatArrives(record: PartRecord, port: string, quadrant: string): PlaneInput["gets"] {
  if (!record.joined[port]) return { kind: "nothing connected" };
  const bands = (record.inputs[port] ?? SILENCE).bands.filter(
    (b) => b.origin.service === "satellite" && !b.isFloor && b.cut.includes(0),
  );
  const isWhole = quadrant.length === 1;
  const loose = bands.find((b) => looseFeed(b, isWhole) !== undefined);
  const feed = loose && looseFeed(loose, isWhole);
  if (loose && feed) return { kind: "loose", feed, dish: loose.origin.part, band: loose };
  const band = bands.find((b) => quadrantOf(b) === quadrant) ?? bands[0];
  return band ? { kind: "plane", dish: band.origin.part, quadrant: quadrantOf(band) } : { kind: "silence" };
}

function looseFeed(band: Band, isWhole: boolean): LooseFeed | undefined {
  if (band.stack) return "single-cable";
  if (band.conditions.length > 0) return "switched";
  return band.half || isWhole ? undefined : "wideband";
}

function quadrantOf({ origin, half }: Band): string {
  return `${origin.polarisation ?? ""}${half === undefined ? "" : half === "low" ? "L" : "H"}`;
}

/** Whether some receiver asks this part for one plane or another. */
export function isAsked(record: PartRecord): boolean {
  return Object.values(record.switches).some((state) => state.offers.some((o) => o.kind === "commands"));
}

/** Inputs that get nothing while others of the same satellite do. */
export function missingPlanes(record: PartRecord): readonly PlaneInput[] {
  const inputs = planeInputs(record);
  const isLive = ({ gets }: PlaneInput) => gets.kind === "plane" || gets.kind === "loose";
  const live = new Set(inputs.filter(isLive).map((input) => input.satellite));
  return inputs.filter((input) => !isLive(input) && live.has(input.satellite));
}
