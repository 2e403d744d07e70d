/** Too little isolation between dwellings: better decoupled parts, plates with more loss. */
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";

export const betterDecoupling: Idea = (site, finding) => {
  const [at = "", ...outlets] = finding.parts;
  const record = site.evaluation.record(at);
  if (!record) return [];
  const short = Math.ceil((finding.limit ?? 0) - (finding.value ?? 0));
  const found: Candidate[] = [];
  if (record.options.type === "resistive")
    found.push(
      candidate("ferrite-splitter", [at], {}, (design) => {
        const d = draft(design);
        d.set(at, { type: "hybrid" });
        return d.result();
      }),
    );
  const { isolationDb } = record.options;
  if (typeof isolationDb === "number" && record.options.type !== "resistive")
    found.push(
      candidate("better-decoupling", [at], { isolationDb: isolationDb + short + 2 }, (design) => {
        const d = draft(design);
        d.set(at, { isolationDb: isolationDb + short + 2 });
        return d.result();
      }),
    );
  for (const id of outlets) {
    const tapLossDb = site.evaluation.record(id)?.options.tapLossDb;
    if (typeof tapLossDb !== "number") continue;
    found.push(
      candidate(
        "tap-value",
        [id, tapLossDb + short],
        { db: tapLossDb + short, before: tapLossDb },
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
