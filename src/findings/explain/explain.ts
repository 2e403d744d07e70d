/** A finding explained in all its voices, labels filled in. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Finding } from "../finding.ts";
import { profileOf } from "../limits.ts";
import type { DesignRule, Rule } from "../rule.ts";
import { DESIGN_RULES, RULES } from "../rules/index.ts";
import { withLabels } from "../words.ts";
import type { Explanation, Facts } from "./explanation.ts";
import type { SpectrumPicture } from "./picture.ts";

export type Explained = {
  readonly rule: string;
  readonly title: string;
  /** Why the rule exists, in plain words. */
  readonly explain: string;
  readonly customer: string;
  readonly trade: string;
  readonly measure: string;
  readonly neighbours: readonly { readonly id: string; readonly title: string }[];
  readonly picture: SpectrumPicture | null;
};

/** Any rule, whether it asks part by part or the whole design. */
export type AnyRule = Pick<Rule | DesignRule, "id" | "title" | "explain" | "source"> & {
  readonly explanation: Explanation;
};

export const ALL_RULES: readonly AnyRule[] = [...RULES, ...DESIGN_RULES];

export function ruleOf(id: string): AnyRule | undefined {
  return ALL_RULES.find((rule) => rule.id === id);
}

/** All voices of a finding; undefined for a rule that this version does not know. */
export function explainFinding(finding: Finding, evaluation: Evaluation): Explained | undefined {
  const rule = ruleOf(finding.rule);
  if (!rule) return undefined;
  const facts: Facts = {
    finding,
    evaluation,
    profile: profileOf(evaluation.design),
    record: evaluation.record(finding.parts[0] ?? ""),
  };
  const labelled = (text: string) => withLabels(text, (id) => evaluation.record(id)?.part.label || id);
  const { explanation } = rule;
  const picture = explanation.picture(facts);
  return {
    rule: rule.id,
    title: rule.title,
    explain: rule.explain,
    customer: labelled(explanation.customer(facts)),
    trade: labelled(`${explanation.trade(facts)} Source: ${finding.source ?? rule.source}.`),
    measure: labelled(explanation.measure(facts)),
    neighbours: explanation.neighbours.flatMap((id) => {
      const title = ruleOf(id)?.title;
      return title === undefined ? [] : [{ id, title }];
    }),
    picture: picture && {
      ...picture,
      marks: picture.marks.map((mark) => ({ ...mark, label: labelled(mark.label) })),
    },
  };
}
