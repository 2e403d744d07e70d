/** A right cure is among the first three proposals for every fault of real life of all sorts. */
import { expect, test } from "vitest";
import { TRADE_CASES } from "./cases.ts";
import { judge } from "./judge.ts";

test.each(TRADE_CASES.filter(({ culprits }) => culprits.length > 0))("$fault", (one) => {
  expect(judge(one).isCured).toBe(true);
});
