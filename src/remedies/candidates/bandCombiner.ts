/** A diplexer or triplexer in the place of a combiner that filters nothing. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Service } from "../../signal/carrier.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { type Site, wayUp } from "../site.ts";
import { recordsAround } from "./around.ts";

type Move = { readonly from: string; readonly port: string };

/** Inputs of a part with filters for what arrives at those of a plain one. */
const BAND_COMBINERS: readonly { readonly kind: string; readonly ports: Partial<Record<Service, string>> }[] =
  [
    { kind: "diplexer-combine", ports: { tv: "tv", dab: "tv", fm: "tv", satellite: "sat" } },
    { kind: "triplexer-combine", ports: { tv: "uhf", dab: "dab", fm: "fm" } },
  ];

/** A diplexer or triplexer in the place of a combiner without filters. */
export const bandCombiner: Idea = (site, finding) =>
  recordsAround(site, finding)
    .filter((r) => r.kind.trade.job === "combiner" && r.ports.every((p) => p.role !== "band"))
    .flatMap((record) =>
      BAND_COMBINERS.flatMap(({ kind, ports }): Candidate[] => {
        const moves = movesTo(site, record, ports);
        return moves ? [combinedBy(record, kind, moves)] : [];
      }),
    );

/** A port of its own for each line; undefined where two lines want the same one, or one wants none or two. */
function movesTo(
  site: Site,
  record: PartRecord,
  ports: Partial<Record<Service, string>>,
): readonly Move[] | undefined {
  const moves: Move[] = [];
  for (const { id, side } of record.ports) {
    if (side !== "in" || !record.joined[id]) continue;
    const wanted = new Set(servicesAt(site, record, id).map((service) => ports[service]));
    const [port] = wanted;
    if (port === undefined || wanted.size > 1 || moves.some((m) => m.port === port)) return undefined;
    moves.push({ from: id, port });
  }
  return moves.length > 1 ? moves : undefined;
}

/** What arrives at an input, or would if its converter were fed. */
function servicesAt(site: Site, record: PartRecord, input: string): readonly Service[] {
  const arriving = (record.inputs[input]?.bands ?? []).map((b) => b.origin.service);
  if (arriving.length > 0) return arriving;
  const gives = wayUp(site, [record.part.id, input], "satellite").some((s) => s.record.kind.trade.gives);
  return gives ? ["satellite"] : [];
}

function combinedBy(record: PartRecord, kind: string, moves: readonly Move[]): Candidate {
  const { id } = record.part;
  return candidate("band-combiner", [id, kind], { kind }, (design) => {
    const d = draft(design);
    const ends = moves.map((m) => d.other([id, m.from]));
    const out = d.other([id, "out"]);
    for (const { from } of moves) d.unjoin([id, from]);
    d.unjoin([id, "out"]);
    d.swap(id, kind);
    moves.forEach(({ port }, i) => {
      const end = ends[i];
      if (end) d.join(end, [id, port]);
    });
    if (out) d.join([id, "out"], out);
    return d.result();
  });
}
