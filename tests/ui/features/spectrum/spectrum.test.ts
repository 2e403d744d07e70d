/**
 * The full spectrum's figures. Channel frequencies: f = 306 + 8·N MHz for UHF channel N (European raster,
 * as in public channel tables). Levels and noise are set by hand, so the ratios follow by subtraction.
 */
import { describe, expect, test } from "vitest";
import { profileOf } from "../../../../src/findings/limits.ts";
import type { Band } from "../../../../src/signal/band.ts";
import type { Carrier } from "../../../../src/signal/carrier.ts";
import { makeGrid } from "../../../../src/signal/grid.ts";
import {
  bandSpans,
  domainShowing,
  levelDomain,
  limitLines,
  movedDomain,
  nearestRow,
  neighbourRow,
  wholeDomain,
  zoomedDomain,
} from "../../../../src/ui/features/spectrum/plot.ts";
import { carrierRows, sortRows, stateWords } from "../../../../src/ui/features/spectrum/rows.ts";

const uhf = (channel: number): Carrier => ({
  name: `C${channel}`,
  airMHz: 306 + 8 * channel,
  widthMHz: 8,
  noiseMHz: 7.6,
  mode: "dvbt-64qam-2/3",
});

const powerOf = (dbuv: number) => 10 ** (dbuv / 10);

/** Carriers in order of frequency, with a level, and noise and interference where they are given [dBµV]. */
function band(
  carriers: readonly {
    channel: number;
    level: number;
    noise?: number;
    interference?: number;
    cut?: boolean;
  }[],
): Band {
  return {
    origin: { key: "aerial1", service: "tv", part: "aerial1" },
    grid: makeGrid(carriers.map((c) => uhf(c.channel))),
    level: Float64Array.from(carriers, (c) => c.level),
    noise: Float64Array.from(carriers, (c) => powerOf(c.noise ?? 10)),
    interference: Float64Array.from(carriers, (c) =>
      c.interference === undefined ? 0 : powerOf(c.interference),
    ),
    cut: Uint16Array.from(carriers, (c) => (c.cut ? 1 : 0)),
    cuts: [{ part: "plate1", reason: "filter" }],
    shifts: [],
    conditions: [],
    selected: true,
  };
}

const USUAL = profileOf({});
const rowsOf = (...args: Parameters<typeof band>) =>
  carrierRows({ bands: [band(...args)] }, () => true, USUAL);

describe("a carrier's row", () => {
  test("has the channel's frequency and the ratios that follow from its levels", () => {
    const [row] = rowsOf([{ channel: 21, level: 60, noise: 12, interference: 20 }]);
    expect(row?.hereMHz).toBeCloseTo(474, 9); // 306 + 8·21
    expect(row?.cnDb).toBeCloseTo(48, 9); // 60 − 12
    expect(row?.ciDb).toBeCloseTo(40, 9); // 60 − 20
    // Noise and interference of 12 and 20 dBµV together: 10·log10(15.85 + 100) = 20.64.
    expect(row?.cniDb).toBeCloseTo(39.36, 2);
  });

  // 64 QAM 2/3 needs some 16 to 21 dB (RD 346/2011 asks for 25 at the outlet, which leaves room for both).
  test.each([
    { name: "nothing disturbs it", level: 60, noise: 12, interference: undefined, state: "live" },
    { name: "an equal signal lies in it", level: 60, noise: 12, interference: 60, state: "hit" },
    { name: "only noise drowns it", level: 20, noise: 15, interference: undefined, state: "weak" },
    { name: "a signal 60 dB below lies in it", level: 70, noise: 12, interference: 10, state: "live" },
  ])("is $state when $name", ({ level, noise, interference, state }) => {
    const [row] = rowsOf([
      { channel: 30, level, noise, ...(interference === undefined ? {} : { interference }) },
    ]);
    expect(row?.state).toBe(state);
  });

  test("of a cut carrier names the part that took it", () => {
    const [row] = rowsOf([{ channel: 40, level: 20, cut: true }]);
    expect(row?.state).toBe("cut");
    expect(row && stateWords(row, () => "Plate hall")).toContain("“Plate hall”");
  });

  test("of another setting is idle, whatever its levels", () => {
    const [row] = carrierRows({ bands: [band([{ channel: 40, level: 0, noise: 50 }])] }, () => false, USUAL);
    expect(row?.state).toBe("idle");
  });
});

describe("sorting carriers", () => {
  const rows = rowsOf([
    { channel: 21, level: 50 },
    { channel: 33, level: Number.NEGATIVE_INFINITY },
    { channel: 40, level: Number.NEGATIVE_INFINITY },
    { channel: 48, level: 62 },
  ]);

  test("by level puts the absent ones last when the strongest come first", () => {
    expect(sortRows(rows, "level", true).map((r) => r.name)).toEqual(["C48", "C21", "C33", "C40"]);
  });

  test("by name counts numbers as numbers", () => {
    const mixed = rowsOf([
      { channel: 21, level: 1 },
      { channel: 100, level: 1 },
    ]);
    expect(sortRows(mixed, "name", true).map((r) => r.name)).toEqual(["C100", "C21"]);
  });
});

describe("the plot", () => {
  const rows = rowsOf([
    { channel: 21, level: 60 },
    { channel: 30, level: 70, cut: true },
    { channel: 48, level: 65 },
  ]);

  test("shows all carriers, edges included", () => {
    const domain = wholeDomain(rows);
    expect(domain?.[0]).toBeLessThan(470); // lower edge of channel 21
    expect(domain?.[1]).toBeGreaterThan(694); // upper edge of channel 48
    expect(wholeDomain([])).toBeNull();
  });

  test("keeps the frequency under the pointer where it is while zooming", () => {
    const next = zoomedDomain([400, 800], [400, 800], 500, 2);
    // 500 MHz lay at a quarter of the width and still does.
    expect((500 - next[0]) / (next[1] - next[0])).toBeCloseTo(0.25, 9);
    expect(next[1] - next[0]).toBeCloseTo(200, 9);
  });

  test("never leaves the whole spectrum", () => {
    expect(zoomedDomain([500, 600], [400, 800], 500, 0.01)).toEqual([400, 800]);
    expect(movedDomain([500, 600], [400, 800], 900)).toEqual([700, 800]);
    expect(movedDomain([500, 600], [400, 800], -900)).toEqual([400, 500]);
  });

  test("has a level axis that holds the strongest carrier and the noise", () => {
    const [bottom, top] = levelDomain(rows);
    expect(top).toBeGreaterThanOrEqual(70);
    expect(bottom).toBeLessThanOrEqual(10);
    expect(levelDomain([])).toEqual([0, 80]);
  });

  test("finds the carrier under the pointer and, of two in one place, the one at its height", () => {
    expect(nearestRow(rows, { mhz: 477, dbuv: 0 })?.name).toBe("C21");
    const two = carrierRows(
      { bands: [band([{ channel: 30, level: 70 }]), band([{ channel: 30, level: 30 }])] },
      () => true,
      USUAL,
    );
    expect(nearestRow(two, { mhz: 546, dbuv: 33 })?.level).toBe(30);
    expect(nearestRow(two, { mhz: 546, dbuv: 68 })?.level).toBe(70);
    expect(nearestRow([], { mhz: 500, dbuv: 50 })).toBeUndefined();
  });

  test("steps from carrier to carrier in order of frequency and stops at the ends", () => {
    const [first, second, third] = rows;
    const domain = [400, 800] as const;
    expect(neighbourRow(rows, { key: first?.key, domain }, 1)).toBe(second);
    expect(neighbourRow(rows, { key: third?.key, domain }, 1)).toBe(third);
    expect(neighbourRow(rows, { key: undefined, domain }, -1)).toBe(third);
    // Looking at 500–600 MHz only, the first step lands on channel 30 (546 MHz), not on channel 21 out of view.
    expect(neighbourRow(rows, { key: undefined, domain: [500, 600] }, 1)).toBe(second);
  });

  test("follows the cursor out of the view, and only then", () => {
    expect(domainShowing([500, 600], [400, 800], 546)).toEqual([500, 600]);
    expect(domainShowing([500, 600], [400, 800], 690)).toEqual([640, 740]);
    expect(domainShowing([500, 600], [400, 800], 410)).toEqual([400, 500]);
  });

  test("labels a band of which nothing is left as gone, and limits only what is there", () => {
    const gone = rowsOf([{ channel: 21, level: 60, cut: true }]);
    expect(bandSpans(gone)[0]?.isGone).toBe(true);
    expect(limitLines(gone)).toEqual([]);
    expect(bandSpans(rows)[0]?.isGone).toBe(false);
    // 45 to 74 dBµV for 64 QAM 2/3: EN 60728-1 outlet levels, as quoted in a public table.
    expect(limitLines(rows)[0]).toMatchObject({ minDbuv: 45, maxDbuv: 74 });
  });
});
