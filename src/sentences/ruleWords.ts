/** What can be said of the findings of one rule, in several voices. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { RuleId } from "../findings/facts.ts";
import type { Finding, FindingOf, Severity } from "../findings/finding.ts";
import type { Profile } from "../findings/limits.ts";
import type { SpectrumPicture } from "./explain/picture.ts";

/** What the words may look at: a finding with its facts, and the evaluation that it was found in. */
export type Told<R extends RuleId> = Omit<ToldFinding, "finding"> & { readonly finding: FindingOf<R> };

/** The same for a finding of any rule. */
export type ToldFinding = {
  readonly finding: Finding;
  readonly evaluation: Evaluation;
  readonly profile: Profile;
  /** Record of the part that the finding is seen at. */
  readonly record: PartRecord | undefined;
};

/** Texts may hold names of parts as `partName` writes them; whoever shows them has the labels filled in. */
export type RuleWords<R extends RuleId> = {
  readonly title: string;
  /** Why this matters, in plain words. */
  readonly explain: string;
  /** Where the rule or its limit comes from. */
  readonly source: string;
  /** How grave findings of this rule can be, worst first. */
  readonly severities: readonly Severity[];
  /** One plain sentence: place, fact, number, limit. */
  readonly message: (told: Told<R>) => string;
  /** What would cure it, in a sentence. */
  readonly cure?: (told: Told<R>) => string | undefined;
  /** One or two short sentences without any word of the trade. */
  readonly customer: (told: Told<R>) => string;
  /** One paragraph with the numbers, and what they are held against. */
  readonly trade: (told: Told<R>) => string;
  /** Which meter, where, and the reading that proves it. */
  readonly measure: (told: Told<R>) => string;
  /** Rules that often speak of the same fault, or that it is mistaken for. */
  readonly neighbours: readonly RuleId[];
  /** The stretch of spectrum concerned; null where no frequencies are concerned. */
  readonly picture: (told: Told<R>) => SpectrumPicture | null;
};
