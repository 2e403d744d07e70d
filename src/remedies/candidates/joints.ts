/** Lines that are simply joined: a splitter keeps them apart. */
import { kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";

/** A splitter in the place of a joint, its unused legs terminated. */
export const splitterForJoint: Idea = (site, finding) => {
  const id = finding.at.part;
  const record = site.evaluation.record(id);
  const splitter = kindOf("splitter");
  const ways = splitter && optionMeaning(splitter, "ways");
  if (!record || !ways || record.kind.trade.job !== "splitter") return [];
  // Whatever has an isolation of its own is a splitter already.
  if (optionMeaning(record.kind, "decoupling") !== undefined) return [];
  const legs = record.ports.filter((p) => p.side === "out").length;
  return [
    candidate("splitter-for-joint", [id], {}, (design) => {
      const d = draft(design);
      d.swap(id, "splitter", { [ways]: legs });
      return d.result();
    }),
  ];
};
