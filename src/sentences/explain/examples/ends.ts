/** Tiny designs for the rules about what is joined to what. */
import type { RuleSketch } from "../examples.ts";

export const ENDS_EXAMPLES: readonly RuleSketch[] = [
  {
    rule: "loop",
    speaks: [
      "two attenuators in a ring",
      { a: ["attenuator"], b: ["attenuator"] },
      "a.out > b.in, b.out > a.in",
    ],
    silent: ["two in a row", { a: ["attenuator"], b: ["attenuator"] }, "a.out > b.in"],
  },
  {
    rule: "open-end",
    speaks: [
      "the last tap of a riser left open",
      { uhf: ["aerial-uhf"], tap: ["tap"], tv: ["receiver-tv"] },
      "uhf.out > tap.in, tap.tap1 > tv.in",
    ],
    silent: [
      "the same with a terminator",
      { uhf: ["aerial-uhf"], tap: ["tap"], end: ["load"], tv: ["receiver-tv"] },
      "uhf.out > tap.in, tap.tap1 > tv.in, tap.out > end.in",
    ],
  },
  {
    rule: "dead-stub",
    speaks: [
      // 3 m of foam cable, VF 0.82: notches at odd multiples of c·0.82/(4·3 m) = 20.49 MHz, among them 512.1 MHz.
      "an unused cable on a T joint",
      {
        uhf: ["aerial-uhf", { levelDbuv: 70 }],
        tee: ["t-joint"],
        dead: ["cable", { lengthM: 3 }],
        drop: ["cable", { lengthM: 10 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > tee.in, tee.out1 > drop.in, drop.out > tv.in, tee.out2 > dead.in",
    ],
    silent: [
      "the same cable on a splitter",
      {
        uhf: ["aerial-uhf", { levelDbuv: 70 }],
        split: ["splitter"],
        dead: ["cable", { lengthM: 3 }],
        drop: ["cable", { lengthM: 10 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > split.in, split.out1 > drop.in, drop.out > tv.in, split.out2 > dead.in",
    ],
  },
  {
    rule: "not-connected",
    speaks: ["a receiver by itself", { tv: ["receiver-tv"] }, ""],
    silent: ["a receiver with an aerial", { uhf: ["aerial-uhf"], tv: ["receiver-tv"] }, "uhf.out > tv.in"],
  },
];
