/** "19 of 20 flats work": grammar by hand. */
import { expect, test } from "vitest";
import { placesWork } from "../../src/sentences/placeWords.ts";

test.each([
  [19, 20, "flat", "19 of 20 flats work"],
  [1, 20, "flat", "1 of 20 flats works"],
  [20, 20, "flat", "All 20 flats work"],
  [0, 20, "outlet", "None of 20 outlets works"],
  [2, 2, "receiver", "Both receivers work"],
  [0, 2, "receiver", "Neither of 2 receivers works"],
  [1, 2, "outlet", "1 of 2 outlets works"],
  [1, 1, "flat", "The flat works"],
  [0, 1, "outlet", "The outlet fails"],
] as const)("%i of %i (%s): %s", (working, of, noun, words) => {
  expect(placesWork({ working, of, noun })).toBe(words);
});
