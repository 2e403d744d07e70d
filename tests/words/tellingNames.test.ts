/** Names beside each other: what is left of each is read off as a person would shorten them. */
import { expect, test } from "vitest";
import { tellingNames } from "../../src/words/tellingNames.ts";

test.each([
  [
    ["Plate living room", "Plate bedroom 1"],
    ["living room", "bedroom 1"],
  ],
  [
    ["Flat 1", "Flat 2", "Flat 10"],
    ["1", "2", "10"],
  ],
  [
    ["Flat 1 left", "Flat 2 left"],
    ["1", "2"],
  ],
  [
    ["TV", "TV kitchen"],
    ["TV", "TV kitchen"],
  ],
  [
    ["TV bedroom", "DAB radio bedroom"],
    ["TV", "DAB radio"],
  ],
  [
    ["Plate", "Plate"],
    ["Plate", "Plate"],
  ],
  [["Plate"], ["Plate"]],
  [[], []],
])("%j become %j", (names, told) => {
  expect(tellingNames(names)).toEqual(told);
});

test("names that differ still differ", () => {
  const names = ["a b c", "a b", "b c", "a", "a c"];
  expect(new Set(tellingNames(names)).size).toBe(names.length);
});
