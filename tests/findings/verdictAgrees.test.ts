/** Verdicts and findings of any design say the same: nothing is red that works, nothing fails unexplained. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { isAsleep } from "../../src/findings/verdict.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { anyDesign } from "../arbitraries.ts";
import { draw } from "../draw.ts";
import { variedExample } from "./varied.ts";

/** Receivers for which verdict and findings differ, and how. */
function differences(design: Design): readonly string[] {
  const { findings, verdicts } = report(evaluate(design));
  // An open input is told at the part that has it, with all receivers that are without what belongs there.
  const errorsAt = new Set(
    findings
      .filter((f) => f.severity === "error")
      .flatMap((f) => (f.rule === "not-connected" ? f.parts : [f.at.part])),
  );
  return verdicts
    .filter((v) => v.role === "receiver")
    .flatMap(({ part, state, idle, services, tuners, failsBy = [] }) => {
      const all = services.every((s) => s.got === s.wanted);
      // What fails it may be told where it is: a supply on the way that is asked for too much.
      const isTold = findings.some(
        (f) => f.severity === "error" && failsBy.some(({ rule }) => rule === f.rule),
      );
      if (state === "fails" && !idle && !errorsAt.has(part) && !isTold)
        return [`${part} fails without an error`];
      // One that is off or in standby asks for nothing, but may still hold a line that others share.
      if (state !== "fails" && !isAsleep(idle) && errorsAt.has(part)) return [`${part} works with an error`];
      if (state !== "fails" && !all) return [`${part} works and lacks carriers`];
      // One quiet note may name all ends that are still open.
      const isNamed = findings.some((f) => f.parts.includes(part));
      if (idle === "nothing connected" && !isNamed) return [`${part} is not connected, and nothing says so`];
      const [first] = tuners;
      if (state !== "fails" && first && first.got < first.wanted)
        return [`${part} works without its first tuner`];
      return [];
    });
}

describe("verdicts and findings agree", () => {
  test("in any design", () => {
    fc.assert(
      fc.property(anyDesign(), (design) => {
        expect(differences(design)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test("in any installation that somebody changed a little", () => {
    fc.assert(
      fc.property(variedExample(), (design) => {
        expect(differences(design)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test.each(EXAMPLES.map((e) => [e.key, e.load] as const))("in the example %s", (_, load) => {
    expect(differences(load())).toEqual([]);
  });

  test.each(RULE_EXAMPLES.map((e) => [e.rule, e] as const))(
    "in the examples of %s",
    (_, { speaks, silent }) => {
      expect([...differences(speaks.load()), ...differences(silent.load())]).toEqual([]);
    },
  );
});

test.each([
  { position: "2", failsBy: ["not-connected"] },
  { position: "1", failsBy: undefined },
])("a receiver set to position $position of a switch with one LNB", ({ position, failsBy }) => {
  const design = draw(
    {
      a: ["receiver-sat", { position }],
      w: ["position-switch"],
      m1: ["lnb-universal"],
      k1: ["dish"],
    },
    "k1.sky > m1.sky, m1.out > w.in1, w.out > a.sat",
  );
  const { verdicts, causes } = report(evaluate(design));
  const verdict = verdicts.find((v) => v.part === "a");
  // Position 1 would bring all, but that is not what it is set to.
  expect(verdict?.state === "fails").toBe(failsBy !== undefined);
  expect(verdict?.failsBy?.map(({ rule }) => rule)).toEqual(failsBy);
  expect(causes.filter((c) => c.severity === "error").map((c) => [c.root.parts[0], c.receivers])).toEqual(
    failsBy ? [["w", ["a"]]] : [],
  );
});
