/** Parts that cut a band off: a type that passes all of it, another plate, or none at all. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { CATALOGUE, defaultOptions } from "../../parts/catalogue.ts";
import type { Family } from "../../parts/contract.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { labelOf, type Site } from "../site.ts";

export const widerType: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap((record): Candidate[] => {
    const { id } = record.part;
    const types = (record.kind.trade.widerTypes ?? []).filter(({ options }) =>
      Object.entries(options).some(([key, value]) => record.options[key] !== value),
    );
    return types.map(({ name, options }) =>
      candidate(
        "wider-type",
        [id, ...Object.values(options).map(String)],
        {
          title: `Take ${name} for ${labelOf(site, id)}`,
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

const CUTTING: readonly Family[] = ["join", "lift", "deliver"];

/** Parts named in the finding that lie on a way; sources and receivers cut nothing. */
function culprits(site: Site, parts: readonly string[]): readonly PartRecord[] {
  return parts.flatMap((id) => {
    const record = site.evaluation.record(id);
    return record && CUTTING.includes(record.kind.family) ? [record] : [];
  });
}

/** Plates that are no part of a riser, those with the fewest sockets first: what has no filters takes nothing away. */
const PLATES = CATALOGUE.filter((kind) => kind.trade.job === "plate")
  .map((kind) => ({ kind, sockets: kind.delivery?.(defaultOptions(kind)).sockets ?? [] }))
  .sort((a, b) => a.sockets.length - b.sockets.length);

/** The plate that has just the sockets in use. */
export const otherPlate: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap((record): Candidate[] => {
    if (!record.kind.delivery) return [];
    const { id } = record.part;
    const wanted = record.ports.filter((p) => p.side === "out" && record.joined[p.id]);
    const needs = new Set(wanted.map((p) => socketFor(site, record, p.id)));
    const fit = PLATES.find(({ sockets }) =>
      [...needs].every((port) => sockets.some((socket) => socket.port === port)),
    );
    if (!fit || needs.size === 0 || fit.kind === record.kind) return [];
    const isPlain = fit.sockets.every(({ services }) => services.every((s) => s === "satellite"));
    return [
      candidate(
        "other-plate",
        [id, fit.kind.kind],
        {
          title: `Put a ${isPlain ? "plain satellite plate" : "plate with the right sockets"} in place of ${labelOf(site, id)}`,
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
          d.swap(id, fit.kind.kind);
          for (const { at, to } of moves) if (at) d.join([id, to], at);
          return d.result();
        },
      ),
    ];
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
    if (record.kind.trade.job !== "filter") return [];
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
