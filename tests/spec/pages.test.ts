/** What the pages say of names, files and packages is so in the code; and they stay short enough to be read. */
import { existsSync, readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { codeIn, pages, read } from "./document.ts";

const root = new URL("../../", import.meta.url);

const source = readdirSync(new URL("src/", root), { recursive: true, encoding: "utf8" })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => read(`src/${name}`))
  .join("\n");

describe("the glossary", () => {
  const entries = read("src/GLOSSARY.md").split(/^- /m).slice(1);

  test("has every term once", () => {
    const terms = entries.map((entry) => /^\*\*(.+?)\*\*/.exec(entry)?.[1]);
    expect(terms.length).toBeGreaterThan(60);
    expect(terms).not.toContain(undefined);
    expect(new Set(terms).size).toBe(terms.length);
  });

  test("names nothing that the code has not", () => {
    const names = entries.flatMap((entry) => codeIn(/In code: (.*)/s.exec(entry)?.[1] ?? ""));
    expect(names.length).toBeGreaterThan(100);
    expect(names.filter((name) => !new RegExp(`\\b${name}\\b`).test(source))).toEqual([]);
  });
});

test("no page names a file or folder of the project that is not there", () => {
  const paths = pages().flatMap((page) =>
    codeIn(read(page))
      .filter((code) => /^(src|tests|e2e|\.ci)\/\S*$/.test(code))
      .map((path) => ({ page, path })),
  );
  expect(paths.length).toBeGreaterThan(60);
  expect(paths.filter(({ path }) => !existsSync(new URL(path, root)))).toEqual([]);
});

test("every page beside the code is named by DEVELOPERS.md, or by the page of its folder", () => {
  const main = read("DEVELOPERS.md");
  const beside = pages().filter((page) => /(DECISIONS|DEPENDENCIES|GLOSSARY|RULES)\.md$/.test(page));
  expect(beside.length).toBeGreaterThan(8);
  expect(beside.filter((page) => !main.includes(`](${page})`))).toEqual([]);
});

test("every decision has its date", () => {
  const decisions = pages()
    .filter((page) => page.endsWith("DECISIONS.md"))
    .flatMap((page) => [...read(page).matchAll(/^\*\*(.*)/gm)].map((match) => match[1] ?? ""));
  expect(decisions.length).toBeGreaterThan(20);
  expect(decisions.filter((decision) => !/^\d{4}-\d\d-\d\d · .+\.\*\* ./.test(decision))).toEqual([]);
});

test("the page of packages names every package once and no other", () => {
  const { dependencies, devDependencies } = JSON.parse(read("package.json"));
  const entries = read("src/build/DEPENDENCIES.md").split(/^- /m).slice(1);
  const listed = entries.flatMap((entry) => codeIn(entry.slice(0, entry.indexOf(":"))));
  expect([...listed].sort()).toEqual([...Object.keys(dependencies), ...Object.keys(devDependencies)].sort());
});

test("DEVELOPERS.md can be read at a sitting", () => {
  expect(new TextEncoder().encode(read("DEVELOPERS.md")).length).toBeLessThanOrEqual(15_000);
});

test("no row of a table is wider than a screen", () => {
  const wide = pages().flatMap((page) =>
    read(page)
      .split("\n")
      .filter((line) => line.startsWith("|") && line.length > 160)
      .map((line) => `${page}: ${line}`),
  );
  expect(wide).toEqual([]);
});
