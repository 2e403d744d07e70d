/** FL: a converter's noise beside its carriers, where it meets something else. */

import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { cniDb } from "../../src/signal/readout.ts";
import { draw } from "../draw.ts";
import { messagesOf } from "../messages.ts";

const combined = (lnb: string, port: string, rejectionDb: number, transponders: object[]): Design =>
  draw(
    {
      dish: ["dish", { transponders }],
      lnb: [lnb],
      uhf: ["aerial-uhf", { levelDbuv: 55 }],
      dip: ["diplexer-combine", { rejectionDb }],
      feed: ["receiver-hybrid"],
    },
    `dish.sky > lnb.sky, lnb.${port} > dip.sat, uhf.out > dip.tv, dip.out > feed.v`,
  );
/** One transponder far away from UHF: whatever disturbs TV then is the noise between carriers. */
const FAR = [{ frequencyMHz: 12_600, polarisation: "V", symbolRateMsps: 27.5, mode: "dvbs-qpsk-3/4" }];

function tvCni(design: Design): number {
  const all = (evaluate(design).record("dip")?.outputs.out?.bands ?? [])
    .filter((b) => b.origin.service === "tv")
    .flatMap((b) => Array.from(b.level, (_, i) => cniDb(b, i)));
  expect(all.length).toBeGreaterThan(0);
  return Math.min(...all);
}

describe("noise floor of a converter", () => {
  test("FL1: the floor of a wideband converter is kT·(F − 1 + sky)·gain and lies over terrestrial TV", () => {
    const floor = evaluate(combined("lnb-wideband", "v", 30, FAR)).record("lnb")?.outputs.v?.floors?.[0];
    if (!floor) throw new Error("no floor");
    // By hand: 10·log10(kTB) is −0.3 dBµV in 3.1 MHz; per MHz −5.22 dBµV at 290 K into 75 Ω. F − 1 = 0.175 for 0.7 dB,
    // 35 K of sky are 0.121: 10·log10(0.296) = −5.29 dB; 55 dB of gain: 44.5 dBµV in each MHz.
    const width = floor.grid.width[5] ?? 1;
    expect((floor.level[5] ?? 0) - 10 * Math.log10(width)).toBeCloseTo(-5.22 - 5.29 + 55, 1);
    expect(floor.grid.fromMHz).toBeLessThan(470);
  });

  test("FL2: it costs TV its C/N, the more the weaker the diplexer's rejection", () => {
    const alone = tvCni(combined("lnb-universal", "out", 30, FAR));
    const strong = tvCni(combined("lnb-wideband", "v", 40, FAR));
    const weak = tvCni(combined("lnb-wideband", "v", 15, FAR));
    expect(strong).toBeLessThan(alone);
    expect(weak).toBeLessThan(strong - 5);
  });

  test("FL3: it is named where it is the culprit", () => {
    const said = messagesOf(evaluate(combined("lnb-wideband", "v", 10, FAR)), "shared-frequencies");
    expect(said[0]).toMatch(/the noise of “lnb”/);
  });

  test("FL5: below its band the noise of an LNB falls by the roll-off until 850 MHz", () => {
    const floorOf = (rollOffDb: number) => {
      const design = draw(
        {
          dish: ["dish", { transponders: FAR }],
          lnb: ["lnb-universal", { rollOffDb }],
          sat: ["receiver-sat"],
        },
        "dish.sky > lnb.sky, lnb.out > sat.sat",
      );
      const floor = evaluate(design).record("lnb")?.outputs.out?.floors?.[0];
      if (!floor) throw new Error("no floor");
      return floor;
    };
    // By hand: 44.5 dBµV in each MHz of its band (FL1); 20 to 30 dB less at 850 MHz (order of magnitude, from memory).
    for (const rollOffDb of [20, 30]) {
      const floor = floorOf(rollOffDb);
      const perMHz = (i: number) => (floor.level[i] ?? 0) - 10 * Math.log10(floor.grid.width[i] ?? 1);
      const nearest = floor.grid.centre.findIndex((f) => Math.abs(f - 850) < 12);
      const offMHz = 850 - (floor.grid.centre[nearest] ?? 0);
      // Straight from nought at 950 MHz: a twentieth of a decibel and more for each MHz, on either side of 850.
      expect(perMHz(nearest)).toBeCloseTo(44.5 - rollOffDb - (offMHz * rollOffDb) / 100, 1);
      expect(perMHz(floor.level.length - 1)).toBeCloseTo(44.5, 1);
    }
  });

  test("FL6: TV right below the satellite band suffers where an LNB and an aerial meet without a filter", () => {
    const cni = (rollOffDb: number) =>
      tvCni(
        draw(
          {
            dish: ["dish", { transponders: FAR }],
            lnb: ["lnb-universal", { rollOffDb }],
            uhf: ["aerial-uhf", { levelDbuv: 50, formerOnAir: true, channels: [{ channel: 69 }] }],
            dip: ["combiner"],
            sat: ["receiver-sat"],
          },
          "dish.sky > lnb.sky, lnb.out > dip.in1, uhf.out > dip.in2, dip.out > sat.sat",
        ),
      );
    // By hand: 8 MHz of floor (9 dB over 1 MHz) are 53.5 dBµV; at 858 MHz 10 dB of roll-off leave about 44, 40 dB 17.
    // Against 50 dBµV of TV that is a C/I of about 6 and 33 dB.
    expect(cni(10)).toBeLessThan(8);
    expect(cni(40)).toBeGreaterThan(28);
  });

  test("FL4: nobody takes it for a signal", () => {
    const evaluation = evaluate(combined("lnb-wideband", "v", 30, FAR));
    const spectra = evaluation.records.flatMap((record) => Object.values(record.outputs));
    for (const { bands } of spectra) expect(bands.some((b) => b.isFloor)).toBe(false);
    // There is one, at both outputs of the converter and behind the diplexer; and signals beside it.
    expect(spectra.filter(({ floors = [] }) => floors.length > 0)).toHaveLength(3);
    expect(spectra.filter(({ bands }) => bands.length > 0).length).toBeGreaterThan(3);
  });
});
