/**
 * More faults of real life, and installations in which nothing is wrong. Causes are common practice, no source.
 */
import type { Sketch } from "../draw.ts";
import {
  bands,
  block,
  c,
  dish,
  house,
  line,
  one,
  riser,
  rx,
  scr,
  sound,
  TRUNKS,
  type TradeCase,
  two,
} from "./drawings.ts";

type Of = Readonly<Record<string, unknown>>;

const FOUR = { terrestrial: false, bandSet: "four", standard: "EN 50494" } as const;
const INTO_STACK = TRUNKS.replaceAll("ms.", "st.");

/** A stacking converter with two flats on output 1, joined as the wires say. */
const stack = (wires: string, extra: Sketch = {}, st: Of = {}): readonly [Sketch, string] => [
  {
    r2: ["receiver-stacked", bands(3, 4)],
    split: ["splitter", { dc: "all" }],
    o1: ["outlet-sat"],
    r1: ["receiver-stacked", bands(1, 2)],
    dish,
    o2: ["outlet-sat"],
    st: ["stacking-converter", { ...FOUR, ...st }],
    lnb: ["lnb-quattro"],
    ...extra,
  },
  `o2.sat > r2.sat, dish.sky > lnb.sky, o1.sat > r1.sat, ${wires}`,
];
const FLATS = "st.out1 > split.in, split.out1 > o1.in, split.out2 > o2.in";

/** Two multiswitches one below the other; the terrestrial signal comes along. */
const cascade = (between: string, extra: Sketch = {}): readonly [Sketch, string] => [
  {
    low: ["multiswitch"],
    rl: rx({ polarisation: "H" }),
    pl: ["outlet-diplexed"],
    tvl: ["receiver-tv"],
    uhf: ["aerial-uhf", { levelDbuv: 72 }],
    ru: rx(),
    pu: ["outlet-diplexed"],
    tvu: ["receiver-tv"],
    lnb: ["lnb-quattro"],
    up: ["multiswitch", { cascade: true }],
    dish,
    ...extra,
  },
  `low.out1 > pl.in, pl.sat > rl.sat, pl.tv > tvl.in, up.out1 > pu.in, pu.sat > ru.sat, pu.tv > tvu.in, dish.sky > lnb.sky, uhf.out > up.ter, ${TRUNKS.replaceAll("ms.", "up.")}, ${between}`,
];
const BETWEEN =
  "up.vl-thru > low.vl, up.vh-thru > low.vh, up.hl-thru > low.hl, up.hh-thru > low.hh, up.ter-thru > low.ter";

/** Four satellites on a position switch. */
const four = (wires: string, extra: Sketch = {}): readonly [Sketch, string] => [
  {
    rx: rx({ position: "3" }),
    sw: ["position-switch", { inputs: "4" }],
    ...Object.fromEntries(
      [4, 2, 1, 3].flatMap((n) => [
        [`lnb${n}`, ["lnb-universal"] as const],
        [`d${n}`, ["dish", { diameterM: 0.8, orbitalPositionDegE: 10 + 5 * n }] as const],
      ]),
    ),
    ...extra,
  },
  `d4.sky > lnb4.sky, d2.sky > lnb2.sky, d1.sky > lnb1.sky, d3.sky > lnb3.sky, ${wires}`,
];
const FOUR_LEADS =
  "lnb4.out > sw.in4, lnb3.out > sw.in3, lnb1.out > sw.in1, lnb2.out > sw.in2, sw.out > rx.sat";

/** FM, DAB and UHF by a triplexer to one plate. */
const radio = (wires: string, extra: Sketch = {}): readonly [Sketch, string] => [
  {
    fm: ["receiver-fm"],
    plate: ["outlet-triplexed"],
    tv: ["receiver-tv"],
    trip: ["triplexer-combine"],
    vhf: ["aerial-fm"],
    uhf: ["aerial-uhf"],
    dab: ["aerial-dab"],
    ...extra,
  },
  `plate.radio > fm.in, plate.tv > tv.in, ${wires}`,
];

/** An aerial, a masthead amplifier, its inserter and a set, with something between. */
const masthead = (wires: string, extra: Sketch = {}, psu: Of = {}): readonly [Sketch, string] => [
  {
    tv: ["receiver-tv"],
    psu: ["power-inserter", psu],
    down: c(25),
    mast: ["amp-masthead", { gainDb: 20 }],
    uhf: ["aerial-uhf", { levelDbuv: 40 }],
    ...extra,
  },
  `uhf.out > mast.in, psu.out > tv.in, ${wires}`,
];

const instead = (
  [parts, wires]: readonly [Sketch, string],
  from: string,
  to: string,
): readonly [Sketch, string] => {
  if (!wires.includes(from)) throw new Error(`no wire ${from}`);
  return [parts, wires.replace(from, to)];
};

const HOUSE = "uhf.out > down.in, down.out > amp.in";

export const MORE_CASES: readonly TradeCase[] = [
  one(
    "a TV splitter behind a stacking converter",
    "split",
    ...stack(`${INTO_STACK}, ${FLATS}`, { split: ["splitter", { dc: "all", range: "tv" }] }),
  ),
  one(
    "a flat's plate without satellite socket stops a stacked riser",
    "a",
    ...stack(`${INTO_STACK}, st.out1 > a.in, a.out > o2.in`, {
      a: ["outlet-through", { satellite: false }],
      o1: ["outlet-sat"],
    }),
  ),
  one(
    "a tap whose branch passes no supply in a stacked riser",
    "t",
    ...stack(`${INTO_STACK}, st.out1 > t.in, t.tap1 > o1.in, t.out > o2.in`, {
      t: ["tap", { dc: "through" }],
    }),
  ),
  one(
    "two flats of a stacked riser use the same user band",
    "r1 r2",
    ...stack(`${INTO_STACK}, ${FLATS}`, { r2: ["receiver-stacked", bands(2, 4)] }),
  ),
  one(
    "dSCR with the numbers of another table",
    "r2",
    ...stack(
      `${INTO_STACK}, ${FLATS}`,
      {
        r2: ["receiver-stacked", { tuners: 1, userBands: [{ number: 7, centreMHz: 1128 }] }],
      },
      { bandSet: "thirtyTwo", standard: "EN 50607" },
    ),
  ),
  one(
    "two single-cable converters on one line",
    "comb l1 l2",
    {
      // Both draw 280 mA: a receiver of 400 mA would shut down, and nobody saw the user bands meet.
      r1: ["receiver-stacked", { ...bands(1, 2), limitMa: 600 }],
      comb: ["combiner", { dc: "all" }],
      l2: ["lnb-stacked"],
      d2: dish,
      l1: ["lnb-stacked"],
      d1: dish,
    },
    "d2.sky > l2.sky, d1.sky > l1.sky, l2.out > comb.in2, l1.out > comb.in1, comb.out > r1.sat",
  ),
  one(
    "a shorted joint in a trunk of the stacking converter",
    "bad",
    ...instead(
      stack(`${INTO_STACK}, ${FLATS}`, { bad: ["bad-joint", { fault: "shorted" }] }),
      "lnb.hh > st.hh",
      "lnb.hh > bad.in, bad.out > st.hh",
    ),
  ),
  one(
    "a stacking converter set for a wideband converter behind a quattro",
    "st lnb",
    ...stack(`lnb.vl > st.v, lnb.hl > st.h, ${FLATS}`, {}, { feed: "wideband" }),
  ),
  one(
    "a trunk between two floors is not plugged in",
    "low up",
    ...cascade(BETWEEN.replace("up.hl-thru > low.hl, ", "")),
  ),
  one(
    "terrestrial and vertical low crossed between two floors",
    "low up",
    ...cascade(
      "up.ter-thru > low.vl, up.vh-thru > low.vh, up.hl-thru > low.hl, up.hh-thru > low.hh, up.vl-thru > low.ter",
      { rl: rx() },
    ),
  ),
  one(
    "the upper multiswitch is fed through the trunk and the lower one does not feed",
    "up low",
    ...cascade(BETWEEN, {
      up: ["multiswitch", { cascade: true, supply: "trunk" }],
      low: ["multiswitch", { feedsLnb: false }],
    }),
  ),
  one(
    "a DC block in the trunk through which the upper multiswitch is fed",
    "blk",
    ...cascade(
      BETWEEN.replace("up.vl-thru > low.vl", "up.vl-thru > blk.in, blk.out > low.vl").replace(
        /, up\.(vh|hl|hh|ter)-thru > low\.\w+/g,
        "",
      ),
      {
        blk: ["dc-block"],
        rl: rx(),
        up: ["multiswitch", { cascade: true, supply: "trunk", terrestrial: false }],
        low: ["multiswitch", { terrestrial: false }],
      },
    ),
  ),
  one(
    "a wet joint in one trunk of a cascade",
    "bad",
    ...cascade(BETWEEN.replace("up.hl-thru > low.hl", "up.hl-thru > bad.in, bad.out > low.hl"), {
      bad: ["bad-joint", { fault: "corroded", lossDb: 38 }],
    }),
  ),
  one(
    "a short in one lead of a wideband pair",
    "bad",
    {
      bad: ["bad-joint", { fault: "shorted" }],
      hub: ["receiver-hybrid"],
      lnb: ["lnb-wideband"],
      dish,
    },
    "bad.out > hub.h, dish.sky > lnb.sky, lnb.h > bad.in, lnb.v > hub.v",
  ),
  one(
    "a universal converter on a wideband receiver",
    "lnb hub",
    { hub: ["receiver-hybrid"], lnb: ["lnb-universal", { outputs: "2" }], dish },
    "lnb.out2 > hub.h, lnb.out1 > hub.v, dish.sky > lnb.sky",
  ),
  one(
    "the third converter is not on its dish",
    "lnb3 d3",
    ...instead(four(FOUR_LEADS), ", d3.sky > lnb3.sky", ""),
  ),
  one(
    "a DC block at the third input of a position switch",
    "blk",
    ...four(FOUR_LEADS.replace("lnb3.out > sw.in3", "lnb3.out > blk.in, blk.out > sw.in3"), {
      blk: ["dc-block"],
    }),
  ),
  one(
    "a splitter that stops the supply between switch and receiver",
    "split",
    ...four(FOUR_LEADS.replace("sw.out > rx.sat", "sw.out > split.in, split.out2 > rx.sat"), {
      split: ["splitter", { dc: "one" }],
    }),
  ),
  one(
    "an inserter on the leg that passes no supply",
    "split psu",
    ...masthead("mast.out > down.in, down.out > split.in, split.out2 > psu.in", {
      split: ["splitter", { dc: "one" }],
    }),
  ),
  one(
    "an inserter too small for its amplifier",
    "psu mast",
    ...masthead(
      "mast.out > down.in, down.out > psu.in",
      { mast: ["amp-masthead", { gainDb: 20, milliamps: 150 }] },
      { limitMa: 60 },
    ),
  ),
  one(
    "an attenuator between inserter and masthead amplifier",
    "pad",
    ...masthead("mast.out > pad.in, pad.out > down.in, down.out > psu.in", {
      pad: ["attenuator", { lossDb: 3 }],
    }),
  ),
  one(
    "a shorted joint below the masthead amplifier",
    "bad",
    ...masthead("mast.out > bad.in, bad.out > down.in, down.out > psu.in", {
      bad: ["bad-joint", { fault: "shorted" }],
    }),
  ),
  one(
    "FM and DAB aerials swapped at the triplexer",
    "trip vhf dab",
    ...radio("uhf.out > trip.uhf, vhf.out > trip.dab, dab.out > trip.fm, trip.out > plate.in"),
  ),
  one(
    "an FM aerial that hardly receives",
    "vhf",
    ...radio("uhf.out > trip.uhf, dab.out > trip.dab, vhf.out > trip.fm, trip.out > plate.in", {
      vhf: ["aerial-fm", { levelDbuv: 22 }],
    }),
  ),
  one(
    "a band filter for TV in a line with radio",
    "flt",
    ...radio(
      "uhf.out > trip.uhf, dab.out > trip.dab, vhf.out > trip.fm, trip.out > flt.in, flt.out > plate.in",
      {
        flt: ["filter"],
      },
    ),
  ),
  one(
    "a diplexer that passes no supply",
    "dip",
    {
      tv: ["receiver-tv"],
      dip: ["diplexer-combine", { dc: "none" }],
      plate: ["outlet-diplexed"],
      lnb: ["lnb-universal"],
      uhf: ["aerial-uhf"],
      rx: rx(),
      dish,
    },
    "plate.sat > rx.sat, dish.sky > lnb.sky, lnb.out > dip.sat, uhf.out > dip.tv, dip.out > plate.in, plate.tv > tv.in",
  ),
  one(
    "a set in the satellite socket of its plate",
    "p2 tv2",
    ...instead(house(HOUSE, { p2: ["outlet-diplexed"] }), "p2.tv > tv2.in", "p2.sat > tv2.in"),
  ),
  one(
    "a mobile filter for 700 MHz where TV still uses these channels",
    "flt",
    ...house(
      "uhf.out > flt.in, flt.out > down.in, down.out > amp.in",
      { flt: ["filter-mobile", { band: "700" }] },
      { uhfTo: "790" },
      {
        formerOnAir: true,
        channels: [
          { channel: 24, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 },
          { channel: 54, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 },
        ],
      },
    ),
  ),
  one(
    "an amplifier that ends below the highest channel",
    "amp",
    ...house(
      HOUSE,
      {},
      { uhfTo: "694" },
      {
        formerOnAir: true,
        channels: [
          { channel: 54, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 },
          { channel: 24, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 },
        ],
      },
    ),
  ),
  one(
    "a mobile filter behind the amplifier instead of before it",
    "flt amp mast",
    ...house(
      "uhf.out > mast.in, mast.out > down.in, down.out > amp.in",
      {
        mast: ["pick-up", { mastDbuv: 106 }],
        flt: ["filter-mobile", { band: "700" }],
      },
      { gainDb: 24 },
    ),
  ),
  one(
    "one flat's tap gives it far too little",
    "t2",
    {
      tb: ["receiver-tv"],
      tc: ["receiver-tv"],
      ta: ["receiver-tv"],
      t2: ["tap", { tapLossDb: 30 }],
      t1: ["tap", { tapLossDb: 16 }],
      t3: ["tap", { tapLossDb: 12 }],
      launch: ["amp-distribution", { gainDb: 12, outputDbuv: 112 }],
      uhf: ["aerial-uhf", { levelDbuv: 60 }],
      end: ["load"],
    },
    "t3.tap1 > tc.in, t2.tap1 > tb.in, t1.tap1 > ta.in, uhf.out > launch.in, t1.out > t2.in, launch.out > t1.in, t3.out > end.in, t2.out > t3.in",
  ),
  one(
    "a broken joint in the middle of a riser",
    "bad",
    ...((): readonly [Sketch, string] => {
      const [parts, wires] = riser([16, 12], 14);
      return instead(
        [{ ...parts, bad: ["bad-joint", { fault: "open" }] }, wires],
        "ca.out > b.in",
        "ca.out > bad.in, bad.out > b.in",
      );
    })(),
  ),
  one("a riser driven too hard", "launch", ...riser([10, 8], 34)),
  one("a riser whose plates sit the wrong way round", "a b launch", ...riser([8, 26], 12)),
  one(
    "a drop of 150 m of thin cable",
    "drop",
    ...line({ drop: c(150, { grade: "copper-0.8" }) }, "lnb.out > drop.in, drop.out > plate.in"),
  ),
  one(
    "old cable between aerial and amplifier",
    "down",
    ...house(HOUSE, { down: c(60, { grade: "old-solid" }) }, { gainDb: 20 }, { levelDbuv: 48 }),
  ),
  one(
    "the input attenuator of the amplifier was left at 20 dB",
    "amp",
    ...house(HOUSE, {}, { padDb: 20, gainDb: 12 }, { levelDbuv: 56 }),
  ),
  one("an amplifier turned down to nothing", "amp", ...house(HOUSE, {}, { gainDb: 0 }, { levelDbuv: 47 })),
  one(
    "the amplifier has no mains: its aerial is on an output",
    "amp uhf",
    ...house("down.out > amp.in, uhf.out > down.in", {}, { switchedOn: false }, { levelDbuv: 46 }),
  ),
  two(
    "a broken joint in one room and a set in the wrong socket in another",
    ["bad", "p3 tv3"],
    ...instead(
      instead(
        house(HOUSE, { bad: ["bad-joint", { fault: "open" }], p3: ["outlet-diplexed"] }),
        "p3.tv > tv3.in",
        "p3.sat > tv3.in",
      ),
      "c1.out > p1.in",
      "c1.out > bad.in, bad.out > p1.in",
    ),
  ),
  two(
    "two leads swapped at the multiswitch and a DC block in a drop",
    ["ms lnb", "blk"],
    ...instead(
      block("lnb.vl > ms.vl, lnb.vh > ms.hl, lnb.hl > ms.vh, lnb.hh > ms.hh", {
        blk: ["dc-block"],
        r1: rx({ half: "high" }),
      }),
      "ms.out2 > d2.in",
      "ms.out2 > blk.in, blk.out > d2.in",
    ),
  ),
  two(
    "a masthead amplifier without supply and a converter off its dish",
    ["psu", "lnb dish"],
    {
      tv: ["receiver-tv"],
      plate: ["outlet-diplexed"],
      lnb: ["lnb-universal"],
      rx: rx(),
      dip: ["diplexer-combine"],
      psu: ["power-inserter", { switchedOn: false }],
      mast: ["amp-masthead", { gainDb: 20 }],
      uhf: ["aerial-uhf", { levelDbuv: 34 }],
      dish,
    },
    "psu.out > dip.tv, lnb.out > dip.sat, mast.out > psu.in, uhf.out > mast.in, dip.out > plate.in, plate.tv > tv.in, plate.sat > rx.sat",
  ),
  two(
    "a flat with a wet joint and another with a user band that does not exist",
    ["bad", "r2"],
    ...instead(
      stack(`${INTO_STACK}, ${FLATS}`, {
        bad: ["bad-joint", { fault: "open" }],
        r2: ["receiver-stacked", { tuners: 1, userBands: [{ number: 8, centreMHz: 1680 }] }],
      }),
      "split.out1 > o1.in",
      "split.out1 > bad.in, bad.out > o1.in",
    ),
  ),
  sound("a house with an amplifier and three rooms", ...house(HOUSE)),
  sound("a block of three flats behind a multiswitch", ...block(TRUNKS)),
  sound("a single-cable converter with two receivers", ...scr(bands(1, 2), bands(3, 4))),
  sound("a stacking converter with two flats", ...stack(`${INTO_STACK}, ${FLATS}`)),
  sound("a riser with plates that fit", ...riser([18, 14], 8)),
  sound("four satellites on a position switch", ...four(FOUR_LEADS)),
  sound("a masthead amplifier with its inserter", ...masthead("mast.out > down.in, down.out > psu.in")),
  sound(
    "radio and television by a triplexer",
    ...radio("uhf.out > trip.uhf, dab.out > trip.dab, vhf.out > trip.fm, trip.out > plate.in"),
  ),
  sound("two floors of multiswitches", ...cascade(BETWEEN)),
  sound(
    "a wideband converter with a receiver of many tuners",
    { hub: ["receiver-hybrid"], lnb: ["lnb-wideband"], dish },
    "lnb.h > hub.h, lnb.v > hub.v, dish.sky > lnb.sky",
  ),
];
