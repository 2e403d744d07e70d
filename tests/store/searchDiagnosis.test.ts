/** The search for a fault as it passes between page and worker. What each fault does: common practice, no source. */
import { describe, expect, test } from "vitest";
import { faultOf } from "../../src/remedies/faults/list.ts";
import { measure } from "../../src/remedies/faults/measure.ts";
import type { Observation } from "../../src/remedies/faults/symptoms.ts";
import { evaluated } from "../../src/remedies/faults/symptoms.ts";
import { designOf } from "../../src/remedies/training/case.ts";
import { type DiagnosisTask, searchDiagnosis } from "../../src/store/searchDiagnosis.ts";
import { finish } from "../remedies/faults/finish.ts";

/** The first two floors of five are dark: the break is between the third plate and the second. */
const design = designOf("riser-block");
const observations: readonly Observation[] = [1, 2, 3, 4, 5].map((floor) => ({
  part: `tv${floor}`,
  service: "tv",
  works: floor > 2,
}));
const task: DiagnosisTask = { type: "diagnosis", design, observations, known: null, taken: [] };

const idsOf = (suspicions: readonly { readonly faults: readonly string[] }[] | null) =>
  (suspicions ?? []).flatMap((s) => s.faults);

/** What the readings leave, without waiting for the next measurement. */
function leftAfter(asked: DiagnosisTask): readonly string[] {
  const run = searchDiagnosis(asked);
  let step = run.next();
  while (!step.done && step.value.left === null) step = run.next();
  return idsOf(step.value.left);
}

describe("the search for a fault", () => {
  test("tells at every step how far it is, in data that can be copied to another thread", () => {
    const run = searchDiagnosis(task);
    const shares = { faults: 0, readings: 0, measurement: 0 };
    let steps = 0;
    let step = run.next();
    for (; !step.done; step = run.next()) {
      const { stage, done, of } = structuredClone(step.value);
      expect(done).toBeGreaterThanOrEqual(0);
      expect(done).toBeLessThanOrEqual(of);
      shares[stage] += 1;
      steps += 1;
    }
    expect(shares.faults).toBeGreaterThan(20);
    expect(steps).toBe(shares.faults + shares.measurement);
    expect(structuredClone(step.value).left).toEqual(step.value.suspicions);
  });

  test("suspects the plugs between the last good floor and the first dark one", () => {
    const { left, measurement } = finish(searchDiagnosis(task));
    const exact = idsOf((left ?? []).filter((s) => s.match === "exact"));
    expect(exact).toContain("plug-off:plate3.out>run2.in");
    expect(exact).toContain("plug-off:run2.out>plate2.in");
    expect(exact).not.toContain("mains-off:amp");
    expect(measurement?.outcomes.length).toBeGreaterThan(1);
  });

  test("keeps the true fault, and drops others, when the reading of the faulty riser is entered", () => {
    const truth = faultOf(design, "plug-off:run2.out>plate2.in");
    const first = finish(searchDiagnosis(task));
    if (!truth || !first.measurement) throw new Error("nothing to measure");
    const { at, quantity, asked } = first.measurement;
    const reading = measure(design, evaluated(truth.apply(design)).evaluation, at, quantity);
    if (!reading || asked) throw new Error("a riser has no switched receivers");
    const second = finish(
      searchDiagnosis({ ...task, known: first.suspicions, taken: [{ at, reading, asked }] }),
    );
    expect(idsOf(second.left)).toContain(truth.id);
    expect(idsOf(second.left).length).toBeLessThan(idsOf(first.left).length);
    // What the observations alone led to is still known: a reading can be taken back.
    expect(second.suspicions).toEqual(first.suspicions);
  });

  test("keeps all faults that an expected reading speaks for, when that reading is taken", () => {
    const house = designOf("house-universal");
    const dark: readonly Observation[] = [
      { part: "tv1", service: "tv", works: false },
      { part: "tv2", service: "tv", works: false },
    ];
    const asking = { ...task, design: house, observations: dark };
    const first = finish(searchDiagnosis(asking));
    expect(first.measurement?.outcomes.length).toBeGreaterThan(1);
    // The likeliest ones: at a socket, something of the neighbouring service leaks in.
    for (const outcome of first.measurement?.outcomes.slice(0, 3) ?? []) {
      const { at = ["", ""], asked = null } = first.measurement ?? {};
      const taken = [{ at, asked, reading: outcome.reading }] as const;
      expect(leftAfter({ ...asking, known: first.suspicions, taken })).toEqual(
        expect.arrayContaining([...outcome.faults]),
      );
    }
  });

  test("is left with nothing by a reading that no single fault gives", () => {
    const first = finish(searchDiagnosis(task));
    const taken = [{ at: ["plate3", "in"], reading: { quantity: "volts", volts: 48 }, asked: null }] as const;
    const second = finish(searchDiagnosis({ ...task, known: first.suspicions, taken }));
    expect(second.left).toEqual([]);
    expect(second.measurement).toBeNull();
  });

  test("finds nothing to suspect where everything works", () => {
    const works = observations.map((o) => ({ ...o, works: true }));
    expect(finish(searchDiagnosis({ ...task, observations: works })).left).toEqual([]);
  });
});
