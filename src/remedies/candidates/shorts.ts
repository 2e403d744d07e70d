/** Supplies that are shorted. */
import { defectsOf, optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { madeAnew } from "./cable.ts";

/** What shorts a line, or is a resistor across it: kept from its direct current, or cut out. */
export const endShort: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.parts[0] ?? "");
  if (!record || finding.rule !== "supply-overloaded") return [];
  // What merely draws too much is for those who look for a stronger supply.
  if (finding.facts.kind === "too much" && !record.power.resistors) return [];
  const { id } = record.part;
  if (record.kind.trade.defect) return [madeAnew(id)];
  const found: Candidate[] = [];
  const block = defectsOf(record.kind, record.options).find(
    ({ option }) => option === optionMeaning(record.kind, "direct current block"),
  );
  if (block)
    found.push(
      candidate("blocked-load", [id], {}, (design) => {
        const d = draft(design);
        d.set(id, { [block.option]: block.soundValue });
        return d.result();
      }),
    );
  const port = record.ports.find((p) => p.side === "out" && record.joined[p.id]);
  if (port)
    found.push(
      candidate("dc-block", [id, port.id], {}, (design) => {
        const d = draft(design);
        d.insert("dc-block", {}, [id, port.id]);
        return d.result();
      }),
    );
  return found;
};
