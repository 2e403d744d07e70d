/** Which of several suspects is the culprit: what each lacks and whom it serves given by hand. Common practice, no source. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { canGive, type Suspect, worstOf } from "../../../src/findings/blame/choose.ts";
import type { Misdeed } from "../../../src/findings/blame/culprit.ts";
import type { Served } from "../../../src/findings/blame/served.ts";
import { stagesTo } from "../../../src/findings/blame/stages.ts";
import { carriersGot } from "../../../src/findings/reception.ts";
import { draw } from "../../draw.ts";

/** aerial – joint – amplifier – inserter – pad – set. */
const evaluation = evaluate(
  draw(
    {
      z: ["receiver-tv"],
      pad: ["attenuator"],
      psu: ["power-inserter"],
      amp: ["amp-masthead", { gainDb: 16, outputDbuv: 104 }],
      joint: ["bad-joint"],
      a: ["aerial-uhf", { levelDbuv: 60 }],
    },
    "a.out > joint.in, joint.out > amp.in, amp.out > psu.in, psu.out > pad.in, pad.out > z.in",
  ),
);
const set = evaluation.record("z");
const [carrier] = set ? carriersGot(set, "tv") : [];
const stages = carrier ? stagesTo(evaluation, { part: "z", port: "in" }, carrier) : [];

function suspect(part: string, does: Misdeed, excessDb: number): Suspect {
  const stage = stages.find((s) => s.step.part === part);
  if (!stage) throw new Error(`${part} is not on the way`);
  return { stage, shortcoming: { does, excessDb, amount: -1 } };
}

const NONE: Served = { failing: 1, missingDb: 0, inOrder: 0, spareDb: Number.POSITIVE_INFINITY };

function chosen(
  suspects: readonly Suspect[],
  served: Readonly<Record<string, Partial<Served>>> = {},
  missingDb = 6,
): string | undefined {
  return worstOf(suspects, {
    missingDb,
    served: (output) => ({ ...NONE, ...served[output.split(".")[0] ?? ""] }),
  })?.part;
}

test("the way is that of the drawing", () => {
  expect(stages.map((s) => s.step.part)).toEqual(["a", "joint", "amp", "psu", "pad"]);
});

describe("of several suspects", () => {
  test("the one that lacks most is taken", () => {
    expect(chosen([suspect("a", "loses", 5), suspect("pad", "attenuates", 9)])).toBe("pad");
    expect(chosen([suspect("a", "loses", 9), suspect("pad", "attenuates", 5)])).toBe("a");
    expect(chosen([])).toBeUndefined();
  });

  // A few tenths of a decibel are within what anybody could measure.
  test("of nearly equal ones the one nearer to the source is taken", () => {
    expect(chosen([suspect("a", "loses", 5), suspect("pad", "attenuates", 5.2)])).toBe("a");
    expect(chosen([suspect("a", "loses", 5), suspect("pad", "attenuates", 5.5)])).toBe("pad");
  });

  // What a source should give is only guessed: 10 dB of it count 4.
  test("a weak source counts for less than what a part is known to lose", () => {
    expect(chosen([suspect("a", "weak source", 10), suspect("pad", "attenuates", 5)])).toBe("pad");
    expect(chosen([suspect("a", "weak source", 10), suspect("pad", "attenuates", 3)])).toBe("a");
  });

  // Of its 20 dB no more than the 6 that are missing count, and of these a half: 3.
  test("one that serves places that are in order explains little", () => {
    const served = { a: { inOrder: 2 } };
    expect(chosen([suspect("a", "loses", 20), suspect("pad", "attenuates", 4)], served)).toBe("pad");
    expect(chosen([suspect("a", "loses", 20), suspect("pad", "attenuates", 2)], served)).toBe("a");
    expect(chosen([suspect("a", "loses", 3), suspect("pad", "attenuates", 2)], served)).toBe("pad");
    expect(chosen([suspect("a", "loses", 20), suspect("pad", "attenuates", 4)])).toBe("a");
  });
});

describe("a part that is known to be broken", () => {
  // Another part that serves places in order would count 3 of its 20 dB.
  test("counts in full, also where it serves places that are in order", () => {
    const served = { joint: { inOrder: 3 }, pad: { inOrder: 0 } };
    expect(chosen([suspect("joint", "bad joint", 20), suspect("pad", "attenuates", 9)], served)).toBe(
      "joint",
    );
    expect(chosen([suspect("a", "loses", 20), suspect("pad", "attenuates", 9)], { a: { inOrder: 3 } })).toBe(
      "pad",
    );
  });

  test("does not come before one that loses more", () => {
    expect(chosen([suspect("joint", "bad joint", 2), suspect("pad", "attenuates", 9)])).toBe("pad");
  });
});

describe("an amplifier that puts several places right at once", () => {
  const [pad, amp] = [suspect("pad", "attenuates", 9), suspect("amp", "low gain", 8)];
  const many = { pad: { failing: 1 }, amp: { failing: 4, missingDb: 7, spareDb: 10 } };

  test("comes before the worst part of one of them", () => {
    expect(chosen([amp, pad], many)).toBe("amp");
    expect(chosen([pad], many)).toBe("pad");
  });

  test("not where it serves no more than that part", () => {
    expect(chosen([amp, pad], { ...many, pad: { failing: 4 } })).toBe("pad");
  });

  test("not where it cannot give all that is missing, or only just", () => {
    expect(chosen([suspect("amp", "low gain", 6), pad], many)).toBe("pad");
    expect(chosen([suspect("amp", "low gain", 7), pad], many)).toBe("amp");
  });

  test("not where the other places would have too much then", () => {
    const tight = (spareDb: number) => ({ ...many, amp: { ...many.amp, spareDb } });
    expect(chosen([amp, pad], tight(6))).toBe("pad");
    expect(chosen([amp, pad], tight(7))).toBe("amp");
  });

  test("not where it is no amplifier", () => {
    expect(chosen([suspect("amp", "noisy", 8), pad], many)).toBe("pad");
  });

  // 60 dBµV and 16 dB are about 76: it can give 20 dB more, not 60 — but turning down always goes.
  test("not beyond its rated output", () => {
    const far = { pad: { failing: 1 }, amp: { failing: 4, missingDb: 60, spareDb: 90 } };
    expect(chosen([suspect("amp", "low gain", 70), suspect("pad", "attenuates", 80)], far)).toBe("pad");
    expect(chosen([suspect("amp", "high gain", 70), suspect("pad", "attenuates", 80)], far)).toBe("amp");
  });

  test("not before a part that is defect, nor before legs that are swapped", () => {
    const all = { ...many, joint: { failing: 1 } };
    expect(chosen([suspect("joint", "bad joint", 9), amp], all)).toBe("joint");
    expect(chosen([suspect("pad", "legs swapped", 9), amp], all)).toBe("pad");
  });
});

// 104 dBµV for two carriers; what is there already lies far below.
test("an amplifier can give as much more as its rated output leaves", () => {
  const stage = suspect("amp", "low gain", 1).stage;
  const left = Math.min(...stage.record.drives.map((d) => d.allowedDbuv - d.levelDbuv));
  expect(left).toBeGreaterThan(10);
  expect(canGive(stage, left - 0.1)).toBe(true);
  expect(canGive(stage, left + 0.1)).toBe(false);
});
