/** Parts that cut a band off: a type that passes all of it, another plate, or none at all. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Family } from "../../parts/contract.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import type { Site } from "../site.ts";

export const widerType: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap((record): Candidate[] => {
    const { id } = record.part;
    const isForSatellite = Object.values(record.inputs).some(({ bands }) =>
      bands.some((b) => b.origin.service === "satellite"),
    );
    if (record.kind.trade.madeFor === "satellite" && !isForSatellite) return [];
    const types = (record.kind.trade.widerTypes ?? []).filter(({ options }) =>
      Object.entries(options).some(([key, value]) => record.options[key] !== value),
    );
    return types.map(({ name, options }) =>
      candidate(
        "wider-type",
        [id, ...Object.values(options).map(String)],
        { type: (record.kind.trade.widerTypes ?? []).findIndex((t) => t.name === name) },
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

/** A filter, or an amplifier for other services, that takes away what is wanted, out of the line. */
export const cutterAway: Idea = (site, finding) =>
  culprits(site, finding.parts).flatMap(({ part, kind }): Candidate[] => {
    const { job } = kind.trade;
    if (!kind.inline) return [];
    if (job === "filter") return [candidate("filter-away", [part.id], {}, partAway(part.id))];
    const isAmplifier = job === "amplifier" || job === "mast amplifier";
    return isAmplifier ? [candidate("amplifier-away", [part.id], {}, partAway(part.id))] : [];
  });

/** A part taken out of its line. */
export function partAway(id: string): Candidate["apply"] {
  return (design) => {
    const d = draft(design);
    d.remove(id);
    return d.result();
  };
}
