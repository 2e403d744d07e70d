/** What two aerials hear of one transmitter, where they do not list the same channels: sums of powers worked by hand. */
import { expect, test } from "vitest";
import type { Band } from "../../src/signal/band.ts";
import { makeGrid, uncut, undisturbed } from "../../src/signal/grid.ts";
import { joinWays } from "../../src/signal/ways.ts";

/** Channels 21, 22 and 23 at the entries of their numbers, as a transmitter’s plan has them. */
const PLAN = Array.from({ length: 24 }, (_, channel) => ({
  name: `C${channel}`,
  airMHz: 306 + 8 * channel,
  widthMHz: 7.61,
  noiseMHz: 7.61,
  mode: "dvbt-64qam-2/3",
}));

function heard(part: string, levels: Readonly<Record<number, number>>, more: Partial<Band> = {}): Band {
  const channels = Object.keys(levels).map(Number);
  const grid = makeGrid(PLAN, channels);
  return {
    origin: { key: "transmitter/tv/hill", service: "tv", transmitter: "Hill", part },
    grid,
    level: Float64Array.from(grid.index, (channel) => levels[channel] ?? 0),
    noise: Float64Array.from(grid.ktb),
    interference: undisturbed(grid),
    cut: uncut(grid),
    cuts: [],
    shifts: [],
    conditions: [],
    selected: true,
    ...more,
  };
}

/** Each carrier that comes out, with what is asked of it. */
function each<T>(bands: readonly Band[], ask: (band: Band, i: number) => T): ReadonlyMap<number, T> {
  return new Map(
    bands.flatMap((b) => Array.from(b.grid.index, (channel, i) => [channel, ask(b, i)] as const)),
  );
}

const joined = (...groups: readonly Band[]) => joinWays(groups.map((b) => [b]));

test("a channel that both hear adds up; one that either hears alone stays as it is", () => {
  const bands = joined(heard("a", { 21: 60, 22: 60 }), heard("b", { 22: 60, 23: 50 })).map(
    ({ band }) => band,
  );
  const level = each(bands, (b, i) => b.level[i] ?? 0);
  expect([...level.keys()].sort()).toEqual([21, 22, 23]);
  expect(level.get(21)).toBe(60);
  // Two equal powers: 10·log10(2) = 3.01 dB more.
  expect(level.get(22)).toBeCloseTo(63.01, 2);
  expect(level.get(23)).toBe(50);
});

test("each knows the ways that it came, so that it meets what came by another", () => {
  const arrived = joined(heard("a", { 21: 60, 22: 60 }), heard("b", { 22: 60, 23: 50 }));
  const groups = new Map(
    arrived.flatMap((a) => Array.from(a.band.grid.index, (c) => [c, a.groups] as const)),
  );
  expect(groups).toEqual(
    new Map([
      [21, [0]],
      [22, [0, 1]],
      [23, [1]],
    ]),
  );
});

test("interference, products and what a filter cut stay with their channel", () => {
  const b = heard("b", { 22: 60, 23: 50 });
  const hurt: Band = {
    ...b,
    interference: Float64Array.from([0, 7]),
    products: Float64Array.from([0, 5]),
    cut: Uint16Array.from([0, 1]),
    cuts: [{ part: "filter", reason: "filter" }],
  };
  const bands = joined(heard("a", { 21: 60, 22: 60 }), hurt).map(({ band }) => band);
  expect(each(bands, (band, i) => band.interference[i]).get(23)).toBe(7);
  expect(each(bands, (band, i) => band.products?.[i]).get(23)).toBe(5);
  expect(each(bands, (band, i) => band.cut[i] !== 0)).toEqual(
    new Map([
      [21, false],
      [22, false],
      [23, true],
    ]),
  );
});

test("what is wanted by one way is wanted where the ways meet, and the rest is not", () => {
  const stray = heard("b", { 22: 50, 23: 50 });
  const unwanted: Band = { ...stray, origin: { ...stray.origin, service: "distant" } };
  const bands = joined(unwanted, heard("a", { 22: 40 })).map(({ band }) => band);
  expect(each(bands, (b) => b.origin.service)).toEqual(
    new Map([
      [22, "tv"],
      [23, "distant"],
    ]),
  );
});
