/** A finding in words: what is said of it at once, and all its voices. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { RuleId } from "../findings/facts.ts";
import type { Finding } from "../findings/finding.ts";
import { profileOf } from "../findings/limits.ts";
import type { SpectrumPicture } from "./explain/picture.ts";
import { labelled } from "./phrases.ts";
import { RULE_IDS, wordsOf } from "./rules/index.ts";
import type { Told } from "./ruleWords.ts";

/** One plain sentence: where, what, how much. `evaluation`: the one that it was found in. */
export function messageOf(finding: Finding, evaluation: Evaluation): string {
  return labelled(wordsOf(finding.rule).message(toldOf(finding, evaluation)), evaluation);
}

/** What would cure it, in a sentence; undefined where nothing can be said without looking at the site. */
export function cureOf(finding: Finding, evaluation: Evaluation): string | undefined {
  const cure = wordsOf(finding.rule).cure?.(toldOf(finding, evaluation));
  return cure === undefined ? undefined : labelled(cure, evaluation);
}

/** Where the limit of a finding comes from: the design's profile, or else the rule. */
export function sourceOf(finding: Finding): string {
  return finding.source ?? wordsOf(finding.rule).source;
}

export type Explained = {
  readonly rule: RuleId;
  readonly title: string;
  /** Why the rule exists, in plain words. */
  readonly explain: string;
  readonly customer: string;
  readonly trade: string;
  readonly measure: string;
  readonly neighbours: readonly RuleLink[];
  readonly picture: SpectrumPicture | null;
};

export type RuleLink = { readonly id: RuleId; readonly title: string };

/** All voices of a finding. */
export function explainFinding(finding: Finding, evaluation: Evaluation): Explained {
  const words = wordsOf(finding.rule);
  const told = toldOf(finding, evaluation);
  const picture = words.picture(told);
  return {
    rule: finding.rule,
    title: words.title,
    explain: words.explain,
    customer: labelled(words.customer(told), evaluation),
    trade: labelled(`${words.trade(told)} Source: ${sourceOf(finding)}.`, evaluation),
    measure: labelled(words.measure(told), evaluation),
    neighbours: linksTo(words.neighbours),
    picture: picture && {
      ...picture,
      marks: picture.marks.map((mark) => ({ ...mark, label: labelled(mark.label, evaluation) })),
    },
  };
}

/** Rules by their titles. */
export function linksTo(rules: readonly RuleId[]): readonly RuleLink[] {
  return rules.map((id) => ({ id, title: wordsOf(id).title }));
}

/** The rule with this key, as it stands in an address; undefined where there is none. */
export function ruleOf(key: string): RuleId | undefined {
  return RULE_IDS.find((id) => id === key);
}

function toldOf(finding: Finding, evaluation: Evaluation): Told<RuleId> {
  return {
    finding,
    evaluation,
    profile: profileOf(evaluation.design),
    record: evaluation.record(finding.at.part),
  };
}
