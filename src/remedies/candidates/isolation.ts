/** Too little isolation between dwellings: better decoupled parts, plates with more loss. */
import { optionMeaning, optionsMeaning, standardValues } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";

/** The best that splitters and taps are made with [dB]; from memory. */
const BEST_DECOUPLING_DB = 36;

export const betterDecoupling: Idea = (site, finding) => {
  if (finding.rule !== "dwelling-isolation") return [];
  const at = finding.at.part;
  const { outlets } = finding.facts;
  const record = site.evaluation.record(at);
  if (!record) return [];
  const short = Math.ceil((finding.limit ?? 0) - (finding.value ?? 0));
  const found: Candidate[] = [];
  const isResistive = record.options.type === "resistive";
  const decoupling = optionMeaning(record.kind, "decoupling");
  const ofFerrite = decoupling === undefined ? undefined : record.options[decoupling];
  const now = isResistive ? record.treatment.isolationDb : decoupling && record.options[decoupling];
  const isolationDb = typeof now === "number" ? Math.ceil(now + short) + 2 : Number.POSITIVE_INFINITY;
  const isUsual = typeof ofFerrite === "number" && ofFerrite + 2 >= isolationDb;
  if (decoupling !== undefined && isResistive && isolationDb <= BEST_DECOUPLING_DB) {
    const facts = isUsual ? {} : { isolationDb };
    found.push(
      candidate("ferrite-splitter", [at, isolationDb], facts, (design) => {
        const d = draft(design);
        d.set(at, { type: "hybrid", ...(isUsual ? {} : { [decoupling]: isolationDb }) });
        return d.result();
      }),
    );
  } else if (decoupling !== undefined && isolationDb <= BEST_DECOUPLING_DB)
    found.push(
      candidate("better-decoupling", [at], { isolationDb }, (design) => {
        const d = draft(design);
        d.set(at, { [decoupling]: isolationDb });
        return d.result();
      }),
    );
  for (const id of outlets) {
    const outlet = site.evaluation.record(id);
    const key = outlet && optionsMeaning(outlet.kind, "tap loss", "chosen loss")[0];
    const now = key === undefined ? undefined : outlet?.options[key];
    if (!outlet || key === undefined || typeof now !== "number") continue;
    const wanted = standardValues(outlet.kind, key).find((value) => value >= now + short);
    if (wanted === undefined) continue;
    found.push(
      candidate("tap-value", [id, wanted], { db: wanted, before: now }, (design) => {
        const d = draft(design);
        d.set(id, { [key]: wanted });
        return d.result();
      }),
    );
  }
  return found;
};
