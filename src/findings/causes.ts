/** Which findings are causes, and what follows from each. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Cause, Finding, Verdict } from "./finding.ts";

/** The causes of a design, worst first. */
export function causesOf(
  findings: readonly Finding[],
  _verdicts: readonly Verdict[],
  _evaluation: Evaluation,
): readonly Cause[] {
  return findings.map((root) => ({ id: root.id, root, findings: [root], receivers: [], outlets: [] }));
}
