/** A right cure is among the first three proposals for every fault of real life. */
import { expect, test } from "vitest";
import { TRADE_CASES } from "./cases.ts";
import { judge } from "./judge.ts";
import { SATELLITE_CASES } from "./satelliteCases.ts";
import { STACKED_CASES } from "./stackedCases.ts";
import { TERRESTRIAL_CASES } from "./terrestrialCases.ts";

const FAULTS = [...TRADE_CASES, ...SATELLITE_CASES, ...TERRESTRIAL_CASES, ...STACKED_CASES].filter(
  ({ culprits }) => culprits.length > 0,
);

test.each(FAULTS)("$fault", (one) => {
  expect(judge(one).isCured).toBe(true);
});
