import { describe, expect, test } from "vitest";
import { makeGrid, pickFromGrid, uncut, undisturbed } from "../../src/signal/grid.ts";
import { carrierAt, gridOf } from "./bands.ts";

describe("the grid of a plan", () => {
  // Channels 21, 30 and 48 at 306 + 8·N MHz (Region 1 raster): 474, 546 and 690, occupied from 470 to 694 MHz.
  const plan = [carrierAt(690), carrierAt(474, 7.61, "dvbt2-256qam-2/3"), carrierAt(546)];

  test("is the same object for an equal plan as long as somebody holds it, however many plans come between", () => {
    const first = makeGrid(plan);
    // More than the memory has room for before it is looked through (256), twice over.
    const others = Array.from({ length: 600 }, (_, i) => makeGrid([carrierAt(1000 + i / 8)]));
    expect(makeGrid(plan.map((carrier) => ({ ...carrier })))).toBe(first);
    expect(makeGrid([carrierAt(1000)])).toBe(others[0]);
  });

  test("rises in frequency whatever the order of the plan, and says where each carrier stands there", () => {
    const grid = makeGrid(plan);
    expect([...grid.centre]).toEqual([474, 546, 690]);
    expect([...grid.index]).toEqual([1, 2, 0]);
    expect([...grid.width]).toEqual([7.61, 8, 8]);
    expect(grid.plan).toEqual(plan);
  });

  // DVB-T2 256QAM 2/3: 20.8 dB; DVB-T 64QAM 2/3: 18.7 dB (public tables of receiver requirements).
  test("holds the C/N that each carrier needs", () => {
    expect([...makeGrid(plan).required]).toEqual([20.8, 18.7, 18.7]);
  });

  // kTB at 290 K, public constant tables: 7.61 MHz 3.59 dBµV, 8 MHz 3.81 dBµV into 75 Ω.
  test("holds the thermal noise in each carrier's noise bandwidth", () => {
    const dbuv = Array.from(makeGrid(plan).ktb, (uv2) => 10 * Math.log10(uv2));
    for (const [i, expected] of [3.59, 3.81, 3.81].entries()) expect(dbuv[i]).toBeCloseTo(expected, 2);
  });

  test.each([
    { name: "by half a width on either side", widths: [8, 8], from: 470, to: 694 },
    // The narrow outer ones lie inside the wide neighbour: 690 − 10 and 690 + 10 MHz.
    { name: "by the widest, where it covers others", widths: [2, 20], from: 473, to: 700 },
  ])("reaches beyond its centres $name", ({ widths, from, to }) => {
    const grid = makeGrid([carrierAt(474, widths[0]), carrierAt(690, widths[1])]);
    expect([grid.fromMHz, grid.toMHz]).toEqual([from, to]);
  });

  test("reaches from where its widest carrier begins, though another is centred lower", () => {
    const grid = makeGrid([carrierAt(500, 2), carrierAt(505, 40), carrierAt(510, 2)]);
    expect([grid.fromMHz, grid.toMHz]).toEqual([485, 525]);
  });

  test("of nothing reaches from 0 to 0", () => {
    const { centre, fromMHz, toMHz } = makeGrid([]);
    expect({ carriers: centre.length, fromMHz, toMHz }).toEqual({ carriers: 0, fromMHz: 0, toMHz: 0 });
  });

  test("is one object for equal plans, and another for any other", () => {
    expect(makeGrid([...plan])).toBe(makeGrid(plan));
    expect(makeGrid(plan.slice(1))).not.toBe(makeGrid(plan));
  });

  test("has one array for “undisturbed” and one for “uncut”, of zeros, apart from those of other grids", () => {
    const [one, other] = [gridOf([100, 200]), gridOf([100, 300])];
    for (const shared of [undisturbed, uncut]) {
      expect([...shared(one)]).toEqual([0, 0]);
      expect(shared(one)).toBe(shared(one));
      expect(shared(other)).not.toBe(shared(one));
    }
  });
});

/**
 * A universal converter: oscillators 9750 and 10 600 MHz, switched at 11 700 MHz; IF = RF − LO. By hand for transponders
 * of a European plan: 10 714.25 − 9750 = 964.25; 11 700 − 10 600 = 1100; 11 778 − 10 600 = 1178; 12 692 − 10 600 = 2092.
 */
describe("the carriers that a converter picks from a grid", () => {
  /** Another grid for every width: what was picked before is remembered. */
  const skyOf = (widthMHz: number) => gridOf([10_714.25, 11_700, 11_778, 12_692], widthMHz);
  const low = { fromMHz: 10_700, toMHz: 11_700, loMHz: 9750 };
  const high = { fromMHz: 11_700, toMHz: 12_750, loMHz: 10_600 };

  test("lie from the lower bound, included, to the upper, excluded, and come down by the oscillator", () => {
    const sky = skyOf(21);
    expect([...pickFromGrid(sky, low).grid.centre]).toEqual([964.25]);
    expect([...pickFromGrid(sky, high).grid.centre]).toEqual([1100, 1178, 2092]);
    expect([...pickFromGrid(sky, high).positions]).toEqual([1, 2, 3]);
  });

  test("keep their width, their noise, their need and their place in the plan", () => {
    const sky = skyOf(22);
    const { grid } = pickFromGrid(sky, high);
    expect(grid.plan).toBe(sky.plan);
    expect([...grid.index]).toEqual([1, 2, 3]);
    expect([...grid.width]).toEqual([22, 22, 22]);
    expect([...grid.ktb]).toEqual([...sky.ktb.slice(1)]);
    expect([...grid.required]).toEqual([...sky.required.slice(1)]);
    expect([grid.fromMHz, grid.toMHz]).toEqual([1100 - 11, 2092 + 11]);
  });

  // Below or on the oscillator there is no difference frequency to receive.
  test("lie above the oscillator", () => {
    const { grid } = pickFromGrid(gridOf([9700, 9750, 9800]), { fromMHz: 0, toMHz: 20_000, loMHz: 9750 });
    expect([...grid.centre]).toEqual([50]);
  });

  test("are the grid itself where all are taken and nothing moves them", () => {
    const sky = skyOf(23);
    const all = pickFromGrid(sky, { fromMHz: 0, toMHz: 20_000, loMHz: 0 });
    expect(all.grid).toBe(sky);
    expect([...all.positions]).toEqual([0, 1, 2, 3]);
  });

  test("are a grid of their own where all are taken and moved, or only some are and stay", () => {
    const sky = skyOf(24);
    const moved = pickFromGrid(sky, { fromMHz: 0, toMHz: 20_000, loMHz: 9750 });
    expect([...moved.grid.centre]).toEqual([964.25, 1950, 2028, 2942]);
    const some = pickFromGrid(sky, { fromMHz: 11_750, toMHz: 20_000, loMHz: 0 });
    expect([...some.grid.centre]).toEqual([11_778, 12_692]);
  });

  test("are one object for the same question, and others for any other", () => {
    const sky = skyOf(25);
    expect(pickFromGrid(sky, { ...low })).toBe(pickFromGrid(sky, low));
    expect(pickFromGrid(sky, { ...low, fromMHz: 10_715 }).grid.centre).toHaveLength(0);
    expect([...pickFromGrid(sky, { ...low, loMHz: 10_000 }).grid.centre]).toEqual([714.25]);
    expect(pickFromGrid(sky, { ...low, toMHz: 11_701 }).grid.centre).toHaveLength(2);
  });
});

describe("a conversion with the oscillator above the signal", () => {
  // C band, oscillator 5150 MHz: IF = LO − RF, so 3720, 3800, 4180 MHz give 1430, 1350, 970 MHz.
  const grid = makeGrid([carrierAt(3_800, 36), carrierAt(4_180, 9), carrierAt(3_720, 27)]);
  const { grid: below, positions } = pickFromGrid(grid, {
    fromMHz: 3_400,
    toMHz: 4_200,
    loMHz: 5_150,
    isInverted: true,
  });

  test("turns the order of frequencies round, and what belongs to a carrier goes with it", () => {
    expect([...below.centre]).toEqual([970, 1_350, 1_430]);
    expect([...below.width]).toEqual([9, 36, 27]);
    // On air 3720 stands first: its place in the grid is the last here.
    expect([...positions]).toEqual([2, 1, 0]);
    // 970 − 9/2 and 1430 + 27/2.
    expect([below.fromMHz, below.toMHz]).toEqual([965.5, 1_443.5]);
  });

  test("brings nothing that lies above the oscillator", () => {
    const taken = pickFromGrid(grid, { fromMHz: 0, toMHz: 9_000, loMHz: 4_000, isInverted: true });
    expect([...taken.grid.centre]).toEqual([200, 280]);
  });
});
