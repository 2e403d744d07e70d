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
    rule: "not-connected",
    speaks: ["a receiver by itself", { tv: ["receiver-tv"] }, ""],
    silent: ["a receiver with an aerial", { uhf: ["aerial-uhf"], tv: ["receiver-tv"] }, "uhf.out > tv.in"],
  },
];
