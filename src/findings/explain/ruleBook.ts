/** The rule book: everything that can be found, why it matters, and what it looks like. */
import type { Severity } from "../finding.ts";
import { RULE_EXAMPLES, type RuleExample } from "./examples.ts";
import { ALL_RULES, ruleOf } from "./explain.ts";

export type RuleLink = { readonly id: string; readonly title: string };

export type RuleEntry = {
  readonly id: string;
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
};

/** All rules in the order in which their findings are shown. */
export function ruleBook(): readonly RuleEntry[] {
  return ALL_RULES.map(({ id, title, explain, source, explanation }) => {
    const examples = RULE_EXAMPLES.find((e) => e.rule === id);
    const { severities, neighbours } = explanation;
    return {
      id,
      title,
      explain,
      source,
      severities,
      neighbours: linksTo(neighbours),
      namedBy: linksTo(
        ALL_RULES.filter((r) => r.explanation.neighbours.includes(id) && !neighbours.includes(r.id)).map(
          (r) => r.id,
        ),
      ),
      speaks: examples?.speaks,
      silent: examples?.silent,
    };
  });
}

function linksTo(ids: readonly string[]): readonly RuleLink[] {
  return ids.flatMap((id) => {
    const title = ruleOf(id)?.title;
    return title === undefined ? [] : [{ id, title }];
  });
}
