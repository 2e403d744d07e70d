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
      "a DC block in the supply path",
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
    rule: "over-voltage",
    speaks: [
      "a unit of 24 V on the line of an LNB",
      {
        ...satellite,
        lnb: ["lnb-quattro"],
        psu: ["power-inserter", { volts: 24, limitMa: 400 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.vl > psu.in, psu.out > rx.sat",
    ],
    silent: [
      "a unit of 18 V",
      {
        ...satellite,
        lnb: ["lnb-quattro"],
        psu: ["power-inserter", { volts: 18, limitMa: 400 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.vl > psu.in, psu.out > rx.sat",
    ],
  },
  {
    rule: "command-lost",
    speaks: [
      // 120 m at 130 Ω/km are 15.6 Ω: with 280 mA that is 4.4 V of the 18 V.
      "18 V over a long drop of copper-clad steel",
      {
        ...satellite,
        lnb: ["lnb-universal", { outputs: "4", commonMa: 280, outputMa: 0 }],
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
    more: [
      [
        "a second receiver on the loop-out of one that is on",
        {
          ...satellite,
          lnb: ["lnb-universal"],
          first: ["receiver-sat", { loopOut: "always" }],
          second: ["receiver-sat", { polarisation: "H", half: "high" }],
        },
        "dish.sky > lnb.sky, lnb.out > first.sat, first.loop > second.sat",
      ],
      [
        "two satellites and a receiver that sends no position",
        {
          south: ["dish", { diameterM: 0.8 }],
          west: ["dish", { diameterM: 0.8, orbitalPositionDegE: 5 }],
          l1: ["lnb-universal"],
          l2: ["lnb-universal"],
          choice: ["position-switch"],
          rx: ["receiver-sat"],
        },
        "south.sky > l1.sky, west.sky > l2.sky, l1.out > choice.in1, l2.out > choice.in2, choice.out > rx.sat",
      ],
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
    rule: "motor-line",
    speaks: [
      "a receiver that knows nothing of the motor",
      { ...satellite, lnb: ["lnb-universal"], motor: ["dish-motor"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > motor.in, motor.out > rx.sat",
    ],
    silent: [
      "one that sends motor commands",
      { ...satellite, lnb: ["lnb-universal"], motor: ["dish-motor"], rx: ["receiver-sat", { motor: true }] },
      "dish.sky > lnb.sky, lnb.out > motor.in, motor.out > rx.sat",
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
      "dish.sky > lnb.sky, lnb.vl > ms.hl, lnb.vh > ms.vh, lnb.hl > ms.vl, lnb.hh > ms.hh, ms.out1 > rx.sat",
    ],
    silent: [
      "every trunk on its own input",
      { ...satellite, lnb: ["lnb-quattro"], ms: ["multiswitch"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl, lnb.hh > ms.hh, ms.out1 > rx.sat",
    ],
  },
  {
    rule: "many-alternatives",
    speaks: [
      "three position switches in a row, every input from one LNB",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        split1: ["splitter", { ways: 4, dc: "all" }],
        choose1: ["position-switch", { inputs: "4" }],
        split2: ["splitter", { ways: 4, dc: "all" }],
        choose2: ["position-switch", { inputs: "4" }],
        split3: ["splitter", { ways: 4, dc: "all" }],
        choose3: ["position-switch", { inputs: "4" }],
        tv: ["receiver-sat", { polarisation: "H" }],
      },
      "dish.sky > lnb.sky, lnb.out > split1.in, split1.out1 > choose1.in1, split1.out2 > choose1.in2, " +
        "split1.out3 > choose1.in3, split1.out4 > choose1.in4, choose1.out > split2.in, split2.out1 > choose2.in1, " +
        "split2.out2 > choose2.in2, split2.out3 > choose2.in3, split2.out4 > choose2.in4, choose2.out > split3.in, " +
        "split3.out1 > choose3.in1, split3.out2 > choose3.in2, split3.out3 > choose3.in3, split3.out4 > choose3.in4, " +
        "choose3.out > tv.sat",
    ],
    silent: [
      "four LNBs on one position switch",
      {
        dish1: ["dish", { orbitalPositionDegE: 6 }],
        dish2: ["dish", { orbitalPositionDegE: 12 }],
        dish3: ["dish", { orbitalPositionDegE: 18 }],
        dish4: ["dish", { orbitalPositionDegE: 24 }],
        lnb1: ["lnb-universal"],
        lnb2: ["lnb-universal"],
        lnb3: ["lnb-universal"],
        lnb4: ["lnb-universal"],
        choose: ["position-switch", { inputs: "4" }],
        tv: ["receiver-sat", { position: "2" }],
      },
      "dish1.sky > lnb1.sky, dish2.sky > lnb2.sky, dish3.sky > lnb3.sky, dish4.sky > lnb4.sky, lnb1.out > choose.in1, " +
        "lnb2.out > choose.in2, lnb3.out > choose.in3, lnb4.out > choose.in4, choose.out > tv.sat",
    ],
  },
];
