/** Numbered rules, the tests that cite them, and the tables that list them. */
import { describe, expect, test } from "vitest";
import { areaOf, citations } from "./citations.ts";
import { read } from "./document.ts";
import { aboutOf, ruleTables } from "./tables.ts";

const cited = citations();

describe("the areas of numbered rules", () => {
  const places = [...new Set(cited.map(({ rule, file }) => `${areaOf(rule)} ${file}`))].map((place) => {
    const [area = "", file = ""] = place.split(" ");
    return { area, file };
  });

  test("are each held by the tests of one file", () => {
    expect(places.length).toBeGreaterThan(20);
    expect(new Set(places.map(({ area }) => area)).size).toBe(places.length);
  });

  test("are each explained at the head of their file", () => {
    expect(places.filter(({ area, file }) => aboutOf(area, file) === "")).toEqual([]);
  });
});

test("no number stands for two rules", () => {
  const says = new Map<string, string>();
  for (const each of cited) {
    expect(says.get(each.rule) ?? each.says, each.rule).toBe(each.says);
    says.set(each.rule, each.says);
  }
});

test("the numbers of an area run from 1 without a gap: a rule that is dropped is seen", () => {
  const areas = new Map<string, Set<number>>();
  for (const { rule } of cited) {
    const area = areaOf(rule);
    areas.set(area, (areas.get(area) ?? new Set()).add(Number(rule.slice(area.length))));
  }
  // As many different numbers as the highest one: none below it is missing.
  expect([...areas].filter(([, numbers]) => Math.max(...numbers) !== numbers.size)).toEqual([]);
});

test.each(ruleTables())("$path is what the code says; if not: npm run tables", ({ path, text }) => {
  expect(read(path)).toBe(text);
});
