/** A right cure is among the first three proposals for every fault of real life in C band and Ka band. */
import { expect, test } from "vitest";
import { judge } from "./judge.ts";
import { OTHER_BAND_CASES } from "./otherBandCases.ts";

test.each(OTHER_BAND_CASES.filter(({ culprits }) => culprits.length > 0))("$fault", (one) => {
  expect(judge(one).isCured).toBe(true);
});
