/** What can be said of the findings of one rule, in several voices. */

import type { RuleId } from "../findings/facts.ts";
import type { FindingOf } from "../findings/finding.ts";
import type { Explanation, Facts } from "./explain/explanation.ts";

/** What the words may look at: the finding with its facts, and the evaluation that it was found in. */
export type Told<R extends RuleId> = Omit<Facts, "finding"> & { readonly finding: FindingOf<R> };

/** Texts may hold names of parts as `partName` writes them; whoever shows them has the labels filled in. */
export type RuleWords<R extends RuleId> = {
  readonly title: string;
  /** Why this matters, in plain words. */
  readonly explain: string;
  /** Where the rule or its limit comes from. */
  readonly source: string;
  /** One plain sentence: place, fact, number, limit. */
  readonly message: (told: Told<R>) => string;
  /** What would cure it, in a sentence. */
  readonly cure?: (told: Told<R>) => string | undefined;
  /** One sentence without any word of the trade. */
  readonly customer: (told: Told<R>) => string;
  /** One paragraph with the numbers, and what they are held against. */
  readonly trade: (told: Told<R>) => string;
  /** Which meter, where, and the reading that proves it. */
  readonly measure: (told: Told<R>) => string;
  readonly picture: (told: Told<R>) => ReturnType<Explanation["picture"]>;
} & Pick<Explanation, "severities" | "neighbours">;
