import { describe, expect, test } from "vitest";
import { gainBetween, kindNamed, optionsOf, signalOf } from "./walk.ts";

const powerOf = (key: string, options = {}) => kindNamed(key).power(optionsOf(key, options));

test("an attenuator takes the same everywhere, and passes supply only where it says so", () => {
  for (const f of [98, 474, 862, 1550, 2350])
    expect(gainBetween(signalOf("attenuator", { lossDb: 12 }), "in", "out", f)).toBeCloseTo(-12, 9);
  // Fixed pads pass direct current only if stated: common practice, no source.
  expect(powerOf("attenuator").paths).toBeUndefined();
  expect(powerOf("attenuator", { dcPass: true }).paths).toHaveLength(1);
});

describe("an equaliser", () => {
  test("set to a cable's slope makes that cable flat over satellite IF", () => {
    // 60 m of 1.0 mm copper: 0.6 · (30.71 − 19.62) dB between 950 and 2150 MHz, from conductor and foam by skin effect.
    const cable = [
      { f: 950, db: 0.6 * 19.62 },
      { f: 1350, db: 0.6 * 23.75 },
      { f: 1750, db: 0.6 * 27.39 },
      { f: 2150, db: 0.6 * 30.71 },
    ];
    const equaliser = signalOf("equaliser", { range: "sat", slopeDb: 0.6 * (30.71 - 19.62) });
    const levels = cable.map(({ f, db }) => gainBetween(equaliser, "in", "out", f) - db);
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.25);
  });

  test("takes its own range in either order", () => {
    const gain = (fromMHz: number, toMHz: number) =>
      gainBetween(signalOf("equaliser", { range: "own", fromMHz, toMHz }), "in", "out", 1000);
    expect(gain(2350, 290)).toBeCloseTo(gain(290, 2350), 9);
  });
});

describe("a power inserter", () => {
  test("feeds towards the aerial only, with one voltage and no commands", () => {
    const { supplies, paths } = powerOf("power-inserter", { volts: 24 });
    expect(supplies).toEqual([{ port: "in", kind: "plain", volts13: 24, volts18: 24, limitMa: 100 }]);
    expect(paths).toEqual([]);
  });

  test("keeps the receiver's supply beside its own where told to", () => {
    expect(powerOf("power-inserter", { receiver: "passed" }).paths).toHaveLength(1);
  });

  test("feeds up, down, both within one limit, or nothing, as it is set", () => {
    const portsOf = (feeds: string) =>
      (powerOf("power-inserter", { feeds }).supplies ?? []).map(({ port, down, shares }) => [
        port,
        down,
        shares,
      ]);
    expect(portsOf("up")).toEqual([["in", undefined, undefined]]);
    expect(portsOf("down")).toEqual([["out", true, undefined]]);
    expect(portsOf("both")).toEqual([
      ["in", undefined, "both ways"],
      ["out", true, "both ways"],
    ]);
    expect(portsOf("nothing")).toEqual([]);
  });

  test("whose mains is off feeds nothing", () => {
    expect(powerOf("power-inserter", { switchedOn: false }).supplies).toBeUndefined();
  });
});

test("a DC block passes signals and no supply", () => {
  // 0.3–1 dB, from memory.
  const loss = -gainBetween(signalOf("dc-block"), "in", "out", 1550);
  expect(loss).toBeGreaterThanOrEqual(0.3);
  expect(loss).toBeLessThanOrEqual(1);
  expect(powerOf("dc-block")).toEqual({});
});

describe("a terminating load", () => {
  test("is a resistor of 75 Ω for a supply, at an input and at an output, unless it blocks direct current", () => {
    const resistors = (o: Record<string, unknown>) => powerOf("load", o).resistors;
    expect(resistors({ place: "input", dcBlocked: false })).toEqual([{ port: "out", ohms: 75 }]);
    expect(resistors({ place: "output", dcBlocked: false })).toEqual([{ port: "in", ohms: 75 }]);
    expect(resistors({ place: "input", dcBlocked: true })).toBeUndefined();
  });

  test("takes everything and gives nothing", () => {
    expect(signalOf("load").paths).toBeUndefined();
  });
});
