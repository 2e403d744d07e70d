/** Tables of DEVELOPERS.md, as the tests that hold it to the code read them. */
import { readFileSync } from "node:fs";

const text = readFileSync(new URL("../../DEVELOPERS.md", import.meta.url), "utf8");

/** The part of the page under a heading, down to the next heading of the same or a higher rank. */
export function section(heading: string): string {
  const lines = text.split("\n");
  const start = lines.findIndex((line) => /^#+ /.test(line) && line.replace(/^#+ /, "") === heading);
  if (start < 0) throw new Error(`DEVELOPERS.md has no heading “${heading}”`);
  const rank = /^#+/.exec(lines[start] ?? "")?.[0].length ?? 0;
  const length = lines.slice(start + 1).findIndex((line) => {
    const marks = /^(#+) /.exec(line)?.[1];
    return marks !== undefined && marks.length <= rank;
  });
  return lines.slice(start, length < 0 ? undefined : start + 1 + length).join("\n");
}

/** Cells of all table rows under a heading, head and ruling lines left out. */
export function rowsUnder(heading: string): readonly (readonly string[])[] {
  const rows = section(heading)
    .split("\n")
    .filter((line) => line.startsWith("|"))
    .map((line) => line.split("|").slice(1, -1));
  return rows
    .filter((cells, i) => !isRuling(cells) && !isRuling(rows[i + 1] ?? []))
    .map((cells) => cells.map((cell) => cell.trim()));
}

function isRuling(cells: readonly string[]): boolean {
  return cells.length > 0 && cells.every((cell) => /^-+$/.test(cell.trim()));
}

/** What stands in code marks in a text. */
export function codeIn(words: string): readonly string[] {
  return [...words.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? "");
}
