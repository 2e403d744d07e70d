/** Receivers that share a switched output: outputs of their own, or a multiswitch in the splitter's place. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { describedOptions, optionMeaning } from "../../parts/meanings.ts";
import { outputFeed } from "../../parts/outputFeed.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Feeding, lengthM, type Site, type Step, satelliteInputs } from "../site.ts";

/** A splitter on a switched output, and what lies above it. */
export type Shared = {
  readonly split: PartRecord;
  readonly feeding: Feeding;
  readonly above: readonly Step[];
};

export function sharedLines(site: Site, parts: readonly string[]): readonly Shared[] {
  const found = new Map<string, Shared>();
  for (const { receiver, feeding } of satelliteInputs(site)) {
    if (!parts.includes(receiver.part.id)) continue;
    // The splitter nearest to the converter: above it nothing is shared any more.
    const index = feeding.between.findLastIndex((s) => s.record.kind.trade.job === "splitter");
    const split = feeding.between[index]?.record;
    if (split) found.set(split.part.id, { split, feeding, above: feeding.between.slice(index + 1) });
  }
  return [...found.values()];
}

export function legsOf(split: PartRecord): readonly string[] {
  return split.ports.filter((p) => p.side === "out" && split.joined[p.id]).map((p) => p.id);
}

/** What else comes onto the line above the splitter would be lost with it. */
export function isPlain(above: readonly Step[]): boolean {
  return above.every(({ record }) => record.kind.inline !== undefined);
}

/** A plate for two satellite cables, and what its second cable comes in and goes out by. */
const TWIN_PLATE = { kind: "outlet-sat-twin", input: "in2", socket: "sat2" } as const;

/** The plain plate right above a splitter. */
function plateOf(above: readonly Step[]): string | undefined {
  const [nearest] = above;
  const isPlate = nearest?.record.kind.trade.job === "plate";
  const sockets = isPlate ? nearest.record.ports.filter((p) => p.side === "out").length : 0;
  return sockets === 1 ? nearest?.record.part.id : undefined;
}

/** An output of the converter and a cable for each leg; the splitter goes. */
export const ownOutputs: Idea = (site, finding) =>
  sharedLines(site, finding.parts).flatMap(({ split, feeding, above }): Candidate[] => {
    const { converter, port } = feeding;
    const legs = legsOf(split);
    // Behind a plate the second cable needs a socket of its own.
    const plate = legs.length === 2 ? plateOf(above) : undefined;
    if (legs.length < 2 || !isPlain(plate ? above.slice(1) : above)) return [];
    const outputs = outputsFor(converter, legs.length - 1);
    if (outputs === undefined) return [];
    const metres = lengthM(above);
    const cables = metres === 0 ? 0 : legs.length - 1;
    const { id } = converter.part;
    return [
      candidate("own-outputs", [id, split.part.id], { splitter: split.part.id, cables }, (design) => {
        const d = draft(design);
        const ends = legs.map((leg) => d.other([split.part.id, leg]));
        if (plate) d.swap(plate, TWIN_PLATE.kind);
        const first = d.other([split.part.id, "in"]);
        const line = d.other([id, port]);
        const place = split.part.at;
        d.remove(split.part.id);
        d.set(id, outputs);
        if (!first || !line) return null;
        // The converter's ports may bear other names now: the old line is found again by its other end.
        const old = line[0] === split.part.id ? undefined : d.other(line);
        const taken = (p: string) => d.other([id, p]) !== undefined;
        const [start] = ends;
        if (start)
          d.join(old === undefined ? [id, freeOutput(converter, d.part(id)?.options, taken)] : first, start);
        for (const end of ends.slice(1)) {
          if (!end) continue;
          const out = freeOutput(converter, d.part(id)?.options, taken);
          if (metres === 0) {
            d.join([id, out], end);
            continue;
          }
          const cable = d.put("cable", { ...cableOptions(above), lengthM: metres }, place);
          d.join([id, out], [cable, "in"]);
          if (plate) {
            d.join([cable, "out"], [plate, TWIN_PLATE.input]);
            d.join([plate, TWIN_PLATE.socket], end);
          } else d.join([cable, "out"], end);
        }
        return d.result();
      }),
    ];
  });

/** Options with which a converter has so many switched outputs more; undefined where it cannot have them. */
export function outputsFor(
  converter: PartRecord,
  more: number,
): Readonly<Record<string, unknown>> | undefined {
  const { kind, options, ports, joined, power } = converter;
  const own = ports.filter((p) => p.side === "out" && outputFeed(kind, power, p.id) === "switched");
  const count = own.filter((p) => joined[p.id]).length + more;
  const key = optionMeaning(kind, "outputs");
  if (own.length > 0 && own.length >= count) return key === undefined ? {} : { [key]: options[key] };
  if (kind.trade.gives !== "switched" || key === undefined) return undefined;
  const enough = describedOptions(kind)
    .get(key)
    ?.sold?.values.find((n) => Number(n) >= count);
  return enough === undefined ? undefined : { [key]: enough };
}

/** A switched output of a converter with such options that nothing hangs on; none: an empty text. */
export function freeOutput(
  { kind }: PartRecord,
  options: Readonly<Record<string, unknown>> | undefined,
  isTaken: (port: string) => boolean,
): string {
  if (!options) return "";
  const power = kind.power(options);
  return (
    kind
      .ports(options)
      .find((p) => p.side === "out" && outputFeed(kind, power, p.id) === "switched" && !isTaken(p.id))?.id ??
    ""
  );
}

export function cableOptions(above: readonly Step[]): Readonly<Record<string, unknown>> {
  const { grade } = above.find((s) => s.record.kind.trade.job === "cable")?.record.options ?? {};
  return grade === undefined ? {} : { grade };
}

/** A quattro LNB, four cables, and a multiswitch where the splitter was. */
export const multiswitchForSplitter: Idea = (site, finding) =>
  sharedLines(site, finding.parts).flatMap(({ split, feeding, above }): Candidate[] => {
    const { converter, port } = feeding;
    const legs = legsOf(split);
    const lines = converter.ports.filter((p) => p.side === "out" && converter.joined[p.id]).length;
    const { job, gives } = converter.kind.trade;
    if (job !== "converter" || gives !== "switched" || lines !== 1 || !isPlain(above)) return [];
    const metres = lengthM(above);
    const { id } = converter.part;
    return [
      candidate("multiswitch", [id, split.part.id], { splitter: split.part.id }, (design) => {
        const d = draft(design);
        const ends = legs.map((leg) => d.other([split.part.id, leg]));
        const line = d.other([id, port]);
        const last = d.other([split.part.id, "in"]);
        if (!line || !last) return null;
        const place = split.part.at;
        d.unjoin([id, port]);
        d.remove(split.part.id);
        d.swap(id, "lnb-quattro");
        const unit = d.put("multiswitch", { outputs: Math.max(2, legs.length), terrestrial: false }, place);
        const isDirect = line[0] === split.part.id;
        if (isDirect) d.join([id, "vl"], [unit, "vl"]);
        else {
          d.join([id, "vl"], line);
          d.join(last, [unit, "vl"]);
        }
        for (const quadrant of ["vh", "hl", "hh"]) {
          if (metres === 0) {
            d.join([id, quadrant], [unit, quadrant]);
            continue;
          }
          const cable = d.put("cable", { ...cableOptions(above), lengthM: metres }, place);
          d.join([id, quadrant], [cable, "in"]);
          d.join([cable, "out"], [unit, quadrant]);
        }
        ends.forEach((end, i) => {
          if (end) d.join([unit, `out${i + 1}`], end);
        });
        return d.result();
      }),
    ];
  });
