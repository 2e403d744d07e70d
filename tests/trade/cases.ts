/**
 * Faults of real life, each drawn as a tradesman finds it: what is wrong, which part he would take in hand, and
 * what counts as mending it. Causes and cures are common practice, no source.
 */
import type { Design } from "../../src/design/design.ts";
import { draw, type Sketch } from "../draw.ts";

export type TradeCase = {
  readonly fault: string;
  readonly design: Design;
  /** Any of these is the part to name. */
  readonly culprits: readonly string[];
  /** A right cure changes, removes, or rewires one of these; or puts something beside one of them. */
  readonly mend: readonly string[];
};

const one = (
  fault: string,
  culprits: string,
  parts: Sketch,
  wires: string,
  mend: string = culprits,
): TradeCase => ({ fault, design: draw(parts, wires), culprits: culprits.split(" "), mend: mend.split(" ") });

type Of = Readonly<Record<string, unknown>>;
const rx = (options: Of = {}): readonly [string, Of] => ["receiver-sat", options];
const c = (lengthM: number, options: Of = {}): readonly [string, Of] => ["cable", { lengthM, ...options }];
const dish = ["dish", { diameterM: 0.8 }] as const;
const bands = (...numbers: readonly number[]): Of => ({
  tuners: numbers.length,
  userBands: numbers.map((number) => ({ number, centreMHz: [1210, 1420, 1680, 2040][number - 1] ?? 0 })),
});

/** Four receivers behind a quattro and a multiswitch; `trunks` joins them. */
const block = (trunks: string, extra: Sketch = {}, ms: Of = {}): readonly [Sketch, string] => [
  {
    r3: rx({ polarisation: "H", half: "high" }),
    o3: ["outlet-sat"],
    r1: rx(),
    ms: ["multiswitch", { terrestrial: false, ...ms }],
    o1: ["outlet-sat"],
    d1: c(18),
    lnb: ["lnb-quattro"],
    d3: c(27),
    dish,
    r2: rx({ polarisation: "H" }),
    d2: c(22),
    o2: ["outlet-sat"],
    ...extra,
  },
  `ms.out1 > d1.in, d1.out > o1.in, o1.sat > r1.sat, ms.out2 > d2.in, d2.out > o2.in, o2.sat > r2.sat, ms.out3 > d3.in, d3.out > o3.in, o3.sat > r3.sat, dish.sky > lnb.sky, ${trunks}`,
];
const TRUNKS = "lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl, lnb.hh > ms.hh";

/** One converter, a cable, a plate and a receiver, with something in the line. */
const line = (extra: Sketch, wires: string, receiver: Of = {}, lnb: Of = {}): readonly [Sketch, string] => [
  { rx: rx(receiver), plate: ["outlet-sat"], lnb: ["lnb-universal", lnb], dish, ...extra },
  `plate.sat > rx.sat, dish.sky > lnb.sky, ${wires}`,
];

/** UHF aerial, distribution amplifier with four outputs, three sets. */
const house = (
  wires: string,
  extra: Sketch = {},
  amp: Of = {},
  aerial: Of = {},
): readonly [Sketch, string] => [
  {
    tv1: ["receiver-tv"],
    tv2: ["receiver-tv"],
    tv3: ["receiver-tv"],
    p1: ["outlet-tv"],
    p2: ["outlet-tv"],
    p3: ["outlet-tv"],
    c1: c(12),
    c2: c(16),
    c3: c(20),
    down: c(10),
    amp: ["amp-distribution", { outputs: 4, gainDb: 12, ...amp }],
    uhf: ["aerial-uhf", { levelDbuv: 60, ...aerial }],
    ...extra,
  },
  `amp.out > c1.in, c1.out > p1.in, p1.tv > tv1.in, amp.out2 > c2.in, c2.out > p2.in, p2.tv > tv2.in, amp.out3 > c3.in, c3.out > p3.in, p3.tv > tv3.in, ${wires}`,
];

/** A riser of through plates behind a launch amplifier. */
const riser = (
  losses: readonly number[],
  gainDb: number,
  last: "end" | "open" = "end",
): readonly [Sketch, string] => [
  {
    uhf: ["aerial-uhf", { levelDbuv: 62 }],
    launch: ["amp-distribution", { gainDb, outputDbuv: 112 }],
    a: ["outlet-through", { tapLossDb: losses[0] ?? 14 }],
    ca: c(12),
    b: ["outlet-through", { tapLossDb: losses[1] ?? 12 }],
    cb: c(12),
    z: last === "end" ? ["outlet-end"] : ["outlet-through", { tapLossDb: 10 }],
    ta: ["receiver-tv"],
    tb: ["receiver-tv"],
    tz: ["receiver-tv"],
  },
  "uhf.out > launch.in, launch.out > a.in, a.out > ca.in, ca.out > b.in, b.out > cb.in, cb.out > z.in, a.tv > ta.in, b.tv > tb.in, z.tv > tz.in",
];

/** A single-cable converter, a splitter and two receivers. */
const scr = (
  first: Of,
  second: Of,
  split: Of = {},
  extra: Sketch = {},
  wires?: string,
): readonly [Sketch, string] => [
  {
    r2: ["receiver-stacked", second],
    r1: ["receiver-stacked", first],
    split: ["splitter", { dc: "all", ...split }],
    lnb: ["lnb-stacked"],
    dish,
    ...extra,
  },
  wires ?? "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
];

export const TRADE_CASES: readonly TradeCase[] = [
  one(
    "two leads swapped at the multiswitch",
    "ms lnb",
    ...block("lnb.vl > ms.vl, lnb.vh > ms.hl, lnb.hl > ms.vh, lnb.hh > ms.hh"),
  ),
  one(
    "a lead of the quattro is not plugged in",
    "ms lnb",
    ...block("lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl"),
  ),
  one(
    "a quad in place of the quattro",
    "lnb",
    ...block("lnb.out1 > ms.vl, lnb.out2 > ms.vh, lnb.out3 > ms.hl, lnb.out4 > ms.hh", {
      lnb: ["lnb-universal", { outputs: "4" }],
    }),
  ),
  one("the multiswitch has no mains", "ms", ...block(TRUNKS, {}, { mainsOn: false })),
  one("the multiswitch does not feed the LNB", "ms", ...block(TRUNKS, {}, { feedsLnb: false })),
  one(
    "a receiver behind a DC block at the multiswitch",
    "blk",
    ...((): readonly [Sketch, string] => {
      const [parts, wires] = block(TRUNKS, { blk: ["dc-block"] });
      return [parts, wires.replace("ms.out2 > d2.in", "ms.out2 > blk.in, blk.out > d2.in")];
    })(),
  ),
  one(
    "a broken joint on one drop",
    "bad",
    ...((): readonly [Sketch, string] => {
      const [parts, wires] = block(TRUNKS, { bad: ["bad-joint", { fault: "open" }] });
      return [parts, wires.replace("ms.out3 > d3.in", "ms.out3 > bad.in, bad.out > d3.in")];
    })(),
  ),
  one(
    "the plug of one drop is off",
    "d2 o2 ms",
    ...((): readonly [Sketch, string] => {
      const [parts, wires] = block(TRUNKS);
      return [parts, wires.replace("ms.out2 > d2.in, ", "")];
    })(),
  ),
  one(
    "a quattro on receivers directly",
    "lnb",
    { rx: rx(), lnb: ["lnb-quattro"], dish },
    "dish.sky > lnb.sky, lnb.vl > rx.sat",
  ),
  one(
    "a splitter on a switched output",
    "split",
    {
      b: rx({ polarisation: "H" }),
      a: rx(),
      split: ["splitter", { dc: "all" }],
      lnb: ["lnb-universal"],
      dish,
    },
    "split.out1 > a.sat, split.out2 > b.sat, lnb.out > split.in, dish.sky > lnb.sky",
    "split lnb",
  ),
  one(
    "a splitter without power pass on the leg in use",
    "split",
    ...line(
      { split: ["splitter", { dc: "none" }], load: ["load"] },
      "lnb.out > split.in, split.out1 > plate.in, split.out2 > load.in",
    ),
  ),
  one(
    "an attenuator that stops direct current",
    "pad",
    ...line(
      { pad: ["attenuator", { lossDb: 6 }], c1: c(15) },
      "lnb.out > pad.in, pad.out > c1.in, c1.out > plate.in",
    ),
  ),
  one(
    "a shorted joint",
    "bad",
    ...line(
      { bad: ["bad-joint", { fault: "shorted" }], c1: c(15) },
      "lnb.out > c1.in, c1.out > bad.in, bad.out > plate.in",
    ),
  ),
  one(
    "a corroded joint eats the volts of horizontal",
    "bad",
    ...line(
      { bad: ["bad-joint", { fault: "corroded", ohms: 40 }], c1: c(20) },
      "lnb.out > c1.in, c1.out > bad.in, bad.out > plate.in",
      { polarisation: "H" },
      { commonMa: 120 },
    ),
  ),
  one(
    "a very long drop of steel",
    "drop",
    ...line(
      { drop: c(120, { grade: "clad-1.0" }) },
      "lnb.out > drop.in, drop.out > plate.in",
      { polarisation: "H" },
      { outputs: "1", commonMa: 160 },
    ),
  ),
  one(
    "a TV plate on a satellite line",
    "plate",
    { rx: rx(), plate: ["outlet-tv"], lnb: ["lnb-universal"], dish },
    "plate.tv > rx.sat, lnb.out > plate.in, dish.sky > lnb.sky",
  ),
  one(
    "a TV splitter in a satellite line",
    "split",
    {
      b: ["receiver-stacked", bands(3, 4)],
      a: ["receiver-stacked", bands(1, 2)],
      split: ["splitter", { dc: "all", range: "tv" }],
      lnb: ["lnb-stacked"],
      dish,
    },
    "split.out1 > a.sat, split.out2 > b.sat, lnb.out > split.in, dish.sky > lnb.sky",
  ),
  one(
    "the receiver is off and feeds nothing",
    "rx",
    ...line({}, "lnb.out > plate.in", { state: "unplugged" }),
  ),
  one(
    "a dish off its aim",
    "dish",
    { rx: rx(), lnb: ["lnb-universal"], dish: ["dish", { diameterM: 0.6, pointingLossDb: 12 }] },
    "lnb.out > rx.sat, dish.sky > lnb.sky",
  ),
  one(
    "a wideband LNB on universal receivers",
    "lnb",
    { a: rx(), b: rx({ polarisation: "H" }), lnb: ["lnb-wideband"], dish },
    "lnb.v > a.sat, lnb.h > b.sat, dish.sky > lnb.sky",
    "lnb a b",
  ),
  one(
    "vertical and horizontal swapped at the receiver",
    "hub lnb",
    { hub: ["receiver-hybrid"], lnb: ["lnb-wideband"], dish },
    "lnb.h > hub.v, lnb.v > hub.h, dish.sky > lnb.sky",
  ),
  one(
    "one lead of a wideband pair missing",
    "hub lnb",
    { hub: ["receiver-hybrid"], lnb: ["lnb-wideband"], dish },
    "lnb.v > hub.v, dish.sky > lnb.sky",
  ),
  one(
    "a separating plate on a wideband feed",
    "pv ph",
    {
      hub: ["receiver-hybrid"],
      pv: ["outlet-diplexed"],
      ph: ["outlet-diplexed"],
      lnb: ["lnb-wideband"],
      dish,
    },
    "pv.sat > hub.v, ph.sat > hub.h, lnb.v > pv.in, lnb.h > ph.in, dish.sky > lnb.sky",
  ),
  one("the same user band twice", "r1 r2", ...scr(bands(1, 2), bands(2, 3))),
  one(
    "a user band that the LNB does not have",
    "r2",
    ...scr(bands(1, 2), { tuners: 1, userBands: [{ number: 7, centreMHz: 1680 }] }),
  ),
  one(
    "a user band with another centre",
    "r2",
    ...scr(bands(1, 2), { tuners: 1, userBands: [{ number: 3, centreMHz: 1400 }] }),
  ),
  one(
    "a receiver left in universal mode on the single-cable line",
    "r2",
    ...scr(bands(1, 2), { ...bands(3, 4), mode: "universal" }),
  ),
  one(
    "a splitter that passes no supply on one leg",
    "split",
    ...scr(bands(1, 2), bands(3, 4), { dc: "one" }),
  ),
  one(
    "one tuner more than user bands",
    "r2",
    ...scr(bands(1, 2), { tuners: 2, userBands: [{ number: 3, centreMHz: 1680 }] }),
  ),
  one(
    "the amplifier is off",
    "amp",
    ...house("uhf.out > down.in, down.out > amp.in", {}, { switchedOn: false }, { levelDbuv: 48 }),
  ),
  one(
    "the amplifier is turned up too far",
    "amp",
    ...house("uhf.out > down.in, down.out > amp.in", {}, { gainDb: 38 }, { levelDbuv: 72 }),
  ),
  one(
    "phone masts overdrive the amplifier",
    "amp mast",
    ...house(
      "uhf.out > mast.in, mast.out > down.in, down.out > amp.in",
      { mast: ["pick-up", { mastDbuv: 104 }] },
      { gainDb: 22 },
    ),
    "amp mast down",
  ),
  one("the aerial's plug is off", "uhf amp down", ...house("down.out > amp.in")),
  one(
    "a masthead amplifier without its supply",
    "mast",
    ...house(
      "uhf.out > mast.in, mast.out > down.in, down.out > amp.in",
      { mast: ["amp-masthead", { gainDb: 20 }] },
      {},
      { levelDbuv: 40 },
    ),
    "mast amp down",
  ),
  one(
    "the inserter of the masthead amplifier is unplugged",
    "psu",
    ...house(
      "uhf.out > mast.in, mast.out > down.in, down.out > psu.in, psu.out > amp.in",
      { mast: ["amp-masthead", { gainDb: 20 }], psu: ["power-inserter", { switchedOn: false }] },
      {},
      { levelDbuv: 40 },
    ),
  ),
  one(
    "a filter blocks the masthead supply",
    "flt",
    ...house(
      "uhf.out > mast.in, mast.out > flt.in, flt.out > down.in, down.out > psu.in, psu.out > amp.in",
      { mast: ["amp-masthead", { gainDb: 20 }], flt: ["filter", { dcPass: false }], psu: ["power-inserter"] },
      {},
      { levelDbuv: 40 },
    ),
  ),
  one(
    "too weak an aerial for three rooms",
    "uhf amp",
    ...house("uhf.out > down.in, down.out > amp.in", {}, { gainDb: 6 }, { levelDbuv: 36 }),
    "uhf amp down",
  ),
  one(
    "a wet joint in one room",
    "bad",
    ...((): readonly [Sketch, string] => {
      const [parts, wires] = house("uhf.out > down.in, down.out > amp.in", {
        bad: ["bad-joint", { fault: "corroded", lossDb: 28 }],
      });
      return [parts, wires.replace("c2.out > p2.in", "c2.out > bad.in, bad.out > p2.in")];
    })(),
  ),
  one(
    "FM filter where TV should pass",
    "flt",
    ...house("uhf.out > flt.in, flt.out > down.in, down.out > amp.in", {
      flt: ["filter", { mode: "pass", fromMHz: 87.5, toMHz: 108 }],
    }),
  ),
  one("a riser whose first plate taps too little off", "a", ...riser([30, 12], 24)),
  one("a riser with a launch amplifier too weak", "launch uhf", ...riser([20, 16], 0), "launch uhf a b"),
  one("a riser left open at its end", "z", ...riser([14, 12], 24, "open")),
  one(
    "TV and satellite joined by a plain combiner, which cuts no band",
    "comb",
    {
      rx: rx(),
      tv: ["receiver-tv"],
      plate: ["outlet-diplexed"],
      comb: ["combiner", { dc: "none" }],
      uhf: ["aerial-uhf"],
      lnb: ["lnb-universal"],
      dish,
    },
    "uhf.out > comb.in1, lnb.out > comb.in2, comb.out > plate.in, plate.tv > tv.in, plate.sat > rx.sat, dish.sky > lnb.sky",
  ),
  one(
    "a diplexer whose supply goes to the wrong leg",
    "dip",
    {
      rx: rx(),
      tv: ["receiver-tv"],
      plate: ["outlet-diplexed"],
      dip: ["diplexer-combine", { dc: "tv" }],
      uhf: ["aerial-uhf"],
      lnb: ["lnb-universal"],
      dish,
    },
    "uhf.out > dip.tv, lnb.out > dip.sat, dip.out > plate.in, plate.tv > tv.in, plate.sat > rx.sat, dish.sky > lnb.sky",
  ),
  one(
    "TV and satellite leads swapped at the diplexer",
    "dip",
    {
      rx: rx(),
      tv: ["receiver-tv"],
      plate: ["outlet-diplexed"],
      dip: ["diplexer-combine"],
      uhf: ["aerial-uhf"],
      lnb: ["lnb-universal"],
      dish,
    },
    "uhf.out > dip.sat, lnb.out > dip.tv, dip.out > plate.in, plate.tv > tv.in, plate.sat > rx.sat, dish.sky > lnb.sky",
    "dip uhf lnb",
  ),
  one(
    "receivers plugged into the wrong sockets of a plate",
    "plate",
    {
      rx: rx(),
      tv: ["receiver-tv"],
      plate: ["outlet-diplexed"],
      dip: ["diplexer-combine"],
      uhf: ["aerial-uhf"],
      lnb: ["lnb-universal"],
      dish,
    },
    "uhf.out > dip.tv, lnb.out > dip.sat, dip.out > plate.in, plate.sat > tv.in, plate.tv > rx.sat, dish.sky > lnb.sky",
    "plate rx tv",
  ),
  one(
    "too little current for LNB and line amplifier",
    "rx",
    ...line(
      { amp: ["amp-if", { milliamps: 150 }], c1: c(10) },
      "lnb.out > c1.in, c1.out > amp.in, amp.out > plate.in",
      { limitMa: 150 },
      { commonMa: 160 },
    ),
    "rx amp lnb",
  ),
  one(
    "two satellites: the second lead is off at the position switch",
    "sw lnb2",
    {
      rx: rx({ position: "2" }),
      sw: ["position-switch"],
      lnb2: ["lnb-universal"],
      lnb1: ["lnb-universal"],
      d1: dish,
      d2: ["dish", { diameterM: 0.8, orbitalPositionDegE: 13 }],
    },
    "sw.out > rx.sat, lnb1.out > sw.in1, d1.sky > lnb1.sky, d2.sky > lnb2.sky",
  ),
  one(
    "a receiver that sends no position command",
    "rx",
    {
      rx: rx({ position: "none" }),
      sw: ["position-switch"],
      lnb2: ["lnb-universal"],
      lnb1: ["lnb-universal"],
      d1: dish,
      d2: ["dish", { diameterM: 0.8, orbitalPositionDegE: 13 }],
    },
    "sw.out > rx.sat, lnb1.out > sw.in1, lnb2.out > sw.in2, d1.sky > lnb1.sky, d2.sky > lnb2.sky",
  ),
  one(
    "the LNB is not on the dish",
    "lnb dish",
    { rx: rx(), lnb: ["lnb-universal"], dish },
    "lnb.out > rx.sat",
  ),
  one(
    "a cordless phone gets into one user band",
    "pick",
    {
      r1: ["receiver-stacked", { tuners: 1, userBands: [{ number: 4, centreMHz: 1890 }] }],
      pick: ["pick-up", { mast700: false, mast800: false, cordless: true, cordlessDbuv: 82 }],
      lnb: [
        "lnb-stacked",
        {
          bandSet: "own",
          ownBands: [
            { number: 1, centreMHz: 1210 },
            { number: 2, centreMHz: 1420 },
            { number: 3, centreMHz: 1680 },
            { number: 4, centreMHz: 1890 },
          ],
        },
      ],
      dish,
    },
    "dish.sky > lnb.sky, lnb.out > pick.in, pick.out > r1.sat",
    "pick r1 lnb",
  ),
  one(
    "the trunk goes on from a tap's branch",
    "t1",
    {
      ta: ["receiver-tv"],
      tb: ["receiver-tv"],
      tc: ["receiver-tv"],
      t2: ["tap", { tapLossDb: 10 }],
      t1: ["tap", { tapLossDb: 20 }],
      cab: c(25),
      launch: ["amp-distribution", { gainDb: 18, outputDbuv: 112 }],
      uhf: ["aerial-uhf", { levelDbuv: 60 }],
    },
    "uhf.out > launch.in, launch.out > t1.in, t1.tap1 > cab.in, cab.out > t2.in, t1.out > ta.in, t2.tap1 > tb.in, t2.out > tc.in",
  ),
  one(
    "the two inputs of a position switch are swapped",
    "sw lnb1 lnb2",
    {
      rx: rx({ position: "1" }),
      sw: ["position-switch"],
      lnb2: ["lnb-universal"],
      d2: ["dish", { diameterM: 0.8, orbitalPositionDegE: 13, pointingLossDb: 14 }],
      lnb1: ["lnb-universal"],
      d1: dish,
    },
    "d1.sky > lnb1.sky, d2.sky > lnb2.sky, lnb1.out > sw.in1, lnb2.out > sw.in2, sw.out > rx.sat",
    "d2 sw lnb1 lnb2",
  ),
  one(
    "an inserter behind the amplifier instead of before it",
    "psu mast",
    {
      tv: ["receiver-tv"],
      c1: c(20),
      psu: ["power-inserter"],
      split: ["splitter", { ways: 2, dc: "none" }],
      mast: ["amp-masthead", { gainDb: 20 }],
      uhf: ["aerial-uhf", { levelDbuv: 42 }],
      end: ["load"],
    },
    "uhf.out > mast.in, mast.out > split.in, split.out1 > psu.in, psu.out > c1.in, c1.out > tv.in, split.out2 > end.in",
    "split psu mast",
  ),
  one(
    "the inserter turns a receiver-fed line off",
    "psu",
    {
      rx: rx(),
      psu: ["power-inserter", { receiver: "stopped", volts: 12, switchedOn: false }],
      lnb: ["lnb-universal"],
      dish,
    },
    "dish.sky > lnb.sky, lnb.out > psu.in, psu.out > rx.sat",
  ),
  one(
    "an inserter of 12 V leaves horizontal out",
    "psu",
    {
      rx: rx({ polarisation: "H" }),
      psu: ["power-inserter", { volts: 12, limitMa: 500, receiver: "stopped" }],
      lnb: ["lnb-universal"],
      dish,
    },
    "dish.sky > lnb.sky, lnb.out > psu.in, psu.out > rx.sat",
  ),
  one(
    "a mobile filter for the wrong band before the amplifier",
    "flt amp mast",
    ...house(
      "uhf.out > mast.in, mast.out > flt.in, flt.out > down.in, down.out > amp.in",
      {
        mast: ["pick-up", { mast700: true, mast800: false, mastDbuv: 106 }],
        flt: ["filter-mobile", { band: "800" }],
      },
      { gainDb: 24 },
    ),
    "flt amp mast down",
  ),
  one(
    "an aerial turned by the wind",
    "uhf",
    ...house("uhf.out > down.in, down.out > amp.in", {}, { gainDb: 16 }, { levelDbuv: 22 }),
    "uhf down amp",
  ),
  one(
    "an attenuator left in the line",
    "pad",
    ...house(
      "uhf.out > pad.in, pad.out > down.in, down.out > amp.in",
      { pad: ["attenuator", { lossDb: 20 }] },
      {},
      { levelDbuv: 54 },
    ),
  ),
  one(
    "a splitter with far too many ways",
    "split",
    {
      tv1: ["receiver-tv"],
      tv2: ["receiver-tv"],
      c1: c(30),
      c2: c(30),
      split: ["splitter", { ways: 8, type: "hybrid" }],
      uhf: ["aerial-uhf", { levelDbuv: 48 }],
    },
    "uhf.out > split.in, split.out1 > c1.in, c1.out > tv1.in, split.out2 > c2.in, c2.out > tv2.in",
  ),
  one(
    "the tap of the far flat lets too little through",
    "t2",
    {
      ta: ["receiver-tv"],
      tb: ["receiver-tv"],
      t1: ["tap", { tapLossDb: 18 }],
      t2: ["tap", { tapLossDb: 28 }],
      cab: c(25),
      launch: ["amp-distribution", { gainDb: 16, outputDbuv: 112 }],
      uhf: ["aerial-uhf", { levelDbuv: 60 }],
      end: ["load"],
    },
    "uhf.out > launch.in, launch.out > t1.in, t1.tap1 > ta.in, t1.out > cab.in, cab.out > t2.in, t2.tap1 > tb.in, t2.out > end.in",
    "t2 launch",
  ),
  one(
    "DAB aerial on the UHF input of a triplexer",
    "trip dab uhf",
    {
      radio: ["receiver-dab"],
      tv: ["receiver-tv"],
      plate: ["outlet-triplexed"],
      trip: ["triplexer-combine"],
      dab: ["aerial-dab"],
      uhf: ["aerial-uhf"],
    },
    "dab.out > trip.uhf, uhf.out > trip.dab, trip.out > plate.in, plate.tv > tv.in, plate.radio > radio.in",
  ),
  one(
    "an FM tuner on the TV socket",
    "plate fm",
    {
      fm: ["receiver-fm"],
      tv: ["receiver-tv"],
      plate: ["outlet-triplexed"],
      trip: ["triplexer-combine"],
      ant: ["aerial-fm"],
      uhf: ["aerial-uhf"],
    },
    "ant.out > trip.fm, uhf.out > trip.uhf, trip.out > plate.in, plate.radio > tv.in, plate.tv > fm.in",
    "plate fm tv",
  ),
  one(
    "a masthead amplifier that takes UHF only kills DAB",
    "mast",
    {
      radio: ["receiver-dab"],
      tv: ["receiver-tv"],
      plate: ["outlet-triplexed"],
      psu: ["power-inserter"],
      mast: ["amp-masthead", { takes: "uhf" }],
      trip: ["triplexer-combine"],
      dab: ["aerial-dab"],
      uhf: ["aerial-uhf"],
    },
    "dab.out > trip.dab, uhf.out > trip.uhf, trip.out > mast.in, mast.out > psu.in, psu.out > plate.in, plate.tv > tv.in, plate.radio > radio.in",
  ),
  one(
    "a stacking converter without its mains",
    "st",
    {
      r1: ["receiver-stacked", bands(1, 2)],
      o1: ["outlet-sat"],
      st: [
        "stacking-converter",
        { terrestrial: false, bandSet: "four", standard: "EN 50494", mainsOn: false },
      ],
      lnb: ["lnb-quattro"],
      dish,
    },
    `dish.sky > lnb.sky, ${TRUNKS.replaceAll("ms.", "st.")}, st.out1 > o1.in, o1.sat > r1.sat`,
  ),
  one(
    "a trunk missing at the stacking converter",
    "st lnb",
    {
      r1: ["receiver-stacked", bands(1, 2)],
      o1: ["outlet-sat"],
      st: ["stacking-converter", { terrestrial: false, bandSet: "four", standard: "EN 50494" }],
      lnb: ["lnb-quattro"],
      dish,
    },
    "dish.sky > lnb.sky, lnb.vl > st.vl, lnb.vh > st.vh, lnb.hh > st.hh, st.out1 > o1.in, o1.sat > r1.sat",
  ),
  one(
    "an old plate cuts the highest user band",
    "o2",
    ...scr(
      bands(1, 2),
      bands(3, 4),
      {},
      { o2: ["outlet-diplexed", { satToMHz: 1950 }] },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > o2.in, o2.sat > r2.sat",
    ),
  ),
  one(
    "a universal receiver on a single-cable LNB",
    "rx lnb",
    { rx: rx(), lnb: ["lnb-stacked"], dish },
    "dish.sky > lnb.sky, lnb.out > rx.sat",
  ),
  one(
    "a single-cable receiver on a universal LNB",
    "rx lnb",
    { rx: ["receiver-stacked", bands(1, 2)], lnb: ["lnb-universal"], dish },
    "dish.sky > lnb.sky, lnb.out > rx.sat",
  ),
  one(
    "a wideband receiver on a quattro",
    "hub lnb",
    { hub: ["receiver-hybrid"], lnb: ["lnb-quattro"], dish },
    "dish.sky > lnb.sky, lnb.vl > hub.v, lnb.hl > hub.h",
  ),
  one(
    "one lead only to a twin recorder",
    "rec",
    { rec: ["receiver-sat-twin"], lnb: ["lnb-universal", { outputs: "2" }], dish },
    "dish.sky > lnb.sky, lnb.out1 > rec.sat1",
    "rec lnb",
  ),
  one(
    "both inputs of a twin on one output",
    "split",
    {
      rec: ["receiver-sat-twin"],
      split: ["splitter", { dc: "all" }],
      lnb: ["lnb-universal", { outputs: "2" }],
      dish,
    },
    "dish.sky > lnb.sky, lnb.out1 > split.in, split.out1 > rec.sat1, split.out2 > rec.sat2",
    "split lnb",
  ),
  one(
    "a very small dish in rain country",
    "dish",
    { rx: rx(), lnb: ["lnb-universal"], dish: ["dish", { diameterM: 0.35, pointingLossDb: 3 }] },
    "dish.sky > lnb.sky, lnb.out > rx.sat",
  ),
  one(
    "a satellite line amplifier overdriven near the LNB",
    "amp",
    ...line({ amp: ["amp-if", { gainDb: 30, outputDbuv: 100 }] }, "lnb.out > amp.in, amp.out > plate.in"),
  ),
  one(
    "two amplifiers in a row",
    "a2 a1",
    {
      tv: ["receiver-tv"],
      a2: ["amp-distribution", { gainDb: 30 }],
      a1: ["amp-distribution", { gainDb: 25 }],
      uhf: ["aerial-uhf", { levelDbuv: 65 }],
    },
    "uhf.out > a1.in, a1.out > a2.in, a2.out > tv.in",
  ),
  one(
    "a loop from the amplifier back to its aerial",
    "amp comb split",
    {
      tv: ["receiver-tv"],
      split: ["splitter"],
      amp: ["amp-distribution"],
      comb: ["combiner"],
      uhf: ["aerial-uhf"],
    },
    "uhf.out > comb.in1, comb.out > amp.in, amp.out > split.in, split.out1 > tv.in, split.out2 > comb.in2",
  ),
  one(
    "two aerials of one transmitter joined by a combiner",
    "comb a2 a1",
    { tv: ["receiver-tv"], comb: ["combiner"], a1: ["aerial-uhf"], a2: ["aerial-uhf"] },
    "a1.out > comb.in1, a2.out > comb.in2, comb.out > tv.in",
  ),
  one(
    "a powered load eats the supply",
    "end",
    {
      rx: rx(),
      split: ["splitter", { dc: "all" }],
      end: ["load", { dcBlocked: false }],
      lnb: ["lnb-universal"],
      dish,
    },
    "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > rx.sat, split.out2 > end.in",
    "end split",
  ),
  one(
    "the multiswitch of the lower floor gets no terrestrial",
    "low up",
    {
      tv: ["receiver-tv"],
      plate: ["outlet-diplexed"],
      rx: rx(),
      low: ["multiswitch"],
      up: ["multiswitch", { cascade: true }],
      uhf: ["aerial-uhf"],
      lnb: ["lnb-quattro"],
      dish,
    },
    "dish.sky > lnb.sky, uhf.out > up.ter, lnb.vl > up.vl, lnb.vh > up.vh, lnb.hl > up.hl, lnb.hh > up.hh, up.vl-thru > low.vl, up.vh-thru > low.vh, up.hl-thru > low.hl, up.hh-thru > low.hh, low.out1 > plate.in, plate.tv > tv.in, plate.sat > rx.sat",
  ),
  one(
    "two trunks crossed between the floors",
    "low up",
    {
      rx: rx(),
      low: ["multiswitch", { terrestrial: false }],
      up: ["multiswitch", { cascade: true, terrestrial: false }],
      lnb: ["lnb-quattro"],
      dish,
    },
    "dish.sky > lnb.sky, lnb.vl > up.vl, lnb.vh > up.vh, lnb.hl > up.hl, lnb.hh > up.hh, up.vl-thru > low.vl, up.vh-thru > low.hh, up.hl-thru > low.hl, up.hh-thru > low.vh, low.out1 > rx.sat",
  ),
];
