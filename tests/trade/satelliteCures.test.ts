/** A right cure is among the first three proposals for every fault of real life of satellite systems. */
import { expect, test } from "vitest";
import { judge } from "./judge.ts";
import { SATELLITE_CASES } from "./satelliteCases.ts";

test.each(SATELLITE_CASES.filter(({ culprits }) => culprits.length > 0))("$fault", (one) => {
  expect(judge(one).isCured).toBe(true);
});
