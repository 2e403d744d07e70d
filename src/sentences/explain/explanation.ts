/** What each rule can say about a finding of its own: for the customer, for the trade, for the meter. */
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { RuleId } from "../../findings/facts.ts";
import type { Finding, Severity } from "../../findings/finding.ts";
import type { Profile } from "../../findings/limits.ts";
import type { SpectrumPicture } from "./picture.ts";

/** What an explanation may look at: the finding, and the evaluation that it was found in. */
export type Facts = {
  readonly finding: Finding;
  readonly evaluation: Evaluation;
  readonly profile: Profile;
  /** Record of the part that the finding names first. */
  readonly record: PartRecord | undefined;
};

/** Texts may hold names of parts as `partName` writes them; `explainFinding` fills the labels in. */
export type Explanation = {
  /** How grave findings of this rule can be, worst first. */
  readonly severities: readonly Severity[];
  /** One sentence without any word of the trade. */
  readonly customer: (facts: Facts) => string;
  /** One paragraph with the numbers, and what they are held against. */
  readonly trade: (facts: Facts) => string;
  /** Which meter, where, and the reading that proves it. */
  readonly measure: (facts: Facts) => string;
  /** Ids of rules that often speak of the same fault, or that it is mistaken for. */
  readonly neighbours: readonly RuleId[];
  /** The stretch of spectrum concerned; null where no frequencies are concerned. */
  readonly picture: (facts: Facts) => SpectrumPicture | null;
};
