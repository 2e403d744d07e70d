import { describe, expect, test } from "vitest";
import { TRUNK_AMPLIFIERS } from "../../src/parts/trunkAmplifier.ts";
import { gainDbAt } from "../../src/signal/gain.ts";
import { kindNamed, optionsOf } from "./workbench.ts";

const TRUNKS = kindNamed(TRUNK_AMPLIFIERS, "amp-trunks");

describe("a launch amplifier", () => {
  test.each([
    // Four trunks for each satellite and one for TV: 5, 9 and 17 (trade names of such units).
    { satelliteInputs: "4", trunks: 5 },
    { satelliteInputs: "8", trunks: 9 },
    { satelliteInputs: "16", trunks: 17 },
  ])("with $satelliteInputs satellite trunks has $trunks in and out", ({ satelliteInputs, trunks }) => {
    const ports = TRUNKS.ports(optionsOf(TRUNKS, { satelliteInputs }));
    expect(ports.filter((p) => p.side === "in")).toHaveLength(trunks);
    expect(ports.filter((p) => p.side === "out")).toHaveLength(trunks);
  });

  const gainAt = (from: string, atMHz: number, powered = true) => {
    const options = optionsOf(TRUNKS, {
      gainDb: 20,
      slopeDb: 6,
      terrestrialGainDb: 25,
      terrestrialSlopeDb: 4,
    });
    const paths = TRUNKS.signal(options, { id: "x", powered }).paths ?? [];
    const path = paths.find((p) => p.from === from);
    return path ? gainDbAt(path.response, atMHz) : Number.NaN;
  };

  // Gain at the top, less the slope at the low end; straight between: 1550 MHz is the middle of 950 and 2150.
  test.each([
    { trunk: "vl", atMHz: 2150, gainDb: 20 },
    { trunk: "hh", atMHz: 1550, gainDb: 17 },
    { trunk: "vl", atMHz: 950, gainDb: 14 },
    { trunk: "ter", atMHz: 862, gainDb: 25 },
    { trunk: "ter", atMHz: 47, gainDb: 21 },
  ])("amplifies $trunk by $gainDb dB at $atMHz MHz", ({ trunk, atMHz, gainDb }) => {
    expect(gainAt(trunk, atMHz)).toBeCloseTo(gainDb, 6);
  });

  test("loses instead of amplifying without mains, and feeds no LNB then", () => {
    expect(gainAt("vl", 1550, false)).toBeLessThan(-20);
    const supplies = (mainsOn: boolean) => TRUNKS.power(optionsOf(TRUNKS, { mainsOn })).supplies ?? [];
    // 13 V for vertical, 18 V for horizontal (common practice, no source).
    expect(supplies(true).map((s) => [s.port, s.volts18])).toEqual([
      ["vl", 13],
      ["vh", 13],
      ["hl", 18],
      ["hh", 18],
    ]);
    expect(supplies(false)).toEqual([]);
  });
});
