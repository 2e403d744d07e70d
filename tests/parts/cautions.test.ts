import { describe, expect, test } from "vitest";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { CAUTIONS, ESTIMATE_NOTICE } from "../../src/parts/cautions.ts";
import { kindNamed } from "./walk.ts";

describe("cautions", () => {
  test.each(Object.entries(CAUTIONS))("on %s are whole sentences", (_, { title, sentences }) => {
    expect(title).toMatch(/^[A-Z]/);
    expect(sentences.length).toBeGreaterThan(0);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });

  test("defer to local codes and licensed practice, and call the result an estimate", () => {
    expect(ESTIMATE_NOTICE).toMatch(/estimate/);
    expect(ESTIMATE_NOTICE).toMatch(/local codes/i);
    expect(ESTIMATE_NOTICE).toMatch(/licensed practice/);
  });

  test.each(["amp-distribution", "power-inserter", "multiswitch", "stacking-converter"])(
    "stand at %s, which has a mains unit",
    (key) => expect(kindNamed(key).cautions).toContain("mains"),
  );

  test.each(["dish", "aerial-uhf", "aerial-dab", "aerial-fm", "amp-masthead"])(
    "stand at %s, which is worked on at height",
    (key) => expect(kindNamed(key).cautions).toContain("height"),
  );

  test("of every kind exist", () => {
    const used = new Set(CATALOGUE.flatMap((k) => k.cautions ?? []));
    expect([...used].sort()).toEqual(["bonding", "height", "mains"]);
  });
});
