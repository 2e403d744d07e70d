/** ID: a finding has one identity: no other of the same report has it, and it holds no figure. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { anyStructure } from "../structures.ts";
import { TRADE_CASES } from "../trade/cases.ts";

const idsOf = (design: Design) => report(evaluate(design)).findings.map((f) => f.id);

function expectUnique(ids: readonly string[]) {
  expect(ids.length).toBe(new Set(ids).size);
}

describe("findings of one report have identities of their own", () => {
  test("ID1: in examples, examples of rules and faults of real life", () => {
    const designs = [
      ...EXAMPLES.map((e) => e.load()),
      ...RULE_EXAMPLES.map((e) => e.speaks.load()),
      ...TRADE_CASES.map((c) => c.design),
    ];
    const all = designs.map(idsOf);
    for (const ids of all) expectUnique(ids);
    expect(all.flat().length).toBeGreaterThan(200);
  });

  test("ID2: in any row of ladders, switches and amplifiers", () => {
    fc.assert(
      fc.property(anyStructure(12), (design) => expectUnique(idsOf(design))),
      { numRuns: 20 },
    );
  });

  test("ID3: a warmer cable changes figures and no identity", () => {
    const [one] = TRADE_CASES.filter((c) => c.fault.includes("long drop of steel"));
    if (!one) throw new Error("no such case");
    const warmer: Design = {
      ...one.design,
      parts: one.design.parts.map((part) =>
        part.kind === "cable" ? { ...part, options: { ...part.options, temperatureC: 25 } } : part,
      ),
    };
    const cold = report(evaluate(one.design)).findings;
    const warm = report(evaluate(warmer)).findings;
    expect(warm.map((f) => f.id)).toEqual(cold.map((f) => f.id));
    expect(warm.map((f) => f.value)).not.toEqual(cold.map((f) => f.value));
  });
});
