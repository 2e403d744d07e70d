import { describe, expect, test } from "vitest";
import { DIPOLE_DBI, fieldToLevelDbuv } from "../../src/rf/field.ts";

describe("level of an aerial in a field", () => {
  // Antenna factor into 75 Ω, EMC handbooks: AF = 20·log f − G − 31.5; level = field − AF.
  test("an isotropic aerial at 100 MHz has an antenna factor of 8.5 dB/m", () => {
    const level = fieldToLevelDbuv({ fieldDbuvPerM: 60, gainDbi: 0, frequencyMHz: 100 });
    expect(60 - level).toBeCloseTo(8.5, 1);
  });

  // From U = E·λ/π · ½ for a half-wave dipole of 73 Ω (effective length λ/π, half the voltage into a match):
  // λ/(2π) · √(75/73.13) by power matching; at 98 MHz −6.14 dB, at 474 MHz −19.83 dB.
  test.each([
    { frequencyMHz: 98, differenceDb: -6.14 },
    { frequencyMHz: 220, differenceDb: -13.17 },
    { frequencyMHz: 474, differenceDb: -19.83 },
    { frequencyMHz: 690, differenceDb: -23.1 },
  ])(
    "a dipole at $frequencyMHz MHz delivers the field by effective length",
    ({ frequencyMHz, differenceDb }) => {
      const level = fieldToLevelDbuv({ fieldDbuvPerM: 60, gainDbi: DIPOLE_DBI, frequencyMHz });
      const effectiveLengthM = 299.792458 / frequencyMHz / Math.PI;
      const byLength = 20 * Math.log10((effectiveLengthM / 2) * Math.sqrt(75 / 73.13));
      expect(level - 60).toBeCloseTo(byLength, 1);
      expect(level - 60).toBeCloseTo(differenceDb, 1);
    },
  );

  // FM handbooks: dBf = E + 10·log10(λ²·g) − 6.76 (aerial, power over 1 fW), and dBµV into 75 Ω = dBf − 11.25.
  test("the power form of FM handbooks gives the same level", () => {
    const frequencyMHz = 98;
    const lambdaM = 299.792458 / frequencyMHz;
    const dbf = 54 + 10 * Math.log10(lambdaM ** 2 * 1.64) - 6.76;
    const level = fieldToLevelDbuv({ fieldDbuvPerM: 54, gainDbi: 10 * Math.log10(1.64), frequencyMHz });
    expect(level).toBeCloseTo(dbf - 11.25, 1);
  });
});
