/** What one rule finds in a design, for tests of single rules. */
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { RuleId } from "../../../src/findings/facts.ts";
import type { FindingOf } from "../../../src/findings/finding.ts";
import { report } from "../../../src/findings/report.ts";

export function foundBy<R extends RuleId>(rule: R, design: Design): readonly FindingOf<R>[] {
  const isOwn = (finding: { readonly rule: RuleId }): finding is FindingOf<R> => finding.rule === rule;
  return report(evaluate(design)).findings.filter(isOwn);
}

/** The same design with its parts and wires drawn in the opposite order. */
export function backwards(design: Design): Design {
  return { ...design, parts: [...design.parts].reverse(), wires: [...design.wires].reverse() };
}
