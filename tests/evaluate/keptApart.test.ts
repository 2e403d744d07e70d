/** What reaches a carrier because something is not kept apart: polarisations, inputs of a switch, satellites. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Band } from "../../src/signal/band.ts";
import { ciDb, cnDb } from "../../src/signal/readout.ts";
import { draw, type Sketch } from "../draw.ts";

type Row = { readonly frequencyMHz: number; readonly polarisation: "V" | "H" | "R" | "L" };

/** Two transponders of one frequency and one that stands alone; equal EIRP, so that levels are equal at the feed. */
const FACING: readonly Row[] = [
  { frequencyMHz: 11_000, polarisation: "V" },
  { frequencyMHz: 11_000, polarisation: "H" },
  { frequencyMHz: 11_100, polarisation: "V" },
];
const CIRCULAR: readonly Row[] = [
  { frequencyMHz: 11_000, polarisation: "R" },
  { frequencyMHz: 11_000, polarisation: "L" },
  { frequencyMHz: 11_100, polarisation: "R" },
];

function behindLnb(o: {
  readonly rows: readonly Row[];
  readonly lnb?: Record<string, unknown>;
  readonly dish?: Record<string, unknown>;
}): Band {
  const transponders = o.rows.map((row) => ({ ...row, symbolRateMsps: 27.5, rollOff: "0.20" as const }));
  const parts: Sketch = {
    // Nobody else in the sky, unless a test puts somebody there.
    dish: ["dish", { transponders, neighbours: [], ...o.dish }],
    lnb: ["lnb-quattro", o.lnb ?? {}],
    rx: ["receiver-sat", { polarisation: "V", half: "low" }],
  };
  const band = evaluate(draw(parts, "dish.sky > lnb.sky, lnb.vl > rx.sat")).record("lnb")?.outputs.vl
    ?.bands[0];
  if (!band) throw new Error("nothing behind the LNB");
  return band;
}

/**
 * Two like carriers of one frequency, roll-off 0.20: of the other one 27.5 / 33 = 0.833 of the power lies in the noise
 * bandwidth of this one (flat spectrum over the occupied width), which is 0.79 dB less than all of it.
 */
const INSIDE_DB = 0.79;

describe("the other polarisation on the same frequency", () => {
  // Facts of trigonometry: tan² δ and the feed's own leak as powers; see tests/rf/crossPolar.test.ts.
  test.each([
    { skewErrorDeg: 0, crossPolarDb: 25, ciWanted: 25 },
    { skewErrorDeg: 5, crossPolarDb: 25, ciWanted: 19.66 },
    { skewErrorDeg: 15, crossPolarDb: 25, ciWanted: 11.25 },
    { skewErrorDeg: 7, crossPolarDb: 20, ciWanted: 16.01 },
  ])("at $skewErrorDeg° and $crossPolarDb dB lies $ciWanted dB lower", ({ ciWanted, ...lnb }) => {
    const band = behindLnb({ rows: FACING, lnb });
    expect(Math.abs(ciDb(band, 0) - (ciWanted + INSIDE_DB))).toBeLessThan(0.06);
  });

  test("disturbs nothing where it is empty", () => {
    const band = behindLnb({ rows: FACING, lnb: { skewErrorDeg: 10 } });
    expect(ciDb(band, 0)).toBeLessThan(20);
    expect(ciDb(band, 1)).toBe(Number.POSITIVE_INFINITY);
  });

  // −20·log10(cos 15°) = 0.301 dB, of the signal alone: the noise of sky and LNB stays.
  test("a turn by 15° takes 0.3 dB of level and of C/N", () => {
    const straight = behindLnb({ rows: FACING });
    const turned = behindLnb({ rows: FACING, lnb: { skewErrorDeg: 15 } });
    expect((straight.level[1] ?? 0) - (turned.level[1] ?? 0)).toBeCloseTo(0.3, 1);
    expect(cnDb(straight, 1) - cnDb(turned, 1)).toBeCloseTo(0.3, 1);
  });
});

describe("a circular wave", () => {
  // Half of the power: 3.01 dB; both senses come in alike, so the C/I is that of the overlap alone.
  test("gives a linear feed 3 dB less, and no discrimination", () => {
    const linear = behindLnb({ rows: CIRCULAR });
    const circular = behindLnb({ rows: CIRCULAR, lnb: { feedType: "circular" } });
    expect((circular.level[1] ?? 0) - (linear.level[1] ?? 0)).toBeCloseTo(3.01, 2);
    expect(ciDb(linear, 0)).toBeCloseTo(INSIDE_DB, 1);
    expect(linear.origin.polarisation).toBe("V");
  });

  // An axial ratio of 1 dB: (r + 1)/(r − 1) = 17.39, 24.8 dB.
  test("of the other sense lies 24.8 dB lower behind a polariser of 1 dB axial ratio", () => {
    const band = behindLnb({ rows: CIRCULAR, lnb: { feedType: "circular", axialRatioDb: 1 } });
    expect(Math.abs(ciDb(band, 0) - (24.8 + INSIDE_DB))).toBeLessThan(0.05);
  });
});

describe("a neighbouring satellite", () => {
  /**
   * London, 19.2° and 16° East, 0.6 m at 11.7 GHz, equal EIRP: 16.6 dB in the same polarisation (BO.1213, by hand: 35.46 less
   * 18.84 dBi at 3.5°). Its other polarisation comes by the cross-polar pattern: 3.5° lies inside the lobe's edge of 2.96°
   * to 4.72°, on the slope from 18.46 to 4.16 dBi: 14.1 dBi. Together 20.1 dBi: 15.4 dB.
   */
  test("3.2° away lies 15.4 dB lower in a 0.6 m dish", () => {
    const band = behindLnb({
      rows: [{ frequencyMHz: 11_690, polarisation: "V" }],
      dish: {
        diameterM: 0.6,
        efficiency: 0.65,
        pointingLossDb: 0,
        siteLatitudeDeg: 51.507,
        siteLongitudeDeg: -0.128,
        orbitalPositionDegE: 19.2,
        neighbours: [{ separationDeg: -3.2, eirpDifferenceDb: 0 }],
      },
    });
    expect(Math.abs(ciDb(band, 0) - 15.4)).toBeLessThan(0.3);
  });

  test("below the horizon disturbs nobody", () => {
    const band = behindLnb({
      rows: [{ frequencyMHz: 11_690, polarisation: "V" }],
      // From 50° N 10° E a satellite at 82° East stands about 3° high, one at 92° East below the horizon.
      dish: { orbitalPositionDegE: 80, neighbours: [{ separationDeg: 12, eirpDifferenceDb: 0 }] },
    });
    expect(ciDb(band, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("rain", () => {
  /**
   * London, 28.2° East, 11.7 GHz, 5.02 dB of rain at 0.01 % of the year: 22.1 dB for a wave tilted by 20.7° (P.618-13 §4.1 by a
   * separate implementation that meets ITU's validation rows).
   */
  test("that takes 5 dB leaves 22.1 dB between the polarisations of a tilted wave", () => {
    const rows: readonly Row[] = [
      { frequencyMHz: 11_690, polarisation: "V" },
      { frequencyMHz: 11_690, polarisation: "H" },
    ];
    const dish = {
      siteLatitudeDeg: 51.507,
      siteLongitudeDeg: -0.128,
      orbitalPositionDegE: 28.2,
      rainLossDb: 5.02,
    };
    const wet = behindLnb({ rows, dish, lnb: { crossPolarDb: 60 } });
    // The horizontal wave that leaks loses those 5.02 dB, the vertical one only 4.56 by the same program.
    expect(Math.abs(ciDb(wet, 0) - (22.1 + 5.02 - 4.56 + INSIDE_DB))).toBeLessThan(0.15);
    expect(
      ciDb(behindLnb({ rows, dish: { ...dish, rainLossDb: 0 }, lnb: { crossPolarDb: 60 } }), 0),
    ).toBeGreaterThan(59);
  });
});

describe("crosstalk of a multiswitch", () => {
  const atOutput = (o: {
    readonly crosstalkDb: number;
    readonly rows: readonly Row[];
    readonly stages: number;
  }) => {
    const transponders = o.rows.map((row) => ({ ...row, symbolRateMsps: 27.5, rollOff: "0.20" as const }));
    const parts: Sketch = {
      dish: ["dish", { transponders, neighbours: [] }],
      lnb: ["lnb-quattro", { crossPolarDb: 60 }],
      m1: ["multiswitch", { cascade: o.stages > 1, crosstalkDb: o.crosstalkDb, trunkCrosstalkDb: 20 }],
      ...(o.stages > 1 ? { m2: ["multiswitch", { crosstalkDb: o.crosstalkDb }] as const } : {}),
      rx: ["receiver-sat", { polarisation: "V", half: "low" }],
    };
    const last = o.stages > 1 ? "m2" : "m1";
    const on =
      o.stages > 1 ? ", m1.vl-thru > m2.vl, m1.vh-thru > m2.vh, m1.hl-thru > m2.hl, m1.hh-thru > m2.hh" : "";
    const wires = `dish.sky > lnb.sky, lnb.vl > m1.vl, lnb.vh > m1.vh, lnb.hl > m1.hl, lnb.hh > m1.hh${on}, ${last}.out1 > rx.sat`;
    const band = evaluate(draw(parts, wires))
      .record(last)
      ?.outputs.out1?.bands.find((b) => b.selected);
    if (!band) throw new Error("nothing behind the switch");
    return band;
  };

  // 11 000 − 9750 and 11 850 − 10 600 are both 1250 MHz: another quadrant on the same IF. LNB 60 dB down is out of the way.
  const ROWS: readonly Row[] = [
    { frequencyMHz: 11_000, polarisation: "V" },
    { frequencyMHz: 11_850, polarisation: "V" },
    { frequencyMHz: 11_200, polarisation: "V" },
  ];

  test("puts another quadrant of the same IF 30 dB lower, and none where there is none", () => {
    const band = atOutput({ crosstalkDb: 30, rows: ROWS, stages: 1 });
    // The two frequencies differ in free-space loss and dish gain by a few hundredths of a decibel only.
    expect(Math.abs(ciDb(band, 0) - (30 + INSIDE_DB))).toBeLessThan(0.1);
    expect(ciDb(band, 1)).toBe(Number.POSITIVE_INFINITY);
  });

  // Powers add: 20 dB on the trunk and 20 dB at the output make 17 dB.
  test("adds from unit to unit of a cascade", () => {
    const band = atOutput({ crosstalkDb: 20, rows: ROWS, stages: 2 });
    expect(Math.abs(ciDb(band, 0) - (17 + INSIDE_DB))).toBeLessThan(0.1);
  });
});
