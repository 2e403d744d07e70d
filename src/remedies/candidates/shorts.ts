/** Supplies that are shorted, or asked for more than they have. */
import { defectsOf, optionMeaning } from "../../parts/meanings.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";
import { labelOf } from "../site.ts";
import { madeAnew } from "./cable.ts";

/** What shorts a line: kept from its direct current, or cut out. */
export const endShort: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.parts[0] ?? "");
  if (!record || finding.value !== undefined) return [];
  const { id } = record.part;
  if (record.kind.trade.defect) return [madeAnew(site, id)];
  const found: Candidate[] = [];
  const block = defectsOf(record.kind, record.options).find(
    ({ option }) => option === optionMeaning(record.kind, "direct current block"),
  );
  if (block)
    found.push(
      candidate(
        "blocked-load",
        [id],
        {
          title: `Take a load with a capacitor for ${labelOf(site, id)}`,
          reason: "It ends the signal and draws no current.",
        },
        (design) => {
          const d = draft(design);
          d.set(id, { [block.option]: block.soundValue });
          return d.result();
        },
      ),
    );
  const port = record.ports.find((p) => p.side === "out" && record.joined[p.id]);
  if (port)
    found.push(
      candidate(
        "dc-block",
        [id, port.id],
        {
          title: `Put a DC block behind ${labelOf(site, id)}`,
          reason: "The signal passes, the direct current does not.",
        },
        (design) => {
          const d = draft(design);
          d.insert("dc-block", {}, [id, port.id]);
          return d.result();
        },
      ),
    );
  return found;
};

/** A stronger unit, or a feed from a unit of its own, where a supply is asked for too much. */
export const strongerSupply: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.parts[0] ?? "");
  const needMa = Math.ceil((finding.value ?? 0) / 50) * 50 + 50;
  if (!record || finding.unit !== "mA") return [];
  const key = optionMeaning(record.kind, "supply limit");
  if (key === undefined || record.kind.reception) return [];
  const { id } = record.part;
  return [
    candidate(
      "stronger-supply",
      [id, needMa],
      {
        title: `Take a unit that delivers ${needMa} mA for ${labelOf(site, id)}`,
        reason: `It is asked for ${Math.round(finding.value ?? 0)} mA.`,
      },
      (design) => {
        const d = draft(design);
        d.set(id, { [key]: needMa });
        return d.result();
      },
    ),
  ];
};
