import { describe, expect, test } from "vitest";
import { GRADES, type GradeKey } from "../../src/parts/cable.ts";
import { gainBetween, kindNamed, optionsOf, signalOf } from "./walk.ts";

/** Loss of 100 m at 20 °C [dB]. */
const lossDb = (grade: string, f: number, options = {}) =>
  -gainBetween(signalOf("cable", { grade, lengthM: 100, ...options }), "in", "out", f);

/** Copper at 20 °C (IEC 60028) [Ω·m]. */
const COPPER = 1.7241e-8;

describe("copper cable with foam", () => {
  /** Skin effect on round inner and outer conductor (diameters in mm), and a foam of tan δ 1.5e-4, for 75 Ω. [dB/100 m] */
  function physics(innerMm: number, outerMm: number, f: number): number {
    const z0 = 75;
    const velocity = z0 / (59.96 * Math.log(outerMm / innerMm));
    const surfaceOhm = Math.sqrt(Math.PI * f * 1e6 * 4e-7 * Math.PI * COPPER);
    const conductor = (surfaceOhm * (1000 / innerMm + 1000 / outerMm)) / Math.PI / (2 * z0);
    const dielectric = (Math.PI * f * 1e6 * 1.5e-4) / (velocity * 299_792_458);
    return 868.6 * (conductor + dielectric);
  }

  // Usual diameters of the classes, from memory; that of 0.8 mm makes 75 Ω with the same foam.
  test.each([
    { grade: "copper-0.8", inner: 0.8, outer: 3.7 },
    { grade: "copper-1.0", inner: 1.0, outer: 4.6 },
    { grade: "copper-1.25", inner: 1.25, outer: 5.4 },
    { grade: "copper-1.65", inner: 1.65, outer: 7.2 },
  ])("of $inner mm loses what skin effect and foam make of its conductors", ({ grade, inner, outer }) => {
    for (const f of [100, 470, 862, 1350, 2150])
      expect(Math.abs(lossDb(grade, f) / physics(inner, outer, f) - 1)).toBeLessThan(0.04);
  });

  // Data sheets of these classes, from memory [MHz, dB/100 m].
  test.each([
    {
      grade: "copper-1.0",
      points: [
        [100, 6.1],
        [860, 18.7],
        [1000, 20.2],
        [2150, 30],
      ],
    },
    {
      grade: "copper-1.25",
      points: [
        [100, 5.0],
        [860, 15.6],
        [1000, 17],
        [2150, 25.5],
      ],
    },
    {
      grade: "copper-1.65",
      points: [
        [100, 4.0],
        [860, 12.5],
        [1000, 13.5],
        [2150, 20.5],
      ],
    },
  ])("$grade agrees with data sheets of its class within 5 %", ({ grade, points }) => {
    for (const [f = 0, db = 0] of points) expect(Math.abs(lossDb(grade, f) / db - 1)).toBeLessThan(0.05);
  });
});

describe("other grades", () => {
  test("copper-clad steel of the RG-6 class lies where independent tables lie: 20.0–21.1 and 30–32 dB/100 m", () => {
    // An installer's note (to 2150 MHz) and a generic calculator table (to 3000 MHz), as fitted at these frequencies.
    expect(lossDb("clad-1.0", 950)).toBeGreaterThan(20);
    expect(lossDb("clad-1.0", 950)).toBeLessThan(21.1);
    expect(lossDb("clad-1.0", 2150)).toBeGreaterThan(30);
    expect(lossDb("clad-1.0", 2150)).toBeLessThan(32);
  });

  // Maxima of Spanish Royal Decree 346/2011, Annex II 5.1.1.c.
  test.each([
    { grade: "clad-1.0", class: "RG-6", at5: 1.9, at862: 20 },
    { grade: "copper-1.0", class: "RG-6", at5: 1.9, at862: 20 },
    { grade: "clad-0.8", class: "RG-59", at5: 2.8, at862: 24.5 },
    { grade: "copper-0.8", class: "RG-59", at5: 2.8, at862: 24.5 },
    { grade: "copper-1.65", class: "RG-11", at5: 1.3, at862: 13.5 },
    { grade: "trunk-10", class: "RG-11", at5: 1.3, at862: 13.5 },
  ])("$grade keeps within the legal maximum of the $class class", ({ grade, at5, at862 }) => {
    expect(lossDb(grade, 5)).toBeLessThanOrEqual(at5);
    expect(lossDb(grade, 862)).toBeLessThanOrEqual(at862);
  });

  test("old solid polyethylene agrees with a generic table of the RG-59 class within 5 %", () => {
    for (const [f = 0, db = 0] of [
      [50, 7.5],
      [100, 11.2],
      [400, 22.6],
      [900, 35.1],
    ])
      expect(Math.abs(lossDb("old-solid", f) / db - 1)).toBeLessThan(0.05);
  });
});

describe("loop resistance", () => {
  /** Inner conductor by its diameter [Ω/km]; clad steel conducts 21 % as well as copper (ASTM B869, from memory). */
  const innerOhm = (mm: number, clad: boolean) =>
    ((clad ? COPPER / 0.21 : COPPER) / ((Math.PI / 4) * (mm / 1000) ** 2)) * 1000;

  const conductors: Readonly<Record<GradeKey, readonly [mm: number, clad: boolean]>> = {
    "copper-0.8": [0.8, false],
    "copper-1.0": [1, false],
    "copper-1.25": [1.25, false],
    "copper-1.65": [1.65, false],
    "trunk-10": [1.65, false],
    "clad-1.0": [1, true],
    "clad-0.8": [0.8, true],
    "old-solid": [0.6, false],
  };

  test.each(Object.entries(conductors))(
    "of %s is its inner conductor and a screen of 5–35 Ω/km",
    (grade, [mm, clad]) => {
      const loop = Object.entries(GRADES).find(([key]) => key === grade)?.[1].loopOhmPerKm ?? 0;
      expect(loop).toBeGreaterThanOrEqual(innerOhm(mm, clad) + 5);
      expect(loop).toBeLessThanOrEqual(innerOhm(mm, clad) + 35);
    },
  );

  test("costs a converter of 250 mA behind 50 m: 0.45 V in copper, 1.63 V in copper-clad steel (Ohm's law)", () => {
    // With 36 and 130 Ω/km: 0.25 A · 1.8 Ω and 0.25 A · 6.5 Ω. 17.0 V then arrive below the 16 V that select H.
    const drop = (grade: string) =>
      0.25 * (kindNamed("cable").power(optionsOf("cable", { grade, lengthM: 50 })).paths?.[0]?.ohms ?? 0);
    expect(drop("copper-1.0")).toBeCloseTo(0.45, 2);
    expect(drop("clad-1.0")).toBeCloseTo(1.63, 1);
  });
});

test("a warm cable loses 0.2 % more for each degree, in its conductor (copper +0.39 %/K under a root)", () => {
  const own = { k1: 0.6, k2: 0 };
  expect(lossDb("own", 862, { ...own, temperatureC: 70 }) / lossDb("own", 862, own)).toBeCloseTo(1.1, 6);
});

describe("a bad joint", () => {
  const power = (fault: string) => kindNamed("bad-joint").power(optionsOf("bad-joint", { fault, ohms: 12 }));

  test("that is corroded adds loss and resistance, more loss the higher the frequency", () => {
    const treatment = signalOf("bad-joint", { lossDb: 6 });
    expect(gainBetween(treatment, "in", "out", 2150)).toBeLessThan(gainBetween(treatment, "in", "out", 474));
    expect(power("corroded").paths?.[0]?.ohms).toBe(12);
  });

  test("that is open passes no supply; one that is shorted shorts it", () => {
    expect(power("open")).toEqual({});
    expect(power("shorted").shorts).toEqual(["out"]);
    expect(power("shorted").paths).toBeUndefined();
  });

  test("that is open still couples, better at satellite IF than at TV: a gap is a small capacitor", () => {
    const open = signalOf("bad-joint", { fault: "open" });
    expect(gainBetween(open, "in", "out", 1550)).toBeGreaterThan(gainBetween(open, "in", "out", 474));
    expect(gainBetween(open, "in", "out", 474)).toBeLessThan(-20);
    // 6 dB for each doubled frequency, as for any small capacitor.
    const octave = gainBetween(open, "in", "out", 500) - gainBetween(open, "in", "out", 250);
    expect(Math.abs(octave - 6.02)).toBeLessThan(0.4);
  });

  // 1 pF: 26.5 dB at 50 MHz, 7.8 dB at 474 MHz, 0.947 dB at 2150 MHz (10·log10(1 + (1/(ω·C·150 Ω))²)).
  test("with its screen off passes no supply, next to no FM, and satellite nearly whole", () => {
    const off = signalOf("bad-joint", { fault: "screen" });
    expect(power("screen")).toEqual({});
    expect(gainBetween(off, "in", "out", 50)).toBeCloseTo(-26.5, 0);
    expect(gainBetween(off, "in", "out", 2150)).toBeCloseTo(-0.947, 2);
  });

  test("that is wet loses little at FM and more than twice as much at satellite IF as at TV; supply still passes", () => {
    const wet = signalOf("bad-joint", { fault: "wet", lossDb: 10 });
    expect(gainBetween(wet, "in", "out", 98)).toBeGreaterThan(-2.5);
    expect(gainBetween(wet, "in", "out", 862)).toBeCloseTo(-10, 6);
    expect(gainBetween(wet, "in", "out", 2150)).toBeCloseTo(-25, 6);
    expect(power("wet").paths).toHaveLength(1);
  });
});
