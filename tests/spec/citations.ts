/** Numbered rules as tests cite them: a test's name begins with its rule, "EV3: after any edits …". */
import { readdirSync, readFileSync } from "node:fs";

export type Citation = { readonly rule: string; readonly says: string; readonly file: string };

const root = new URL("../../", import.meta.url);

/** All citations in the tests of the project, in the order of files and lines. */
export function citations(): readonly Citation[] {
  return ["tests/", "e2e/"].flatMap((folder) =>
    readdirSync(new URL(folder, root), { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(test|spec)\.tsx?$/.test(name))
      .sort()
      .flatMap((name) => citationsIn(`${folder}${name}`)),
  );
}

function citationsIn(file: string): readonly Citation[] {
  const source = readFileSync(new URL(file, root), "utf8");
  return [...source.matchAll(/\(\s*(["'`])([A-Z]{2}\d+): (.*?)\1\s*,/gs)].map((match) => ({
    rule: match[2] ?? "",
    says: match[3] ?? "",
    file,
  }));
}

/** "EV" of "EV3": the area that a rule belongs to. */
export function areaOf(rule: string): string {
  return rule.replace(/\d+$/, "");
}
