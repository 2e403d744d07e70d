/** What the documents promise is there: files, commands, examples and their lessons. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { EXAMPLE_GROUPS } from "../src/design/examples.ts";
import { CASES } from "../src/remedies/training/cases.ts";
import { ruleBook } from "../src/sentences/explain/ruleBook.ts";
import { pages } from "./spec/document.ts";

const root = new URL("../", import.meta.url);
const read = (name: string) => readFileSync(new URL(name, root), "utf8");
const scripts = Object.keys(JSON.parse(read("package.json")).scripts);

/** Commands of npm itself, which are no scripts of ours. */
const NPM_OWN = ["ci", "run"];

function relativeLinks(text: string): readonly string[] {
  return [...text.matchAll(/\]\(([^)\s]+)\)/g)]
    .map((match) => match[1] ?? "")
    .filter((target) => !/^[a-z]+:|^#/.test(target))
    .map((target) => target.replace(/#.*$/, ""));
}

function npmCommands(text: string): readonly string[] {
  return [...text.matchAll(/\bnpm ((?:run )?(?:--?[a-z]+ )*)([a-z][\w:-]*)/g)].map((match) => match[2] ?? "");
}

test("the README is among the documents and names the two first commands and the command line", () => {
  expect(pages()).toContain("README.md");
  expect(npmCommands(read("README.md"))).toEqual(expect.arrayContaining(["start", "test", "check"]));
});

describe.each(pages())("%s", (name) => {
  const text = read(name);

  test("links to files that exist", () => {
    const base = new URL(name, root);
    expect(relativeLinks(text).filter((target) => !existsSync(new URL(target, base)))).toEqual([]);
  });

  test("names npm scripts that exist", () => {
    expect(npmCommands(text).filter((script) => ![...scripts, ...NPM_OWN].includes(script))).toEqual([]);
  });
});

test("the README lists every example with its lesson, under what it teaches", () => {
  const text = read("README.md");
  for (const { teaches, examples } of EXAMPLE_GROUPS) {
    const [, below = ""] = text.split(`\n**${teaches}**\n`);
    const [section = ""] = below.split(/\n(?:\*\*|## )/);
    const entries = section.split("\n").filter((line) => line.startsWith("- "));
    expect(entries, teaches).toHaveLength(examples.length);
    for (const [i, { key, lesson }] of examples.entries()) {
      expect(entries[i]).toContain(`\`${key}\``);
      expect(entries[i]).toContain(lesson);
    }
  }
});

test("the README's addresses lead to a rule and to a practice case that exist, and its count of cases is right", () => {
  const text = read("README.md");
  const named = (pattern: RegExp) => [...text.matchAll(pattern)].map((match) => match[1] ?? "");
  const rules = named(/`\/\?rules=([a-z-]+)`/g);
  const cases = named(/`\/#t1\.([a-z0-9-]+)`/g);
  expect(rules.length).toBeGreaterThan(0);
  expect(cases.length).toBeGreaterThan(0);
  for (const rule of rules) expect(ruleBook().map((r) => r.id)).toContain(rule);
  for (const id of cases) expect(CASES.map((c) => c.id)).toContain(id);
  expect(text).toContain(`holds ${CASES.length} guided cases`);
});

test("the README shows every picture that is taken, and none is missing", () => {
  // Those of the examples are kept for comparison only.
  const files = readdirSync(new URL("e2e/pictures/", root)).filter((name) => name.endsWith(".png"));
  const taken = files.map((name) => `e2e/pictures/${name}`);
  const shown = relativeLinks(read("README.md")).filter((target) => target.endsWith(".png"));
  expect([...shown].sort()).toEqual([...taken].sort());
});
