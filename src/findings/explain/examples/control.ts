/** Tiny designs for the rules about supply, commands and who may speak. */
import type { RuleSketch } from "../examples.ts";
import type { Sketch } from "../sketch.ts";

const satellite = { dish: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;

export const CONTROL_EXAMPLES: readonly RuleSketch[] = [
  {
    rule: "supply-overloaded",
    speaks: [
      "a joint that shorts the cable",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        bad: ["bad-joint", { fault: "shorted" }],
        tv: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > bad.in, bad.out > tv.sat",
    ],
    silent: [
      "the plain chain",
      { ...satellite, lnb: ["lnb-universal"], tv: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > tv.sat",
    ],
  },
  {
    rule: "no-supply",
    speaks: [
      "a block in the direct-current path",
      { ...satellite, lnb: ["lnb-universal"], block: ["dc-block"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > block.in, block.out > rx.sat",
    ],
    silent: [
      "without the block",
      { ...satellite, lnb: ["lnb-universal"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
  },
  {
    rule: "command-lost",
    speaks: [
      // 120 m at 130 Ω/km are 15.6 Ω: with 140 mA + 4 · 35 mA that is 4.4 V of the 18 V.
      "18 V over a long drop of copper-clad steel",
      {
        ...satellite,
        lnb: ["lnb-universal", { outputs: "4", commonMa: 140, outputMa: 35 }],
        drop: ["cable", { grade: "clad-1.0", lengthM: 120 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out1 > drop.in, drop.out > rx.sat",
    ],
    silent: [
      "the same length of copper",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        drop: ["cable", { grade: "copper-1.0", lengthM: 30 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > rx.sat",
    ],
  },
  {
    rule: "switched-output-shared",
    speaks: [
      "two receivers behind a splitter",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-sat"],
        r2: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ],
    silent: [
      "two receivers on two outputs",
      { ...satellite, lnb: ["lnb-universal", { outputs: "2" }], r1: ["receiver-sat"], r2: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out1 > r1.sat, lnb.out2 > r2.sat",
    ],
  },
  {
    rule: "user-band-conflict",
    speaks: [
      "two receivers set to the same user bands",
      {
        ...satellite,
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-stacked"],
        r2: ["receiver-stacked"],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ],
    silent: [
      "each with bands of its own",
      {
        ...satellite,
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "all" }],
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
    ],
  },
  {
    rule: "too-many-tuners",
    speaks: [
      "three tuners, two user bands",
      { ...satellite, lnb: ["lnb-stacked"], rx: ["receiver-stacked", { tuners: 3 }] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
    silent: [
      "two and two",
      { ...satellite, lnb: ["lnb-stacked"], rx: ["receiver-stacked", { tuners: 2 }] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
  },
  {
    rule: "wrong-quadrant",
    speaks: [
      "two trunks swapped",
      { ...satellite, lnb: ["lnb-quattro"], ms: ["multiswitch"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > ms.hl, lnb.hl > ms.vl, ms.out1 > rx.sat",
    ],
    silent: [
      "every trunk on its own input",
      { ...satellite, lnb: ["lnb-quattro"], ms: ["multiswitch"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > ms.vl, lnb.hl > ms.hl, ms.out1 > rx.sat",
    ],
  },
];
