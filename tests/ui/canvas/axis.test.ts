import { describe, expect, test } from "vitest";
import {
  COAX_TICKS_MHZ,
  coaxScale,
  isOnSky,
  SKY_TICKS_MHZ,
  skyScale,
  skyTicks,
  tickLabel,
} from "../../../src/ui/canvas/axis.ts";
import { STRIP } from "../../../src/ui/canvas/frames.ts";

/** Frequency bands: Spanish Royal Decree 346/2011, Annex I, 4.1; UHF to 694 MHz: Decision (EU) 2017/899. */
const BANDS = [
  { name: "FM, 87.5–108 MHz", fromMHz: 87.5, toMHz: 108 },
  { name: "DAB, 174–240 MHz", fromMHz: 174, toMHz: 240 },
  { name: "UHF TV, 470–694 MHz", fromMHz: 470, toMHz: 694 },
  { name: "satellite IF, 950–2150 MHz", fromMHz: 950, toMHz: 2150 },
];

describe("the coaxial axis", () => {
  test.each(BANDS)("gives $name room to be seen: a twentieth of the strip at least", ({ fromMHz, toMHz }) => {
    const x = coaxScale(STRIP.width);
    expect(x(toMHz) - x(fromMHz)).toBeGreaterThanOrEqual(STRIP.width / 20);
  });

  test("rises without a break, so that left of is always lower than", () => {
    const x = coaxScale(1000);
    for (let mhz = 6; mhz <= 2400; mhz++) expect(x(mhz)).toBeGreaterThan(x(mhz - 1));
  });

  test("begins at 5 MHz and ends at 2400 MHz, and holds what lies outside at its ends", () => {
    const x = coaxScale(200);
    expect([x(5), x(2400), x(1), x(9000)]).toEqual([0, 200, 0, 200]);
  });

  test("puts a wideband IF over UHF TV, as it lies on the cable", () => {
    // IF = RF − LO with the oscillator at 10.40 GHz: 10.70 GHz comes down to 300 MHz (arithmetic).
    const x = coaxScale(100);
    expect(x(10_700 - 10_400)).toBeLessThan(x(470));
    expect(x(12_750 - 10_400)).toBeGreaterThan(x(862));
  });

  test("has its ticks inside", () => {
    const x = coaxScale(100);
    for (const mhz of COAX_TICKS_MHZ) expect(x.invert(x(mhz))).toBeCloseTo(mhz, 6);
  });
});

describe("the sky axis", () => {
  test("is straight from 10.70 to 12.75 GHz (range of Ku reception, EN 61319-1 as quoted in its scope)", () => {
    const x = skyScale(205);
    expect([x(10_700), x(11_700), x(12_750)]).toEqual([0, 100, 205]);
  });

  // C band and Ka band as they are allocated to satellites that send to fixed dishes (Radio Regulations, from memory).
  test.each([
    { atMHz: 3_900, ends: [3_400, 4_800], names: ["3.4 G", "4.2 G", "4.8 G"] },
    { atMHz: 20_000, ends: [17_300, 22_000], names: ["17.3 G", "19.7 G", "22 G"] },
  ])("is that of the band of the satellite at $atMHz MHz", ({ atMHz, ends, names }) => {
    const x = skyScale(100, atMHz);
    expect(ends.map((mhz) => x(mhz))).toEqual([0, 100]);
    expect(skyTicks(atMHz).map(tickLabel)).toEqual(names);
    expect(isOnSky(atMHz)).toBe(true);
    expect(isOnSky(2_400)).toBe(false);
  });

  test("names its ticks in GHz", () => {
    expect(SKY_TICKS_MHZ.map(tickLabel)).toEqual(["10.7 G", "11.7 G", "12.75 G"]);
  });
});
