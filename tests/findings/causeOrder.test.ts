/** Causes are the same, and in the same order, however a design was drawn. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design, PartId } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Cause, Finding } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { anyDesign } from "../arbitraries.ts";
import { redrawn } from "../redrawn.ts";
import { anyStructure } from "../structures.ts";
import { TRADE_CASES } from "../trade/cases.ts";
import { variedExample } from "./varied.ts";

/** What a cause says, by the ids of the first drawing. */
function told(cause: Cause, id: (part: PartId) => PartId) {
  const finding = ({ rule, severity, at, parts }: Finding) => {
    const { part, port, service, side, tuner } = at;
    return { rule, severity, at: id(part), port, service, side, tuner, culprit: id(parts[0]) };
  };
  return {
    root: finding(cause.root),
    severity: cause.severity,
    findings: cause.findings.map(finding),
    receivers: cause.receivers.map(id),
    outlets: cause.outlets.map(id),
  };
}

/** Twins at one place on the canvas cannot be told apart, so every part gets a place and a name of its own. */
function apart(design: Design): Design {
  return { ...design, parts: design.parts.map((p, n) => ({ ...p, label: `Part ${n}`, at: [n * 8, 0] })) };
}

function expectSameCauses(drawn: Design): fc.IPropertyWithHooks<[unknown]> {
  const design = apart(drawn);
  const expected = report(evaluate(design)).causes.map((cause) => told(cause, (id) => id));
  return fc.property(redrawn(design), ({ design: again, former }) => {
    const causes = report(evaluate(again)).causes.map((c) => told(c, (id) => former.get(id) ?? id));
    expect(causes).toEqual(expected);
  }) as fc.IPropertyWithHooks<[unknown]>;
}

const DRAWN: readonly (readonly [string, Design])[] = [
  ...EXAMPLES.map((e) => [e.key, e.load()] as const),
  ...RULE_EXAMPLES.map((e) => [`the example of ${e.rule}`, e.speaks.load()] as const),
  ...TRADE_CASES.map((c) => [c.fault, c.design] as const),
];

describe("the list of causes", () => {
  test.each(DRAWN)("does not depend on how it was drawn: %s", (_, design) => {
    fc.assert(expectSameCauses(design), { numRuns: 3 });
  });

  test.each([
    ["installations with faults", variedExample(), 20],
    ["any row of stages", anyStructure(6), 10],
    ["any design", anyDesign(), 30],
  ] as const)("does not depend on how it was drawn: %s", (_, designs, numRuns) => {
    fc.assert(
      fc.property(
        designs.chain((design) => redrawn(apart(design)).map((again) => ({ design: apart(design), again }))),
        ({ design, again }) => {
          const before = report(evaluate(design)).causes.map((c) => told(c, (id) => id));
          const now = report(evaluate(again.design)).causes;
          expect(now.map((c) => told(c, (id) => again.former.get(id) ?? id))).toEqual(before);
        },
      ),
      { numRuns },
    );
  });
});
