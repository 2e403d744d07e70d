/** What the examples promise in their lessons: trade knowledge (common practice, no source). */
import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";

const PROMISES = [
  { key: "house-universal", fails: [], rules: [] },
  {
    key: "house-wideband-fails",
    fails: ["sat1", "sat2", "tv1", "tv2"],
    rules: ["shared-frequencies", "band-cut", "plane-missing"],
  },
  { key: "house-separate-cables", fails: [], rules: [] },
  { key: "house-stacked", fails: [], rules: [] },
  { key: "split-switched-output", fails: ["sat1", "sat2"], rules: ["switched-output-shared"] },
  { key: "valley-two-transmitters", fails: [], rules: [] },
  { key: "dish-two-satellites", fails: [], rules: [] },
  { key: "block-cable-network", fails: [], rules: [] },
  { key: "block-multiswitch", fails: [], rules: [] },
  { key: "block-stacked", fails: [], rules: [] },
  { key: "long-steel-drop", fails: ["sat"], rules: ["command-lost"] },
] as const;

describe("examples", () => {
  test.each(PROMISES)("$key keeps its promise", ({ key, fails, rules }) => {
    const design = EXAMPLES.find((e) => e.key === key)?.load();
    if (!design) throw new Error(`no example ${key}`);
    const { findings, verdicts } = report(evaluate(design));
    const failing = verdicts.filter((v) => v.role === "receiver" && v.state === "fails").map((v) => v.part);
    expect(failing.sort()).toEqual([...fails]);
    const errors = new Set(findings.filter((f) => f.severity === "error").map((f) => f.rule));
    for (const rule of rules) expect(errors).toContain(rule);
    expect(errors.size > 0).toBe(fails.length > 0);
    // A working example has nothing to warn of either: it is what a reader will copy.
    if (fails.length === 0) expect(findings.filter((f) => f.severity === "warning")).toEqual([]);
  });

  test("each has a promise here and a one-line lesson", () => {
    expect(EXAMPLES.map((e) => e.key).sort()).toEqual(PROMISES.map((p) => p.key).sort());
    for (const { lesson } of EXAMPLES) expect(lesson).toMatch(/^[A-Z].{20,200}\.$/);
  });
});
