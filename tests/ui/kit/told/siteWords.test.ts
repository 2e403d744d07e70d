import { describe, expect, it } from "vitest";
import { workingWords } from "../../../../src/sentences/receivers.ts";

// English: the verb agrees with the number before "of"; one of one is just "the receiver", two of two are "both".
describe("how many receivers work", () => {
  it.each([
    [0, 1, "the receiver does not work"],
    [1, 1, "the receiver works"],
    [2, 2, "both receivers work"],
    [0, 3, "none of 3 receivers works"],
    [1, 3, "1 of 3 receivers works"],
    [2, 3, "2 of 3 receivers work"],
    [3, 3, "all 3 receivers work"],
  ])("%i of %i: %s", (working, of, words) => {
    expect(workingWords(working, of)).toBe(words);
  });
});
