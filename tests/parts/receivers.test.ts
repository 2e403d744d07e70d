import { describe, expect, test } from "vitest";
import type { ReceiverInput } from "../../src/parts/contract.ts";
import { kindNamed, optionsOf } from "./walk.ts";

const powerOf = (key: string, options = {}) => kindNamed(key).power(optionsOf(key, options));
const receptionOf = (key: string, options = {}) => {
  const reception = kindNamed(key).reception?.(optionsOf(key, options));
  if (!reception) throw new Error(`${key} receives nothing`);
  return reception;
};
const tunes = (input: ReceiverInput | undefined, f: number) =>
  input !== undefined && f >= input.tunesFromMHz && f <= input.tunesToMHz;

describe("terrestrial receivers", () => {
  // Band II 87.5–108 MHz; DAB blocks 5A and 13F of the CEPT plan; UHF channels 21 and 69 at 306 + 8·N MHz.
  test.each([
    { key: "receiver-fm", service: "fm", low: 87.5, high: 108 },
    { key: "receiver-dab", service: "dab", low: 174.928, high: 239.2 },
    { key: "receiver-tv", service: "tv", low: 474, high: 858 },
  ])("$key tunes its whole band and wants $service", ({ key, service, low, high }) => {
    const { inputs, wants } = receptionOf(key);
    expect(wants).toEqual([service]);
    expect(tunes(inputs[0], low) && tunes(inputs[0], high)).toBe(true);
    expect(powerOf(key)).toEqual({});
  });
});

describe("a universal receiver", () => {
  // EN 61319-1 levels as a receiver's service manual of 1998 gives them: 12.5–14.0 V vertical, 17.0–19.0 V horizontal.
  test("supplies the voltages of the standard", () => {
    const [supply] = powerOf("receiver-sat").supplies ?? [];
    expect(supply?.volts13).toBeGreaterThanOrEqual(12.5);
    expect(supply?.volts13).toBeLessThanOrEqual(14);
    expect(supply?.volts18).toBeGreaterThanOrEqual(17);
    expect(supply?.volts18).toBeLessThanOrEqual(19);
  });

  test("tunes all that a universal converter puts out", () => {
    // 10.7–11.7 GHz − 9.75 GHz and 11.7–12.75 GHz − 10.6 GHz.
    const [input] = receptionOf("receiver-sat").inputs;
    for (const f of [950, 1950, 1100, 2150]) expect(tunes(input, f)).toBe(true);
  });

  test("asks for what it is set to, with a position only where one is set", () => {
    const asked = (options: object) => powerOf("receiver-sat", options).supplies?.[0]?.request;
    expect(asked({ polarisation: "H", half: "high" })).toEqual({ polarisation: "H", half: "high" });
    expect(asked({ position: "3" })).toEqual({ polarisation: "V", half: "low", position: 3 });
  });

  test.each([
    { state: "on", standbySupply: false, feeds: true },
    { state: "standby", standbySupply: false, feeds: false },
    { state: "standby", standbySupply: true, feeds: true },
    { state: "unplugged", standbySupply: true, feeds: false },
  ])("that is $state (standby supply $standbySupply) feeds the cable: $feeds", ({ feeds, ...options }) => {
    for (const key of ["receiver-sat", "receiver-sat-twin", "receiver-hybrid", "receiver-stacked"]) {
      expect((powerOf(key, options).supplies ?? []).length > 0).toBe(feeds);
      expect(receptionOf(key, options).wants.length > 0).toBe(options.state === "on");
    }
  });

  test("with two inputs asks for a quadrant of its own at each", () => {
    const { supplies = [] } = powerOf("receiver-sat-twin", {
      polarisation1: "V",
      half2: "high",
      polarisation2: "H",
    });
    expect(supplies.map((s) => [s.port, s.request?.polarisation, s.request?.half])).toEqual([
      ["sat1", "V", "low"],
      ["sat2", "H", "high"],
    ]);
    expect(receptionOf("receiver-sat-twin").inputs.map((i) => i.feed)).toEqual(["switched", "switched"]);
  });
});

describe("a wideband receiver", () => {
  test("tunes all of 10.70–12.75 GHz, whether the converter's oscillator is at 10.40 or 10.41 GHz", () => {
    for (const input of receptionOf("receiver-hybrid").inputs)
      for (const lo of [10_400, 10_410])
        for (const rf of [10_700, 12_750]) expect(tunes(input, rf - lo)).toBe(true);
  });

  test("only feeds its two cables, without commands", () => {
    const { supplies = [] } = powerOf("receiver-hybrid");
    expect(supplies.map((s) => [s.port, s.kind, s.volts13 === s.volts18])).toEqual([
      ["v", "plain", true],
      ["h", "plain", true],
    ]);
  });

  test("needs a polarisation at each input, unless it finds out by itself", () => {
    const polarisations = (options: object) =>
      receptionOf("receiver-hybrid", options).inputs.map((i) => i.polarisation);
    expect(polarisations({})).toEqual(["V", "H"]);
    expect(polarisations({ findsPolarisation: true })).toEqual([undefined, undefined]);
  });

  test("wants TV as well once it has an aerial input", () => {
    expect(receptionOf("receiver-hybrid").wants).toEqual(["satellite"]);
    expect(receptionOf("receiver-hybrid", { aerial: true }).wants).toContain("tv");
  });
});

describe("a single-cable receiver", () => {
  test("rests at 13 V without tone and speaks through its user bands (EN 50494, as quoted in public code)", () => {
    const [supply] = powerOf("receiver-stacked").supplies ?? [];
    expect(supply?.request).toEqual({ polarisation: "V", half: "low", userBands: [1, 2] });
    expect(receptionOf("receiver-stacked").inputs[0]?.feed).toBe("stacked");
  });

  test("starts on the first two of the four usual user bands: 1210 and 1420 MHz (public tables of converters)", () => {
    expect(receptionOf("receiver-stacked").inputs[0]?.userBands).toEqual([
      { number: 1, centreMHz: 1210 },
      { number: 2, centreMHz: 1420 },
    ]);
  });

  test("left in universal mode holds the line at 18 V and sends no user band", () => {
    const [supply] = powerOf("receiver-stacked", { mode: "universal" }).supplies ?? [];
    expect(supply?.request).toEqual({ polarisation: "H", half: "low" });
    expect(receptionOf("receiver-stacked", { mode: "universal" }).inputs[0]?.feed).toBe("switched");
  });
});
