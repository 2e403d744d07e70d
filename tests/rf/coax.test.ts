import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coaxLossDb } from "../../src/rf/coax.ts";

type Grade = { readonly k1: number; readonly k2: number };

function per100m(grade: Grade, frequencyMHz: number): number {
  return coaxLossDb({ ...grade, lengthM: 100, temperatureC: 20, frequencyMHz });
}

/** Constants published for foam RG-6 in a public cable calculator, dB/100 ft times 3.2808. */
const RG6_COPPER: Grade = { k1: 0.6407, k2: 0.00023 };
const RG6_STEEL: Grade = { k1: 0.645, k2: 0.00062 };

/** Installer note for Series 6, per 100 ft at channels 2, 13, 14, 51, 950 and 2150 MHz, times 3.2808. */
const INSTALLER_NOTE = [
  [57, 4.92],
  [213, 9.84],
  [473, 14.76],
  [695, 18.37],
  [950, 21.0],
  [2150, 31.82],
] as const;

/** A second, generic table for RG-6 and RG-11, dB/100 m. */
const GENERIC_RG6 = [
  [100, 6.0],
  [400, 13.2],
  [900, 19.7],
  [1500, 26.2],
  [3000, 38.4],
] as const;
const GENERIC_RG11 = [
  [100, 4.6],
  [400, 9.8],
  [900, 14.8],
  [1500, 19.7],
] as const;

type Table = readonly (readonly [number, number])[];

/** k1 and k2 from the first and last row of a table, so that the rows between are predictions. */
function throughEnds(table: Table): Grade {
  const [f1, a1] = table[0] ?? [1, 0];
  const [f2, a2] = table.at(-1) ?? [2, 0];
  const determinant = Math.sqrt(f1) * f2 - f1 * Math.sqrt(f2);
  return {
    k1: (a1 * f2 - f1 * a2) / determinant,
    k2: (Math.sqrt(f1) * a2 - Math.sqrt(f2) * a1) / determinant,
  };
}

describe("the law a·√f + b·f", () => {
  test.each([
    { name: "installer note, Series 6, 57 to 2150 MHz", table: INSTALLER_NOTE },
    { name: "generic table, RG-6, 100 to 3000 MHz", table: GENERIC_RG6 },
    { name: "generic table, RG-11, 100 to 1500 MHz", table: GENERIC_RG11 },
  ])("laid through the ends of a published table meets the rows between within 6 %: $name", ({ table }) => {
    const grade = throughEnds(table);
    for (const [frequencyMHz, published] of table.slice(1, -1)) {
      expect(Math.abs(per100m(grade, frequencyMHz) / published - 1)).toBeLessThan(0.06);
    }
  });

  test("published constants of foam RG-6 meet the independent installer note within 6 %", () => {
    for (const [frequencyMHz, published] of INSTALLER_NOTE) {
      expect(Math.abs(per100m(RG6_STEEL, frequencyMHz) / published - 1)).toBeLessThan(0.06);
    }
  });

  test("published constants of foam RG-6 meet the generic table within 9 %", () => {
    for (const [frequencyMHz, published] of GENERIC_RG6) {
      expect(Math.abs(per100m(RG6_STEEL, frequencyMHz) / published - 1)).toBeLessThan(0.09);
    }
  });

  // Spanish Royal Decree 346/2011, Annex II 5.1.1.c: RG-6 may lose at most 20 dB/100 m at 862 MHz.
  test.each([
    { name: "copper", grade: RG6_COPPER },
    { name: "copper-clad steel", grade: RG6_STEEL },
  ])("foam RG-6 of $name stays below the legal maximum at 862 MHz", ({ grade }) => {
    expect(per100m(grade, 862)).toBeGreaterThan(18);
    expect(per100m(grade, 862)).toBeLessThan(20);
  });

  /**
   * From copper and geometry alone: surface resistance √(π·f·µ₀·ρ), current on both conductors,
   * tan δ of the foam. Data sheet values of the 1.0 mm class from memory.
   */
  test.each([
    { frequencyMHz: 100, typical: 6.1 },
    { frequencyMHz: 860, typical: 18.7 },
    { frequencyMHz: 1000, typical: 20.2 },
    { frequencyMHz: 2150, typical: 30 },
  ])("physics of a 1.0/4.6 mm copper cable gives $typical dB/100 m at $frequencyMHz MHz", (row) => {
    const grade = copperCable({ innerM: 1.0e-3, outerM: 4.6e-3, velocityFactor: 0.82, tanDelta: 1.5e-4 });
    expect(Math.abs(per100m(grade, row.frequencyMHz) / row.typical - 1)).toBeLessThan(0.025);
  });
});

/** Skin effect and dielectric loss of an all-copper cable, textbook formulas, as k1 and k2. */
function copperCable(cable: {
  innerM: number;
  outerM: number;
  velocityFactor: number;
  tanDelta: number;
}): Grade {
  const { innerM, outerM, velocityFactor, tanDelta } = cable;
  const impedance = 59.96 * velocityFactor * Math.log(outerM / innerM);
  const surfaceOhmAt1MHz = Math.sqrt(Math.PI * 1e6 * 4e-7 * Math.PI * 1.724e-8);
  const ohmPerM = (surfaceOhmAt1MHz / Math.PI) * (1 / innerM + 1 / outerM);
  return {
    k1: (8.686 * 100 * ohmPerM) / (2 * impedance),
    k2: (8.686 * 100 * Math.PI * 1e6 * tanDelta) / velocityFactor / 299_792_458,
  };
}

describe("length and temperature", () => {
  test("half the length has half the loss, and no length none", () => {
    const run = { ...RG6_COPPER, temperatureC: 20, frequencyMHz: 950 };
    expect(coaxLossDb({ ...run, lengthM: 50 })).toBeCloseTo(per100m(RG6_COPPER, 950) / 2, 9);
    expect(coaxLossDb({ ...run, lengthM: 0 })).toBe(0);
  });

  // Resistivity of copper +0.39 %/K (handbooks); loss goes with its square root: √1.117 = 1.0569 at 50 °C.
  test("copper in the sun at 50 °C loses about 6 % more", () => {
    const warm = coaxLossDb({ k1: 0.64, k2: 0, lengthM: 100, temperatureC: 50, frequencyMHz: 950 });
    const cool = coaxLossDb({ k1: 0.64, k2: 0, lengthM: 100, temperatureC: 20, frequencyMHz: 950 });
    expect(warm / cool).toBeCloseTo(Math.sqrt(1 + 0.0039 * 30), 2);
  });

  test("loss is never negative, and never falls with frequency or length", () => {
    const grade = {
      k1: fc.double({ min: 0, max: 3, noNaN: true }),
      k2: fc.double({ min: 0, max: 0.02, noNaN: true }),
    };
    const run = fc.record({
      ...grade,
      lengthM: fc.double({ min: 0, max: 1000, noNaN: true }),
      temperatureC: fc.double({ min: -40, max: 70, noNaN: true }),
      frequencyMHz: fc.double({ min: 0, max: 13_000, noNaN: true }),
    });
    fc.assert(
      fc.property(run, fc.double({ min: 1, max: 3, noNaN: true }), (one, factor) => {
        const loss = coaxLossDb(one);
        expect(loss).toBeGreaterThanOrEqual(0);
        expect(coaxLossDb({ ...one, frequencyMHz: one.frequencyMHz * factor })).toBeGreaterThanOrEqual(loss);
        expect(coaxLossDb({ ...one, lengthM: one.lengthM * factor })).toBeGreaterThanOrEqual(loss);
      }),
    );
  });
});
