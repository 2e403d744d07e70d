/**
 * The numbered rules of DEVELOPERS.md and the tests that cite them: none without the other.
 * A test cites a rule by beginning its name with it: "EV3: after any edits …".
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DESIGN_RULES, RULES } from "../../src/findings/rules/index.ts";
import { codeIn, rowsUnder } from "./document.ts";

const root = new URL("../../", import.meta.url);

/** Rules cited by the names of the tests in a folder. */
function citedIn(folder: string): readonly string[] {
  const files = readdirSync(new URL(folder, root), { recursive: true, encoding: "utf8" });
  return files
    .filter((name) => /\.(test|spec)\.tsx?$/.test(name))
    .flatMap((name) => {
      const source = readFileSync(new URL(`${folder}${name}`, root), "utf8");
      return [...source.matchAll(/\(\s*["'`]([A-Z]{2}\d+): /g)].map((match) => match[1] ?? "");
    });
}

describe("the numbered rules", () => {
  const numbered = rowsUnder("Numbered rules").map(([id = "", says = ""]) => ({ id, says }));
  const cited = new Set([...citedIn("tests/"), ...citedIn("e2e/")]);

  test("are many, have each a number of its own and are whole sentences", () => {
    expect(numbered.length).toBeGreaterThan(25);
    expect(new Set(numbered.map((rule) => rule.id)).size).toBe(numbered.length);
    for (const { id, says } of numbered) {
      expect(id).toMatch(/^[A-Z]{2}\d+$/);
      expect(says, id).toMatch(/^[A-Z].*\.$/);
    }
  });

  test("are each held by a test", () => {
    expect(numbered.map((rule) => rule.id).filter((id) => !cited.has(id))).toEqual([]);
  });

  test("are all that tests cite", () => {
    const known = new Set(numbered.map((rule) => rule.id));
    expect([...cited].filter((id) => !known.has(id))).toEqual([]);
  });
});

test("the table of findings names every rule, in the order in which they are asked", () => {
  const listed = rowsUnder("Findings").flatMap(([id = ""]) => codeIn(id));
  expect(listed).toEqual([...RULES, ...DESIGN_RULES].map((rule) => rule.id));
});
