import { describe, expect, test } from "vitest";
import {
  beamDiscriminationDb,
  bearingDifferenceDeg,
  referenceDiscriminationDb,
  withPolarisationDb,
} from "../../src/rf/aerialPattern.ts";

describe("the reference pattern", () => {
  // Recommendation ITU-R BT.419-3 for Bands IV and V, as two public implementations have it: 0 dB to 20°, then
  // 0.4·(φ − 20) dB to 60°, 16 dB beyond. Worked out by hand from that.
  test.each([
    { angleDeg: 0, db: 0 },
    { angleDeg: 20, db: 0 },
    { angleDeg: 30, db: 4 },
    { angleDeg: 45, db: 10 },
    { angleDeg: 60, db: 16 },
    { angleDeg: 180, db: 16 },
  ])("takes $db dB in UHF at $angleDeg°", ({ angleDeg, db }) => {
    expect(referenceDiscriminationDb("IV/V", angleDeg)).toBeCloseTo(db, 9);
  });

  // Band III: 12 dB beyond 60°, beginning at 27° (BT.419-3, from memory); half way, at 43.5°, half of it.
  test.each([
    { angleDeg: 27, db: 0 },
    { angleDeg: 43.5, db: 6 },
    { angleDeg: 60, db: 12 },
    { angleDeg: 120, db: 12 },
  ])("takes $db dB in Band III at $angleDeg°", ({ angleDeg, db }) => {
    expect(referenceDiscriminationDb("III", angleDeg)).toBeCloseTo(db, 9);
  });
});

describe("a stated beam", () => {
  // The beam width is the angle between the points 3 dB down, so half of it is one of them.
  test("takes 3 dB at half its width, and its front-to-back ratio behind", () => {
    expect(beamDiscriminationDb({ angleDeg: 20, beamWidthDeg: 40, frontToBackDb: 25 })).toBeCloseTo(3, 9);
    expect(beamDiscriminationDb({ angleDeg: 180, beamWidthDeg: 40, frontToBackDb: 25 })).toBe(25);
  });
});

test("bearings are compared the short way round", () => {
  expect(bearingDifferenceDeg(350, 20)).toBe(30);
  expect(bearingDifferenceDeg(10, 190)).toBe(180);
});

test("orthogonal polarisation takes 16 dB at all angles, and is not added to the direction", () => {
  // BT.419-3, from memory: 16 dB combined.
  expect(withPolarisationDb(0, true)).toBe(16);
  expect(withPolarisationDb(10, true)).toBe(16);
  expect(withPolarisationDb(10, false)).toBe(10);
});
