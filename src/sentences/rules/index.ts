/** The words of all rules, by rule. */
import type { RuleId } from "../../findings/facts.ts";
import type { SpokenRule } from "../../findings/rule.ts";
import { DESIGN_RULES, RULES } from "../../findings/rules/index.ts";
import type { RuleWords } from "../ruleWords.ts";
import { aboveBandEdge } from "./aboveBandEdge.ts";
import { loop } from "./loop.ts";
import { planeMissing } from "./planeMissing.ts";
import { receiverMisses } from "./receiverMisses.ts";
import { wrongFeed } from "./wrongFeed.ts";

const WORDS: { readonly [R in RuleId]?: RuleWords<R> } = {
  loop,
  "above-band-edge": aboveBandEdge,
  "wrong-feed": wrongFeed,
  "plane-missing": planeMissing,
  "receiver-misses": receiverMisses,
};

/** All rules, in the order in which findings of equal weight are shown. */
export const RULE_IDS: readonly RuleId[] = [...RULES, ...DESIGN_RULES].map((rule) => rule.id);

/** The words of a rule, for findings of that rule only. */
export function wordsOf(rule: RuleId): RuleWords<RuleId> {
  // Whoever asks has a finding of this rule: its facts are those that the words expect.
  const words = WORDS[rule] as unknown as RuleWords<RuleId> | undefined;
  if (words) return words;
  const spoken = [...RULES, ...DESIGN_RULES].find((r) => r.id === rule) as SpokenRule;
  const { title, explain, source, explanation } = spoken;
  const said = (facts: unknown) => facts as { message: string; cure?: string };
  return {
    ...(explanation as unknown as RuleWords<RuleId>),
    title,
    explain,
    source,
    message: ({ finding }) => said(finding.facts).message,
    cure: ({ finding }) => said(finding.facts).cure,
  };
}
