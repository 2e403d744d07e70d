import { describe, expect, test } from "vitest";
import {
  carrierAt,
  carrierToNoiseDb,
  gainBetween,
  isLive,
  kindNamed,
  led,
  optionsOf,
  signalOf,
} from "./walk.ts";

describe("a masthead amplifier", () => {
  test("saves the noise figure of what follows: 5.5 dB instead of 18 dB (Friis' formula)", () => {
    // Masthead F 2 dB G 15 dB, then 10 dB of cable, then a set with F 8 dB: 10·log10(1.585 + (10^1.8 − 1)/31.62) = 5.50.
    const source = carrierAt(600);
    const pad = signalOf("attenuator", { lossDb: 10 });
    const set = {
      paths: [{ from: "in", to: "out", response: { type: "flat", db: 0 }, noiseFigureDb: 8 }],
    } as const;
    const noiseFigureDb = (...chain: Parameters<typeof led>[1][]) =>
      carrierToNoiseDb(source) -
      carrierToNoiseDb(chain.reduce((band, treatment) => led(band, treatment, "in", "out"), source));

    const mast = signalOf("amp-masthead", { gainDb: 15, noiseFigureDb: 2 });
    expect(noiseFigureDb(mast, pad, set)).toBeCloseTo(5.5, 2);
    expect(noiseFigureDb(pad, set)).toBeCloseTo(18, 2);
  });

  test("without power is a loss and no amplifier", () => {
    const dead = signalOf("amp-masthead", {}, false);
    expect(gainBetween(dead, "in", "out", 600)).toBeLessThan(-10);
    expect(dead.paths?.every((p) => p.noiseFigureDb === undefined && p.rating === undefined)).toBe(true);
  });

  test("draws its supply from the cable that leads down", () => {
    expect(kindNamed("amp-masthead").power(optionsOf("amp-masthead")).load?.ports).toEqual(["out"]);
  });

  // Usual data sheets, from memory.
  test("starts from usual values: 10–26 dB, noise figure 1–3 dB, 100–108 dBµV", () => {
    const [path] = signalOf("amp-masthead").paths ?? [];
    expect(gainBetween(signalOf("amp-masthead"), "in", "out", 600)).toBeGreaterThanOrEqual(10);
    expect(gainBetween(signalOf("amp-masthead"), "in", "out", 600)).toBeLessThanOrEqual(26);
    expect(path?.noiseFigureDb).toBeGreaterThanOrEqual(1);
    expect(path?.noiseFigureDb).toBeLessThanOrEqual(3);
    expect(path?.rating?.outputDbuv).toBeGreaterThanOrEqual(100);
    expect(path?.rating?.outputDbuv).toBeLessThanOrEqual(108);
    // Two-carrier ratio for TV amplifiers, EN 60728-3, from memory.
    expect(path?.rating?.ratioDb).toBe(60);
  });

  test("that reaches 862 MHz lets the phone masts of 758–788 MHz in; one that ends at 694 doesn't", () => {
    const at763 = (uhfTo: string) => gainBetween(signalOf("amp-masthead", { uhfTo }), "in", "out", 763);
    expect(at763("862")).toBeGreaterThan(10);
    expect(at763("694")).toBeLessThan(0);
  });
});

describe("a distribution amplifier", () => {
  test("amplifies the low end less by just its slope", () => {
    const treatment = signalOf("amp-distribution", { gainDb: 20, slopeDb: 8, uhfTo: "862" });
    expect(gainBetween(treatment, "in", "out", 862)).toBeCloseTo(20, 6);
    expect(gainBetween(treatment, "in", "out", 47)).toBeCloseTo(12, 6);
  });

  test("loses as much C/N by its input attenuator as the attenuator takes (a loss L has F = L at 290 K)", () => {
    const through = (padDb: number) =>
      carrierToNoiseDb(led(carrierAt(600), signalOf("amp-distribution", { padDb }), "in", "out"));
    expect(through(0) - through(10)).toBeCloseTo(10, 6);
  });

  test("gives every output the same", () => {
    const treatment = signalOf("amp-distribution", { outputs: 4 });
    const gains = ["out", "out2", "out3", "out4"].map((port) => gainBetween(treatment, "in", port, 600));
    expect(new Set(gains).size).toBe(1);
  });

  test.each([
    { inputs: "one", takes: { in: [98, 225.648, 474] } },
    { inputs: "two", takes: { in: [474], radio: [98, 225.648] } },
    { inputs: "three", takes: { in: [474], fm: [98], dab: [225.648] } },
  ])("with inputs $inputs takes each band where it belongs", ({ inputs, takes }) => {
    const treatment = signalOf("amp-distribution", { inputs });
    for (const [port, wanted] of Object.entries(takes))
      for (const f of [98, 225.648, 474])
        expect(isLive(led(carrierAt(f, 0.2), treatment, port, "out")), `${f} MHz at ${port}`).toBe(
          wanted.some((w: number) => w === f),
        );
  });

  test("feeds a masthead amplifier when told to, and nothing once its mains is off", () => {
    const supplies = (o: Record<string, unknown>) =>
      kindNamed("amp-distribution").power(optionsOf("amp-distribution", o)).supplies ?? [];
    expect(supplies({})).toEqual([]);
    expect(supplies({ aerialSupply: "24" })[0]).toMatchObject({
      port: "in",
      kind: "plain",
      volts13: 24,
      volts18: 24,
    });
    expect(supplies({ aerialSupply: "24", switchedOn: false })).toEqual([]);
    expect(gainBetween(signalOf("amp-distribution", { switchedOn: false }), "in", "out", 600)).toBeLessThan(
      -10,
    );
  });
});

describe("a satellite line amplifier", () => {
  test("is rated with 35 dB to third-order products, the ratio for satellite IF (EN 60728-3, from memory)", () => {
    expect(signalOf("amp-if").paths?.[0]?.rating?.ratioDb).toBe(35);
  });

  test("passes supply and tone on to the converter, and takes its own current from them", () => {
    const { paths, load } = kindNamed("amp-if").power(optionsOf("amp-if"));
    expect(paths).toEqual([{ from: "out", to: "in", tone: true }]);
    expect(load?.ports).toEqual(["out"]);
  });

  test("lets TV past unamplified where it is built so, by one way only", () => {
    const beside = signalOf("amp-if", { below: "passed" });
    const tv = gainBetween(beside, "in", "out", 600);
    expect(tv).toBeLessThan(0);
    expect(tv).toBeGreaterThan(-3);
    expect(gainBetween(beside, "in", "out", 1500)).toBeGreaterThan(10);
    expect(isLive(led(carrierAt(600), signalOf("amp-if"), "in", "out"))).toBe(false);
  });

  // The gain of its TV half, and −25 dB or so without supply: both halves live on the same current.
  test("amplifies TV as well where it is built for the whole cable, while it is fed", () => {
    const whole = { below: "amplified", tvGainDb: 12 };
    expect(gainBetween(signalOf("amp-if", whole), "in", "out", 600)).toBeCloseTo(12, 9);
    expect(gainBetween(signalOf("amp-if", whole), "in", "out", 98)).toBeCloseTo(12, 9);
    expect(gainBetween(signalOf("amp-if", whole, false), "in", "out", 600)).toBeLessThan(-10);
    const [, lower] = signalOf("amp-if", whole).paths ?? [];
    expect(lower?.noiseFigureDb).toBe(6);
  });

  test("for 950–2150 MHz cuts a wideband feed below it; one from 290 MHz takes it whole", () => {
    expect(isLive(led(carrierAt(500, 27.5), signalOf("amp-if"), "in", "out"))).toBe(false);
    const wide = signalOf("amp-if", { fromMHz: 290, toMHz: 2350 });
    for (const f of [314.25, 500, 2080]) expect(isLive(led(carrierAt(f, 22), wide, "in", "out"))).toBe(true);
  });
});
