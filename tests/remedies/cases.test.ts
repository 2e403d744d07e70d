/**
 * CU: cases of the trade: what is wrong, what must be said, and which cure must be among the first three.
 * Causes and cures are common practice, no source.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { exampleOf } from "../../src/design/examples.ts";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { USUAL_SETTINGS } from "../../src/design/settings.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { CURABLE_RULES } from "../../src/remedies/candidates/curable.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { draw, type Sketch } from "../draw.ts";

type Case = {
  readonly fault: string;
  readonly design: Design;
  /** Rule that must speak. */
  readonly rule: string;
  /** Ideas of which one must be among the first three proposals. */
  readonly cure: string;
};

const sky = { dish: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;
const rx = (options = {}): readonly [string, Record<string, unknown>] => ["receiver-sat", options];

function example(key: string): Design {
  const found = exampleOf(key);
  if (!found) throw new Error(`no example ${key}`);
  return found.load();
}

function byLaw(design: Design): Design {
  return { ...design, settings: { ...USUAL_SETTINGS, limits: "rd346" } };
}

const CENTRES_MHZ = [1210, 1420, 1680, 2040];
const stackedSet = (...numbers: readonly number[]): readonly [string, Record<string, unknown>] => [
  "receiver-stacked",
  {
    tuners: numbers.length,
    userBands: numbers.map((number) => ({ number, centreMHz: CENTRES_MHZ[number - 1] ?? 0 })),
  },
];

/** Every output of the multiswitch is taken, and one flat has a twin receiver. */
const blockOfFour = (wires: string, more: Sketch = {}): Design =>
  draw(
    {
      ...sky,
      lnb: ["lnb-quattro"],
      ms: ["multiswitch", { outputs: 4, terrestrial: false }],
      ...Object.fromEntries([1, 2, 3, 4].map((n) => [`d${n}`, ["cable", { lengthM: 16 + 2 * n }] as const])),
      f1: rx(),
      twin: ["receiver-sat-twin"],
      f3: rx({ polarisation: "H" }),
      f4: rx({ half: "high" }),
      ...more,
    },
    `dish.sky > lnb.sky, lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl, lnb.hh > ms.hh, ms.out1 > d1.in, d1.out > f1.sat, ms.out3 > d3.in, d3.out > f3.sat, ms.out4 > d4.in, d4.out > f4.sat, ${wires}`,
  );

const multiswitch = (wires: string): Design =>
  draw(
    {
      ...sky,
      lnb: ["lnb-quattro"],
      ms: ["multiswitch", { terrestrial: false }],
      r1: rx(),
      r2: rx({ polarisation: "H" }),
    },
    `dish.sky > lnb.sky, ${wires}, ms.out1 > r1.sat, ms.out2 > r2.sat`,
  );

/** One cable, a splitter, two single-cable receivers. */
const singleCable = (first: Record<string, unknown>, second: Record<string, unknown>): Design =>
  draw(
    {
      ...sky,
      lnb: ["lnb-stacked"],
      split: ["splitter", { dc: "all" }],
      r1: ["receiver-stacked", first],
      r2: ["receiver-stacked", second],
    },
    "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
  );

/** Head, cable, three riser plates. */
const riser = (losses: readonly number[], end: "end" | "open", gainDb = 20): Design =>
  draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 62 }],
      amp: ["amp-distribution", { gainDb, outputDbuv: 108 }],
      p1: ["outlet-through", { tapLossDb: losses[0] ?? 14 }],
      c1: ["cable", { lengthM: 15 }],
      p2: ["outlet-through", { tapLossDb: losses[1] ?? 14 }],
      c2: ["cable", { lengthM: 15 }],
      p3: end === "end" ? ["outlet-end"] : ["outlet-through"],
    },
    "uhf.out > amp.in, amp.out > p1.in, p1.out > c1.in, c1.out > p2.in, p2.out > c2.in, c2.out > p3.in",
  );

const CASES: readonly Case[] = [
  {
    fault: "a wideband LNB on the old shared cables of a house",
    design: example("house-wideband-fails"),
    rule: "shared-frequencies",
    cure: "stack-under-roof",
  },
  {
    fault: "the same house, asked about the diplexers that cut the feed",
    design: example("house-wideband-fails"),
    rule: "band-cut",
    cure: "separate-cables",
  },
  {
    fault: "two receivers behind a splitter on a switched output",
    design: example("split-switched-output"),
    rule: "switched-output-shared",
    cure: "own-outputs",
  },
  {
    fault: "the same two receivers, where a channel-stacking LNB saves the second cable",
    design: example("split-switched-output"),
    rule: "plane-missing",
    cure: "stacked-converter",
  },
  {
    fault: "the same two receivers, with a multiswitch in the splitter's place",
    design: example("split-switched-output"),
    rule: "switched-output-shared",
    cure: "multiswitch",
  },
  {
    fault: "horizontal lost over a long cable of copper-clad steel",
    design: example("long-steel-drop"),
    rule: "command-lost",
    cure: "new-cable",
  },
  {
    fault: "a recorder with one of its two leads",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-universal", { outputs: "2" }],
        c: ["cable", { lengthM: 12 }],
        r: ["receiver-sat-twin"],
      },
      "dish.sky > lnb.sky, lnb.out1 > c.in, c.out > r.sat1",
    ),
    rule: "not-connected",
    cure: "second-cable",
  },
  {
    fault: "a DC block between receiver and LNB",
    design: draw(
      { ...sky, lnb: ["lnb-universal"], block: ["dc-block"], r: rx() },
      "dish.sky > lnb.sky, lnb.out > block.in, block.out > r.sat",
    ),
    rule: "no-supply",
    cure: "block-away",
  },
  {
    fault: "a splitter that passes no supply before a channel-stacking LNB",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "none" }],
        r1: ["receiver-stacked"],
        r2: [
          "receiver-stacked",
          {
            userBands: [
              { number: 3, centreMHz: 1680 },
              { number: 4, centreMHz: 2040 },
            ],
          },
        ],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ),
    rule: "no-supply",
    cure: "supply-path",
  },
  {
    fault: "a diplexer that passes no supply",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-universal"],
        uhf: ["aerial-uhf"],
        dip: ["diplexer-combine", { dc: "none" }],
        plate: ["outlet-diplexed"],
        r: rx(),
        tv: ["receiver-tv"],
      },
      "dish.sky > lnb.sky, lnb.out > dip.sat, uhf.out > dip.tv, dip.out > plate.in, plate.sat > r.sat, plate.tv > tv.in",
    ),
    rule: "no-supply",
    cure: "supply-path",
  },
  {
    fault: "a masthead amplifier that nobody feeds",
    design: draw(
      { uhf: ["aerial-uhf", { levelDbuv: 45 }], mast: ["amp-masthead"], c: ["cable"], tv: ["receiver-tv"] },
      "uhf.out > mast.in, mast.out > c.in, c.out > tv.in",
    ),
    rule: "no-supply",
    cure: "power-inserter",
  },
  {
    fault: "a power inserter whose mains is off",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 45 }],
        mast: ["amp-masthead"],
        psu: ["power-inserter", { switchedOn: false }],
        tv: ["receiver-tv"],
      },
      "uhf.out > mast.in, mast.out > psu.in, psu.out > tv.in",
    ),
    rule: "no-supply",
    cure: "mend",
  },
  {
    fault: "a loft amplifier that could feed the masthead amplifier, but is not set to",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 45 }],
        mast: ["amp-masthead"],
        amp: ["amp-distribution"],
        tv: ["receiver-tv"],
      },
      "uhf.out > mast.in, mast.out > amp.in, amp.out > tv.in",
    ),
    rule: "no-supply",
    cure: "supply-on",
  },
  {
    fault: "a joint whose inner conductor is broken",
    design: draw(
      { ...sky, lnb: ["lnb-universal"], bad: ["bad-joint", { fault: "open" }], r: rx() },
      "dish.sky > lnb.sky, lnb.out > bad.in, bad.out > r.sat",
    ),
    rule: "no-supply",
    cure: "sound-joint",
  },
  {
    fault: "a joint that shorts the cable",
    design: draw(
      { ...sky, lnb: ["lnb-universal"], bad: ["bad-joint", { fault: "shorted" }], r: rx() },
      "dish.sky > lnb.sky, lnb.out > bad.in, bad.out > r.sat",
    ),
    rule: "supply-overloaded",
    cure: "sound-joint",
  },
  {
    fault: "a load without a capacitor in an input that carries supply",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-universal"],
        join: ["combiner", { dc: "all" }],
        end: ["load", { place: "input", dcBlocked: false }],
        r: rx(),
      },
      "dish.sky > lnb.sky, lnb.out > join.in1, end.out > join.in2, join.out > r.sat",
    ),
    rule: "supply-overloaded",
    cure: "blocked-load",
  },
  {
    fault: "a wideband feed through plates that separate TV and satellite",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-wideband"],
        p1: ["outlet-diplexed"],
        p2: ["outlet-diplexed"],
        r: ["receiver-hybrid"],
      },
      "dish.sky > lnb.sky, lnb.v > p1.in, lnb.h > p2.in, p1.sat > r.v, p2.sat > r.h",
    ),
    rule: "band-cut",
    cure: "other-plate",
  },
  {
    fault: "a TV splitter on a single-cable line, where the upper user bands do not pass",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "all", range: "tv" }],
        r1: ["receiver-stacked"],
        r2: [
          "receiver-stacked",
          {
            userBands: [
              { number: 3, centreMHz: 1680 },
              { number: 4, centreMHz: 2040 },
            ],
          },
        ],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ),
    rule: "receiver-misses",
    cure: "wider-type",
  },
  {
    fault: "two single-cable receivers on the same user bands",
    design: singleCable({}, {}),
    rule: "user-band-conflict",
    cure: "own-user-bands",
  },
  {
    fault: "a single-cable receiver left in universal mode",
    design: singleCable({}, { mode: "universal" }),
    rule: "user-band-conflict",
    cure: "own-user-bands",
  },
  {
    fault: "a universal receiver on a single-cable line",
    design: draw({ ...sky, lnb: ["lnb-stacked"], r: rx() }, "dish.sky > lnb.sky, lnb.out > r.sat"),
    rule: "wrong-feed",
    cure: "other-receiver",
  },
  {
    fault: "a recorder with more tuners than user bands",
    design: draw(
      { ...sky, lnb: ["lnb-stacked"], r: ["receiver-stacked", { tuners: 4 }] },
      "dish.sky > lnb.sky, lnb.out > r.sat",
    ),
    rule: "too-many-tuners",
    cure: "own-user-bands",
  },
  {
    fault: "universal receivers on a wideband LNB",
    design: draw(
      { ...sky, lnb: ["lnb-wideband"], r1: rx(), r2: rx() },
      "dish.sky > lnb.sky, lnb.v > r1.sat, lnb.h > r2.sat",
    ),
    rule: "wrong-feed",
    cure: "universal-converter",
  },
  {
    fault: "a wideband receiver on two switched outputs",
    design: draw(
      { ...sky, lnb: ["lnb-universal", { outputs: "2" }], r: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.out1 > r.v, lnb.out2 > r.h",
    ),
    rule: "wrong-feed",
    cure: "wideband-converter",
  },
  {
    fault: "two cables swapped at a multiswitch",
    design: multiswitch("lnb.vl > ms.vl, lnb.vh > ms.hl, lnb.hl > ms.vh, lnb.hh > ms.hh"),
    rule: "wrong-quadrant",
    cure: "swap-leads",
  },
  {
    fault: "a quad LNB where the multiswitch needs a quattro",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-universal", { outputs: "4" }],
        ms: ["multiswitch", { terrestrial: false }],
        r: rx(),
      },
      "dish.sky > lnb.sky, lnb.out1 > ms.vl, lnb.out2 > ms.vh, lnb.out3 > ms.hl, lnb.out4 > ms.hh, ms.out1 > r.sat",
    ),
    rule: "wrong-quadrant",
    cure: "quattro-converter",
  },
  {
    fault: "vertical and horizontal swapped at a wideband receiver",
    design: draw(
      { ...sky, lnb: ["lnb-wideband"], r: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > r.h, lnb.h > r.v",
    ),
    rule: "wrong-feed",
    cure: "swap-leads",
  },
  {
    fault: "one cable only to a wideband receiver",
    design: draw(
      { ...sky, lnb: ["lnb-wideband"], c: ["cable", { lengthM: 12 }], r: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > c.in, c.out > r.v",
    ),
    rule: "plane-missing",
    cure: "second-cable",
  },
  {
    fault: "phone masts that drive the loft amplifier",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 60 }],
        mast: ["pick-up", { mastDbuv: 92 }],
        amp: ["amp-distribution", { gainDb: 20, uhfTo: "862" }],
        pad: ["attenuator", { lossDb: 10 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > mast.in, mast.out > amp.in, amp.out > pad.in, pad.out > tv.in",
    ),
    rule: "overload",
    cure: "phone-filter",
  },
  {
    fault: "an amplifier turned up too far",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 72 }],
        amp: ["amp-distribution", { gainDb: 38 }],
        split: ["splitter", { ways: 8 }],
        c: ["cable", { lengthM: 60 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > amp.in, amp.out > split.in, split.out1 > c.in, c.out > tv.in",
    ),
    rule: "overload",
    cure: "gain",
  },
  {
    fault: "too much level at one socket near the transmitter",
    design: draw(
      { uhf: ["aerial-uhf", { levelDbuv: 84 }], plate: ["outlet-tv"], tv: ["receiver-tv"] },
      "uhf.out > plate.in, plate.tv > tv.in",
    ),
    rule: "level-limits",
    cure: "pad",
  },
  {
    fault: "satellite too weak at the end of a very long cable",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-universal"],
        c: ["cable", { lengthM: 140, grade: "copper-1.25" }],
        plate: ["outlet-sat"],
        r: rx(),
      },
      "dish.sky > lnb.sky, lnb.out > c.in, c.out > plate.in, plate.sat > r.sat",
    ),
    rule: "level-limits",
    cure: "line-amplifier",
  },
  {
    fault: "the first plate of a riser lets too little down",
    design: riser([30, 14], "end", 12),
    rule: "level-limits",
    cure: "tap-value",
  },
  {
    fault: "a riser whose last plate is left open",
    design: riser([14, 14], "open"),
    rule: "open-end",
    cure: "load",
  },
  {
    fault: "a weak aerial, a long cable, and only then the amplifier",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 40 }],
        c: ["cable", { lengthM: 60 }],
        amp: ["amp-distribution", { gainDb: 24 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > c.in, c.out > amp.in, amp.out > tv.in",
    ),
    rule: "low-carrier-to-noise",
    cure: "masthead",
  },
  {
    fault: "a dish that a storm has turned",
    design: draw(
      { dish: ["dish", { pointingLossDb: 9 }], lnb: ["lnb-universal"], r: rx() },
      "dish.sky > lnb.sky, lnb.out > r.sat",
    ),
    rule: "receiver-misses",
    cure: "aim-dish",
  },
  {
    fault: "a corroded joint before a socket",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 58 }],
        bad: ["bad-joint", { lossDb: 18 }],
        plate: ["outlet-tv"],
        tv: ["receiver-tv"],
      },
      "uhf.out > bad.in, bad.out > plate.in, plate.tv > tv.in",
    ),
    rule: "level-limits",
    cure: "sound-joint",
  },
  {
    fault: "an amplifier led back into itself",
    design: draw(
      {
        uhf: ["aerial-uhf"],
        join: ["combiner"],
        amp: ["amp-distribution"],
        split: ["splitter"],
        tv: ["receiver-tv"],
      },
      "uhf.out > join.in1, join.out > amp.in, amp.out > split.in, split.out1 > tv.in, split.out2 > join.in2",
    ),
    rule: "loop",
    cure: "wire-off",
  },
  {
    fault: "an aerial on one lead of a wideband LNB",
    design: draw(
      {
        ...sky,
        uhf: ["aerial-uhf", { levelDbuv: 68 }],
        lnb: ["lnb-wideband"],
        up: ["diplexer-combine"],
        v: ["cable", { lengthM: 15 }],
        h: ["cable", { lengthM: 15 }],
        down: ["diplexer-split"],
        tv: ["receiver-tv"],
        rec: ["receiver-hybrid"],
      },
      "dish.sky > lnb.sky, uhf.out > up.tv, lnb.v > up.sat, up.out > v.in, v.out > down.in, down.tv > tv.in, down.sat > rec.v, lnb.h > h.in, h.out > rec.h",
    ),
    rule: "wideband-shared",
    cure: "aerial-cable",
  },
  {
    fault: "a second stacking converter on a riser, with the user bands of the first",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-quattro"],
        ...Object.fromEntries([1, 2, 3, 4].map((n) => [`t${n}`, ["splitter"] as const])),
        a: ["stacking-converter", { outputs: 1, terrestrial: false, bandSet: "four" }],
        b: ["stacking-converter", { outputs: 1, terrestrial: false, bandSet: "four", feedsLnb: false }],
        join: ["combiner", { dc: "all" }],
        k: ["cable", { lengthM: 12 }],
        s: ["splitter", { ways: 3 }],
        r1: stackedSet(1, 2),
        r2: stackedSet(3, 4),
        r3: stackedSet(1, 2),
      },
      `dish.sky > lnb.sky, ${["vl", "vh", "hl", "hh"].map((q, i) => `lnb.${q} > t${i + 1}.in, t${i + 1}.out1 > a.${q}, t${i + 1}.out2 > b.${q}`).join(", ")}, a.out > join.in1, b.out > join.in2, join.out > k.in, k.out > s.in, s.out1 > r1.sat, s.out2 > r2.sat, s.out3 > r3.sat`,
    ),
    rule: "shared-frequencies",
    cure: "other-user-bands",
  },
  {
    fault: "a twin receiver on a splitter, in a block with one cable to each flat",
    design: blockOfFour("ms.out2 > d2.in, d2.out > s.in, s.out1 > twin.sat1, s.out2 > twin.sat2", {
      s: ["splitter"],
    }),
    rule: "switched-output-shared",
    cure: "stack-for-switch",
  },
  {
    fault: "a twin receiver with one of its leads, in a block with one cable to each flat",
    design: blockOfFour("ms.out2 > d2.in, d2.out > twin.sat1"),
    rule: "not-connected",
    cure: "stack-for-switch",
  },
  {
    fault: "a quattro LNB before a stacking converter made for a wideband one",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-quattro"],
        unit: ["stacking-converter", { feed: "wideband", outputs: 1, terrestrial: false }],
        k: ["cable", { lengthM: 20 }],
        r: stackedSet(1, 2),
      },
      "dish.sky > lnb.sky, lnb.vl > unit.v, lnb.hl > unit.h, unit.out > k.in, k.out > r.sat",
    ),
    rule: "wrong-quadrant",
    cure: "wideband-converter",
  },
  {
    fault: "one aerial joined to itself by two ways",
    design: draw(
      { uhf: ["aerial-uhf"], split: ["splitter"], join: ["combiner"], tv: ["receiver-tv"] },
      "uhf.out > split.in, split.out1 > join.in1, split.out2 > join.in2, join.out > tv.in",
    ),
    rule: "same-signal-twice",
    cure: "wire-off",
  },
  {
    fault: "a resistive splitter between two flats",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 70 }],
        split: ["splitter", { type: "resistive" }],
        c1: ["cable", { lengthM: 20 }],
        c2: ["cable", { lengthM: 20 }],
        p1: ["outlet-tv", { dwelling: "1" }],
        p2: ["outlet-tv", { dwelling: "2" }],
      },
      "uhf.out > split.in, split.out1 > c1.in, split.out2 > c2.in, c1.out > p1.in, c2.out > p2.in",
    ),
    rule: "dwelling-isolation",
    cure: "ferrite-splitter",
  },
  {
    fault: "too much slope on a long run, by the limits of the Spanish law",
    design: byLaw(
      draw(
        {
          ...sky,
          lnb: ["lnb-universal"],
          amp: ["amp-if", { gainDb: 30, slopeDb: 0 }],
          c: ["cable", { lengthM: 190, grade: "copper-0.8" }],
          r: rx({ volts13: 14, volts18: 19 }),
        },
        "dish.sky > lnb.sky, lnb.out > amp.in, amp.out > c.in, c.out > r.sat",
      ),
    ),
    rule: "slope",
    cure: "amplifier-slope",
  },
  {
    fault: "a wideband feed over a long cable, strong at the bottom and weak at the top",
    design: draw(
      { ...sky, lnb: ["lnb-wideband"], c: ["cable", { lengthM: 95 }], r: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > c.in, c.out > r.v, lnb.h > r.h",
    ),
    rule: "level-difference",
    cure: "cable-grade",
  },
  {
    fault: "a line amplifier left before a stacking converter that is now near",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-quattro"],
        ...Object.fromEntries([1, 2, 3, 4].map((n) => [`k${n}`, ["cable", { lengthM: 10 }] as const])),
        amp: ["amp-if", { gainDb: 24 }],
        unit: ["stacking-converter", { terrestrial: false, outputs: 1, bandSet: "four" }],
        down: ["cable", { lengthM: 12 }],
        r: stackedSet(1, 2),
      },
      "dish.sky > lnb.sky, lnb.vl > k1.in, lnb.vh > k2.in, lnb.hl > k3.in, lnb.hh > amp.in, amp.out > k4.in, k1.out > unit.vl, k2.out > unit.vh, k3.out > unit.hl, k4.out > unit.hh, unit.out > down.in, down.out > r.sat",
    ),
    rule: "stacking-input",
    cure: "amplifier-away",
  },
  {
    fault: "a dish motor whose receiver is not told of it",
    design: draw(
      {
        ...sky,
        lnb: ["lnb-universal"],
        motor: ["dish-motor"],
        k: ["cable", { lengthM: 15 }],
        r: rx(),
      },
      "dish.sky > lnb.sky, lnb.out > motor.in, motor.out > k.in, k.out > r.sat",
    ),
    rule: "motor-line",
    cure: "mend",
  },
  {
    fault: "one channel of a mast nearby that blocks the weak one beside it",
    design: draw(
      {
        uhf: [
          "aerial-uhf",
          {
            levelDbuv: 50,
            channels: [
              { channel: 30, mode: "dvbt-64qam-2/3" },
              { channel: 33, mode: "dvbt-64qam-2/3", levelOffsetDb: -4 },
              { channel: 34, mode: "dvbt-64qam-2/3", levelOffsetDb: 29 },
            ],
          },
        ],
        c: ["cable", { lengthM: 8 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > c.in, c.out > tv.in",
    ),
    rule: "tuner-blocked",
    cure: "trap",
  },
  {
    fault: "three house amplifiers behind each other, each too high, by the limits of the Spanish law",
    design: byLaw(
      draw(
        {
          uhf: ["aerial-uhf", { levelDbuv: 76 }],
          one: ["amp-distribution", { gainDb: 30 }],
          lead1: ["attenuator", { lossDb: 20 }],
          two: ["amp-distribution", { gainDb: 20 }],
          lead2: ["attenuator", { lossDb: 20 }],
          three: ["amp-distribution", { gainDb: 20 }],
          lead3: ["attenuator", { lossDb: 40 }],
          plate: ["outlet-tv"],
        },
        "uhf.out > one.in, one.out > lead1.in, lead1.out > two.in, two.out > lead2.in, lead2.out > three.in, three.out > lead3.in, lead3.out > plate.in",
      ),
    ),
    rule: "intermodulation",
    cure: "gain",
  },
  {
    fault: "a ridge before the dish, two degrees above its satellite",
    design: draw(
      {
        dish: ["dish", { obstacles: [{ fromDeg: 150, toDeg: 180, elevationDeg: 34, distanceM: 20 }] }],
        lnb: ["lnb-universal"],
        k: ["cable", { lengthM: 15 }],
        r: rx(),
      },
      "dish.sky > lnb.sky, lnb.out > k.in, k.out > r.sat",
    ),
    rule: "blocked-view",
    cure: "dish-raised",
  },
  {
    fault: "a cable that leads nowhere, left on a T joint",
    design: draw(
      {
        uhf: ["aerial-uhf", { levelDbuv: 66 }],
        tee: ["t-joint"],
        dead: ["cable", { lengthM: 3 }],
        drop: ["cable", { lengthM: 10 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > tee.in, tee.out1 > drop.in, drop.out > tv.in, tee.out2 > dead.in",
    ),
    rule: "dead-stub",
    cure: "dead-cable-off",
  },
];

function proposalsFor({ design, rule }: Case): readonly Proposal[] {
  const target = siteOf(design).report.findings.find((f) => f.rule === rule);
  if (!target) throw new Error(`${rule} does not speak`);
  let found: readonly Proposal[] = [];
  for (const { proposals } of search(design, { target, prices: PLACEHOLDER_PRICES, maxTrials: 80 }))
    found = proposals;
  return found;
}

describe("A case of the trade is recognised and cured", () => {
  test.each(CASES)("CU1: $fault: $rule, and $cure among the first three", (one) => {
    const proposals = proposalsFor(one);
    const ideas = proposals.slice(0, 3).flatMap((p) => p.steps.map((s) => s.idea));
    expect(ideas).toContain(one.cure);
  });

  test("CU2: there are cases for every rule that some cure exists for", () => {
    const covered = new Set(CASES.map((c) => c.rule));
    expect(CURABLE_RULES.filter((rule) => !covered.has(rule))).toEqual([]);
  });

  test.each(CASES.filter((_, i) => i % 4 === 0))(
    "CU3: $fault: what is proposed can be kept in a file, and keeps its promise when read back",
    (one) => {
      const keys = siteOf(one.design)
        .report.findings.filter((f) => f.rule === one.rule)
        .map((f) => f.id);
      for (const { design } of proposalsFor(one)) {
        expect(readDesign(writeDesign(design))).toEqual({ ok: true, design, notes: [] });
        expect(siteOf(design).report.findings.map((f) => f.id)).not.toContain(keys[0]);
      }
    },
  );
});
