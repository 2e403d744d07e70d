import { expect, test } from "vitest";
import { curve, flat, passBand, series } from "../../src/signal/response.ts";

test("the short forms say what they stand for", () => {
  expect(flat(-3)).toEqual({ type: "flat", db: -3 });
  expect(curve([47, -1], [862, -2])).toEqual({
    type: "curve",
    points: [
      [47, -1],
      [862, -2],
    ],
  });
  expect(series(flat(1), flat(2))).toEqual({ type: "series", of: [flat(1), flat(2)] });
  expect(passBand({ fromMHz: 950, toMHz: 2150, gain: flat(-1.5), rejectionDb: 30 })).toEqual({
    type: "series",
    of: [flat(-1.5), { type: "windows", windows: [{ fromMHz: 950, toMHz: 2150 }], rejectionDb: 30 }],
  });
});
