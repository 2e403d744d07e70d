/** The design file: JSON that people can read, compare and keep. */
import { checkFile, type Reading } from "./check.ts";
import type { Design } from "./design.ts";
import { parseJson } from "./json.ts";
import { LIMITS } from "./limits.ts";
import { VERSION } from "./schema.ts";

/** Reads a design file. Never throws and never takes long, whatever the text is. */
export function readDesign(text: string): Reading {
  if (text.length > LIMITS.textLength) {
    const [size, limit] = [text.length, LIMITS.textLength].map((n) => `${(n / 1e6).toFixed(1)} MB`);
    return { ok: false, problem: `The file is too large: ${size}; at most ${limit} can be opened.` };
  }
  // Some editors put a byte order mark first, which JSON does not know.
  const parsed = parseJson(text.replace(/^\uFEFF/, ""), LIMITS.depth);
  if (!parsed.ok) return { ok: false, problem: `This is not a design file: ${parsed.problem}.` };
  return checkFile(parsed.value);
}

/** Writes a design with all its options; the same design always gives the same text. */
export function writeDesign(design: Design): string {
  return `${pretty(fileOf(design), "")}\n`;
}

/** The value of a design file, before it becomes text. */
export function fileOf(design: Design): unknown {
  const { title, lesson, settings, variant, variants } = design;
  return {
    format: "downlead",
    version: VERSION,
    title,
    ...(lesson === undefined ? {} : { lesson }),
    ...(settings === undefined ? {} : { settings }),
    ...contentOf(design),
    ...(variant === undefined ? {} : { variant }),
    ...(variants === undefined ? {} : { variants: variants.map((v) => ({ name: v.name, ...contentOf(v) })) }),
  };
}

function contentOf({ parts, wires }: Pick<Design, "parts" | "wires">) {
  return {
    parts: parts.map(({ id, kind, label, options, at }) => ({ id, kind, label, options, at })),
    wires: wires.map(({ from, to }) => ({ from, to })),
  };
}

const LINE = 140;

/** Like JSON.stringify, but what fits on a line stays on one; each part, wire and row begins a new one. */
function pretty(value: unknown, indent: string): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const line = onOneLine(value);
  if (line !== null && indent.length + line.length <= LINE) return line;
  const deeper = `${indent}  `;
  const lines = Array.isArray(value)
    ? value.map((each) => pretty(each, deeper))
    : Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}: ${pretty(each, deeper)}`);
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  return `${open}\n${lines.map((each) => deeper + each).join(",\n")}\n${indent}${close}`;
}

function onOneLine(value: unknown): string | null {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const isList = Array.isArray(value);
  const texts: string[] = [];
  for (const [key, each] of Object.entries(value)) {
    const text = isList && isObject(each) ? null : onOneLine(each);
    if (text === null) return null;
    texts.push(isList ? text : `${JSON.stringify(key)}: ${text}`);
  }
  if (isList) return `[${texts.join(", ")}]`;
  return texts.length === 0 ? "{}" : `{ ${texts.join(", ")} }`;
}

function isObject(value: unknown): boolean {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
