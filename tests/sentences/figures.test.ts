import { expect, test } from "vitest";
import { besideLimit } from "../../src/sentences/figures.ts";

// By hand: as many decimals as it takes for the two to be printed differently, at least one.
test.each([
  { value: 11, limit: 11.5, printed: ["11", "11.5"] },
  { value: 11.46, limit: 11.5, printed: ["11.46", "11.5"] },
  { value: 11.4987, limit: 11.5, printed: ["11.499", "11.5"] },
  { value: 13.55, limit: 16, printed: ["13.6", "16"] },
  { value: 11.5, limit: 11.5, printed: ["11.5", "11.5"] },
  { value: 0, limit: 11.5, printed: ["0", "11.5"] },
  { value: -0.001, limit: 0, printed: ["−0.001", "0"] },
])("$value beside $limit is printed so that a difference stays one", ({ value, limit, printed }) => {
  expect(besideLimit(value, limit)).toEqual(printed);
});
