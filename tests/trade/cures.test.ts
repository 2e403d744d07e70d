/** A right cure is among the first three proposals for every fault of real life, but for those that no idea mends yet. */
import { expect, test } from "vitest";
import { TRADE_CASES } from "./cases.ts";
import { judge } from "./judge.ts";
import { STACKED_CASES } from "./stackedCases.ts";

/** No idea turns a receiver's position command on, or finds a stronger supply for a receiver. */
const NOT_YET: readonly string[] = [
  "a receiver that sends no position command",
  "too little current for LNB and line amplifier",
];

const FAULTS = [...TRADE_CASES, ...STACKED_CASES].filter(({ culprits }) => culprits.length > 0);

test.each(FAULTS)("$fault", (one) => {
  expect(judge(one).isCured).toBe(!NOT_YET.includes(one.fault));
});
