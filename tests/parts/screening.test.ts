/**
 * Screening classes: EN 50117 (cables, from memory), EN 50083-2/A1 (equipment, as quoted in a catalogue). A half-wave dipole
 * picks up E − 20·log10(f) + 33.68 dBµV into 75 Ω (any textbook); free space: E = 104.77 + EIRP − 20·log10(d).
 */
import { describe, expect, test } from "vitest";
import { fieldOf } from "../../src/design/outsideField.ts";
import { USUAL_SETTINGS } from "../../src/design/settings.ts";
import type { OutsideField } from "../../src/parts/outsideField.ts";
import { cableScreeningDb, equipmentScreeningDb } from "../../src/parts/screening.ts";
import { eirpToFieldDbuvPerM } from "../../src/rf/field.ts";
import { kindNamed, optionsOf } from "./walk.ts";

// A mast of 61 dBm at 100 m: 125.8 dBµV/m; a cordless phone of 24 dBm at 3 m: 119.2; a handset of 23 dBm at 2 m: 121.8.
test.each([
  { eirpDbm: 61, distanceM: 100, field: 125.8 },
  { eirpDbm: 24, distanceM: 3, field: 119.2 },
  { eirpDbm: 23, distanceM: 2, field: 121.8 },
])("$eirpDbm dBm at $distanceM m make $field dBµV/m", ({ field, ...from }) => {
  expect(eirpToFieldDbuvPerM(from)).toBeCloseTo(field, 1);
});

describe("screening by class", () => {
  test.each([
    { of: "A++", at: [105, 95, 85] },
    { of: "A+", at: [95, 85, 75] },
    { of: "A", at: [85, 75, 65] },
    { of: "B", at: [75, 65, 55] },
  ] as const)("a cable of class $of", ({ of, at }) => {
    expect([600, 1500, 2150].map((f) => cableScreeningDb(of, f))).toEqual(at);
  });

  test.each([
    { of: "A", at: [85, 80, 75, 55] },
    { of: "B", at: [75, 75, 65, 55] },
  ] as const)("a plate of class $of", ({ of, at }) => {
    expect([100, 400, 600, 1500].map((f) => equipmentScreeningDb(of, f))).toEqual(at);
  });
});

describe("what gets in", () => {
  const mast: OutsideField = { mast: { band: "800", dbuvPerM: 125.8 } };
  const cameIn = (kind: string, changes: Record<string, unknown>, field?: OutsideField) =>
    kindNamed(kind).signal(optionsOf(kind, changes), { id: "x", powered: true, ...(field ? { field } : {}) })
      .ingress ?? [];
  const levelAt = (found: ReturnType<typeof cameIn>, port: string) =>
    found.find((e) => e.port === port)?.bands[0]?.level[0];

  test("nothing, as long as no transmitter is named", () => {
    expect(fieldOf(USUAL_SETTINGS)).toBeUndefined();
    for (const kind of ["cable", "bad-joint", "outlet-tv", "outlet-end"])
      expect(cameIn(kind, { screening: "none" })).toEqual([]);
  });

  // At 796 MHz 125.8 − 58.02 + 33.68 = 101.46: class A (75 dB) 26.5, B (65) 36.5, plain (40) 61.5 dBµV.
  test.each([
    { screening: "A", level: 26.46 },
    { screening: "B", level: 36.46 },
    { screening: "none", level: 61.46 },
  ])("through a plate of class $screening $level dBµV of a mast at 796 MHz", ({ screening, level }) => {
    const found = cameIn("outlet-tv", { screening, lossDb: 0 }, mast);
    expect(levelAt(found, "tv")).toBeCloseTo(level, 1);
    expect(found[0]?.bands[0]?.origin).toMatchObject({ service: "mobile", part: "x" });
  });

  // 101.46 − 75 = 26.5 through a cable of class B; class A lets in 16.5, which no wanted carrier notices.
  test("through a cable by its own classes", () => {
    expect(levelAt(cameIn("cable", { screening: "B" }, mast), "out")).toBeCloseTo(26.46, 1);
    for (const screening of ["A", "A+", "A++"]) expect(cameIn("cable", { screening }, mast)).toEqual([]);
  });

  test("only by the sockets that pass it", () => {
    const phone: OutsideField = { cordlessDbuvPerM: 119.2 };
    const found = cameIn("outlet-diplexed", { screening: "none" }, phone);
    // 119.2 − 65.50 + 33.68 − 40 = 47.4 at 1890 MHz, less the 2 dB of the socket.
    expect(found.map((e) => e.port)).toEqual(["sat"]);
    expect(levelAt(found, "sat")).toBeCloseTo(45.4, 0);
  });

  // At 796 MHz 26.46 dBµV get in at class A, 61.46 where no class is stated, at the input: through a splitter of 4 dB, a branch of
  // 12 dB, gains of 40 and 20 dB (all frequencies alike).
  test.each([
    { kind: "splitter", changes: { loss: "own", ownTvDb: 4 }, port: "out2", throughDb: -4 },
    { kind: "tap", changes: { tapLossDb: 12 }, port: "tap1", throughDb: -12 },
    { kind: "amp-masthead", changes: { gainDb: 40, uhfTo: "862" }, port: "out", throughDb: 40 },
    {
      kind: "amp-distribution",
      changes: { gainDb: 20, slopeDb: 0, uhfTo: "862" },
      port: "out",
      throughDb: 20,
    },
  ])("at the input of a $kind, and through it", ({ kind, changes, port, throughDb }) => {
    const plain = levelAt(cameIn(kind, { ...changes, screening: "none" }, mast), port);
    expect(Math.abs((plain ?? 0) - 61.46 - throughDb)).toBeLessThan(0.2);
    // Class A lets in 35 dB less; below 25 dBµV nothing is told of it.
    const good = levelAt(cameIn(kind, changes, mast), port);
    if (throughDb > 0) expect(Math.abs((good ?? 0) - 26.46 - throughDb)).toBeLessThan(0.2);
    else expect(good).toBeUndefined();
    expect(cameIn(kind, { screening: "none" })).toEqual([]);
  });

  // Three wires twisted together have no screen: 61.46 less the 3.52 dB of three lines.
  test("at lines that are simply twisted together, whoever made them", () => {
    expect(Math.abs((levelAt(cameIn("t-joint", {}, mast), "out1") ?? 0) - 57.94)).toBeLessThan(0.1);
  });

  test("of a mast from its distance, or as it was measured", () => {
    const settings = { ...USUAL_SETTINGS, mastBand: "700" as const };
    expect(fieldOf(settings)?.mast?.dbuvPerM).toBeCloseTo(125.8, 1);
    expect(fieldOf({ ...settings, mastFieldFrom: "measured", mastDbuvPerM: 106 })?.mast?.dbuvPerM).toBe(106);
    expect(fieldOf({ ...USUAL_SETTINGS, cordlessDistanceM: 3 })?.cordlessDbuvPerM).toBeCloseTo(119.2, 1);
  });
});
