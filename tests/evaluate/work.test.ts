/** Work as it is counted: one unit is about a carrier on its way, an offer takes eight. */
import { expect, test } from "vitest";
import { fewAlternatives, MOST_ALTERNATIVES } from "../../src/evaluate/alternatives.ts";
import { type EvaluationProgress, finished, type Steps, withinBudget } from "../../src/evaluate/steps.ts";
import { NO_WORK, totalOf, workOfSignals } from "../../src/evaluate/work.ts";
import { bandOf, switchAt } from "../signal/bands.ts";

test("all in all is what supplies and signals took", () => {
  expect(totalOf({ supplies: 21, signals: 300 })).toBe(321);
  expect(totalOf(NO_WORK)).toBe(0);
});

test("signals: the visit, and what every output took", () => {
  const took = (work: number) => ({
    spectrum: { bands: [] },
    meetings: [],
    drives: [],
    omitted: undefined,
    gate: undefined,
    work,
  });
  expect(workOfSignals({ out1: took(18), out2: took(40) })).toBe(59);
  expect(workOfSignals({})).toBe(1);
});

/** Steps that count their work up by ten. */
function* counting(steps: number): Steps<string> {
  for (let done = 1; done <= steps; done++) yield { done, total: steps, work: 10 * done };
  return "done";
}

test("steps run to their end, or up to the one that goes beyond the budget", () => {
  const told: EvaluationProgress[] = [];
  const run = (work: number) => {
    told.length = 0;
    const steps = withinBudget(counting(3), { work });
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
      told.push(step.value);
    }
  };
  expect(run(30)).toEqual({ ok: true, value: "done" });
  expect(told.map((p) => p.work)).toEqual([10, 20, 30]);
  expect(run(29)).toEqual({ ok: false, reached: { done: 3, total: 3, work: 30 } });
  expect(told.map((p) => p.work)).toEqual([10, 20]);
  expect(run(9)).toEqual({ ok: false, reached: { done: 1, total: 3, work: 10 } });
  expect(told).toEqual([]);
  expect(finished(counting(4))).toBe("done");
  expect(finished(counting(0))).toBe("done");
});

const settings = (count: number, selected: string) =>
  Array.from({ length: count }, (_, i) =>
    bandOf({ from: `b${i}`, conditions: [{ at: switchAt("s", selected), setting: String(i) }] }),
  );

test("of many settings the present one and so many more are kept, in their order", () => {
  const bands = settings(MOST_ALTERNATIVES + 4, "70");
  // Of 68 settings that are not set now 64 are kept.
  const { kept, left } = fewAlternatives(bands);
  expect(left).toBe(4);
  expect(kept).toEqual(bands.slice(0, MOST_ALTERNATIVES));
  const last = fewAlternatives(settings(MOST_ALTERNATIVES + 4, "67"));
  expect(last.left).toBe(3);
  expect(last.kept.map((b) => b.origin.key)).toEqual([
    ...bands.slice(0, MOST_ALTERNATIVES).map((b) => b.origin.key),
    "b67",
  ]);
});

test("a setting goes with all its bands, and what is always there stays", () => {
  const bands = settings(MOST_ALTERNATIVES + 1, "none");
  const twice = [...bands, bandOf({ from: "always" }), ...bands];
  const { kept, left } = fewAlternatives(twice);
  expect(left).toBe(1);
  expect(kept).toHaveLength(2 * MOST_ALTERNATIVES + 1);
  expect(kept.some((b) => b.origin.key === "always")).toBe(true);
  expect(kept.some((b) => b.origin.key === `b${MOST_ALTERNATIVES}`)).toBe(false);
});

test("few settings are kept as they are, however many bands they have", () => {
  const few = settings(MOST_ALTERNATIVES, "none");
  expect(fewAlternatives(few)).toEqual({ kept: few, left: 0 });
  expect(fewAlternatives(few).kept).toBe(few);
  const crowded = [...few, ...few];
  expect(fewAlternatives(crowded).kept).toBe(crowded);
  expect(fewAlternatives([])).toEqual({ kept: [], left: 0 });
});
