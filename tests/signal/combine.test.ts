/**
 * What meets on one wire, by areas and sums of powers. Carriers are 8 MHz wide, in all of which noise counts, unless said;
 * 50 dBµV are 10^5 (µV)², 60 dBµV 10^6.
 */
import { describe, expect, test } from "vitest";
import type { Band } from "../../src/signal/band.ts";
import { combine, isDisturbed } from "../../src/signal/combine.ts";
import { makeGrid, undisturbed } from "../../src/signal/grid.ts";
import { type BandSketch, bandOf, carrierAt, gridOf, switchAt } from "./bands.ts";

const other = (sketch: BandSketch) => bandOf({ from: "other", level: 50, ...sketch });

/** Interference in each carrier of a band after it met another. */
function disturbance(victim: Band, ...foreign: Band[]): number[] {
  return [...(combine([[victim], foreign]).bands[0]?.interference ?? [])];
}

function expectAll(found: readonly number[], expected: readonly number[]): void {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries()) expect(found[i]).toBeCloseTo(value, 4);
}

describe("signals that do not touch", () => {
  test("one group is handed on as it is", () => {
    const group = [bandOf(), other({})];
    const { bands, clashes, work } = combine([[], group, []]);
    expect(bands).toBe(group);
    expect({ clashes, work }).toEqual({ clashes: [], work: 0 });
    expect(combine([])).toEqual({ bands: [], clashes: [], work: 0 });
    expect(combine([[], []])).toEqual({ bands: [], clashes: [], work: 0 });
  });

  // Channel 21 ends at 478 MHz, where channel 22 begins, and begins at 470.
  test.each([482, 466, 1000, 100])(
    "groups beside each other keep their bands and take no work (%i MHz)",
    (f) => {
      const [a, b] = [bandOf({ grid: gridOf([474]) }), other({ grid: gridOf([f]) })];
      const { bands, clashes, work } = combine([[a], [b]]);
      expect(bands[0]).toBe(a);
      expect(bands[1]).toBe(b);
      expect({ clashes, work }).toEqual({ clashes: [], work: 0 });
    },
  );

  test("a group that reaches over another without touching its carriers leaves it as it is", () => {
    const [a, b] = [bandOf({ grid: gridOf([474]) }), other({ grid: gridOf([400, 600]) })];
    const { bands, clashes, work } = combine([[a], [b]]);
    expect(bands[0]).toBe(a);
    expect(bands[1]).toBe(b);
    expect(clashes).toEqual([]);
    // Each was held against the other.
    expect(work).toBe(2);
  });

  test("of three groups any two that touch are seen", () => {
    const far = other({ from: "far", grid: gridOf([2000]) });
    for (const order of [
      [far, bandOf(), other({})],
      [bandOf(), far, other({})],
      [bandOf(), other({}), far],
    ])
      expect(combine(order.map((band) => [band])).clashes).toHaveLength(2);
  });

  test("one signal in two groups is one band, though it touches nothing else", () => {
    const { bands } = combine([
      [bandOf({ grid: gridOf([474]) })],
      [bandOf({ from: "sat", grid: gridOf([1200]) }), bandOf({ grid: gridOf([474]) })],
    ]);
    expect(bands.map((b) => b.origin.key)).toEqual(["aerial", "sat"]);
    // Two equal copies: 3.01 dB more.
    expect(bands[0]?.level[0]).toBeCloseTo(63.01, 2);
  });
});

describe("the share of a disturber that falls into a carrier", () => {
  test.each([
    { name: "on the same frequency, all", theirs: gridOf([474]), share: 1 },
    { name: "2 MHz above, six eighths", theirs: gridOf([476]), share: 6 / 8 },
    { name: "6 MHz below, two eighths", theirs: gridOf([468]), share: 2 / 8 },
    { name: "narrow and inside, all", theirs: gridOf([476], 2), share: 1 },
    { name: "narrow on the edge, half", theirs: gridOf([478], 2), share: 1 / 2 },
    { name: "27 MHz wide and over it, 8 of 27", theirs: gridOf([480], 27), share: 8 / 27 },
    { name: "beside it, nothing", theirs: gridOf([482]), share: 0 },
    { name: "wide and beside it, nothing", theirs: gridOf([491.5], 27), share: 0 },
  ])("$name", ({ theirs, share }) => {
    expectAll(disturbance(bandOf(), other({ grid: theirs })), [1e5 * share]);
  });

  test("adds up over the disturber's carriers, each at its own level", () => {
    // 470 MHz: 472 − 470 … 474: half of 10^5; 478 MHz: half of 10^4 (40 dBµV); 500 MHz: nothing.
    const theirs = other({ grid: gridOf([470, 478, 500]), level: [50, 40, 90] });
    expectAll(disturbance(bandOf(), theirs), [0.5e5 + 0.5e4]);
  });

  test("adds up over bands, on one grid or on several, and to what was there before", () => {
    const victim = bandOf({ interference: 1e3 });
    const foreign = [
      other({ from: "b", level: 40 }),
      other({ from: "c" }),
      other({ from: "d", grid: gridOf([470]) }),
    ];
    expectAll(disturbance(victim, ...foreign), [1e3 + 1e4 + 1e5 + 0.5e5]);
  });

  // Victims rise in frequency, and so do disturbers: one of 100 MHz that began long before must not be forgotten
  // for the narrow ones between.
  test("finds a wide carrier that begins far below, behind narrow ones", () => {
    const theirs = gridOfWidths([
      [500, 100],
      [505, 2],
      [530, 2],
      [620, 2],
    ]);
    const found = disturbance(
      bandOf({ grid: gridOf([474, 505, 546, 562]) }),
      other({ grid: theirs, level: [50, 50, 40, 90] }),
    );
    // The wide one covers 450 to 550 MHz: 8, 8 and 8 of its 100 MHz (546 ends at 550), none at 562 MHz.
    expectAll(found, [8000, 8000 + 1e5, 8000, 0]);
  });

  test("counts in each carrier's own noise bandwidth", () => {
    const grid = makeGrid([carrierAt(474, 8), carrierAt(546, 2)]);
    // 8 MHz on 474 MHz lie wholly inside, of 8 MHz on 546 MHz a quarter does.
    expectAll(disturbance(bandOf({ grid }), other({ grid: gridOf([474, 546]) })), [1e5, 0.25e5]);
  });

  test("is each carrier's own", () => {
    const found = disturbance(
      bandOf({ grid: gridOf([474, 482, 490]) }),
      other({ grid: gridOf([478, 490]), level: [50, 40] }),
    );
    expectAll(found, [0.5e5, 0.5e5, 1e4]);
  });

  test("goes both ways, and a band that nothing falls into is the same object", () => {
    const [a, b, c] = [bandOf(), other({}), other({ from: "c", grid: gridOf([500]) })];
    const { bands } = combine([[a, c], [b]]);
    expectAll([...(bands[0]?.interference ?? [])], [1e5]);
    expectAll([...(bands[2]?.interference ?? [])], [1e6]);
    expect(bands[1]).toBe(c);
    expect(bands.map(isDisturbed)).toEqual([true, false, true]);
    expect([...a.interference]).toEqual([0]);
  });

  test("counts between groups only: what came in together has met before", () => {
    const [a, b, c] = [bandOf(), other({}), other({ from: "c", level: 40 })];
    const { bands } = combine([[a, b], [c]]);
    expectAll(
      bands.map((band) => band.interference[0] ?? 0),
      [1e4, 1e4, 1e6 + 1e5],
    );
  });
});

describe("alternatives of a switch", () => {
  const lnb = switchAt("lnb", "HL");
  const second = switchAt("second", "1");
  const under = (setting: string, sketch: BandSketch = {}, at = lnb) =>
    other({ from: `${at.id}-${setting}`, conditions: [{ at, setting }], ...sketch });

  test("never disturb each other, though they come in by different connectors", () => {
    const [a, b] = [under("HL"), under("HH")];
    const { bands, clashes } = combine([[a], [b]]);
    expect(bands[0]).toBe(a);
    expect(bands[1]).toBe(b);
    expect(clashes).toEqual([]);
  });

  test("disturb a third by the worst of their settings, carrier by carrier, not by their sum", () => {
    const grid = gridOf([474, 482]);
    const victim = bandOf({ grid });
    const found = disturbance(
      victim,
      under("HL", { grid, level: [50, 40] }),
      under("HH", { grid, level: [40, 50] }),
      under("HH", { from: "more", grid, level: [40, 20] }),
    );
    // HL: 10^5 and 10^4; HH: 10^4 + 10^4 and 10^5 + 10^2.
    expectAll(found, [1e5, 1e5 + 100]);
  });

  test("of two switches add up, and what is always there adds to them", () => {
    const found = disturbance(
      bandOf(),
      under("HL"),
      under("HH", { level: 40 }),
      under("1", { level: 40 }, second),
      under("2", { level: 30 }, second),
      other({ level: 20 }),
    );
    expectAll(found, [1e5 + 1e4 + 100]);
  });

  test("under the same setting meet like any others", () => {
    expectAll(disturbance(under("HL", { from: "victim", level: 60 }), under("HL")), [1e5]);
  });
});

describe("clashes that are worth a word", () => {
  // 64QAM 2/3 needs 18.7 dB (NorDig Unified 2.2, as quoted in a public table); from 20 dB above that, 38.7 dB, nothing is said.
  test.each([
    { level: 21.29, ciDb: [] },
    { level: 21.31, ciDb: [38.69] },
    { level: 40, ciDb: [20] },
  ])("a disturber of $level dBµV under 60 dBµV is said to leave C/I $ciDb dB", ({ level, ciDb }) => {
    const { bands, clashes } = combine([[bandOf()], [other({ level })]]);
    const suffered = clashes.filter((c) => c.victim.origin.key === "aerial");
    expectAll(
      suffered.flatMap((c) => c.ciDb),
      ciDb,
    );
    expect(bands[0]?.interference[0]).toBeCloseTo(10 ** (level / 10), 6);
  });

  test("name the carriers that suffer, live ones only, with the edges of the range", () => {
    const grid = gridOf([474, 482, 490, 498]);
    const victim = bandOf({
      grid,
      level: [60, 60, 60, 90],
      more: { cut: Uint16Array.from([0, 1, 0, 0]), cuts: [{ part: "x", reason: "filter" }] },
    });
    const foreign = other({ grid, level: [50, 50, 40, 50] });
    const clash = combine([[victim], [foreign]]).clashes.find((c) => c.other === foreign);
    // The last one lies 40 dB above its disturber.
    expect(clash).toMatchObject({ echo: false, carriers: [0, 2], fromMHz: 470, toMHz: 494 });
    expectAll(clash?.ciDb ?? [], [10, 20]);
    // The victim as it is behind the meeting.
    expectAll([...(clash?.victim.interference ?? [])], [1e5, 1e5, 1e4, 1e5]);
  });

  test("are told of each disturber by itself", () => {
    const foreign = [other({ from: "b", level: 40 }), other({ from: "c", level: 50 })];
    const said = combine([[bandOf()], foreign]).clashes.filter((c) => c.victim.origin.key === "aerial");
    expect(said.map((c) => c.other.origin.key)).toEqual(["c", "b"]);
    expectAll(
      said.map((c) => c.ciDb[0] ?? 0),
      [10, 20],
    );
  });

  test("have no carriers where only cut ones are hit", () => {
    const cut = { cut: Uint16Array.of(1), cuts: [{ part: "x", reason: "filter" } as const] };
    const { bands, clashes } = combine([[bandOf({ more: cut })], [other({})]]);
    expect(clashes.map((c) => c.victim.origin.key)).toEqual(["other"]);
    expectAll([...(bands[0]?.interference ?? [])], [1e5]);
  });
});

describe("noise floors", () => {
  const floor = bandOf({ from: "lnb/noise", level: 30, more: { isFloor: true } });

  test("disturb, and nothing disturbs them", () => {
    const { bands, clashes } = combine([[bandOf()], [floor]]);
    expectAll([...(bands[0]?.interference ?? [])], [1000]);
    expect(bands[1]).toBe(floor);
    expect(clashes.map((c) => c.other)).toEqual([floor]);
  });
});

describe("one signal by two ways", () => {
  test("is said to meet itself: the strongest suffers from the weaker, whichever came first", () => {
    const [strong, weak] = [bandOf({ level: 60 }), bandOf({ level: 52 })];
    for (const groups of [
      [[strong], [weak]],
      [[weak], [strong]],
    ]) {
      const { clashes, bands } = combine(groups);
      expect(clashes).toHaveLength(1);
      expect(clashes[0]).toMatchObject({ echo: true, victim: strong, other: weak });
      expect(clashes[0]?.ciDb[0]).toBeCloseTo(8, 9);
      // What meets itself does not disturb itself: where it cancels is not known.
      expect(bands).toHaveLength(1);
      expect(bands[0]?.interference).toBe(undisturbed(strong.grid));
    }
  });

  test("by three ways: two echoes of the strongest", () => {
    const copies = [50, 60, 45].map((level) => [bandOf({ level })]);
    const { clashes } = combine(copies);
    expect(clashes.map((c) => [c.echo, Math.round(c.ciDb[0] ?? 0)])).toEqual([
      [true, 10],
      [true, 15],
    ]);
  });

  test("the strongest is the one with the most power in all", () => {
    const grid = gridOf([474, 482]);
    const [a, b] = [bandOf({ grid, level: [60, 60] }), bandOf({ grid, level: [65, 40] })];
    // 2 · 10^6 against 3.16 · 10^6 + 10^4.
    expect(combine([[a], [b]]).clashes[0]?.victim).toBe(b);
  });

  const at = switchAt("switch", "1");

  test("under another setting of a switch it meets itself, but is no interference", () => {
    const always = bandOf({ level: 60 });
    const sometimes = bandOf({ level: 52, conditions: [{ at, setting: "1" }] });
    const { bands, clashes } = combine([[always], [sometimes]]);
    expect(bands[0]).toBe(always);
    expect(clashes.filter((c) => c.victim === always)).toMatchObject([{ echo: true, other: sometimes }]);
  });

  test("beside it others under that setting do disturb", () => {
    const conditions = [{ at, setting: "1" }];
    const { bands, clashes } = combine([
      [bandOf({ level: 60 })],
      [bandOf({ level: 52, conditions }), other({ level: 40, conditions })],
    ]);
    expectAll([...(bands[0]?.interference ?? [])], [1e4]);
    const said = clashes.filter((c) => c.victim.origin.key === "aerial" && c.victim.conditions.length === 0);
    expect(said.map((c) => [c.other.origin.key, c.echo])).toEqual([
      ["other", false],
      ["aerial", true],
    ]);
    // Each with its own power: 60 − 40 and 60 − 52 dB.
    expectAll(
      said.map((c) => c.ciDb[0] ?? 0),
      [20, 8],
    );
  });

  test("converted alike it is the same signal under another setting", () => {
    const shifts = [9750, 5];
    const always = bandOf({ level: 60, more: { shifts } });
    const sometimes = bandOf({
      level: 52,
      conditions: [{ at, setting: "1" }],
      more: { shifts: [...shifts] },
    });
    const { bands, clashes } = combine([[always], [sometimes]]);
    expect(bands[0]).toBe(always);
    expect(clashes.every((c) => c.echo)).toBe(true);
  });

  test.each([{ shifts: [9750] }, { shifts: [10_600, 5] }, { shifts: [10_601] }])(
    "converted otherwise (by $shifts, not by 10600) it is another signal",
    ({ shifts }) => {
      const { bands } = combine([
        [bandOf({ more: { shifts: [10_600] } })],
        [bandOf({ level: 50, more: { shifts } })],
      ]);
      expectAll([...(bands[0]?.interference ?? [])], [1e5]);
    },
  );
});

/** A grid of carriers of several widths. */
function gridOfWidths(carriers: readonly (readonly [centreMHz: number, widthMHz: number])[]) {
  const grid = gridOf(carriers.map(([f]) => f));
  const widths = Float64Array.from(carriers, ([, width]) => width);
  const [from, to] = [carriers.map(([f, w]) => f - w / 2), carriers.map(([f, w]) => f + w / 2)];
  return { ...grid, width: widths, fromMHz: Math.min(...from), toMHz: Math.max(...to) };
}
