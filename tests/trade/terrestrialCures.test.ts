/** A right cure is among the first three proposals for every fault of real life of terrestrial systems. */
import { expect, test } from "vitest";
import { judge } from "./judge.ts";
import { TERRESTRIAL_CASES } from "./terrestrialCases.ts";

test.each(TERRESTRIAL_CASES.filter(({ culprits }) => culprits.length > 0))("$fault", (one) => {
  expect(judge(one).isCured).toBe(true);
});
