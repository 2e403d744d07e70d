/** Carriers on user bands: hand-made bands of one converter, the outcome known beforehand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { CarrierResults } from "../../src/findings/carrierResult.ts";
import type { TunedInput } from "../../src/findings/feedSuits.ts";
import { report } from "../../src/findings/report.ts";
import { addStackedResults, ownPowers, SAME_CENTRE_MHZ } from "../../src/findings/stackedReception.ts";
import type { ReceiverInput } from "../../src/parts/contract.ts";
import { messageOf } from "../../src/sentences/finding.ts";
import type { Band, Stack, StackStandard } from "../../src/signal/band.ts";
import type { SkyHalf } from "../../src/signal/carrier.ts";
import type { Offer } from "../../src/signal/control.ts";
import { draw } from "../draw.ts";
import { type BandSketch, bandOf, gridOf, IDEAL_STAGE, switchAt } from "../signal/bands.ts";
import { speaker as speakerByHand } from "./byHand.ts";

const satellite = (more: BandSketch) => bandOf({ from: "dish", service: "satellite", ...more });

/** Two transponders before the converter: 40 dBµV, with noise 30 dB and 25 dB below. */
const HELD = satellite({ grid: gridOf([11_000, 11_040], 30), level: 40, noise: [10, 31.6228] });

/** A receiver that speaks, on these user bands; without any: one in another mode. */
function speaker(part: string, userBands?: readonly number[], more: Partial<Offer> = {}): Offer {
  const request = { polarisation: "H" as const, half: "low" as const, ...(userBands ? { userBands } : {}) };
  return speakerByHand(part, { request, ...more });
}

/** A feed of user bands 1 at 1210 and 2 at 1420 MHz, 70 dBµV each, nothing lost to the line. */
function feed(
  offers: readonly Offer[],
  more: BandSketch = {},
): { readonly band: Band; readonly stack: Stack } {
  const stack: Stack = {
    standard: "EN 50494",
    standards: ["EN 50494", "EN 50494"],
    part: "lnb",
    port: "out",
    numbers: [1, 2],
    holds: [HELD],
    strays: new Set(),
    control: switchAt("lnb", null, offers),
    stage: { ...IDEAL_STAGE, levelDbuv: 70 },
    entryLevelDbuv: 70,
    entryNoiseRatio: 10 ** -2.5,
    entryInterferenceRatio: 0,
  };
  // 70 dBµV are 10⁷ µV²; the noise is that of the worse transponder, 25 dB below.
  return { band: satellite({ grid: gridOf([1210, 1420], 30), level: 70, noise: 10 ** 4.5, ...more }), stack };
}

const INPUT: ReceiverInput = {
  port: "sat",
  feed: "stacked",
  services: ["satellite"],
  tunesFromMHz: 950,
  tunesToMHz: 2150,
  tuners: 1,
  frontEnd: { noiseFigureDb: 8, overloadDbuv: 100, tuner: "silicon" },
  userBands: [{ number: 1, centreMHz: 1210 }],
};

const AMPLE_DB = 20;

/** What becomes of the first transponder. */
function first(
  offers: readonly Offer[],
  o: {
    readonly input?: Partial<ReceiverInput>;
    readonly alone?: boolean;
    readonly band?: BandSketch;
    readonly headroomDb?: number;
  } = {},
) {
  const tuned: TunedInput = { receiver: "rx", input: { ...INPUT, ...o.input }, alone: o.alone ?? false };
  const { band, stack } = feed(offers, o.band);
  const results: CarrierResults = new Map();
  addStackedResults(tuned, band, stack, o.headroomDb ?? AMPLE_DB, results);
  expect(results.size).toBe(2);
  return results.get("dish#0");
}

describe("a transponder on a user band", () => {
  // C/N before the converter 30 dB; the tuner's 8 dB are nothing beside noise of 10⁴ µV².
  test("has its own C/N, not that of the worst one held", () => {
    const result = first([speaker("rx", [1])]);
    expect(result).toMatchObject({ got: true, port: "sat", userBand: 1, levelDbuv: 70, requiredDb: 18.7 });
    expect(result?.got ? result.cnDb : 0).toBeCloseTo(30, 1);
  });

  test("comes on the other user band as well", () => {
    const input = { userBands: [{ number: 2, centreMHz: 1420 }] };
    expect(first([speaker("rx", [2])], { input })).toMatchObject({ got: true, userBand: 2 });
  });

  // User band 2 is 20 dB weaker here: the better of two tuners is told.
  test("of two tuners the better counts", () => {
    const input = {
      userBands: [
        { number: 2, centreMHz: 1420 },
        { number: 1, centreMHz: 1210 },
      ],
    };
    const band = { level: [70, 50] };
    expect(first([speaker("rx", [1, 2])], { input, band })).toMatchObject({ got: true, userBand: 1 });
  });

  // 10⁷ µV² with noise of 10⁶ beside what the converter puts in: 10 dB and less.
  // 40 dBµV on the user band, its own noise 30 dB below: 10 µV². The tuner's 8 dB over kTB·R of 30 MHz, 9.009 µV², add
  // 5.3096 · 9.009 = 47.83 µV²: 10·log10(10⁴/57.83) = 22.38 dB.
  test("has the tuner's noise on top where it is weak", () => {
    const result = first([speaker("rx", [1])], { band: { level: 40, noise: 10 ** 1.5 } });
    expect(result?.got ? result.cnDb : 0).toBeCloseTo(22.38, 2);
  });

  test("is blocked where too much comes in together, noise or not", () => {
    const headroomDb = -0.1;
    const blocked = {
      got: false,
      why: "blocked",
      reason: { kind: "blocked", service: "satellite", port: "sat", by: "total" },
    };
    expect(first([speaker("rx", [1])], { headroomDb })).toEqual(blocked);
    expect(first([speaker("rx", [1])], { headroomDb, band: { noise: 10 ** 6 } })).toEqual(blocked);
    expect(first([speaker("rx", [1])])).toMatchObject({ got: true, headroom: { totalDb: AMPLE_DB } });
  });

  test("is noisy where the line adds too much", () => {
    expect(first([speaker("rx", [1])], { band: { noise: 10 ** 6 } })).toMatchObject({ why: "noisy" });
  });
});

describe("noise and interference of one transponder on a user band", () => {
  // Held: 40 dBµV = 10⁴ µV², noise 100 (a hundredth), interference 20 (two thousandths).
  const held = satellite({ grid: gridOf([11_000], 30), level: 40, noise: 100, interference: 20 });
  const powers = (noise: number, interference: number) => {
    const { stack } = feed([]);
    // The worst transponder: a fiftieth of noise, a thousandth of interference.
    const worst = { ...stack, holds: [held], entryNoiseRatio: 0.02, entryInterferenceRatio: 0.001 };
    const band = satellite({ grid: gridOf([1210, 1420], 30), level: [99, 70], noise, interference });
    return ownPowers({ band, stack: worst, held, i: 0 }, 1);
  };

  // On 70 dBµV = 10⁷ µV² the worst one leaves 200 000 of noise and 10 000 of interference; what is beyond is the line's.
  test("are its own shares and what the line adds", () => {
    const { noise, interference } = powers(205_000, 13_000);
    expect(noise).toBeCloseTo(5000 + 100_000, 3);
    expect(interference).toBeCloseTo(3000 + 20_000, 3);
  });

  test("are never less than its own", () => {
    const { noise, interference } = powers(150_000, 5000);
    expect(noise).toBeCloseTo(100_000, 3);
    expect(interference).toBeCloseTo(20_000, 3);
  });
});

describe("why a user band does not serve", () => {
  test("a receiver that knows no user bands cannot use the feed", () => {
    const reason = { kind: "single-cable feed on a plain input" };
    const { userBands: _, ...plain } = INPUT;
    expect(first([speaker("rx")], { input: { ...plain, feed: "switched" } })).toMatchObject({
      why: "wrong feed",
      reason,
    });
  });

  test("nothing is set", () => {
    expect(first([speaker("rx", [1])], { input: { userBands: [] } })).toEqual({
      got: false,
      why: "wrong feed",
      reason: { kind: "no user band set" },
    });
  });

  const noMessage = {
    why: "not selectable",
    reason: { kind: "no message", part: "lnb" },
    culprit: { part: "lnb" },
  };

  test.each([
    ["nobody speaks", []],
    ["only another speaks", [speaker("rx2", [1])]],
    ["only another input of it speaks", [speaker("rx", [1], { port: "sat2" })]],
    ["its tone does not arrive", [speaker("rx", [1], { toneArrives: false })]],
    ["it is not set to user bands", [speaker("rx")]],
  ] as const)("its message is not heard: %s", (_, offers) => {
    expect(first(offers)).toMatchObject(noMessage);
  });

  test("the converter has no such user band", () => {
    const input = { userBands: [{ number: 5, centreMHz: 1210 }] };
    expect(first([speaker("rx", [5])], { input })).toEqual({
      got: false,
      why: "wrong feed",
      reason: { kind: "no such user band", part: "lnb", userBand: 5 },
      userBand: 5,
    });
  });

  // Both mean the same band when their centres are 2 MHz apart or less, upwards or downwards.
  test.each([
    [1210 + SAME_CENTRE_MHZ, true],
    [1210 - SAME_CENTRE_MHZ, true],
    [1213, false],
    [1207, false],
  ])("the receiver has it at %i MHz instead of 1210: is it got? %s", (centreMHz, got) => {
    const result = first([speaker("rx", [1])], { input: { userBands: [{ number: 1, centreMHz }] } });
    expect(result?.got).toBe(got);
    if (!got)
      expect(result).toMatchObject({
        why: "wrong feed",
        reason: { kind: "other centre", part: "lnb", userBand: 1, hereMHz: centreMHz, thereMHz: 1210 },
      });
  });

  // EN 50494 addresses 8 user bands, EN 50607 32, as quoted in the scope of the latter; the feed is of EN 50494.
  describe("the messages of the receiver and of the unit", () => {
    const got = (sends: StackStandard, knows: StackStandard, number = 1) => {
      const { band, stack } = feed([speaker("rx", [number])]);
      const of = { ...stack, numbers: [1, 9], standards: [knows, knows] };
      const userBands = [{ number, centreMHz: number === 1 ? 1210 : 1420 }];
      const results: CarrierResults = new Map();
      const tuned = { receiver: "rx", input: { ...INPUT, standard: sends, userBands }, alone: false };
      addStackedResults(tuned, band, of, AMPLE_DB, results);
      return results.get("dish#0");
    };

    test.each([
      ["EN 50494", "EN 50494", true],
      ["EN 50607", "EN 50607", true],
      ["EN 50494", "EN 50607", false],
      ["EN 50607", "EN 50494", false],
      ["both", "EN 50494", true],
      ["both", "EN 50607", true],
      ["EN 50494", "both", true],
      ["EN 50607", "both", true],
      ["both", "both", true],
    ] as const)("%s to %s: is it got? %s", (sends, knows, isGot) => {
      const result = got(sends, knows);
      expect(result?.got).toBe(isGot);
      if (!isGot)
        expect(result).toEqual({
          got: false,
          why: "wrong feed",
          reason: { kind: "other messages", part: "lnb", userBand: 1, sends, knows },
          userBand: 1,
        });
    });

    test.each([
      ["EN 50494", "both", false],
      ["EN 50607", "both", true],
      ["both", "both", true],
      ["both", "EN 50607", true],
      ["both", "EN 50494", false],
    ] as const)("%s to %s on user band 9: is it got? %s", (sends, knows, isGot) => {
      expect(got(sends, knows, 9)?.got).toBe(isGot);
    });
  });

  // Asked for behind 10 000 MHz, 11 000 MHz is 1000 MHz; the unit has there what is sent at 10 750 MHz.
  describe("the oscillator of the receiver’s menu is another than that of the unit", () => {
    const reasonWith = (half: SkyHalf | undefined, real: number, menuLowMHz: number) => {
      const { band, stack } = feed([speaker("rx", [1])]);
      const held: Band = { ...HELD, shifts: [real], ...(half ? { half } : {}) };
      const results: CarrierResults = new Map();
      const input = { ...INPUT, menu: { lowMHz: menuLowMHz, highMHz: 10_600 } };
      const tuned = { receiver: "rx", input, alone: false };
      addStackedResults(tuned, band, { ...stack, holds: [held] }, AMPLE_DB, results);
      const result = results.get("dish#0");
      return result?.got === false ? result.reason : "got";
    };

    test("it gets what stands beside", () => {
      const reason = { kind: "other oscillator", menuMHz: 10_000, realMHz: 9750 };
      expect(reasonWith("low", 9750, 10_000)).toEqual(reason);
      expect(reasonWith("low", 10_000, 9750)).toEqual({ ...reason, menuMHz: 9750, realMHz: 10_000 });
      expect(reasonWith("low", 10_000, 10_000)).toBe("got");
    });

    test("behind a wideband LNB the unit reckons with those of a universal one", () => {
      expect(reasonWith(undefined, 10_400, 9750)).toBe("got");
      expect(reasonWith(undefined, 10_400, 10_000)).toMatchObject({ menuMHz: 10_000, realMHz: 9750 });
    });
  });

  test("a filter on the way stops it", () => {
    const cut = { cut: Uint16Array.of(1, 0), cuts: [{ part: "filter", reason: "filter" }] } as const;
    expect(first([speaker("rx", [1])], { band: { more: cut } })).toMatchObject({
      why: "cut",
      reason: { kind: "cut", part: "filter", cut: "filter" },
      userBand: 1,
    });
  });

  test("another receiver has the same one: alone it would be got", () => {
    const offers = [speaker("rx2", [1]), speaker("rx", [1])];
    expect(first(offers)).toMatchObject({
      why: "not selectable",
      reason: { kind: "user band used twice", by: "rx2", userBand: 1 },
      culprit: { part: "rx2" },
      userBand: 1,
    });
    expect(first(offers, { alone: true })).toMatchObject({ got: true });
  });

  test("so does a second input of the same receiver, or a second tuner on the same input", () => {
    const twice = { reason: { kind: "user band used twice", by: "rx", userBand: 1 } };
    expect(first([speaker("rx", [1]), speaker("rx", [1], { port: "sat2" })])).toMatchObject(twice);
    expect(first([speaker("rx", [1, 1])])).toMatchObject(twice);
    expect(first([speaker("rx", [1, 2, 2])])).toMatchObject({ got: true });
  });

  test("a receiver on another user band is no matter", () => {
    expect(first([speaker("rx", [1]), speaker("rx2", [2])])).toMatchObject({ got: true });
  });

  test("a receiver in another mode holds the line, but for one who is alone", () => {
    const offers = [speaker("rx2"), speaker("rx", [1])];
    expect(first(offers)).toMatchObject({
      why: "not selectable",
      reason: { kind: "line held", by: "rx2" },
      culprit: { part: "rx2" },
    });
    expect(first(offers, { alone: true })).toMatchObject({ got: true });
  });

  // EN 50494, as quoted: receivers rest at 13 V and rise to 18 V for a message; a standing 18 V blocks the bus.
  test("a mains unit of 14 V on the line holds nothing, one of 18 V holds it for everybody", () => {
    const mains = (volts: number) => {
      const { request: _, ...unit } = speaker("psu", undefined, { kind: "plain", volts });
      return unit;
    };
    expect(first([mains(14), speaker("rx", [1])])).toMatchObject({ got: true });
    const held = { why: "not selectable", reason: { kind: "line held", by: "psu", volts: 18 } };
    expect(first([mains(18), speaker("rx", [1])])).toMatchObject(held);
    expect(first([mains(18), speaker("rx", [1])], { alone: true })).toMatchObject(held);
    expect(first([{ ...mains(18), dormant: true }, speaker("rx", [1])])).toMatchObject({ got: true });
  });
});

test("a transponder that was stopped before the converter is missing for that, whatever the user band", () => {
  const cut = { cut: Uint16Array.of(1), cuts: [{ part: "dish", reason: "stopped" }] } as const;
  const held = satellite({ grid: gridOf([11_000], 30), level: 40, noise: 10, more: cut });
  const { band, stack } = feed([speaker("rx", [1])]);
  const results: CarrierResults = new Map();
  addStackedResults(
    { receiver: "rx", input: INPUT, alone: false },
    band,
    { ...stack, holds: [held] },
    AMPLE_DB,
    results,
  );
  expect([...results]).toEqual([
    [
      "dish#0",
      {
        got: false,
        why: "cut",
        reason: { kind: "cut", part: "dish", cut: "stopped" },
        culprit: { part: "dish" },
      },
    ],
  ]);
});

// Public tables of units with 4 and 12 user bands: 1 to 4 obey EN 50494, 5 to 16 EN 50607 (common practice, no source).
describe("a unit of 4 SCR and 12 dSCR user bands", () => {
  const CENTRES = { 1: 1210, 4: 2040, 5: 984, 16: 1494 } as const;
  type Tuned = readonly (keyof typeof CENTRES)[];
  const job = (messages: StackStandard, tuned: Tuned, unit: "LNB" | "multiswitch") => {
    const userBands = tuned.map((number) => ({ number, centreMHz: CENTRES[number] }));
    const receiver = ["receiver-stacked", { messages, tuners: tuned.length, userBands }] as const;
    const evaluation = evaluate(
      unit === "LNB"
        ? draw(
            { d: ["dish"], lnb: ["lnb-stacked", { bandSet: "sixteen" }], c: ["cable"], r: receiver },
            "d.sky > lnb.sky, lnb.out > c.in, c.out > r.sat",
          )
        : draw(
            {
              d: ["dish"],
              lnb: ["lnb-quattro"],
              ms: ["multiswitch", { terrestrial: false, singleCable: [{ bandSet: "sixteen" }] }],
              c: ["cable"],
              r: receiver,
            },
            "d.sky > lnb.sky, lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl, lnb.hh > ms.hh, ms.sc1 > c.in, c.out > r.sat",
          ),
    );
    const { verdicts, causes } = report(evaluation);
    const verdict = verdicts.find(({ part }) => part === "r");
    return { verdict, words: causes.map(({ root }) => messageOf(root, evaluation)) };
  };

  describe.each(["LNB", "multiswitch"] as const)("in the shape of a %s", (unit) => {
    test.each([
      { sends: "EN 50494", tuned: [1, 4] },
      { sends: "EN 50607", tuned: [5, 16] },
      { sends: "both", tuned: [4, 5] },
    ] as const)("gives $tuned to a receiver that sends $sends", ({ sends, tuned }) => {
      const { verdict, words } = job(sends, tuned, unit);
      expect(words).toEqual([]);
      expect(verdict?.tuners.map(({ got }) => got)).toEqual([80, 80]);
    });

    test.each([
      {
        sends: "EN 50494",
        tuned: [1, 5],
        lost: 5,
        says: "sends SCR messages, and user band 5",
        obeys: "dSCR",
      },
      {
        sends: "EN 50607",
        tuned: [16, 4],
        lost: 4,
        says: "sends dSCR messages, and user band 4",
        obeys: "SCR",
      },
    ] as const)("does not obey $sends on user band $lost", ({ sends, tuned, says, obeys }) => {
      const { verdict, words } = job(sends, tuned, unit);
      expect(verdict).toMatchObject({ state: "fails", tuners: [{ got: 80 }, { got: 0 }] });
      expect(words).toHaveLength(1);
      expect(words[0]).toContain(says);
      expect(words[0]).toContain(`obeys ${obeys} only`);
    });
  });
});
