/** RC: random cases, the seed in the address, progress and score. */
import { describe, expect, test } from "vitest";
import { faultOf } from "../../../src/remedies/faults/list.ts";
import { lookAt } from "../../../src/remedies/faults/symptoms.ts";
import { designOf } from "../../../src/remedies/training/case.ts";
import { CASES } from "../../../src/remedies/training/cases.ts";
import { formatTraining, parseTraining } from "../../../src/remedies/training/link.ts";
import {
  addHint,
  addMeasured,
  addNamed,
  giveUp,
  isClosed,
  isSolved,
  NO_PROGRESS,
  readProgress,
  withProgress,
  writeProgress,
} from "../../../src/remedies/training/progress.ts";
import { HIGHEST_SEED, randomCase } from "../../../src/remedies/training/randomCase.ts";
import { scoreOf } from "../../../src/remedies/training/score.ts";
import { drawn, seededNumbers } from "../../../src/remedies/training/seededNumbers.ts";
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
        lookAt(once.opened.faulty).report.verdicts.some((v) => v.role === "receiver" && v.state === "fails"),
      ).toBe(true);
      expect(faultOf(design, once.opened.fault.id)?.id).toBe(once.opened.fault.id);
      const first = once.opened.case.hints[0];
      for (const id of once.opened.fault.parts)
        expect(first).not.toContain(design.parts.find((p) => p.id === id)?.label);
      expect(once.opened.case.story).toMatch(/“.*”.*\.$/);
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
    expect(failing).toMatchObject({ ok: false });
    expect(failing.ok ? "" : failing.reason).toMatch(/“Receiver living room” and “Receiver study” do not/);
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

  test("RC11: full points for few measurements, less for many, for guesses and for hints, none unsolved", () => {
    const measured = (n: number) =>
      Array.from({ length: n }, (_, i) => look(`p${i}`)).reduce(addMeasured, NO_PROGRESS);
    const solved = (n: number) => addNamed(measured(n), right, "right");
    expect(scoreOf(measured(1), 1).points).toBe(0);
    expect(scoreOf(solved(1), 1).points).toBe(100);
    expect(scoreOf(solved(7), 1).points).toBeLessThan(scoreOf(solved(6), 1).points);
    const guessed = addNamed(addNamed(measured(1), wrong, "wrong"), right, "right");
    expect(scoreOf(guessed, 1).points).toBeLessThan(100);
    expect(scoreOf(guessed, 1).lost).toHaveLength(1);
    expect(scoreOf(addNamed(addHint(measured(1), 3), right, "right"), 1).points).toBeLessThan(100);
    expect(scoreOf(solved(500), 5).points).toBeGreaterThan(0);
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
