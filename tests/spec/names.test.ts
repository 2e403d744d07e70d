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

test("exported names are found at all", () => {
  expect(exporters().size).toBeGreaterThan(1000);
  expect(exporters().get("evaluate")).toEqual(["src/evaluate/evaluate.ts"]);
});

test("no exported name has two meanings", () => {
  expect(twice).toEqual([]);
});
