/** Supplies that are shorted, or asked for more than they have. */
import { defaultOptions } from "../../parts/catalogue.ts";
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

/** A stronger unit, or a feed from a unit of its own, where a supply is asked for too much. */
export const strongerSupply: Idea = (site, finding) => {
  // Who is named first may be whoever draws too much of several supplies.
  const record = site.evaluation.record(finding.at.part);
  const askedMa = finding.value ?? 0;
  if (!record || finding.unit !== "mA") return [];
  const key = optionMeaning(record.kind, "supply limit");
  if (key === undefined) return [];
  const { id } = record.part;
  const usualMa = defaultOptions(record.kind)[key];
  const needMa = record.kind.reception ? usualMa : Math.ceil(askedMa / 50) * 50 + 50;
  // No receiver gives more than is usual: then somebody else has to feed.
  if (typeof needMa !== "number" || needMa < askedMa) return [];
  return [
    candidate("stronger-supply", [id, needMa], { needMa, askedMa }, (design) => {
      const d = draft(design);
      d.set(id, { [key]: needMa });
      return d.result();
    }),
  ];
};
