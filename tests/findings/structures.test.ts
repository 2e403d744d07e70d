/** WT: whoever walks a design in which ways part and meet again goes every way once. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { worstIsolation } from "../../src/findings/isolation.ts";
import { walkSignal } from "../../src/findings/walk/signal.ts";
import { tellSupply } from "../../src/sentences/walk/supply.ts";
import { anyStructure, chainOfReceivers, ladder, STRUCTURES } from "../structures.ts";

function expectWalked(design: Design): void {
  const evaluation = evaluate(design);
  const ports = evaluation.records.reduce((n, record) => n + record.ports.length, 0);
  for (const record of evaluation.records) {
    for (const { port } of record.power.supplies ?? []) {
      const { steps } = tellSupply(evaluation, { part: record.part.id, port });
      expect(new Set(steps.map((s) => `${s.part}.${s.port}`)).size).toBe(steps.length);
      expect(steps.length).toBeLessThanOrEqual(ports);
    }
    for (const service of record.kind.reception?.(record.options).wants ?? [])
      for (const way of walkSignal(evaluation, { part: record.part.id, service }))
        expect(way.steps.length).toBeLessThanOrEqual(design.parts.length);
  }
}

function last<T>(steps: Generator<number, T, void>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

describe("walks", () => {
  test.each(Object.entries(STRUCTURES))("WT1: %s is walked", (_, make) => expectWalked(make(30)));

  test("WT2: any row of ladders, switches and amplifiers is walked", () => {
    fc.assert(
      fc.property(anyStructure(12), (design) => expectWalked(design)),
      { numRuns: 15 },
    );
  });

  test("WT3: a way that was listed already is said to be", () => {
    const evaluation = evaluate(ladder({ stages: 2, ways: 2 }));
    const tv = evaluation.records.find((r) => r.kind.kind === "receiver-sat");
    const { steps, lines } = tellSupply(evaluation, { part: tv?.part.id ?? "", port: "sat" });
    expect(steps.filter((s) => s.end === "met before").length).toBeGreaterThan(0);
    expect(lines.join(" ")).toMatch(/From here on it goes by a way that is listed already/);
    // The last step is reached all the same: the LNB is fed.
    expect(steps.some((s) => s.end === "feeds")).toBe(true);
  });

  test("WT4: isolation on a line of a thousand splitters is worked out without running out of stack", () => {
    const pairs = last(worstIsolation(evaluate(chainOfReceivers({ stages: 1000 })), 950));
    // At every splitter but the last its own flat meets the next one below.
    expect(pairs).toHaveLength(999);
    expect(pairs[0]?.dwellings).toEqual(["flat 1", "flat 0"]);
  });
});
