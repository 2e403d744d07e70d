import { expect, test } from "vitest";
import { EXAMPLES } from "../../../../src/design/examples.ts";
import { evaluate } from "../../../../src/evaluate/evaluate.ts";
import { traceCarrier } from "../../../../src/evaluate/trace.ts";
import { stepWords } from "../../../../src/ui/features/origin/stepWords.ts";

test("the step that stacks names the message a receiver sends, and where it finds the transponder", () => {
  const design = EXAMPLES.find((e) => e.key === "house-stacked")?.load();
  if (!design) throw new Error("no such example");
  const from = { part: "plate1", port: "sat" };
  const steps = traceCarrier(evaluate(design), from, { origin: "dish/V", index: 0 }, 2);
  const at = steps.findIndex((s) => s.part === "stack");
  const step = steps[at];
  if (!step) throw new Error("no step that stacks");
  // 10 729 MHz by a universal converter's 9750 MHz is 979 MHz; EN 50607 takes 100 off (public receiver code).
  expect(stepWords(step, steps[at - 1]).join("; ")).toMatch(/tuning word 879, found at 1.?420 MHz/);
  expect(steps.filter((s, n) => /tuning word/.test(stepWords(s, steps[n - 1]).join())).length).toBe(1);
});
