import { describe, expect, test } from "vitest";
import { DEFAULT_TRANSPONDERS, transponder } from "../../src/parts/planSatellite.ts";
import {
  DAB_BLOCKS_KHZ,
  DEFAULT_FM_ROWS,
  DEFAULT_TV_ROWS,
  dabCarrier,
  fmCarrier,
  tvCarrier,
} from "../../src/parts/plans.ts";
import { CORDLESS, HANDSET_700, HANDSET_800, MAST_700, MAST_800 } from "../../src/parts/planUnwanted.ts";
import { EUROPEAN, tvChannel } from "../../src/parts/tvRasters.ts";
import { MODE_KEYS } from "../../src/rf/thresholds.ts";

const uhfCentreMHz = (channel: number) => tvChannel(channel, EUROPEAN).centreMHz;

describe("UHF channels", () => {
  // Centres as listed for transmitters in the Debian package dtv-scan-tables (dvb-t).
  test.each([
    { channel: 23, centreMHz: 490 },
    { channel: 26, centreMHz: 514 },
    { channel: 55, centreMHz: 746 },
  ])("channel $channel is centred at $centreMHz MHz, as in dtv-scan-tables", ({ channel, centreMHz }) => {
    expect(uhfCentreMHz(channel)).toBe(centreMHz);
  });

  // 470 to 694 MHz is the present band (EU Decision 2017/899, from memory), 862 MHz the end of the
  // former one (Spanish Royal Decree 346/2011, Annex I 4.1.5); a channel is 8 MHz wide.
  test.each([
    { edge: "lower edge of 21", mhz: uhfCentreMHz(21) - 4, expected: 470 },
    { edge: "upper edge of 48", mhz: uhfCentreMHz(48) + 4, expected: 694 },
    { edge: "upper edge of 69", mhz: uhfCentreMHz(69) + 4, expected: 862 },
  ])("the $edge lies at the end of the band", ({ mhz, expected }) => {
    expect(mhz).toBe(expected);
  });

  test("the default list stays within the present band and names known modulations", () => {
    for (const row of DEFAULT_TV_ROWS) {
      const carrier = tvCarrier(row);
      expect(carrier.airMHz - carrier.widthMHz / 2).toBeGreaterThan(470);
      expect(carrier.airMHz + carrier.widthMHz / 2).toBeLessThan(694);
      expect(MODE_KEYS).toContain(carrier.mode);
    }
  });
});

describe("DAB blocks", () => {
  // Band III centres from public tables of EN 300 401 / CEPT blocks.
  test.each([
    { block: "5A", khz: 174_928 },
    { block: "7D", khz: 194_064 },
    { block: "10N", khz: 210_096 },
    { block: "11D", khz: 222_064 },
    { block: "12B", khz: 225_648 },
    { block: "13A", khz: 230_784 }, // some pages print 230 748: digits swapped
    { block: "13F", khz: 239_200 },
  ] as const)("block $block is centred at $khz kHz", ({ block, khz }) => {
    expect(DAB_BLOCKS_KHZ[block]).toBe(khz);
    expect(dabCarrier({ block }).airMHz).toBeCloseTo(khz / 1000, 6);
  });

  // The published raster: 1712 kHz from letter to letter, 1568 kHz from 13C to 13D, and channel n
  // between 174 + 7·(n − 5) MHz and 7 MHz more.
  test("letters of one channel are 1712 kHz apart, except 13C to 13D", () => {
    const letters = Object.entries(DAB_BLOCKS_KHZ).filter(([name]) => !name.endsWith("N"));
    let steps = 0;
    letters.forEach(([name, khz], i) => {
      const next = letters[i + 1];
      if (!next || Number.parseInt(next[0], 10) !== Number.parseInt(name, 10)) return;
      steps++;
      expect([name, next[1] - khz]).toEqual([name, name === "13C" ? 1568 : 1712]);
    });
    expect(letters).toHaveLength(8 * 4 + 6);
    expect(steps).toBe(8 * 3 + 5);
  });

  test("each block's 1.536 MHz lie within its own 7 MHz channel", () => {
    for (const [name, khz] of Object.entries(DAB_BLOCKS_KHZ)) {
      const channel = Number.parseInt(name, 10);
      const fromKHz = 174_000 + 7_000 * (channel - 5);
      expect(khz - 768).toBeGreaterThan(fromKHz);
      // Channel 13 was given 10 MHz and six blocks.
      expect(khz + 768).toBeLessThan(channel === 13 ? 240_000 : fromKHz + 7_000);
    }
  });
});

test("the default FM stations lie in 87.5 to 108 MHz on the 100 kHz raster, far enough apart", () => {
  // Band II: Spanish Royal Decree 346/2011, Annex I 4.1.6; raster of 100 kHz from memory.
  const centres = DEFAULT_FM_ROWS.map((row) => fmCarrier({ ...row, mode: "fm-stereo" }).airMHz);
  centres.forEach((mhz, i) => {
    expect(mhz).toBeGreaterThan(87.5);
    expect(mhz).toBeLessThan(108);
    expect(Math.abs(mhz * 10 - Math.round(mhz * 10))).toBeLessThan(1e-9);
    const next = centres[i + 1];
    if (next !== undefined) expect(next - mhz).toBeGreaterThan(0.4);
  });
});

describe("the default transponder plan", () => {
  const carriers = DEFAULT_TRANSPONDERS.map((row) => ({
    ...transponder({ ...row, symbolRateMsps: 27.5, rollOff: "0.35" }),
    polarisation: row.polarisation,
  }));
  const edges = (c: { airMHz: number; widthMHz: number }) =>
    [c.airMHz - c.widthMHz / 2, c.airMHz + c.widthMHz / 2] as const;

  test("has twenty transponders in every quadrant", () => {
    const count = (polarisation: string, low: boolean) =>
      carriers.filter((c) => c.polarisation === polarisation && c.airMHz < 11_700 === low).length;
    expect([count("V", true), count("H", true), count("V", false), count("H", false)]).toEqual([
      20, 20, 20, 20,
    ]);
  });

  test("stays within 10.70 to 12.75 GHz and never straddles 11.7 GHz, where a universal LNB changes over", () => {
    // Band and change-over: EN 61319-1.
    for (const carrier of carriers) {
      const [from, to] = edges(carrier);
      expect(from).toBeGreaterThan(10_700);
      expect(to).toBeLessThan(12_750);
      expect([carrier.name, from < 11_700 && to > 11_700]).toEqual([carrier.name, false]);
    }
  });

  test("has no two transponders of one polarisation that overlap", () => {
    for (const polarisation of ["V", "H"]) {
      const sorted = carriers
        .filter((c) => c.polarisation === polarisation)
        .sort((a, b) => a.airMHz - b.airMHz);
      sorted.forEach((carrier, i) => {
        const next = sorted[i + 1];
        if (next) expect(edges(next)[0]).toBeGreaterThan(edges(carrier)[1]);
      });
    }
  });

  test("counts noise in the symbol rate and width in symbol rate times one plus roll-off", () => {
    // EN 300 421: roll-off 0.35, so 27.5 MBd occupy 37.125 MHz.
    expect(carriers[0]).toMatchObject({ name: "10\u202f729 V", noiseMHz: 27.5 });
    expect(carriers[0]?.widthMHz).toBeCloseTo(37.125, 9);
  });

  test("names a transponder by its frequency with thousands apart", () => {
    const named = (frequencyMHz: number) =>
      transponder({ frequencyMHz, polarisation: "H", symbolRateMsps: 22, mode: "", rollOff: "0.35" }).name;
    expect([named(10_714.25), named(11_023), named(12_000)]).toEqual([
      "10\u202f714.25 H",
      "11\u202f023 H",
      "12\u202f000 H",
    ]);
  });
});

describe("unwanted signals", () => {
  // Band edges of 3GPP bands 28 and 20 as used in Europe, from memory; 790–862 MHz was taken from
  // television before 2015 (Spanish Royal Decree 346/2011).
  test.each([
    { name: "masts, 700", plan: MAST_700, fromMHz: 758, toMHz: 788 },
    { name: "handsets, 700", plan: HANDSET_700, fromMHz: 703, toMHz: 733 },
    { name: "masts, 800", plan: MAST_800, fromMHz: 791, toMHz: 821 },
    { name: "handsets, 800", plan: HANDSET_800, fromMHz: 832, toMHz: 862 },
  ])("$name fill their band of 30 MHz with three carriers", ({ plan, fromMHz, toMHz }) => {
    expect(plan).toHaveLength(3);
    for (const c of plan) {
      expect(c.airMHz - c.widthMHz / 2).toBeGreaterThanOrEqual(fromMHz);
      expect(c.airMHz + c.widthMHz / 2).toBeLessThanOrEqual(toMHz);
    }
  });

  test("DECT has ten carriers 1.728 MHz apart in 1880 to 1900 MHz", () => {
    // EN 300 175-2, from memory.
    expect(CORDLESS).toHaveLength(10);
    CORDLESS.forEach((c, i) => {
      expect(c.airMHz).toBeGreaterThan(1880);
      expect(c.airMHz).toBeLessThan(1900);
      const next = CORDLESS[i + 1];
      if (next) expect(next.airMHz - c.airMHz).toBeCloseTo(1.728, 9);
    });
  });
});
