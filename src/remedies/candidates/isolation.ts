/** Too little isolation between dwellings: better decoupled parts, plates with more loss. */
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { labelOf } from "../site.ts";

export const betterDecoupling: Idea = (site, finding) => {
  const [at = "", ...outlets] = finding.parts;
  const record = site.evaluation.record(at);
  if (!record) return [];
  const short = Math.ceil((finding.limit ?? 0) - (finding.value ?? 0));
  const found: Candidate[] = [];
  if (record.options.type === "resistive")
    found.push(
      candidate(
        "ferrite-splitter",
        [at],
        {
          title: `Take a ferrite splitter for ${labelOf(site, at)}`,
          reason: "The legs of a resistive one are kept apart by no more than its loss.",
        },
        (design) => {
          const d = draft(design);
          d.set(at, { type: "hybrid" });
          return d.result();
        },
      ),
    );
  const { isolationDb } = record.options;
  if (typeof isolationDb === "number" && record.options.type !== "resistive")
    found.push(
      candidate(
        "better-decoupling",
        [at],
        {
          title: `Take a type with ${isolationDb + short + 2} dB between its outputs for ${labelOf(site, at)}`,
          reason: "The two dwellings meet there.",
        },
        (design) => {
          const d = draft(design);
          d.set(at, { isolationDb: isolationDb + short + 2 });
          return d.result();
        },
      ),
    );
  for (const id of outlets) {
    const tapLossDb = site.evaluation.record(id)?.options.tapLossDb;
    if (typeof tapLossDb !== "number") continue;
    found.push(
      candidate(
        "tap-value",
        [id, tapLossDb + short],
        {
          title: `Take a plate of ${tapLossDb + short} dB for ${labelOf(site, id)}`,
          reason: "More loss to the sockets keeps the neighbours apart.",
        },
        (design) => {
          const d = draft(design);
          d.set(id, { tapLossDb: tapLossDb + short });
          return d.result();
        },
      ),
    );
  }
  return found;
};
