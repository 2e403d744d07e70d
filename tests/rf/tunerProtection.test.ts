import { describe, expect, test } from "vitest";
import { type Beside, besideRatioDb, farRatioDb, fmRatioDb } from "../../src/rf/tunerProtection.ts";

/** A TV channel 7.61 MHz wide, and what stands so many MHz above it. */
const tv = (more: Partial<Beside>): Beside => ({
  neighbour: "broadcast",
  tuner: "silicon",
  offsetMHz: 8,
  gapMHz: 0.39,
  widthMHz: 7.61,
  ...more,
});

describe("a TV channel beside another", () => {
  // ITU-R BT.1368 and BT.2033, from memory: adjacent −27 to −40, further −38 to −50, image of a can tuner −28 to −40 dB.
  test.each([
    { name: "the next channel above", at: {}, ratio: -30 },
    { name: "the next channel below", at: { offsetMHz: -8 }, ratio: -30 },
    // 6.66 MHz wide, 7 MHz apart: 0.34 MHz from edge to edge.
    { name: "the next channel in Band III", at: { offsetMHz: 7, gapMHz: 0.34, widthMHz: 6.66 }, ratio: -30 },
    {
      name: "the channel after that in Band III",
      at: { offsetMHz: 14, gapMHz: 7.34, widthMHz: 6.66 },
      ratio: -40,
    },
    { name: "the channel after the next", at: { offsetMHz: 16, gapMHz: 8.39 }, ratio: -40 },
    { name: "the ninth one, tuner on a chip", at: { offsetMHz: 72, gapMHz: 64.39 }, ratio: -40 },
    {
      name: "the ninth one above, can tuner",
      at: { tuner: "can", offsetMHz: 72, gapMHz: 64.39 },
      ratio: -31,
    },
    {
      name: "the ninth one below, can tuner",
      at: { tuner: "can", offsetMHz: -72, gapMHz: 64.39 },
      ratio: -40,
    },
    { name: "the eighth one, can tuner", at: { tuner: "can", offsetMHz: 64, gapMHz: 56.39 }, ratio: -40 },
  ] as const)("$name: $ratio dB", ({ at, ratio }) => {
    expect(besideRatioDb(tv(at))).toBe(ratio);
  });

  // A block is 1.536 MHz wide; blocks lie 1.712 MHz apart (EN 300 401): 0.176 MHz, then 1.888 MHz from edge to edge.
  test("a DAB block has neighbours much closer by", () => {
    expect(besideRatioDb(tv({ widthMHz: 1.536, offsetMHz: 1.712, gapMHz: 0.176 }))).toBe(-30);
    expect(besideRatioDb(tv({ widthMHz: 1.536, offsetMHz: 3.424, gapMHz: 1.888 }))).toBe(-40);
  });
});

describe("a TV channel beside phones", () => {
  // ITU-R BT.2215, from memory: the first 10 MHz −33 dB, from 20 MHz on −45 dB; half-way between 9 and 20 MHz −39 dB.
  test.each([
    { gapMHz: 1, ratio: -33 },
    { gapMHz: 9, ratio: -33 },
    { gapMHz: 14.5, ratio: -39 },
    { gapMHz: 20, ratio: -45 },
    { gapMHz: 100, ratio: -45 },
  ])("a mast $gapMHz MHz away: $ratio dB", ({ gapMHz, ratio }) => {
    expect(besideRatioDb(tv({ neighbour: "mast", gapMHz }))).toBeCloseTo(ratio, 9);
  });

  test("the bursts of a handset cost 5 dB, the least of 5 to 15", () => {
    expect(besideRatioDb(tv({ neighbour: "handset", gapMHz: 1 }))).toBe(-28);
    expect(besideRatioDb(tv({ neighbour: "handset", gapMHz: 30 }))).toBe(-40);
  });

  test.each(["broadcast", "mast", "handset"] as const)(
    "far away nothing is worse than near: %s",
    (neighbour) => {
      expect(farRatioDb(neighbour)).toBe(besideRatioDb(tv({ neighbour, gapMHz: 60, offsetMHz: 68 })));
    },
  );
});

// ITU-R BS.412, steady interference, swing of 75 kHz; from memory.
describe("an FM station beside another", () => {
  test.each([
    { khz: 0, mono: 36, stereo: 45 },
    { khz: 100, mono: 12, stereo: 33 },
    { khz: 200, mono: 6, stereo: 7 },
    { khz: 300, mono: -7, stereo: -7 },
    { khz: 400, mono: -20, stereo: -20 },
    { khz: 500, mono: -40, stereo: -40 },
  ])("$khz kHz away: $mono dB in mono, $stereo dB in stereo", ({ khz, mono, stereo }) => {
    for (const sign of [1, -1]) {
      expect(fmRatioDb({ offsetMHz: (sign * khz) / 1000, stereo: false })).toBeCloseTo(mono, 9);
      expect(fmRatioDb({ offsetMHz: (sign * khz) / 1000, stereo: true })).toBeCloseTo(stereo, 9);
    }
  });

  test("between two steps the ratio lies between theirs", () => {
    // −7 dB at 300 kHz and −11.5 dB at 325 kHz.
    expect(fmRatioDb({ offsetMHz: 0.3125, stereo: true })).toBeCloseTo(-9.25, 9);
  });

  test("frequencies as they are written make no difference to the step", () => {
    expect(fmRatioDb({ offsetMHz: 88.7 - 88.3, stereo: true })).toBeCloseTo(-20, 6);
  });
});
