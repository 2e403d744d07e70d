/** JSON for people: like JSON.stringify, but what fits on a line stays on one. */
import { isObject } from "./raw.ts";

const LINE = 140;

/** Each part, wire and row begins a new line, so that two versions compare line by line. */
export function prettyJson(value: unknown, indent = ""): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const line = onOneLine(value);
  if (line !== null && indent.length + line.length <= LINE) return line;
  const deeper = `${indent}  `;
  const lines = Array.isArray(value)
    ? value.map((each) => prettyJson(each, deeper))
    : Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}: ${prettyJson(each, deeper)}`);
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
