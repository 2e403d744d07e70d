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
import { MORE_CASES } from "../trade/moreCases.ts";
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

function expectSameCauses(designs: fc.Arbitrary<Design>, numRuns: number): void {
  const drawnTwice = designs
    .map(apart)
    .chain((design) => redrawn(design).map((again) => ({ design, again })));
  fc.assert(
    fc.property(drawnTwice, ({ design, again }) => {
      const before = report(evaluate(design)).causes.map((c) => told(c, (id) => id));
      const now = report(evaluate(again.design)).causes;
      expect(now.map((c) => told(c, (id) => again.former.get(id) ?? id))).toEqual(before);
    }),
    { numRuns },
  );
}

const DRAWN: readonly (readonly [string, Design])[] = [
  ...EXAMPLES.map((e) => [e.key, e.load()] as const),
  ...RULE_EXAMPLES.map((e) => [`the example of ${e.rule}`, e.speaks.load()] as const),
  ...[...TRADE_CASES, ...MORE_CASES].map((c) => [c.fault, c.design] as const),
];

describe("the list of causes", () => {
  test.each(DRAWN)("does not depend on how it was drawn: %s", (_, design) =>
    expectSameCauses(fc.constant(design), 3),
  );

  test.each([
    ["installations with faults", variedExample(), 20],
    ["any row of stages", anyStructure(6), 10],
    ["any design", anyDesign(), 30],
  ] as const)("does not depend on how it was drawn: %s", (_, designs, numRuns) =>
    expectSameCauses(designs, numRuns),
  );
});
