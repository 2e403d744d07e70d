/** The written pages of the project, as the tests that hold them to the code read them. */
import { readdirSync, readFileSync } from "node:fs";

const root = new URL("../../", import.meta.url);

/** Paths of all pages: those at the root, and those beside the code. */
export function pages(): readonly string[] {
  const beside = ["src", "tests", "e2e"].flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: "utf8" }).map(
      (name) => `${folder}/${name.replaceAll("\\", "/")}`,
    ),
  );
  return [...readdirSync(root), ...beside].filter((name) => name.endsWith(".md")).sort();
}

export function read(path: string): string {
  return readFileSync(new URL(path, root), "utf8");
}

/** What stands in code marks in a text. */
export function codeIn(words: string): readonly string[] {
  return [...words.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? "");
}
