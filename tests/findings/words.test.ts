import { describe, expect, it } from "vitest";
import { carriers, missingWords, namesOf, share } from "../../src/sentences/phrases.ts";

// English: a singular noun after 1 alone, "both" rather than "all 2", no share of a single thing.
describe("counting carriers", () => {
  it.each([
    [1, "tv", "1 TV channel"],
    [2, "dab", "2 DAB blocks"],
    [0, "fm", "0 FM stations"],
    [33, "satellite", "33 satellite transponders"],
    [1, "user band", "1 user band"],
  ] as const)("%i of %s are %s", (n, what, words) => {
    expect(carriers(n, what)).toBe(words);
  });

  it("names them without a number", () => {
    expect(namesOf("tv")).toBe("TV channels");
  });

  it.each([
    [0, 1, "no TV channel"],
    [1, 1, "the only TV channel"],
    [0, 2, "none of 2 TV channels"],
    [1, 2, "1 of 2 TV channels"],
    [2, 2, "both TV channels"],
    [5, 6, "5 of 6 TV channels"],
    [6, 6, "all 6 TV channels"],
  ])("%i of %i is “%s”", (n, of, words) => {
    expect(share(n, of, "tv")).toBe(words);
  });

  it("says why carriers are missing, with a verb that agrees", () => {
    const clause = { one: (who: string) => `${who} is weak`, other: (who: string) => `${who} are weak` };
    expect(missingWords(1, 1, clause)).toBe("the only one is weak");
    expect(missingWords(1, 6, clause)).toBe("1 is weak");
    expect(missingWords(6, 6, clause)).toBe("6 are weak");
  });
});
