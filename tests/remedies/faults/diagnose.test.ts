/** DG: from what works and what does not back to the fault. The symptoms of each fault: common practice, no source. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { bestMeasurement } from "../../../src/remedies/faults/bestMeasurement.ts";
import { diagnose } from "../../../src/remedies/faults/diagnose.ts";
import type { Fault } from "../../../src/remedies/faults/fault.ts";
import { faultOf, faults } from "../../../src/remedies/faults/list.ts";
import { pointsOf } from "../../../src/remedies/faults/points.ts";
import { evaluated, type Observation, symptomsOf } from "../../../src/remedies/faults/symptoms.ts";
import { isNoticed, whatFails } from "../../../src/remedies/faults/whatFails.ts";
import { designOf } from "../../../src/remedies/training/case.ts";
import { seededNumbers } from "../../../src/remedies/training/seededNumbers.ts";
import { measurementSentence, readingWords } from "../../../src/sentences/faults/readingWords.ts";
import { finish } from "./finish.ts";

function get(design: Design, id: string): Fault {
  const fault = faultOf(design, id);
  if (!fault) throw new Error(`no fault ${id}`);
  return fault;
}

const sees = (part: string, service: Observation["service"], works: Observation["works"]): Observation => ({
  part,
  service,
  works,
});

describe("a riser where the first two floors are dark", () => {
  const design = designOf("riser-block");
  const seen = [1, 2, 3, 4, 5].map((floor) => sees(`tv${floor}`, "tv", floor > 2));
  const suspicions = finish(diagnose(design, seen));

  test("DG1: suspects what lies between the third and the second floor, and nothing above it", () => {
    const [first] = suspicions;
    expect(first?.match).toBe("exact");
    const ids = suspicions.filter((s) => s.match === "exact").flatMap((s) => s.faults.map((f) => f.id));
    expect(ids).toEqual(
      expect.arrayContaining([
        "plug-off:plate3.out>run2.in",
        "plug-off:run2.out>plate2.in",
        "wrong-plate:plate3=outlet-end",
      ]),
    );
    expect(ids).not.toContain("plug-off:plate4.out>run3.in");
    expect(ids).not.toContain("mains-off:amp");
  });

  test("DG2: says why, and of a near suspicion what speaks against it", () => {
    expect(suspicions[0]?.reasons.explained.map((o) => o.part)).toEqual(["tv1", "tv2"]);
    const near = suspicions.find((s) => s.match === "near");
    expect(near?.distance).toBeGreaterThan(0);
    const { unexplained = [], contradicted = [] } = near?.reasons ?? {};
    expect(unexplained.length + contradicted.length).toBeGreaterThan(0);
  });

  test("DG3: is ranked by how far it is from what was seen, and by how usual the faults are", () => {
    const distances = suspicions.map((s) => s.distance);
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
    for (const { faults: found } of suspicions) expect(found.length).toBeGreaterThan(0);
  });
});

test("DG4: one wrong tick moves the fault from exact to near, but not out of sight", () => {
  const design = designOf("house-universal");
  const sound = evaluated(design);
  const fault = get(design, "dish-off:dish");
  const truth = symptomsOf(evaluated(fault.apply(design), sound), sound);
  const seen = truth.map((s) =>
    sees(s.part, s.service, s.state === "partial" ? "partial" : s.state === "works"),
  );
  const mistaken = seen.map((o) => (o.part === "radio1" ? { ...o, works: false } : o));
  const found = finish(diagnose(design, mistaken)).find((s) => s.faults.some((f) => f.id === fault.id));
  expect(found?.match).toBe("near");
  expect(found?.distance).toBe(2);
});

test("DG5: nothing is suspected where everything works", () => {
  const design = designOf("barn-line");
  expect(finish(diagnose(design, [sees("sat", "satellite", true)]))).toEqual([]);
  expect(finish(diagnose(design, []))).toEqual([]);
});

test("DG6: reports progress step by step, so that it can be stopped", () => {
  const search = diagnose(designOf("barn-line"), [sees("sat", "satellite", false)]);
  const first = search.next();
  if (first.done) throw new Error("finished at once");
  expect(first.value).toMatchObject({ tried: 1 });
  const second = search.next();
  expect(second.done ? null : second.value.tried).toBe(2);
  expect(second.done ? null : second.value.of).toBeGreaterThan(10);
});

test("DG7: the truth about what works always leaves the true fault among the exact suspicions", () => {
  const next = seededNumbers(20_260);
  for (const key of ["house-universal", "masthead-house", "single-cable-house", "two-satellites"]) {
    const design = designOf(key);
    const sound = evaluated(design);
    const noticed = faults(design).filter((f) => isNoticed(whatFails(design, f, sound)));
    for (let n = 0; n < 3; n++) {
      const fault = noticed[Math.floor(next() * noticed.length)];
      if (!fault) throw new Error("nothing to notice");
      const truth = symptomsOf(evaluated(fault.apply(design), sound), sound);
      const seen = truth.map((s) =>
        sees(s.part, s.service, s.state === "partial" ? "partial" : s.state === "works"),
      );
      const exact = finish(diagnose(design, seen)).filter((s) => s.match === "exact");
      expect(
        exact.flatMap((s) => s.faults.map((f) => f.id)),
        fault.id,
      ).toContain(fault.id);
    }
  }
});

describe("the best measurement", () => {
  const design = designOf("masthead-house");

  test("DG8: tells a dead inserter from a turned aerial, with the readings to expect", () => {
    const candidates = [get(design, "mains-off:psu"), get(design, "aerial-off:uhf")];
    const advice = finish(bestMeasurement(design, candidates));
    if (!advice) throw new Error("no advice");
    expect(advice.outcomes).toHaveLength(2);
    // Two candidates of which one is as likely as the other or nearly so: close to one bit (Shannon).
    expect(advice.bits).toBeGreaterThan(0.9);
    expect(advice.bits).toBeLessThanOrEqual(1);
    expect(advice.outcomes.flatMap((o) => o.faults.map((f) => f.id)).sort()).toEqual(
      candidates.map((f) => f.id).sort(),
    );
    for (const outcome of advice.outcomes) expect(readingWords(outcome.reading)).not.toBe("");
    expect(measurementSentence(design, advice)).toMatch(/^Measure .*\.$/);
  });

  test("DG9: stays in the room while the roof tells hardly more", () => {
    const candidates = [
      get(design, "plug-off:plate1.tv>tv1.in"),
      get(design, "plug-off:split.out1>drop1.in"),
    ];
    expect(finish(bestMeasurement(design, candidates))?.onRoof).toBe(false);
  });

  test("DG10: has nothing to say of one candidate, or of two that look the same", () => {
    const one = get(design, "mains-off:psu");
    expect(finish(bestMeasurement(design, [one]))).toBeNull();
    expect(finish(bestMeasurement(design, [one, one]))).toBeNull();
  });

  test("DG11: lets the receiver ask for the other position where only that shows the fault", () => {
    // The receiver asks for position 1 now, and the way to the second dish is dark: nothing to tell there.
    const two = designOf("two-satellites");
    const split = finish(
      bestMeasurement(two, [
        get(two, "plug-off:lnb2.out>short2.in"),
        get(two, "plug-off:short2.out>pos.in2"),
      ]),
    );
    expect(split?.asked?.position).toBe("2");
  });

  test("DG13: advises no satellite measurement at a television socket, where only a rest of it leaks in", () => {
    const house = designOf("house-universal");
    const candidates = [get(house, "dish-off:dish"), get(house, "converter-dead:lnb")];
    const advice = finish(bestMeasurement(house, candidates));
    if (!advice) throw new Error("no advice");
    expect(advice.at.join(".")).not.toMatch(/tv/);
  });

  test("DG12: only cable ports with a plug on are measured at", () => {
    const points = pointsOf(design).map((p) => p.at.join("."));
    expect(points).toContain("psu.in");
    expect(points).toHaveLength(design.wires.length * 2);
    expect(pointsOf(designOf("barn-line")).map((p) => p.at.join("."))).not.toContain("dish.sky");
  });
});
