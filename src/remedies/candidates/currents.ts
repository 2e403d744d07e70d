/** Supplies that are asked for more than they have: stronger ones, and loads that draw less. */
import type { Finding } from "../../findings/finding.ts";
import { defaultOptions } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";

/** A stronger unit, or a feed from a unit of its own, where a supply is asked for too much. */
export const strongerSupply: Idea = (site, finding) => {
  const record = site.evaluation.record(supplyOf(finding));
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

/** Who is named first may be whoever draws too much of several supplies. */
function supplyOf(finding: Finding): string {
  const isMotor = finding.rule === "motor-line" && finding.facts.kind === "too much current";
  return isMotor ? finding.facts.supply : finding.at.part;
}

/** A receiver whose inputs each have a limit of their own, where they share one now. */
export const ownLimits: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.at.part);
  const shared = record && optionMeaning(record.kind, "common supply limit");
  const limit = record && optionMeaning(record.kind, "supply limit");
  if (!record || shared === undefined || limit === undefined || record.options[shared] !== true) return [];
  const { id } = record.part;
  const limitMa = Number(record.options[limit]);
  return [
    candidate("own-limits", [id], { limitMa }, (design) => {
      const d = draft(design);
      d.set(id, { [shared]: false });
      return d.result();
    }),
  ];
};

/** A motor that something holds: freed, or exchanged for one that turns; it then draws what motors do. */
export const freeMotor: Idea = (site, finding) => {
  if (finding.rule !== "supply-overloaded" || !("jammed" in finding.facts)) return [];
  const { jammed } = finding.facts;
  const record = jammed && site.evaluation.record(jammed.part);
  const key = record && optionMeaning(record.kind, "turning current");
  if (!jammed || !record || key === undefined) return [];
  const { id } = record.part;
  return [
    candidate("free-motor", [id], { drawsMa: jammed.milliamps }, (design) => {
      const d = draft(design);
      d.set(id, { [key]: defaultOptions(record.kind)[key] });
      return d.result();
    }),
  ];
};

/** What a small dish motor draws at least while it turns [mA]; from memory, as the range of the field. */
const LEAST_TURNING_MA = 150;

/** A motor that draws less, where its receiver cannot turn it. */
export const lesserMotor: Idea = (site, finding) => {
  if (finding.rule !== "motor-line" || finding.facts.kind !== "too much current") return [];
  const record = site.evaluation.record(finding.at.part);
  const key = record && optionMeaning(record.kind, "turning current");
  const now = key === undefined ? undefined : record?.options[key];
  if (!record || key === undefined || typeof now !== "number") return [];
  const over = (finding.value ?? 0) - (finding.limit ?? 0);
  const mostMa = Math.floor((now - over) / 10) * 10;
  if (mostMa < LEAST_TURNING_MA) return [];
  const { id } = record.part;
  return [
    candidate("lesser-motor", [id, mostMa], { mostMa }, (design) => {
      const d = draft(design);
      d.set(id, { [key]: mostMa });
      return d.result();
    }),
  ];
};
