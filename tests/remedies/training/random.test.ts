/** RC: random cases, the seed in the address, progress and score. */
import { describe, expect, test } from "vitest";
import { faultOf } from "../../../src/remedies/faults/list.ts";
import { evaluated } from "../../../src/remedies/faults/symptoms.ts";
import { designOf } from "../../../src/remedies/training/case.ts";
import { CASES } from "../../../src/remedies/training/cases.ts";
import { formatTraining, parseTraining } from "../../../src/remedies/training/link.ts";
import {
  addHint,
  addMeasured,
  addNamed,
  addPlanValue,
  giveUp,
  isClosed,
  isSolved,
  NO_PROGRESS,
  readProgress,
  withEvidence,
  withPar,
  withProgress,
  writeProgress,
} from "../../../src/remedies/training/progress.ts";
import { HIGHEST_SEED, randomCase } from "../../../src/remedies/training/randomCase.ts";
import { scoreOf } from "../../../src/remedies/training/score.ts";
import { drawn, seededNumbers } from "../../../src/remedies/training/seededNumbers.ts";
import { caseWords, randomCaseProblem } from "../../../src/sentences/training/caseWords.ts";
import { draw } from "../../draw.ts";

describe("numbers from a seed", () => {
  test.each([0, 1, 42, HIGHEST_SEED])(
    "RC1: agree with the published C code of mulberry32 for seed %d",
    (seed) => {
      // z = (x += 0x6D2B79F5); z = (z ^ z >> 15) * (z | 1); z ^= z + (z ^ z >> 7) * (z | 61); z ^ z >> 14; all modulo 2^32.
      const word = 2n ** 32n;
      let x = BigInt(seed);
      const next = seededNumbers(seed);
      for (let n = 0; n < 50; n++) {
        x = (x + 0x6d2b79f5n) % word;
        let z = x;
        z = ((z ^ (z >> 15n)) * (z | 1n)) % word;
        z ^= (z + (((z ^ (z >> 7n)) * (z | 61n)) % word)) % word;
        expect(next()).toBe(Number(z ^ (z >> 14n)) / 2 ** 32);
      }
    },
  );

  test("RC2: draw by weight, and nothing from nothing", () => {
    const items = [
      { name: "rare", weight: 1 },
      { name: "usual", weight: 9 },
    ];
    const next = seededNumbers(7);
    let usual = 0;
    for (let n = 0; n < 1000; n++) if (drawn(items, (i) => i.weight, next)?.name === "usual") usual += 1;
    // 900 expected, standard deviation √(1000·0.9·0.1) = 9.5: five of them either way.
    expect(Math.abs(usual - 900)).toBeLessThan(48);
    expect(drawn([], () => 1, next)).toBeUndefined();
  });
});

describe("random cases", () => {
  const design = designOf("masthead-house");

  test.each([1, 2, 3, 77, HIGHEST_SEED])(
    "RC3: seed %d hides the same fault every time, and somebody notices",
    (seed) => {
      const once = randomCase(design, seed);
      const again = randomCase(designOf("masthead-house"), seed);
      if (!once.ok || !again.ok) throw new Error("no case");
      expect(again.opened.case).toEqual(once.opened.case);
      expect(
        evaluated(once.opened.faulty).report.verdicts.some(
          (v) => v.role === "receiver" && v.state === "fails",
        ),
      ).toBe(true);
      expect(faultOf(design, once.opened.fault.id)?.id).toBe(once.opened.fault.id);
      const first = caseWords(once.opened).hints[0];
      for (const id of once.opened.fault.parts)
        expect(first).not.toContain(design.parts.find((p) => p.id === id)?.label);
      expect(caseWords(once.opened).story).toMatch(/“.*”.*\.$/);
    },
  );

  test("RC4: different seeds hide different faults", () => {
    const found = new Set<string>();
    for (let seed = 1; seed <= 12; seed++) {
      const made = randomCase(design, seed);
      if (made.ok) found.add(made.opened.fault.id);
    }
    expect(found.size).toBeGreaterThan(5);
  });

  test("RC5: a design that fails already, or has no receiver, makes no case and says why", () => {
    const failing = randomCase(designOf("split-switched-output"), 1);
    if (failing.ok) throw new Error("a case of a design that fails");
    expect(randomCaseProblem(designOf("split-switched-output"), failing.problem)).toMatch(
      /“Receiver living room” and “Receiver study” do not/,
    );
    expect(randomCase(draw({ dish: ["dish"] }, ""), 1)).toMatchObject({ ok: false });
  });
});

describe("training in the address", () => {
  test("RC6: every case and every seed comes back", () => {
    for (const { id } of CASES)
      expect(parseTraining(formatTraining({ type: "case", id }))).toEqual({ type: "case", id });
    for (const seed of [0, 1, 4711, HIGHEST_SEED])
      expect(parseTraining(formatTraining({ type: "seed", seed }))).toEqual({ type: "seed", seed });
  });

  test.each([
    "",
    "t1.",
    "t2.lounge-dark",
    "t1.4294967296",
    "t1.007",
    "t1.-1",
    "t1.A",
    "t1.a b",
    "t1.<b>",
    `t1.${"a".repeat(80)}`,
  ])("RC7: “%s” opens nothing", (text) => {
    expect(parseTraining(text)).toBeNull();
  });
});

describe("progress and score", () => {
  const look = (port: string) => ({ part: "amp", port, quantity: "level" as const, asked: "" });
  const wrong = { part: "amp", type: "mains-off" as const };
  const right = { part: "dish", type: "dish-off" as const };

  test("RC8: measuring the same again costs nothing, something new does", () => {
    const once = addMeasured(NO_PROGRESS, look("in"));
    expect(addMeasured(once, look("in"))).toBe(once);
    expect(addMeasured(once, look("out")).measured).toHaveLength(2);
    expect(NO_PROGRESS.measured).toHaveLength(0);
  });

  test("RC9: a solved or shown case takes nothing more", () => {
    const solved = addNamed(NO_PROGRESS, right, "right");
    expect(isSolved(solved)).toBe(true);
    expect(addMeasured(solved, look("in"))).toBe(solved);
    expect(addHint(solved, 3)).toBe(solved);
    const shown = giveUp(NO_PROGRESS);
    expect(isSolved(shown)).toBe(false);
    expect(isClosed(shown)).toBe(true);
    expect(addNamed(shown, right, "right")).toBe(shown);
  });

  test("RC10: hints end where the case has no more", () => {
    const two = addHint(addHint(NO_PROGRESS, 2), 2);
    expect(two.hints).toBe(2);
    expect(addHint(two, 2)).toBe(two);
  });

  const measured = (n: number) =>
    Array.from({ length: n }, (_, i) => look(`p${i}`)).reduce(addMeasured, NO_PROGRESS);
  /** Solved within a par of four, with readings that leave `left` of eight faults. */
  const solved = (n: number, left = 1) =>
    withEvidence(withPar(addNamed(measured(n), right, "right"), 4), { suspects: 8, left });

  // Expected points: 100, less the prices of score.ts added up by hand.
  test.each([
    { name: "as many readings as the best way, and proof", of: solved(4), points: 100 },
    { name: "fewer readings, and proof", of: solved(1), points: 100 },
    { name: "no reading: 40 for the guess", of: solved(0, 8), points: 60 },
    // log2(2) of log2(8) bits are open: a third of 40.
    { name: "readings that leave 2 of 8: 13 for the rest", of: solved(2, 2), points: 87 },
    { name: "three readings above par: 3 x 5", of: solved(7), points: 85 },
    { name: "not solved", of: measured(3), points: 0 },
    { name: "far too many readings: never nothing", of: solved(500), points: 10 },
    {
      name: "three hints: 3 x 10",
      of: addNamed(
        [1, 2, 3].reduce((p) => addHint(p, 3), measured(1)),
        right,
        "right",
      ),
      points: 70,
    },
    {
      name: "a wrong guess: 10",
      of: addNamed(addNamed(measured(1), wrong, "wrong"), right, "right"),
      points: 90,
    },
    {
      name: "a wrong guess that an own reading excludes: 20",
      of: addNamed(addNamed(measured(1), wrong, "wrong", look("p0")), right, "right"),
      points: 80,
    },
    {
      name: "the right part with another fault first: 5",
      of: addNamed(addNamed(measured(1), { ...right, type: "load-missing" }, "part"), right, "right"),
      points: 95,
    },
    {
      name: "what measures the same elsewhere costs nothing",
      of: addNamed(addNamed(measured(1), wrong, "alike"), right, "right"),
      points: 100,
    },
    {
      name: "given up with the right part: at most 40",
      of: giveUp(addNamed(measured(1), { ...right, type: "load-missing" }, "part")),
      points: 40,
    },
    { name: "given up with nothing right", of: giveUp(addNamed(measured(1), wrong, "wrong")), points: 0 },
    {
      name: "one plan value looked up: 3",
      of: addNamed(addPlanValue(addPlanValue(measured(1), look("p0")), look("p0")), right, "right"),
      points: 97,
    },
  ])("RC11: $name", ({ of, points }) => {
    expect(scoreOf(of).points).toBe(points);
    if (points < 100 && isSolved(of)) expect(scoreOf(of).lost.length).toBeGreaterThan(0);
  });

  test("RC12: kept progress comes back; damaged progress starts afresh", () => {
    const all = withProgress(
      {},
      "lounge-dark",
      addNamed(addMeasured(NO_PROGRESS, look("in")), right, "right"),
    );
    expect(readProgress(writeProgress(all))).toEqual(all);
    for (const text of ["", "{", "[]", "null", '{"a":{"measured":1}}', '{"a":{"hints":-1}}'])
      expect(readProgress(text)).toEqual({});
    expect(withProgress(all, "lounge-dark", all["lounge-dark"] ?? NO_PROGRESS)).toBe(all);
  });
});
