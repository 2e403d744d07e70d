import { expect, test } from "vitest";
import { echoGrade, notchDepthDb } from "../../src/rf/echo.ts";

// Two voltages 1 and a in opposite phase leave 1 − a. By hand: 6.02 dB is a = 0.5, so −20·log10(0.5) = 6.02 dB;
// 20 dB is a = 0.1, so −20·log10(0.9) = 0.915 dB; 10 dB is a = 0.3162, so −20·log10(0.6838) = 3.30 dB.
test.each([
  { differenceDb: 6.0206, depthDb: 6.0206 },
  { differenceDb: 20, depthDb: 0.915 },
  { differenceDb: -10, depthDb: 3.302 },
])("a copy $differenceDb dB weaker cuts notches of $depthDb dB", ({ differenceDb, depthDb }) => {
  expect(notchDepthDb(differenceDb)).toBeCloseTo(depthDb, 3);
});

test("equal copies cancel wholly", () => {
  expect(notchDepthDb(0)).toBe(Number.POSITIVE_INFINITY);
});

// 1 dB: a = 0.8913, 1 − a = 0.1087, 19.3 dB. 6 dB: 6.0 dB. 15 dB: a = 0.1778, 1.7 dB.
test.each([
  { differenceDb: 1, grade: "deep" },
  { differenceDb: 6, grade: "uneven" },
  { differenceDb: 15, grade: "slight" },
] as const)("$differenceDb dB apart is $grade", ({ differenceDb, grade }) => {
  expect(echoGrade(differenceDb)).toBe(grade);
});
