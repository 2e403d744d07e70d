/** What DEVELOPERS.md says of names, files, packages and limits is so in the code. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { KNOWN_LIMITS } from "../../src/findings/knownLimits.ts";
import { codeIn, rowsUnder, section } from "./document.ts";

const root = new URL("../../", import.meta.url);
const read = (name: string) => readFileSync(new URL(name, root), "utf8");

const source = readdirSync(new URL("src/", root), { recursive: true, encoding: "utf8" })
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => read(`src/${name}`))
  .join("\n");

describe("the glossary", () => {
  const rows = rowsUnder("Glossary");

  test("has every term once", () => {
    const terms = rows.map(([term]) => term);
    expect(terms.length).toBeGreaterThan(60);
    expect(new Set(terms).size).toBe(terms.length);
  });

  test("names nothing that the code has not", () => {
    const names = rows.flatMap((cells) => codeIn(cells.at(-1) ?? ""));
    expect(names.length).toBeGreaterThan(100);
    expect(names.filter((name) => !new RegExp(`\\b${name}\\b`).test(source))).toEqual([]);
  });
});

test("the page names no file or folder of the project that is not there", () => {
  const paths = codeIn(read("DEVELOPERS.md")).filter((code) => /^(src|tests|e2e|\.ci)\/\S*$/.test(code));
  expect(paths.length).toBeGreaterThan(30);
  expect(paths.filter((path) => !existsSync(new URL(path, root)))).toEqual([]);
});

test("the table of dependencies names every package and no other", () => {
  const { dependencies, devDependencies } = JSON.parse(read("package.json"));
  const listed = rowsUnder("Dependencies").flatMap(([names = ""]) =>
    // "vitest 4" says which major version, and why, in its row.
    names.split(", ").map((name) => name.replace(/ \d+$/, "")),
  );
  expect([...listed].sort()).toEqual([...Object.keys(dependencies), ...Object.keys(devDependencies)].sort());
});

test("the known limits of the model are those that users read", () => {
  const listed = section("Of the model")
    .split("\n")
    .filter((line) => line.startsWith("- "))
    .map((line) => line.slice(2));
  expect(listed).toEqual(KNOWN_LIMITS.map((limit) => limit.title));
});
