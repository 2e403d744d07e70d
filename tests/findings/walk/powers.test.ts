/** Level, noise and interference of one carrier at a point; powers add, worked by hand beside each case. */
import { expect, test } from "vitest";
import { powersAt } from "../../../src/findings/walk/powers.ts";
import { bandOf, gridOf } from "../../signal/bands.ts";
import { stackOf } from "../byHand.ts";

const first = { origin: "dish/V", index: 0 };
const second = { origin: "dish/V", index: 1 };

/** Two carriers at 60 dBµV, 10⁶ (µV)²: 20 dB and 30 dB above their noise. */
const held = bandOf({ from: "dish/V", grid: gridOf([1200, 1240]), level: 60, noise: [1e4, 1e3] });

/** A user band at 70 dBµV, 10⁷ (µV)²: 1 % is the noise of the worst held, 10⁵, and 5·10⁴ came on the line. */
const userBand = (holds = [held]) =>
  bandOf({
    from: "lnb",
    grid: gridOf([1210]),
    level: 70,
    noise: 1.5e5,
    interference: 2e4,
    more: { stack: stackOf([1], holds, 0.01) },
  });

test("on a plain feed they are those of the carrier's own place", () => {
  const band = bandOf({ grid: gridOf([474, 482]), level: [60, 55], noise: [2, 3], interference: [0, 7] });
  expect(powersAt({ band, i: 1 }, { origin: "aerial", index: 1 })).toStrictEqual({
    levelDbuv: 55,
    noise: 3,
    interference: 7,
  });
});

test("on a user band the carrier brings its own noise instead of the worst one's", () => {
  // The first is the worst: 5·10⁴ of the line and 1 % of 10⁷. The second brings a tenth of that: 10⁴.
  const worst = powersAt({ band: userBand(), i: 0 }, first);
  expect(worst.levelDbuv).toBe(70);
  expect(worst.noise).toBeCloseTo(1.5e5, 6);
  expect(worst.interference).toBeCloseTo(2e4, 6);
  const better = powersAt({ band: userBand(), i: 0 }, second);
  expect(better.levelDbuv).toBe(70);
  expect(better.noise).toBeCloseTo(6e4, 6);
  expect(better.interference).toBeCloseTo(2e4, 6);
});

test("on a user band that cannot hold it they are those of the band", () => {
  expect(powersAt({ band: userBand([]), i: 0 }, second)).toStrictEqual({
    levelDbuv: 70,
    noise: 1.5e5,
    interference: 2e4,
  });
});
