/** One meaning for each exported name: nobody imports the wrong one of two, or has to ask which is meant. */
import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { read } from "./document.ts";

const root = new URL("../../", import.meta.url);

/** Files that export a name. A name that is only handed on from another file is not exported twice. */
function exporters(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  const files = readdirSync(new URL("src/", root), { recursive: true, encoding: "utf8" });
  for (const name of files.filter((file) => /\.tsx?$/.test(file)).sort()) {
    const file = `src/${name.replaceAll("\\", "/")}`;
    const exported = read(file).matchAll(
      /^export (?:declare )?(?:async )?(?:function\*?|const|let|type|class|enum) (\w+)/gm,
    );
    for (const [, exportedName = ""] of exported) {
      const files = found.get(exportedName) ?? [];
      if (!files.includes(file)) found.set(exportedName, [...files, file]);
    }
  }
  return found;
}

/** A rule's question and its words bear the rule's name, each in the folder of its kind. */
const isRuleAndWords = (files: readonly string[]) =>
  files.length === 2 &&
  files[0] === files[1]?.replace("src/sentences/rules/", "src/findings/rules/") &&
  files[0] !== files[1];

const twice = [...exporters()].filter(([, files]) => files.length > 1 && !isRuleAndWords(files));

/** Names that several files may export, each with the reason. */
const ALLOWED: Readonly<Record<string, string>> = {
  Asked: "what receivers may ask for while one measures; what the options of one receiver say",
  askedWords: "the two of these in words",
  Draft: "a design that a cure works on; a finding before it has its identity",
  Feed: "what a converter gives and a receiver takes, by kind; supplies as they arrive at a point",
  Measured: "a carrier with the tuner's noise; a measurement taken in practice",
  Place: "where a cure is wanted; where levels are held to limits",
  Point: "of the canvas; where a meter can be connected",
  Progress: "of the search for cures; of the search for faults",
  Range: "a range of frequencies; which part of a network a limit is for",
  Verdict: "on a receiver or outlet; on a guess in practice",
  placeOf: "of a cure; of a finding",
  quoted: "a label in quotation marks; the carrier whose figure a finding quotes",
  tunersOf: "how many a kind has; what each of them gets",
  wireAt: "of a design; of a record",
};

test("exported names are found at all", () => {
  expect(exporters().size).toBeGreaterThan(1000);
  expect(exporters().get("evaluate")).toEqual(["src/evaluate/evaluate.ts"]);
});

test("no exported name has two meanings", () => {
  expect(twice.filter(([name]) => !Object.hasOwn(ALLOWED, name))).toEqual([]);
});

test("no allowance is kept that nobody needs", () => {
  const needed = twice.map(([name]) => name);
  expect(Object.keys(ALLOWED).filter((name) => !needed.includes(name))).toEqual([]);
});
