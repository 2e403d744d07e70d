/** Obstacles before a dish, and feeds beside its focus. */
import { describe, expect, test } from "vitest";
import { beamwidthDeg, scanLossDb } from "../../src/rf/dish.ts";
import { knifeEdgeLossDb } from "../../src/rf/knifeEdge.ts";

describe("a sharp edge", () => {
  const at = (shadowDeg: number) => knifeEdgeLossDb({ shadowDeg, distanceM: 20, frequencyMHz: 11_992 });

  // Half of the wave front is hidden: half the field, 6.02 dB, by any theory of diffraction.
  test("that the ray just touches takes 6 dB", () => {
    expect(Math.abs(at(0) - 6.02)).toBeLessThan(0.1);
  });

  // Wavelength 25 mm, 20 m: ν = θ·√1600 = 40·θ. ν = 1 at 1.4324°, where textbooks read about 14 dB off the curve;
  // ν = 2.4 at 3.438°: 20·log10(0.225/2.4) = −20.6 dB (Lee's approximation, from memory).
  test.each([
    { shadowDeg: 1.4324, lossDb: 13.9, within: 0.4 },
    { shadowDeg: 3.438, lossDb: 20.6, within: 0.4 },
  ])("$shadowDeg° above the ray takes $lossDb dB", ({ shadowDeg, lossDb, within }) => {
    expect(Math.abs(at(shadowDeg) - lossDb)).toBeLessThan(within);
  });

  test("well below the ray takes nothing", () => {
    expect(at(-1.2)).toBe(0);
    expect(at(-30)).toBe(0);
  });
});

describe("a feed beside the focus", () => {
  // From memory, after Ruze: an offset dish of f/D 0.6 loses about 1 dB three beamwidths off.
  test("loses about 1 dB at three beamwidths, nothing in the focus", () => {
    expect(Math.abs(scanLossDb({ offAxisDeg: 6.7, beamwidthDeg: 2.24 }) - 1)).toBeLessThan(0.1);
    expect(scanLossDb({ offAxisDeg: 0, beamwidthDeg: 2.24 })).toBe(0);
  });

  // Twice the diameter is half the beamwidth: twice as many beamwidths, four times the decibels.
  test("loses four times as many decibels in a dish of twice the size", () => {
    const lossDb = (diameterM: number) =>
      scanLossDb({ offAxisDeg: 6, beamwidthDeg: beamwidthDeg({ diameterM, frequencyMHz: 11_700 }) });
    expect(lossDb(1.2) / lossDb(0.6)).toBeCloseTo(4, 9);
  });
});
