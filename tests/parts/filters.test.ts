import { describe, expect, test } from "vitest";
import { HANDSET_700, HANDSET_800, MAST_700, MAST_800 } from "../../src/parts/planUnwanted.ts";
import { carrierAt, gainBetween, isLive, led, signalOf } from "./walk.ts";

// Centre of UHF channel N: 306 + 8·N MHz, agreeing with a public list of British transmitters (C23 = 490, C55 = 746).
const channelMHz = (n: number) => 306 + 8 * n;
const live = (key: string, f: number, options = {}, widthMHz = 7.61) =>
  isLive(led(carrierAt(f, widthMHz), signalOf(key, options), "in", "out"));

describe("a filter", () => {
  test("that passes a range stops what lies beside it", () => {
    expect(live("filter", 474)).toBe(true);
    expect(live("filter", 690)).toBe(true);
    expect(live("filter", 466)).toBe(false);
    expect(live("filter", 1200)).toBe(false);
  });

  test("that stops a range passes what lies beside it", () => {
    const trap = { mode: "stop", fromMHz: 700, toMHz: 790 };
    expect(live("filter", 690, trap)).toBe(true);
    expect(live("filter", 763, trap)).toBe(false);
    expect(gainBetween(signalOf("filter", trap), "in", "out", 763)).toBeLessThan(-40);
  });

  test("that lowers a channel leaves it to be received, so much weaker, and its neighbours as they are", () => {
    const trap = { mode: "lower", fromMHz: 558, toMHz: 566, rejectionDb: 20, lossDb: 1 };
    const treatment = signalOf("filter", trap);
    expect(live("filter", channelMHz(32), trap)).toBe(true);
    // 1 dB of insertion loss, and 20 dB within the range; the next channels lie 8 MHz to either side.
    expect(gainBetween(treatment, "in", "out", channelMHz(32))).toBeCloseTo(-21, 6);
    for (const n of [31, 33]) expect(gainBetween(treatment, "in", "out", channelMHz(n))).toBeCloseTo(-1, 6);
  });

  test("takes its edges in either order", () => {
    expect(live("filter", 600, { fromMHz: 694, toMHz: 470 })).toBe(true);
  });
});

describe("a mobile phone filter", () => {
  test.each([
    { band: "700", last: 48, guests: [...HANDSET_700, ...MAST_700] },
    { band: "800", last: 60, guests: [...MAST_800, ...HANDSET_800] },
  ])("for $band MHz keeps channel $last and stops the phones above it", ({ band, last, guests }) => {
    const treatment = signalOf("filter-mobile", { band });
    expect(live("filter-mobile", channelMHz(last), { band })).toBe(true);
    expect(guests.length).toBeGreaterThan(0);
    for (const { airMHz } of guests) expect(gainBetween(treatment, "in", "out", airMHz)).toBeLessThan(-20);
  });

  test("costs under 2 dB in the band and 3–4 dB on the last channels (from memory)", () => {
    const loss = (channel: number) =>
      -gainBetween(signalOf("filter-mobile"), "in", "out", channelMHz(channel));
    expect(loss(21)).toBeLessThanOrEqual(2);
    expect(loss(44)).toBeLessThanOrEqual(2);
    expect(loss(48)).toBeGreaterThanOrEqual(3);
    expect(loss(48)).toBeLessThanOrEqual(4);
  });
});

describe("a channel filter", () => {
  const options = { channels: [{ channel: 30 }, { channel: 23 }, { channel: 24 }, { channel: 23 }] };

  test("lets the channels of its list through, in whatever order and however often they stand there", () => {
    for (const channel of [23, 24, 30])
      expect(live("filter-channel", channelMHz(channel), options)).toBe(true);
    for (const channel of [22, 25, 29, 31])
      expect(live("filter-channel", channelMHz(channel), options)).toBe(false);
  });

  test("with an empty list lets nothing through", () => {
    expect(live("filter-channel", channelMHz(23), { channels: [] })).toBe(false);
  });
});
