/**
 * Wrong designs of real life whose culprit is known: what anybody of the trade would take in hand first. Parts stand
 * in an order that is not that of the signal, under ids that sort otherwise.
 */

import type { Misdeed } from "../../../src/findings/blame/culprit.ts";
import type { RuleId } from "../../../src/findings/facts.ts";
import type { Sketch } from "../../draw.ts";

export type WrongDesign = {
  readonly fault: string;
  readonly parts: Sketch;
  readonly wires: string;
  /** Rule that speaks, and whom it blames for what. */
  readonly rule: RuleId;
  readonly culprit: string;
  readonly does?: Misdeed;
};

const plates = (n: number) =>
  Object.fromEntries(Array.from({ length: n }, (_, i) => [`b${i}`, ["outlet-tv"]])) as Sketch;
const plateWires = (n: number, split = "y") =>
  Array.from({ length: n }, (_, i) => `${split}.out${i + 1} > b${i}.in`).join(", ");

export const WRONG_DESIGNS: readonly WrongDesign[] = [
  {
    fault: "a corroded joint before the splitter of four flats",
    parts: {
      ...plates(4),
      y: ["splitter", { ways: 4, range: "tv" }],
      a: ["bad-joint", { lossDb: 12 }],
      z: ["aerial-uhf", { levelDbuv: 62 }],
    },
    wires: `a.out > y.in, z.out > a.in, ${plateWires(4)}`,
    rule: "level-limits",
    culprit: "a",
    does: "bad joint",
  },
  {
    fault: "a broken inner conductor in the lead to one of two plates",
    parts: {
      ...plates(2),
      a: ["bad-joint", { fault: "open" }],
      y: ["splitter", { ways: 2, range: "tv" }],
      z: ["aerial-uhf", { levelDbuv: 62 }],
    },
    wires: "z.out > y.in, y.out1 > a.in, a.out > b0.in, y.out2 > b1.in",
    rule: "level-limits",
    culprit: "a",
    does: "bad joint",
  },
  {
    fault: "the mains of the house amplifier is off",
    parts: {
      ...plates(4),
      y: ["splitter", { ways: 4, range: "tv" }],
      c: ["amp-distribution", { gainDb: 20, switchedOn: false }],
      z: ["aerial-uhf", { levelDbuv: 60 }],
    },
    wires: `z.out > c.in, c.out > y.in, ${plateWires(4)}`,
    rule: "level-limits",
    culprit: "c",
    does: "switched off",
  },
  {
    fault: "a masthead amplifier that nobody feeds",
    parts: {
      b0: ["outlet-tv"],
      c: ["cable", { lengthM: 20 }],
      a: ["amp-masthead"],
      z: ["aerial-uhf", { levelDbuv: 55 }],
    },
    wires: "c.out > b0.in, z.out > a.in, a.out > c.in",
    rule: "level-limits",
    culprit: "a",
    does: "unfed",
  },
  {
    fault: "the amplifier is turned down to nothing",
    parts: {
      ...plates(8),
      y: ["splitter", { ways: 8, range: "tv" }],
      c: ["amp-distribution", { gainDb: 0 }],
      z: ["aerial-uhf", { levelDbuv: 52 }],
    },
    wires: `z.out > c.in, c.out > y.in, ${plateWires(8)}`,
    rule: "level-limits",
    culprit: "c",
    does: "low gain",
  },
  {
    fault: "an input attenuator was left at 20 dB",
    parts: {
      ...plates(4),
      y: ["splitter", { ways: 4, range: "tv" }],
      c: ["amp-distribution", { gainDb: 15, padDb: 20 }],
      z: ["aerial-uhf", { levelDbuv: 55 }],
    },
    wires: `z.out > c.in, c.out > y.in, ${plateWires(4)}`,
    rule: "level-limits",
    culprit: "c",
    does: "input attenuator",
  },
  {
    fault: "a forgotten attenuator of 20 dB in the lead",
    parts: { b0: ["outlet-tv"], a: ["attenuator", { lossDb: 20 }], z: ["aerial-uhf", { levelDbuv: 62 }] },
    wires: "a.out > b0.in, z.out > a.in",
    rule: "level-limits",
    culprit: "a",
    does: "attenuates",
  },
  {
    fault: "an eight-way splitter for two plates",
    parts: {
      ...plates(2),
      y: ["splitter", { ways: 8, range: "tv" }],
      z: ["aerial-uhf", { levelDbuv: 56 }],
    },
    wires: `z.out > y.in, ${plateWires(2)}`,
    rule: "level-limits",
    culprit: "y",
    does: "spare ways",
  },
  {
    fault: "a resistive splitter of four ways",
    parts: {
      ...plates(4),
      y: ["splitter", { ways: 4, range: "tv", type: "resistive" }],
      z: ["aerial-uhf", { levelDbuv: 57 }],
    },
    wires: `z.out > y.in, ${plateWires(4)}`,
    rule: "level-limits",
    culprit: "y",
    does: "resistive",
  },
  {
    fault: "an aerial turned away from its transmitter",
    parts: { b0: ["outlet-tv"], c: ["cable", { lengthM: 15 }], z: ["aerial-uhf", { levelDbuv: 42 }] },
    wires: "z.out > c.in, c.out > b0.in",
    rule: "level-limits",
    culprit: "z",
    does: "weak source",
  },
  {
    fault: "forty metres of old cable to the shed",
    parts: {
      ...plates(2),
      y: ["splitter", { ways: 2, range: "tv" }],
      a: ["cable", { lengthM: 40, grade: "old-solid" }],
      c: ["cable", { lengthM: 10 }],
      z: ["aerial-uhf", { levelDbuv: 58 }],
    },
    wires: "z.out > y.in, y.out1 > a.in, a.out > b0.in, y.out2 > c.in, c.out > b1.in",
    rule: "level-limits",
    culprit: "a",
    does: "poor cable",
  },
  {
    fault: "a very long run to one of two plates",
    parts: {
      ...plates(2),
      y: ["splitter", { ways: 2, range: "tv" }],
      a: ["cable", { lengthM: 110 }],
      c: ["cable", { lengthM: 10 }],
      z: ["aerial-uhf", { levelDbuv: 62 }],
    },
    wires: "z.out > y.in, y.out1 > a.in, a.out > b0.in, y.out2 > c.in, c.out > b1.in",
    rule: "level-limits",
    culprit: "a",
    does: "long cable",
  },
  {
    fault: "a tap of 26 dB for one flat of a riser that is in order",
    parts: {
      ...plates(2),
      a: ["tap", { tapLossDb: 26 }],
      z: ["aerial-uhf", { levelDbuv: 64 }],
    },
    wires: "z.out > a.in, a.tap1 > b0.in, a.out > b1.in",
    rule: "level-limits",
    culprit: "a",
    does: "high tap loss",
  },
  {
    fault: "a through plate where the riser ends",
    parts: {
      p2: ["outlet-through", { tapLossDb: 14 }],
      p1: ["outlet-through", { tapLossDb: 14 }],
      z: ["aerial-uhf", { levelDbuv: 56 }],
    },
    wires: "z.out > p1.in, p1.out > p2.in",
    rule: "level-limits",
    culprit: "p2",
    does: "through at end",
  },
  {
    fault: "a dish off its aim: too weak for the converter's noise",
    parts: {
      rx: ["receiver-sat"],
      a: ["cable", { lengthM: 20 }],
      l: ["lnb-universal", { outputs: "1" }],
      z: ["dish", { pointingLossDb: 8 }],
    },
    wires: "z.sky > l.sky, l.out > a.in, a.out > rx.sat",
    rule: "low-carrier-to-noise",
    culprit: "z",
    does: "off aim",
  },
  {
    fault: "a dish that is too small for a weak beam",
    parts: {
      rx: ["receiver-sat"],
      l: ["lnb-universal", { outputs: "1" }],
      // Nobody beside it in the sky: what is missing is signal.
      z: ["dish", { diameterM: 0.35, neighbours: [] }],
    },
    wires: "z.sky > l.sky, l.out > rx.sat",
    rule: "low-carrier-to-noise",
    culprit: "z",
    does: "weak source",
  },
  {
    // BO.1213: 0.35 m hears 3.3° beside its axis only 5 dB less; two neighbours of −8 dB each make a C/I of some 10 dB.
    fault: "a dish so small that it hears the satellites beside its own",
    parts: {
      rx: ["receiver-sat"],
      l: ["lnb-universal", { outputs: "1" }],
      z: ["dish", { diameterM: 0.35 }],
    },
    wires: "z.sky > l.sky, l.out > rx.sat",
    rule: "low-carrier-to-noise",
    culprit: "z",
    does: "hears neighbours",
  },
  {
    // 30° leave 20·log10(cot 30°) = 4.8 dB to a carrier of the same frequency; these stand between each other.
    fault: "an LNB turned in its clamp",
    parts: {
      rx: ["receiver-sat"],
      l: ["lnb-universal", { outputs: "1", skewErrorDeg: 30 }],
      z: ["dish", { diameterM: 0.8 }],
    },
    wires: "z.sky > l.sky, l.out > rx.sat",
    rule: "low-carrier-to-noise",
    culprit: "l",
    does: "turned",
  },
  {
    fault: "a multiswitch that mixes its inputs",
    parts: {
      rx: ["receiver-sat"],
      m: ["multiswitch", { crosstalkDb: 10 }],
      l: ["lnb-quattro"],
      z: ["dish", { diameterM: 1 }],
    },
    wires: "z.sky > l.sky, l.vl > m.vl, l.vh > m.vh, l.hl > m.hl, l.hh > m.hh, m.out1 > rx.sat",
    rule: "low-carrier-to-noise",
    culprit: "m",
    does: "mixes inputs",
  },
  {
    fault: "a hundred metres of cable before the first amplifier",
    parts: {
      b0: ["outlet-tv"],
      c: ["amp-distribution", { gainDb: 25 }],
      a: ["cable", { lengthM: 110 }],
      z: ["aerial-uhf", { levelDbuv: 50 }],
    },
    wires: "z.out > a.in, a.out > c.in, c.out > b0.in",
    rule: "low-carrier-to-noise",
    culprit: "a",
    does: "long cable",
  },
  {
    fault: "an amplifier of fourteen decibels noise figure",
    parts: {
      ...plates(8),
      y: ["splitter", { ways: 8, range: "tv" }],
      c0: ["amp-distribution", { gainDb: 25, noiseFigureDb: 14 }],
      a: ["cable", { lengthM: 30 }],
      y2: ["splitter", { ways: 3, range: "tv" }],
      o1: ["outlet-tv"],
      o2: ["outlet-tv"],
      z: ["aerial-uhf", { levelDbuv: 52 }],
    },
    wires: `z.out > a.in, a.out > y2.in, y2.out1 > c0.in, y2.out2 > o1.in, y2.out3 > o2.in, c0.out > y.in, ${plateWires(8)}`,
    rule: "low-carrier-to-noise",
    culprit: "c0",
    does: "noisy",
  },
  {
    fault: "phone masts drive the amplifier: they come in with the aerial",
    parts: {
      b0: ["outlet-tv"],
      c: ["amp-distribution", { gainDb: 25, uhfTo: "862" }],
      m: ["pick-up", { mastDbuv: 88 }],
      z: ["aerial-uhf", { levelDbuv: 60 }],
    },
    wires: "z.out > m.in, m.out > c.in, c.out > b0.in",
    rule: "overload",
    culprit: "c",
  },
  {
    fault: "an amplifier turned up far too high: its products spoil C/N",
    parts: {
      b0: ["outlet-tv"],
      a: ["attenuator", { lossDb: 35 }],
      c: ["amp-distribution", { gainDb: 40 }],
      z: ["aerial-uhf", { levelDbuv: 75 }],
    },
    wires: "z.out > c.in, c.out > a.in, a.out > b0.in",
    rule: "low-carrier-to-noise",
    culprit: "c",
    does: "overdriven",
  },
  {
    fault: "a masthead amplifier before a house amplifier that is full already",
    parts: {
      b0: ["outlet-tv"],
      a: ["attenuator", { lossDb: 30 }],
      c: ["amp-distribution", { gainDb: 5, outputDbuv: 100 }],
      i: ["power-inserter"],
      m: ["amp-masthead", { gainDb: 26, outputDbuv: 115 }],
      z: ["aerial-uhf", { levelDbuv: 78 }],
    },
    wires: "z.out > m.in, m.out > i.in, i.out > c.in, c.out > a.in, a.out > b0.in",
    rule: "overload",
    culprit: "m",
  },
  {
    fault: "an amplifier with 30 dB on a strong aerial",
    parts: {
      b0: ["outlet-tv"],
      c: ["amp-distribution", { gainDb: 30 }],
      z: ["aerial-uhf", { levelDbuv: 58 }],
    },
    wires: "z.out > c.in, c.out > b0.in",
    rule: "level-limits",
    culprit: "c",
    does: "high gain",
  },
  {
    fault: "an aerial beside the transmitter straight into a plate",
    parts: { b0: ["outlet-tv"], z: ["aerial-uhf", { levelDbuv: 92 }] },
    wires: "z.out > b0.in",
    rule: "level-limits",
    culprit: "z",
    does: "strong source",
  },
  {
    fault: "the first riser plate takes only 6 dB off for its sockets",
    parts: {
      b: ["outlet-end", { lossDb: 8 }],
      a: ["outlet-through", { tapLossDb: 6 }],
      c: ["amp-distribution", { gainDb: 19, outputDbuv: 110 }],
      z: ["aerial-uhf", { levelDbuv: 62 }],
    },
    wires: "z.out > c.in, c.out > a.in, a.out > b.in",
    rule: "level-limits",
    culprit: "a",
    does: "low tap loss",
  },
  {
    fault: "two aerials for the same channels on a plain combiner",
    parts: {
      b0: ["outlet-tv"],
      k: ["combiner"],
      y: ["aerial-uhf", { levelDbuv: 60 }],
      z: ["aerial-uhf", { levelDbuv: 60 }],
    },
    wires: "z.out > k.in1, y.out > k.in2, k.out > b0.in",
    rule: "shared-frequencies",
    culprit: "k",
  },
  {
    fault: "a poorly screened lead picks up cordless phones in the satellite IF",
    parts: {
      rx: ["receiver-sat"],
      m: ["pick-up", { mast700: false, mast800: false, cordless: true, cordlessDbuv: 85 }],
      l: ["lnb-universal", { outputs: "1" }],
      z: ["dish"],
    },
    wires: "z.sky > l.sky, l.out > m.in, m.out > rx.sat",
    rule: "shared-frequencies",
    culprit: "m",
  },
  {
    fault: "a plate for TV and satellite in a wideband feed",
    parts: {
      rx: ["receiver-hybrid"],
      p1: ["outlet-diplexed"],
      p2: ["outlet-sat"],
      l: ["lnb-wideband"],
      z: ["dish"],
    },
    wires: "z.sky > l.sky, l.v > p1.in, p1.sat > rx.v, l.h > p2.in, p2.sat > rx.h",
    rule: "band-cut",
    culprit: "p1",
  },
  {
    fault: "a phone filter of the wrong edge takes the top channels away",
    parts: {
      b0: ["outlet-tv"],
      a: ["filter", { fromMHz: 470, toMHz: 530 }],
      z: ["aerial-uhf"],
    },
    wires: "z.out > a.in, a.out > b0.in",
    rule: "band-cut",
    culprit: "a",
  },
  {
    fault: "one transmitter of the town is far stronger than the others",
    parts: {
      b0: ["outlet-tv"],
      z: [
        "aerial-uhf",
        {
          levelDbuv: 52,
          channels: [
            { channel: 25, mode: "dvbt-64qam-2/3", levelOffsetDb: 20 },
            { channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 },
          ],
        },
      ],
    },
    wires: "z.out > b0.in",
    rule: "level-difference",
    culprit: "z",
    does: "uneven source",
  },
  {
    fault: "two hundred metres of cable from the dish",
    parts: {
      rx: ["receiver-hybrid"],
      a: ["cable", { lengthM: 200 }],
      c: ["cable", { lengthM: 5 }],
      l: ["lnb-wideband", { gainDb: 70 }],
      z: ["dish", { diameterM: 1.2 }],
    },
    wires: "z.sky > l.sky, l.v > a.in, a.out > rx.v, l.h > c.in, c.out > rx.h",
    rule: "level-difference",
    culprit: "a",
    does: "long cable",
  },
  {
    fault: "one signal split and brought together again",
    parts: {
      b0: ["outlet-tv"],
      k: ["combiner"],
      y: ["splitter", { range: "tv" }],
      z: ["aerial-uhf"],
    },
    wires: "z.out > y.in, y.out1 > k.in1, y.out2 > k.in2, k.out > b0.in",
    rule: "same-signal-twice",
    culprit: "k",
  },
];
