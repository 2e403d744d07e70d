/** The rule book: everything that can be found, why it matters, and what it looks like. */
import type { RuleId } from "../../findings/facts.ts";
import type { Severity } from "../../findings/finding.ts";
import { linksTo, type RuleLink } from "../finding.ts";
import { RULE_IDS, wordsOf } from "../rules/index.ts";
import { RULE_EXAMPLES, type RuleExample } from "./examples.ts";

export type RuleEntry = {
  readonly id: RuleId;
  readonly title: string;
  readonly explain: string;
  readonly source: string;
  /** Worst first. */
  readonly severities: readonly Severity[];
  /** Rules to read next. */
  readonly neighbours: readonly RuleLink[];
  /** Rules that name this one as a neighbour and are not named by it. */
  readonly namedBy: readonly RuleLink[];
  /** A design where it speaks and one where it stays silent. */
  readonly speaks: RuleExample | undefined;
  readonly silent: RuleExample | undefined;
  /** Further designs where it speaks. */
  readonly more: readonly RuleExample[];
};

/** All rules in the order in which their findings are shown. */
export function ruleBook(): readonly RuleEntry[] {
  return RULE_IDS.map((id) => {
    const { title, explain, source, severities, neighbours } = wordsOf(id);
    const examples = RULE_EXAMPLES.find((e) => e.rule === id);
    const namedBy = RULE_IDS.filter((r) => wordsOf(r).neighbours.includes(id) && !neighbours.includes(r));
    return {
      id,
      title,
      explain,
      source,
      severities,
      neighbours: linksTo(neighbours),
      namedBy: linksTo(namedBy),
      speaks: examples?.speaks,
      silent: examples?.silent,
      more: examples?.more ?? [],
    };
  });
}
