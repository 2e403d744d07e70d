/** What is said of an evaluation, in words, for tests that look at the words. */
import type { Evaluation } from "../src/evaluate/evaluation.ts";
import { report } from "../src/findings/report.ts";
import { messageOf } from "../src/sentences/finding.ts";

/** Messages of all findings, or of those of one rule, worst first. */
export function messagesOf(evaluation: Evaluation, rule?: string): readonly string[] {
  return report(evaluation)
    .findings.filter((f) => rule === undefined || f.rule === rule)
    .map((f) => messageOf(f, evaluation));
}
