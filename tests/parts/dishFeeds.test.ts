/** Where LNBs beside the first one look: angles and decibels by hand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { beamDeviationFactor, feedAngleDeg, feedSpacingM } from "../../src/rf/dish.ts";
import { draw } from "../draw.ts";

describe("a feed moved out of the focus", () => {
  // (D/4F)² is 0.3906 at F/D 0.4, and 0.0625 at 1: (1 + 0.36·0.3906)/1.3906, (1 + 0.36·0.0625)/1.0625. Lo's curve reads
  // about 0.82 and 0.96 there (from memory).
  test.each([
    { focalLengthM: 0.4, factor: 0.82 },
    { focalLengthM: 1, factor: 0.962 },
  ])("turns the beam by $factor of its own angle at F/D $focalLengthM", ({ focalLengthM, factor }) => {
    expect(Math.abs(beamDeviationFactor({ focalLengthM, diameterM: 1 }) - factor)).toBeLessThan(0.001);
  });

  // 0.56 m: (0.8/2.24)² = 0.12755, factor 0.9276; atan(70/560) = 7.125°. A monoblock for 6° of orbit, seen as 6.5° to 6.6° in
  // the middle of Europe, has its LNBs about 65 to 70 mm apart (from memory). On 1 m: atan(70/700) = 5.711°.
  test.each([
    { diameterM: 0.8, angleDeg: 6.609 },
    { diameterM: 1, angleDeg: 5.297 },
  ])("by 70 mm looks $angleDeg° beside the axis of a dish of $diameterM m", ({ diameterM, angleDeg }) => {
    const depth = { focalLengthM: 0.7 * diameterM, diameterM };
    expect(feedAngleDeg(0.07, depth)).toBeCloseTo(angleDeg, 2);
    expect(feedSpacingM(angleDeg, depth)).toBeCloseTo(0.07, 4);
  });
});

// On the equator below the first satellite: the second, 6° east, is seen at atan(42164·sin 6°/(42164·cos 6° − 6378)) = 7.066°.
// 80 mm beside the first LNB of a 1 m dish looks to 0.9276·atan(80/700) = 6.048°, so 1.018° short of it. D/λ is 39.03 at
// 11.7 GHz: 0.0025·(39.03·1.018)² = 3.95 dB by BO.1213. Being nearer to the focus spares 0.11·(7.066² − 6.048²)/1.7936² = 0.46 dB.
test("an LNB short of its place loses what the pattern of the dish says", () => {
  const level = (spacingMm: number) => {
    const dish = {
      diameterM: 1,
      orbitalPositionDegE: 10,
      siteLatitudeDeg: 0,
      siteLongitudeDeg: 10,
      siteHeightM: 0,
      neighbours: [],
      sideFeeds: [{ orbitalPositionDegE: 16, spacingMm }],
      transponders: [{ frequencyMHz: 11_700, polarisation: "V", feed: "2" }],
    };
    return evaluate(draw({ k: ["dish", dish] }, "")).record("k")?.outputs.sky2?.bands[0]?.level[0] ?? 0;
  };
  expect(level(0) - level(80)).toBeCloseTo(3.95 - 0.46, 1);
});

// Towards a neighbour of its own satellite the feed hears that one better: 3° apart, 1° nearer.
test("an LNB beyond its place hears the satellite behind its own better", () => {
  const heard = (spacingMm: number) => {
    const dish = {
      diameterM: 1,
      orbitalPositionDegE: 13,
      neighbours: [{ separationDeg: 3, eirpDifferenceDb: 0 }],
      sideFeeds: [{ orbitalPositionDegE: 19, spacingMm }],
      transponders: [{ frequencyMHz: 11_700, polarisation: "V", feed: "2" }],
    };
    const band = evaluate(draw({ k: ["dish", dish] }, "")).record("k")?.outputs.sky2?.bands[0];
    return band?.interference[0] ?? 0;
  };
  expect(heard(100)).toBeGreaterThan(2 * heard(0));
});

// A satellite 156° away: its feed would sit far beside the dish, and its level is lower than any number tells.
test("a feed that hears next to nothing has no share of nothing in rain", () => {
  const dish = { rainLossDb: Number.MIN_VALUE, neighbours: [], diameterM: 7.5, orbitalPositionDegE: -180 };
  const evaluation = evaluate(
    draw({ d: ["dish-c-band", { ...dish, sideFeeds: [{ orbitalPositionDegE: 24 }] }] }, ""),
  );
  const bands = Object.values(evaluation.record("d")?.outputs ?? {}).flatMap((spectrum) => spectrum.bands);
  expect(bands.length).toBeGreaterThan(0);
  for (const { leakShare = [], interference } of bands)
    for (const value of [...leakShare, ...interference]) expect(value).not.toBeNaN();
});
