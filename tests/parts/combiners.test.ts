import { describe, expect, test } from "vitest";
import { carrierAt, gainBetween, isLive, kindNamed, led, optionsOf, signalOf } from "./walk.ts";

test("a broadband combiner loses as much as the splitter that it is, backwards (reciprocity)", () => {
  for (const ways of [2, 3, 4, 8])
    for (const f of [98, 474, 862, 1550])
      expect(gainBetween(signalOf("combiner", { ways }), "in2", "out", f)).toBeCloseTo(
        gainBetween(signalOf("splitter", { ways }), "in", "out2", f),
        9,
      );
});

describe.each([
  { key: "diplexer-combine", ends: (branch: string): [string, string] => [branch, "out"] },
  { key: "diplexer-split", ends: (branch: string): [string, string] => ["in", branch] },
])("$key", ({ key, ends }) => {
  const passes = (branch: string, f: number, widthMHz: number, options = {}) =>
    isLive(led(carrierAt(f, widthMHz), signalOf(key, options), ...ends(branch)));

  // Channel centres 306 + 8·N; IF = RF − LO: 964.25 and 1935.5 MHz are the ends of a public 28.2°E list through 9.75 GHz.
  test.each([
    { name: "FM at 98 MHz", f: 98, width: 0.2, branch: "tv" },
    { name: "DAB block 12B", f: 225.648, width: 1.536, branch: "tv" },
    { name: "UHF channel 21", f: 474, width: 8, branch: "tv" },
    { name: "UHF channel 69", f: 858, width: 8, branch: "tv" },
    { name: "a transponder at IF 964.25 MHz", f: 964.25, width: 22, branch: "sat" },
    { name: "a transponder at IF 1935.5 MHz", f: 1935.5, width: 27.5, branch: "sat" },
  ])("lets $name through its $branch branch only", ({ f, width, branch }) => {
    const other = branch === "tv" ? "sat" : "tv";
    expect(passes(branch, f, width)).toBe(true);
    expect(passes(other, f, width)).toBe(false);
  });

  test("has the planning losses of 1–1.5 and 1.5–2.5 dB, and 20–40 dB of rejection (from memory)", () => {
    const treatment = signalOf(key);
    const loss = (branch: string, f: number) => -gainBetween(treatment, ...ends(branch), f);
    expect(loss("tv", 600)).toBeGreaterThanOrEqual(1);
    expect(loss("tv", 600)).toBeLessThanOrEqual(1.5);
    expect(loss("sat", 1500)).toBeGreaterThanOrEqual(1.5);
    expect(loss("sat", 1500)).toBeLessThanOrEqual(2.5);
    for (const [branch, f] of [
      ["tv", 1000],
      ["sat", 800],
    ] as const) {
      expect(loss(branch, f)).toBeGreaterThan(20);
      expect(loss(branch, f)).toBeLessThan(43);
    }
  });

  test("mutilates a wideband feed at IF 314.25 MHz, unless it is made for radio and wideband", () => {
    // 10714.25 MHz − 10400 MHz, the lowest transponder of a public 28.2°E list.
    expect(passes("sat", 314.25, 22)).toBe(false);
    expect(passes("sat", 314.25, 22, { split: "radio" })).toBe(true);
    expect(passes("sat", 2080, 27.5, { split: "radio" })).toBe(true);
    expect(passes("tv", 225.648, 1.536, { split: "radio" })).toBe(true);
    expect(passes("tv", 474, 8, { split: "radio" })).toBe(false);
  });

  test.each([
    { dc: "sat", ports: ["sat"] },
    { dc: "tv", ports: ["tv"] },
    { dc: "both", ports: ["tv", "sat"] },
    { dc: "none", ports: [] },
  ])("with supply on $dc passes it on $ports", ({ dc, ports }) => {
    const { paths = [] } = kindNamed(key).power(optionsOf(key, { dc }));
    expect(paths.map((p) => (key === "diplexer-combine" ? p.to : p.from))).toEqual(ports);
  });
});

describe.each([
  { key: "triplexer-combine", ends: (branch: string): [string, string] => [branch, "out"] },
  { key: "triplexer-split", ends: (branch: string): [string, string] => ["in", branch] },
])("$key", ({ key, ends }) => {
  // Band II 87.5–108 MHz (Spanish RD 346/2011), Band III 174–240 MHz, UHF 470 MHz and up.
  test.each([
    { branch: "fm", f: 87.8, width: 0.2 },
    { branch: "fm", f: 107.8, width: 0.2 },
    { branch: "dab", f: 174.928, width: 1.536 },
    { branch: "dab", f: 239.2, width: 1.536 },
    { branch: "uhf", f: 474, width: 8 },
    { branch: "uhf", f: 690, width: 8 },
  ])("lets $f MHz through its $branch branch only", ({ branch, f, width }) => {
    for (const each of ["fm", "dab", "uhf"])
      expect(isLive(led(carrierAt(f, width), signalOf(key), ...ends(each)))).toBe(each === branch);
  });

  test("rejects the other bands by the usual 20–25 dB (from memory)", () => {
    const rejection = -gainBetween(signalOf(key), ...ends("uhf"), 225.648) - 1;
    expect(rejection).toBeGreaterThanOrEqual(20);
    expect(rejection).toBeLessThanOrEqual(25);
  });
});
