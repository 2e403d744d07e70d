/** The numbered rules of DEVELOPERS.md and the tests that cite them: none without the other. */
import { describe, expect, test } from "vitest";
import { DESIGN_RULES, RULES } from "../../src/findings/rules/index.ts";
import { areaOf, citations } from "./citations.ts";
import { codeIn, rowsUnder } from "./document.ts";

const cited = citations();

describe("the areas of numbered rules", () => {
  const areas = rowsUnder("Areas").map(([area = "", , file = ""]) => ({ area, file: codeIn(file)[0] ?? "" }));

  test("have each letters of their own", () => {
    expect(areas.length).toBeGreaterThan(5);
    expect(new Set(areas.map(({ area }) => area)).size).toBe(areas.length);
  });

  test("are each held by the tests of one file, and no test cites another area", () => {
    const held = new Set(cited.map(({ rule, file }) => `${areaOf(rule)} ${file}`));
    expect([...held].sort()).toEqual(areas.map(({ area, file }) => `${area} ${file}`).sort());
  });
});

test("no number stands for two rules", () => {
  const says = new Map<string, string>();
  for (const each of cited) {
    expect(says.get(each.rule) ?? each.says, each.rule).toBe(each.says);
    says.set(each.rule, each.says);
  }
});

describe("the laws", () => {
  const laws = rowsUnder("Laws").map(([id = "", says = ""]) => ({ id, says }));
  const spelled = new Set(laws.map(({ id }) => areaOf(id)));

  test("are whole sentences", () => {
    expect(laws.length).toBeGreaterThan(25);
    for (const { id, says } of laws) {
      expect(id).toMatch(/^[A-Z]{2}\d+$/);
      expect(says, id).toMatch(/^[A-Z].*\.$/);
    }
  });

  test("are each held by a test, and tests of their areas cite no others", () => {
    const rules = cited.map(({ rule }) => rule).filter((rule) => spelled.has(areaOf(rule)));
    expect([...new Set(rules)].sort()).toEqual(laws.map(({ id }) => id).sort());
  });
});

test("the table of findings names every rule, in the order in which they are asked", () => {
  const listed = rowsUnder("Findings").flatMap(([id = ""]) => codeIn(id));
  expect(listed).toEqual([...RULES, ...DESIGN_RULES].map((rule) => rule.id));
});
