/** Ripple of a level by mismatch on its way: voltages that come back, worked out by hand beside each design. */
import { describe, expect, test } from "vitest";
import { deviationOf } from "../../src/findings/ripple.ts";
import { draw, type Sketch } from "../draw.ts";
import { decibelPer10M, IDEAL, rippleAt } from "./rippleAt.ts";

const CHANNELS = [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }];

/** An aerial whose level a tuner bears at once; behind long cables it is stronger. */
const NEAR: Sketch[string] = ["aerial-uhf", { levelDbuv: 70, channels: CHANNELS }];

function ripple(parts: Sketch, wires: string) {
  const strong: Sketch[string] = ["aerial-uhf", { levelDbuv: 110, channels: CHANNELS }];
  return rippleAt(draw({ z: ["receiver-tv"], a: strong, ...parts }, wires), "z");
}

describe("between the ends of one cable", () => {
  // Aerial 10 dB and set 8 dB (0.3162·0.3981), 10 m at 1 dB each way (0.7943): 0.1000: +0.828, −0.915 dB, every
  // c·0.83/(2·10 m) = 12.44 MHz.
  test("is that of both return losses and twice the loss of the cable", () => {
    const { upDb, downDb, periodMHz } = ripple(
      { a: NEAR, k: decibelPer10M(10) },
      "a.out > k.in, k.out > z.in",
    );
    expect(upDb).toBeCloseTo(0.828, 2);
    expect(downDb).toBeCloseTo(0.915, 2);
    expect(periodMHz).toBeCloseTo(12.44, 2);
  });

  // 40 m at 4 dB: 0.1259·0.3981 = 0.0501.
  test("is less behind a longer one, and closer together", () => {
    const { downDb, periodMHz } = ripple({ a: NEAR, k: decibelPer10M(40) }, "a.out > k.in, k.out > z.in");
    expect(downDb).toBeCloseTo(0.447, 2);
    expect(periodMHz).toBeCloseTo(3.11, 2);
  });
});

describe("by a leg that is left open", () => {
  const splitter: Sketch[string] = ["splitter", { ...IDEAL, isolationDb: 22 }];
  const closed = { k: decibelPer10M(500), end: ["load"] } as const satisfies Sketch;

  // Long cables from the aerial and to the set: nothing of their ends is left. 10 m of open cable send back 10^−0.1 = 0.7943,
  // and the splitter lets 10^−1.1 = 0.0794 of it across: 0.0631: +0.531, −0.566 dB.
  test("of a splitter, comes across its isolation only", () => {
    const { upDb, downDb, periodMHz } = ripple(
      { s: splitter, open: decibelPer10M(10), far: decibelPer10M(200), near: decibelPer10M(200) },
      "a.out > near.in, near.out > s.in, s.out1 > far.in, far.out > z.in, s.out2 > open.in",
    );
    expect(upDb).toBeCloseTo(0.531, 2);
    expect(downDb).toBeCloseTo(0.566, 2);
    expect(periodMHz).toBeCloseTo(12.44, 2);
  });

  test("is gone where the leg is terminated", () => {
    const { downDb } = ripple(
      { s: splitter, ...closed, far: decibelPer10M(200), near: decibelPer10M(200) },
      "a.out > near.in, near.out > s.in, s.out1 > far.in, far.out > z.in, s.out2 > k.in, k.out > end.in",
    );
    expect(downDb).toBeLessThan(0.05);
  });

  // What a dead leg of a T joint sends back is in the level; its length, known to 5 %, moves that. 10 m look like 43.9 half waves at
  // 546 MHz, so 5 % are more than two of them: anything between crest and notch. ρ = 10^−0.091 = 0.811. A carrier 7.61 MHz wide takes
  // 0.612 of the 12.44 MHz from notch to notch: its mean of 4·|1 + Γ|²/|3 + Γ|² by Simpson, at 0, ±0.48, ±0.96, ±1.44, ±1.92 rad
  // about the crest 0.903, 0.886, 0.831, 0.726, 0.551: 0.797, 0.98 dB; about the notch 0.030, 0.164, 0.424, 0.642, 0.782: 0.407, 3.90 dB.
  test("of a T joint, is what its length may be other than drawn", () => {
    const { upDb, downDb } = ripple(
      { t: ["t-joint"], open: decibelPer10M(10), far: decibelPer10M(200), near: decibelPer10M(200) },
      "a.out > near.in, near.out > t.in, t.out1 > far.in, far.out > z.in, t.out2 > open.in",
    );
    expect(upDb + downDb).toBeCloseTo(3.9 - 0.98, 1);
    expect(upDb).toBeGreaterThan(0.1);
    expect(downDb).toBeGreaterThan(2);
  });

  // Tap 12 dB, isolation 25 dB: the line behind it loses 0.45 + 1.45·0.283 = 0.86 dB. An open end right there comes
  // back into the branch with 12 − 0.86 − 25 = −13.86 dB, 0.2028: −1.97 dB.
  test("of a line, comes past a tap by its directivity", () => {
    const { downDb } = ripple(
      {
        t: ["tap", { ...IDEAL, tapLossDb: 12, isolationDb: 25 }],
        far: decibelPer10M(200),
        near: decibelPer10M(200),
      },
      "a.out > near.in, near.out > t.in, t.tap1 > far.in, far.out > z.in",
    );
    expect(downDb).toBeCloseTo(1.97, 1);
  });
});

// A sine of 1 dB up and down deviates by 1/√2 dB.
test("a ripple of one decibel either way is 0.707 dB of deviation", () => {
  expect(deviationOf({ upDb: 1, downDb: 1 })).toBeCloseTo(Math.SQRT1_2, 9);
});
