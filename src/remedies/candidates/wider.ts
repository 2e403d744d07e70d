/** Parts that cut a band off: a type that passes all of it, another plate, or none at all. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { labelOf, type Site } from "../site.ts";

type Change = { readonly words: string; readonly options: Readonly<Record<string, unknown>> };

/** Types with a wider range that a kind exists in; typical, from memory. */
function widerTypes(record: PartRecord): readonly Change[] {
  const { kind } = record.kind;
  const o = record.options;
  switch (kind) {
    case "splitter":
    case "combiner":
      return o.range === "tv"
        ? [{ words: "a type for satellite, up to 2400 MHz", options: { range: "sat" } }]
        : [];
    case "outlet-diplexed":
    case "outlet-triplexed":
    case "outlet-quad":
      return [
        { words: "a plate that passes satellite up to 2400 MHz", options: { satToMHz: 2400 } },
        { words: "a plate that passes TV up to 862 MHz", options: { tvToMHz: 862 } },
      ];
    case "diplexer-combine":
    case "diplexer-split":
      return [
        { words: "a diplexer for the whole satellite IF", options: { satTopMHz: 2400 } },
        { words: "a diplexer for TV to 862 MHz and satellite from 950 MHz", options: { split: "tv" } },
      ];
    case "triplexer-combine":
    case "triplexer-split":
    case "amp-masthead":
    case "amp-distribution":
      return [
        ...["790", "862"].map((uhfTo) => ({
          words: `a type for UHF up to ${uhfTo} MHz`,
          options: { uhfTo },
        })),
        ...(kind === "amp-masthead"
          ? [{ words: "a type for FM, DAB and UHF", options: { takes: "all" } }]
          : []),
      ];
    case "filter-mobile":
      return [{ words: "a type that passes up to channel 60", options: { band: "800" } }];
    case "amp-if":
      return [
        { words: "a type for the whole satellite IF", options: { fromMHz: 950, toMHz: 2150 } },
        { words: "a type for wideband feeds, 290 to 2350 MHz", options: { fromMHz: 290, toMHz: 2350 } },
        { words: "a type that lets TV and radio pass by", options: { below: "passed" } },
      ];
    default:
      return [];
  }
}

export const widerType: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap((record): Candidate[] => {
    const { id } = record.part;
    const types = widerTypes(record).filter(({ options }) =>
      Object.entries(options).some(([key, value]) => record.options[key] !== value),
    );
    return types.map(({ words, options }) =>
      candidate(
        "wider-type",
        [id, ...Object.values(options).map(String)],
        {
          title: `Take ${words} for ${labelOf(site, id)}`,
          reason: "What it cuts off now then gets through.",
        },
        (design) => {
          const d = draft(design);
          d.set(id, options);
          return d.result();
        },
      ),
    );
  });

/** Parts named in the finding that lie on a way; sources and receivers cut nothing. */
function culprits(site: Site, parts: readonly string[]): readonly PartRecord[] {
  return parts.flatMap((id) => {
    const record = site.evaluation.record(id);
    return record && /^(join|lift|deliver)$/.test(record.kind.family) ? [record] : [];
  });
}

/** Plates in the order of what they need: the plain ones pass everything. */
const PLATES: Readonly<Record<string, readonly string[]>> = {
  sat: ["outlet-sat"],
  "sat sat2": ["outlet-sat-twin"],
  tv: ["outlet-tv"],
  "sat tv": ["outlet-diplexed"],
  "radio tv": ["outlet-triplexed"],
  "radio sat tv": ["outlet-triplexed"],
};

/** The plate that has just the sockets in use. */
export const otherPlate: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap((record): Candidate[] => {
    if (!/^outlet-/.test(record.kind.kind)) return [];
    const { id } = record.part;
    const wanted = record.ports.filter((p) => p.side === "out" && record.joined[p.id]);
    const needs = [...new Set(wanted.map((p) => socketFor(site, record, p.id)))].sort().join(" ");
    return (PLATES[needs] ?? [])
      .filter((kind) => kind !== record.kind.kind)
      .map((kind) =>
        candidate(
          "other-plate",
          [id, kind],
          {
            title: `Put a ${kind === "outlet-sat" || kind === "outlet-sat-twin" ? "plain satellite plate" : "plate with the right sockets"} in place of ${labelOf(site, id)}`,
            reason: "A plate without filters takes nothing away.",
          },
          (design) => {
            const d = draft(design);
            const moves = wanted.map((p) => ({
              at: d.other([id, p.id]),
              to: socketFor(site, record, p.id),
              port: p.id,
            }));
            for (const { port } of moves) d.unjoin([id, port]);
            d.swap(id, kind);
            for (const { at, to } of moves) if (at) d.join([id, to], at);
            return d.result();
          },
        ),
      );
  });

/** The socket that whoever is plugged in belongs to. */
function socketFor(site: Site, record: PartRecord, port: string): string {
  const [other = "", at = ""] = record.joined[port] ?? [];
  const receiver = site.evaluation.record(other);
  const input = receiver?.kind.reception?.(receiver.options).inputs.find((i) => i.port === at);
  if (!input) return port;
  if (input.services.includes("satellite")) return port === "sat2" ? "sat2" : "sat";
  return input.services.includes("tv") ? "tv" : "radio";
}

/** A filter that takes away what is wanted. */
export const filterAway: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap((record): Candidate[] => {
    if (!/^filter/.test(record.kind.kind)) return [];
    const { id } = record.part;
    return [
      candidate(
        "filter-away",
        [id],
        { title: `Take ${labelOf(site, id)} out of the line`, reason: "It stops what is wanted behind it." },
        (design) => {
          const d = draft(design);
          d.remove(id);
          return d.result();
        },
      ),
    ];
  });
