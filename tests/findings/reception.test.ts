/** Results of single carriers, and how they are put together: hand-made carriers, the outcome known beforehand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { blockingAt } from "../../src/findings/blocking.ts";
import {
  addResult,
  type CarrierResult,
  type CarrierResults,
  cutResult,
  type LostCarrier,
} from "../../src/findings/carrierResult.ts";
import type { Plane } from "../../src/findings/missing.ts";
import { carriersGot, missingOf, receive, sendTheSame } from "../../src/findings/reception.ts";
import { graded, quality } from "../../src/findings/tunerQuality.ts";
import { sourcesOf, type WantedCarrier } from "../../src/findings/wanted.ts";
import type { ReceiverInput } from "../../src/parts/contract.ts";
import { TUNER_NOISE_FIGURE_DB } from "../../src/parts/receiverFrontEnd.ts";
import { quadrantOf } from "../../src/sentences/planes.ts";
import type { Band } from "../../src/signal/band.ts";
import { draw } from "../draw.ts";
import { type BandSketch, bandOf, gridOf } from "../signal/bands.ts";
import { recordOf } from "./byHand.ts";

const got = (cnDb: number): CarrierResult => ({
  got: true,
  port: "in",
  origin: "a",
  index: 0,
  levelDbuv: 60,
  cnDb,
  requiredDb: 10,
});
const lost = (why: LostCarrier["why"], part = "p"): LostCarrier => ({
  got: false,
  why,
  reason: { kind: "no tone", part },
});

function best(...results: readonly CarrierResult[]): CarrierResult | undefined {
  const all: CarrierResults = new Map();
  for (const result of results) addResult(all, "k", result);
  return all.get("k");
}

describe("of several ways to a carrier", () => {
  test("the one with the better C/N counts, in either order", () => {
    expect(best(got(12), got(20))).toMatchObject({ cnDb: 20 });
    expect(best(got(20), got(12))).toMatchObject({ cnDb: 20 });
  });

  test("one that works counts before any that does not", () => {
    expect(best(lost("disturbed"), got(11))).toMatchObject({ got: true });
    expect(best(got(11), lost("disturbed"))).toMatchObject({ got: true });
  });

  // From "not there at all" to "nearly there": what came nearest is what is to be mended.
  test("of two that do not, the nearer one is told", () => {
    const order = [
      "absent",
      "cut",
      "out of range",
      "wrong feed",
      "not selectable",
      "noisy",
      "disturbed",
    ] as const;
    for (const [n, nearer] of order.entries())
      for (const farther of order.slice(0, n)) {
        expect(best(lost(farther), lost(nearer))).toMatchObject({ why: nearer });
        expect(best(lost(nearer), lost(farther))).toMatchObject({ why: nearer });
      }
  });
});

describe("a carrier behind the tuner", () => {
  const at = { port: "in", origin: "a", index: 0, levelDbuv: 50, requiredDb: 20 };

  // 50 dBµV are 10^5 µV²; a noise of 10^3 µV² lies 20 dB below.
  test("exactly the C/N that it needs is enough", () => {
    expect(graded({ ...at, noise: 1000, interference: 0 })).toMatchObject({ got: true, cnDb: 20 });
  });

  test("a little more noise is too much", () => {
    expect(graded({ ...at, noise: 1001, interference: 0 })).toMatchObject({ got: false, why: "noisy" });
  });

  // Noise alone leaves 23 dB, interference as strong takes 3 dB of it: 20.0 dB less a hair.
  test("what noise alone would leave is lost to interference", () => {
    expect(graded({ ...at, noise: 500, interference: 501 })).toMatchObject({ why: "disturbed" });
    expect(graded({ ...at, noise: 500, interference: 500 })).toMatchObject({ got: true });
  });

  test("noise and interference each too much: noise is told", () => {
    expect(graded({ ...at, noise: 2000, interference: 2000 })).toMatchObject({ why: "noisy" });
  });

  test("without any noise C/N has no end", () => {
    expect(graded({ ...at, noise: 0, interference: 0 })).toMatchObject({ cnDb: Number.POSITIVE_INFINITY });
  });

  test("the tuner's noise figure is the usual one", () => {
    expect(TUNER_NOISE_FIGURE_DB).toBe(8);
  });
});

describe("a carrier at an input", () => {
  const input: ReceiverInput = {
    port: "in",
    feed: "terrestrial",
    services: ["tv"],
    tunesFromMHz: 470,
    tunesToMHz: 694,
    tuners: 1,
    frontEnd: { noiseFigureDb: 8, overloadDbuv: 98.75, tuner: "silicon" },
  };
  const judged = (band: Band, i: number, own = input) =>
    quality(own, band, i, blockingAt({ bands: [band] }, own));
  const at = (centreMHz: number, more: BandSketch = {}) =>
    judged(bandOf({ grid: gridOf([centreMHz]), level: 50, ...more }), 0);

  // k = 1.380649·10⁻²³ J/K, 290 K, 8 MHz, 75 Ω: kTB·R = 2.4023 µV². 8 dB of noise figure are a factor of 6.3096,
  // of which 5.3096 is the tuner's own: 12.755 µV². 50 dBµV are 10⁵ µV²: C/N = 10·log10(10⁵/12.755) = 38.94 dB.
  test("has the tuner's noise on top of what it brings", () => {
    const result = at(600);
    expect(result.got ? result.cnDb : 0).toBeCloseTo(38.94, 2);
    // 100 µV² that it brings: 10·log10(10⁵/112.755) = 29.48 dB; as much interference: 10⁵/212.755, 26.72 dB.
    const noisy = at(600, { noise: 100 });
    expect(noisy.got ? noisy.cnDb : 0).toBeCloseTo(29.48, 2);
    const disturbed = at(600, { noise: 100, interference: 100 });
    expect(disturbed.got ? disturbed.cnDb : 0).toBeCloseTo(26.72, 2);
  });

  // 3 dB are a factor of 1.9953: 0.9953 · 2.4023 = 2.391 µV²; 10⁵/2.391 is 46.21 dB. With 12 dB: 14.849 · 2.4023 = 35.67, 34.48 dB.
  test.each([
    [3, 46.21],
    [12, 34.48],
  ])("its own noise figure counts: %i dB", (noiseFigureDb, expected) => {
    const own = { ...input, frontEnd: { ...input.frontEnd, noiseFigureDb } };
    const result = judged(bandOf({ grid: gridOf([600]), level: 50 }), 0, own);
    expect(result.got ? result.cnDb : 0).toBeCloseTo(expected, 2);
  });

  test("is known by its port, its source and its place in the plan", () => {
    const two = bandOf({ grid: gridOf([600, 608]), level: [50, 55] });
    expect(judged(two, 1)).toMatchObject({
      got: true,
      port: "in",
      origin: "aerial",
      index: 1,
      levelDbuv: 55,
      requiredDb: 18.7,
    });
  });

  test("is out of range beyond either end of the tuner, and not at the ends", () => {
    expect(at(470).got).toBe(true);
    expect(at(694).got).toBe(true);
    const reason = { kind: "outside tuning range", fromMHz: 470, toMHz: 694 };
    expect(at(469)).toEqual({ got: false, why: "out of range", reason });
    expect(at(695)).toEqual({ got: false, why: "out of range", reason });
  });
});

describe("a carrier that was stopped", () => {
  const cuts = [
    { part: "filter", reason: "filter" },
    { part: "plate", reason: "range" },
  ] as const;
  const band = bandOf({ grid: gridOf([474, 482, 490]), more: { cut: Uint16Array.of(0, 1, 2), cuts } });

  test("is lost to the part that stopped it; a live one is not", () => {
    expect(cutResult(band, 0)).toBeUndefined();
    expect(cutResult(band, 1)).toEqual({
      got: false,
      why: "cut",
      reason: { kind: "cut", part: "filter", cut: "filter" },
      culprit: { part: "filter" },
    });
    expect(cutResult(band, 2)).toMatchObject({ reason: { part: "plate", cut: "range" } });
  });
});

describe("missing carriers by reason and plane", () => {
  const plane = (polarisation: "V" | "H", half: "low" | "high"): Plane => ({
    source: "d",
    polarisation,
    half,
  });
  const planes = [plane("V", "low"), plane("V", "high"), plane("H", "low"), plane("H", "high")];
  const [vl, vh, hl] = planes;
  const wanted = planes.flatMap((each, n) =>
    [0, 1, 2].map(
      (i): WantedCarrier => ({
        key: `${n}.${i}`,
        source: "d",
        origin: "d/V",
        index: i,
        carrier: { name: `${n}.${i}`, airMHz: 11_000, widthMHz: 30, noiseMHz: 27, mode: "dvbs-qpsk-3/4" },
        plane: each,
        sentDbuv: 60,
      }),
    ),
  );
  const with_ = (change: (w: WantedCarrier) => CarrierResult) =>
    new Map(wanted.map((w) => [w.key, change(w)]));

  test("nothing is missing where all is got", () => {
    expect(
      missingOf(
        wanted,
        with_(() => got(20)),
      ),
    ).toEqual([]);
  });

  test("a plane of which one carrier is got is not missing as a whole", () => {
    const missing = missingOf(
      wanted,
      with_((w) => (w.plane === vl && w.index > 0 ? lost("noisy") : got(20))),
    );
    expect(missing.map((m) => [m.count, m.planes])).toEqual([[2, []]]);
  });

  test("what has one reason is one loss, with its planes", () => {
    const missing = missingOf(
      wanted,
      with_((w) => (w.plane?.half === "high" ? lost("not selectable") : got(20))),
    );
    expect(missing.map((m) => [m.count, m.planes.map(quadrantOf)])).toEqual([[6, ["VH", "HH"]]]);
  });

  test("what does not arrive is told apart by plane, for each may be lost elsewhere", () => {
    const missing = missingOf(wanted, new Map());
    expect(missing.map((m) => [m.count, m.planes.map(quadrantOf)])).toEqual([
      [3, ["VL"]],
      [3, ["VH"]],
      [3, ["HL"]],
      [3, ["HH"]],
    ]);
  });

  test("the greater loss comes first, whichever was met with before", () => {
    const later = missingOf(
      wanted,
      with_((w) =>
        w.plane === vh ? lost("cut", "f") : w.plane === vl && w.index === 0 ? lost("noisy", "g") : got(9),
      ),
    );
    expect(later.map((m) => [m.why, m.count])).toEqual([
      ["cut", 3],
      ["noisy", 1],
    ]);
  });

  test("a loss has one of its carriers to follow, and what its first one was lost by", () => {
    const [first] = missingOf(
      wanted,
      with_((w) => (w.plane === hl ? { ...lost("not selectable", "ms"), culprit: { part: "ms" } } : got(20))),
    );
    expect(first).toMatchObject({
      why: "not selectable",
      reason: { kind: "no tone", part: "ms" },
      culprit: { part: "ms" },
      sample: { key: "2.0" },
    });
    expect(first).not.toHaveProperty("got");
  });

  // A terrestrial signal has no planes: what does not arrive is one loss, and no plane is told.
  test("carriers without planes are one loss", () => {
    const terrestrial = wanted.slice(0, 2).map(({ plane: _, ...w }): WantedCarrier => w);
    expect(missingOf(terrestrial, new Map())).toMatchObject([
      { why: "absent", count: 2, planes: [], reason: { kind: "does not arrive" } },
    ]);
    expect(new Set(missingOf([...terrestrial, ...wanted.slice(3)], new Map()).map((m) => m.key)).size).toBe(
      4,
    );
  });

  test("the greater loss comes first", () => {
    const missing = missingOf(
      wanted,
      with_((w) =>
        w.plane === vl ? lost("cut", "f") : w.plane === vh && w.index === 0 ? lost("noisy", "g") : got(9),
      ),
    );
    expect(missing.map((m) => [m.why, m.count])).toEqual([
      ["cut", 3],
      ["noisy", 1],
    ]);
  });
});

describe("what a receiver gets of a service", () => {
  const channels = [0, -8, 3].map((levelOffsetDb, n) => ({
    channel: 30 + 3 * n,
    mode: "dvbt-64qam-2/3",
    levelOffsetDb,
  }));
  const set = (levelDbuv: number) =>
    evaluate(draw({ set: ["receiver-tv"], a: ["aerial-uhf", { levelDbuv, channels }] }, "a.out > set.in"));
  const receivedBy = (levelDbuv: number) => {
    const evaluation = set(levelDbuv);
    return receive(recordOf(evaluation, "set"), sourcesOf(evaluation))?.services[0];
  };

  // 60, 52 and 63 dBµV. kTB·R of 7.61 MHz at 290 K into 75 Ω is 2.2853 µV² (k = 1.380649·10⁻²³ J/K); with the tuner's
  // 8 dB, a factor of 6.3096, 14.419 µV² or 11.59 dBµV: the weakest has 52 − 11.59 = 40.41 dB.
  test("is told with its lowest and highest level, and its least C/N", () => {
    const tv = receivedBy(60);
    expect(tv).toMatchObject({ service: "tv", wanted: 3, got: 3, missing: [] });
    expect(tv?.levelMin).toBeCloseTo(52, 9);
    expect(tv?.levelMax).toBeCloseTo(63, 9);
    expect(tv?.cnMin).toBeCloseTo(40.41, 2);
  });

  // At 31, 23 and 34 dBµV only the second has less than the 18.7 dB that it needs: 23 − 11.59 = 11.41 dB.
  test("is told of those that it gets alone", () => {
    const tv = receivedBy(31);
    expect(tv).toMatchObject({ wanted: 3, got: 2, missing: [{ why: "noisy", count: 1 }] });
    expect(tv?.levelMin).toBeCloseTo(31, 9);
    expect(tv?.levelMax).toBeCloseTo(34, 9);
    expect(tv?.cnMin).toBeCloseTo(19.41, 2);
  });

  test("has no level where it gets none", () => {
    const tv = receivedBy(10);
    expect(tv).toMatchObject({ wanted: 3, got: 0, missing: [{ why: "noisy", count: 3 }] });
    expect(tv).not.toHaveProperty("levelMin");
    expect(tv).not.toHaveProperty("levelMax");
    expect(tv).not.toHaveProperty("cnMin");
  });

  test("is one by one what it can show, with its levels", () => {
    const record = recordOf(set(31), "set");
    const levels = carriersGot(record, "tv").map((c) => [c.port, c.origin, c.index, Math.round(c.levelDbuv)]);
    expect(levels).toEqual([
      ["in", "a", 0, 31],
      ["in", "a", 2, 34],
    ]);
    expect(carriersGot(record, "dab")).toEqual([]);
  });

  test("is not asked of what is no receiver", () => {
    const evaluation = set(60);
    expect(receive(recordOf(evaluation, "a"), sourcesOf(evaluation))).toBeUndefined();
  });
});

describe("sources", () => {
  const drawn = (levelDbuv: number) =>
    draw({ a: ["aerial-uhf", { levelDbuv }], b: ["aerial-dab"], d: ["dish"] }, "");
  const evaluation = evaluate(drawn(60));
  const [a, b, d] = sourcesOf(evaluation);
  if (!a || !b || !d) throw new Error("three sources expected");

  test("send the same where each of them does, whatever became of their labels", () => {
    const renamed = { ...a, part: { ...a.part, label: "Roof" } };
    expect(sendTheSame([a, b, d], [a, b, d])).toBe(true);
    expect(sendTheSame([a, b, d], [renamed, b, d])).toBe(true);
    expect(sendTheSame([], [])).toBe(true);
  });

  test("do not where one of them sends something else, is missing or is new", () => {
    const louder = evaluate(drawn(61), evaluation).record("a");
    if (!louder) throw new Error("no aerial");
    expect(sendTheSame([a, b, d], [louder, b, d])).toBe(false);
    expect(sendTheSame([b, a, d], [b, louder, d])).toBe(false);
    expect(sendTheSame([a, b, d], [a, b])).toBe(false);
    expect(sendTheSame([a, b], [a, b, d])).toBe(false);
    expect(sendTheSame([], [a])).toBe(false);
  });
});
