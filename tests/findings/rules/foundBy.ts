/** What one rule finds in a design, for tests of single rules. */
import type { Design } from "../../../src/design/design.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { RuleId } from "../../../src/findings/facts.ts";
import type { FindingOf } from "../../../src/findings/finding.ts";
import { report } from "../../../src/findings/report.ts";

export function foundBy<R extends RuleId>(rule: R, design: Design): readonly FindingOf<R>[] {
  const own = report(evaluate(design)).findings.filter((finding) => finding.rule === rule);
  // Rule and facts of a finding belong together, which its union type cannot say of a rule that is not known here.
  return own as unknown as readonly FindingOf<R>[];
}

/** The same design with its parts and wires drawn in the opposite order. */
export function backwards(design: Design): Design {
  return { ...design, parts: [...design.parts].reverse(), wires: [...design.wires].reverse() };
}
