/** A list pasted from a spreadsheet or a text, read into rows of an option field. */
import type { z } from "zod";
import { faultWords } from "../../../design/faultWords.ts";
import { fieldFault } from "../../../design/optionFault.ts";
import { fieldMeta } from "../../../parts/fields.ts";
import { readNumeral } from "./numeral.ts";

export type PastedRows =
  | { readonly ok: true; readonly rows: readonly unknown[] }
  | { readonly ok: false; readonly problem: string };

/**
 * One row to a line, the fields in the order of the table, parted by tabs, semicolons or commas.
 * A line may end early: the fields left out take their typical values. A first line of headings is skipped.
 */
export function readPastedRows(text: string, row: z.ZodObject): PastedRows {
  const lines = text
    .split(/\r?\n/)
    .map((line, i) => ({ line: line.trim(), number: i + 1 }))
    .filter(({ line }) => line !== "");
  const keys = Object.keys(row.shape);
  const rows: unknown[] = [];
  for (const { line, number } of lines) {
    const cells = cellsOf(line);
    if (rows.length === 0 && number === lines[0]?.number && isHeading(cells, row)) continue;
    if (cells.length > keys.length) {
      return { ok: false, problem: `Line ${number} has ${cells.length} values; a row has ${keys.length}.` };
    }
    const raw: Record<string, unknown> = {};
    cells.forEach((cell, i) => {
      const key = keys[i];
      if (key !== undefined && cell !== "") raw[key] = cellValue(cell, row.shape[key]);
    });
    const checked = row.safeParse(raw);
    if (!checked.success) {
      const issue = checked.error.issues[0];
      const key = String(issue?.path[0]);
      const within = issue && { ...issue, path: issue.path.slice(1) };
      const fault = fieldFault({ field: row.shape[key], key, value: raw[key], issue: within, place: {} });
      return { ok: false, problem: `Line ${number}: ${faultWords(fault)}` };
    }
    rows.push(checked.data);
  }
  if (rows.length === 0) return { ok: false, problem: "There is no row in this text." };
  return { ok: true, rows };
}

/** Splits at tabs if there are any, else at semicolons, else at commas: so "474,5" survives in the first two. */
function cellsOf(line: string): readonly string[] {
  const mark = line.includes("\t") ? "\t" : line.includes(";") ? ";" : ",";
  return line.split(mark).map((cell) => cell.trim());
}

/** Headings: nothing in the line is a number, but the row has a number field there. */
function isHeading(cells: readonly string[], row: z.ZodObject): boolean {
  const fields = Object.values(row.shape);
  const numbers = cells.filter((_, i) => controlOf(fields[i]) === "number");
  return numbers.length > 0 && numbers.every((cell) => readNumeral(cell) === null);
}

function cellValue(cell: string, schema: unknown): unknown {
  switch (controlOf(schema)) {
    case "number":
      return readNumeral(cell) ?? cell;
    case "switch":
      return /^(yes|true|on|1)$/i.test(cell) ? true : /^(no|false|off|0)$/i.test(cell) ? false : cell;
    case "choice": {
      const wanted = cell.toLowerCase();
      const choices = metaOf(schema)?.choices ?? [];
      const match = choices.find((c) => c.value.toLowerCase() === wanted || c.label.toLowerCase() === wanted);
      return match?.value ?? cell;
    }
    default:
      return cell;
  }
}

function metaOf(schema: unknown) {
  // The shape of a zod object is loosely typed; only schemas made by the field builders are described.
  return typeof schema === "object" && schema !== null ? fieldMeta(schema as z.ZodType) : undefined;
}

function controlOf(schema: unknown): string | undefined {
  return metaOf(schema)?.control;
}
