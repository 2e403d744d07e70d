import { expect, test } from "vitest";
import { SILENCE } from "../../src/signal/band.ts";
import { NO_DEMAND, NO_FEED } from "../../src/signal/control.ts";

test("nothing on a wire, no supply and no load are empty, not zero of something", () => {
  expect(SILENCE).toEqual({ bands: [] });
  expect(NO_FEED).toEqual([]);
  expect(NO_DEMAND).toEqual({ milliamps: 0, draws: [], shortedBy: null });
});
