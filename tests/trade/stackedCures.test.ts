/** A right cure is among the first three proposals for every fault of real life of wideband and single-cable systems. */
import { expect, test } from "vitest";
import { judge } from "./judge.ts";
import { STACKED_CASES } from "./stackedCases.ts";

test.each(STACKED_CASES.filter(({ culprits }) => culprits.length > 0))("$fault", (one) => {
  expect(judge(one).isCured).toBe(true);
});
