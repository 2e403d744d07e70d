/** PH: laws that every design must obey, whatever the numbers. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import type { Band } from "../../src/signal/band.ts";
import { cniDb } from "../../src/signal/readout.ts";
import { draw, withOptions } from "../draw.ts";

function bandsAt(design: Design, part: string, port: string): readonly Band[] {
  return evaluate(design).record(part)?.outputs[port]?.bands ?? [];
}

/** The worst C/(N+I) of a service; a law about carriers says nothing where there are none. */
function worstCni(bands: readonly Band[], service: string): number {
  const all = bands
    .filter((b) => b.origin.service === service)
    .flatMap((b) => Array.from(b.level, (_, i) => cniDb(b, i)));
  expect(all.length).toBeGreaterThan(0);
  return Math.min(...all);
}

describe("gain, loss and products", () => {
  const chain = (gainDb: number, masts: boolean, levelDbuv = 65): Design =>
    draw(
      {
        uhf: ["aerial-uhf", { levelDbuv }],
        pick: ["pick-up", { mast700: masts, mast800: masts, mastDbuv: 80 }],
        amp: ["amp-distribution", { gainDb, outputDbuv: 100, uhfTo: "862" }],
        drop: ["cable", { lengthM: 20 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > pick.in, pick.out > amp.in, amp.out > drop.in, drop.out > tv.in",
    );

  test("PH1: past the rated output more gain makes reception worse", () => {
    const got = (gainDb: number) =>
      report(evaluate(chain(gainDb, false, 80))).verdicts.find((v) => v.part === "tv")?.services[0]?.got;
    expect(got(10)).toBe(6);
    expect(got(40)).toBe(0);
  });

  test("PH2: phone masts in an amplifier cost the TV channels C/(N+I)", () => {
    const clean = worstCni(bandsAt(chain(35, false), "amp", "out"), "tv");
    const loaded = worstCni(bandsAt(chain(35, true), "amp", "out"), "tv");
    expect(loaded).toBeLessThan(clean - 3);
  });

  test("PH3: more loss never raises a level, and C/(N+I) never improves by it", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (a, more) => {
          const at = (lengthM: number) =>
            bandsAt(withOptions(chain(10, true), "drop", { lengthM }), "drop", "out");
          const short = at(a);
          const long = at(Math.min(500, a + more));
          // Six TV channels, and the masts of both ranges.
          expect(short.reduce((n, band) => n + band.level.length, 0)).toBeGreaterThan(6);
          short.forEach((band, n) => {
            band.level.forEach((level, i) => {
              const other = long[n];
              if (!other) throw new Error("a band is missing");
              expect(other.level[i]).toBeLessThanOrEqual(level + 1e-9);
              expect(cniDb(other, i)).toBeLessThanOrEqual(cniDb(band, i) + 1e-9);
            });
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  test("PH4: an interferer never raises C/(N+I)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 100, noNaN: true }),
        fc.integer({ min: 10, max: 40 }),
        (mastDbuv, gainDb) => {
          const withMasts = withOptions(chain(gainDb, true), "pick", { mastDbuv });
          expect(worstCni(bandsAt(withMasts, "amp", "out"), "tv")).toBeLessThanOrEqual(
            worstCni(bandsAt(chain(gainDb, false), "amp", "out"), "tv") + 1e-9,
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  test("PH5: behind a converter or an aerial noise is never below kTB", () => {
    const design = draw(
      {
        dish: ["dish"],
        lnb: ["lnb-universal"],
        drop: ["cable", { lengthM: 300 }],
        plate: ["outlet-sat"],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > plate.in, plate.sat > rx.sat",
    );
    for (const part of ["lnb", "drop", "plate"]) {
      const bands = Object.values(evaluate(design).record(part)?.outputs ?? {}).flatMap((s) => s.bands);
      // All four quadrants of the sky, whichever is selected.
      expect(bands).toHaveLength(4);
      for (const band of bands) {
        expect(band.noise.length).toBeGreaterThan(0);
        for (const [i, noise] of band.noise.entries())
          expect(noise).toBeGreaterThanOrEqual((band.grid.ktb[i] ?? 0) * (1 - 1e-9));
      }
    }
  });
});

describe("supply", () => {
  const line = (lengthM: number, state = "on"): Design =>
    draw(
      {
        dish: ["dish"],
        lnb: ["lnb-universal"],
        drop: ["cable", { lengthM, grade: "clad-0.8" }],
        rx: ["receiver-sat", { polarisation: "H", state }],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > rx.sat",
    );
  const volts = (design: Design) => evaluate(design).record("lnb")?.feeds.out?.[0]?.volts ?? 0;

  test("PH6: the voltage at a load falls with the length of cable", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 100 }), (a, more) => {
        expect(volts(line(a + more))).toBeLessThan(volts(line(a)));
      }),
      { numRuns: 40 },
    );
  });

  test("PH7: taking a supply away never powers anything", () => {
    expect(evaluate(line(10)).record("lnb")?.powered).toBe(true);
    expect(evaluate(line(10, "unplugged")).record("lnb")?.powered).toBe(false);
  });

  // 50 m at 36 Ω/km and 250 mA: 0.45 V; at 130 Ω/km: 1.63 V (Ohm's law, by hand).
  test.each([
    { name: "copper", loopOhmPerKm: 36, drop: 0.45 },
    { name: "copper-clad steel", loopOhmPerKm: 130, drop: 1.625 },
  ])("PH8: 250 mA over 50 m of $name lose $drop V", ({ loopOhmPerKm, drop }) => {
    const design = draw(
      {
        lnb: ["lnb-universal", { commonMa: 215, outputMa: 35 }],
        cable: ["cable", { grade: "own", lengthM: 50, loopOhmPerKm }],
        rx: ["receiver-sat", { polarisation: "H" }],
      },
      "lnb.out > cable.in, cable.out > rx.sat",
    );
    expect(18 - volts(design)).toBeCloseTo(drop, 6);
  });

  test("PH9: of two receivers on one line the higher voltage wins, and any tone counts", () => {
    const design = draw(
      {
        lnb: ["lnb-universal"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-sat", { polarisation: "V", half: "high" }],
        r2: ["receiver-sat", { polarisation: "H", half: "low" }],
      },
      "lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    );
    expect(evaluate(design).record("lnb")?.switches.out).toMatchObject({ setting: "HH", contested: true });
  });
});
