/** Reading JSON that may be broken or hostile: one pass over the text finds the place of the first fault. */
import type { InputFault, SyntaxFault } from "./fault.ts";

export type Json =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly fault: InputFault };

export type JsonLimits = { readonly depth: number; readonly values: number };

/** Parses JSON of limited size. The engines word and place syntax errors differently, so this looks itself. */
export function parseJson(text: string, limits: JsonLimits): Json {
  const fault = findFault(text, limits);
  if (fault === "too many values") return { ok: false, fault: { type: fault, most: limits.values } };
  if (fault) return { ok: false, fault: { type: "syntax", ...place(text, fault.at), what: fault.what } };
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    // Never met: a test holds that the engine refuses nothing that the pass above accepts.
    return { ok: false, fault: { type: "no design" } };
  }
}

type Found = { readonly at: number; readonly what: SyntaxFault };
type Awaited = "value" | "value or ]" | "name or }" | "name" | "colon" | "comma or end" | "nothing";

function findFault(text: string, limits: JsonLimits): Found | "too many values" | null {
  const open: ("{" | "[")[] = [];
  let awaited: Awaited = "value";
  let at = 0;
  let values = 0;
  const afterValue = (): Awaited => (open.length === 0 ? "nothing" : "comma or end");

  for (;;) {
    at = endOf(SPACE, text, at);
    const sign = text[at];
    if (sign === undefined) {
      if (awaited === "nothing") return null;
      return {
        at,
        what: at === 0 ? { type: "empty" } : { type: "ends", awaited: WORDS[awaited] },
      };
    }
    const closes = sign === "}" ? "{" : sign === "]" ? "[" : undefined;
    const isValue: boolean = awaited === "value" || awaited === "value or ]";
    if (isValue) values += 1;
    if (values > limits.values) return "too many values";

    if (closes && open.at(-1) === closes && mayClose(awaited, closes)) {
      open.pop();
      at += 1;
      awaited = afterValue();
    } else if (isValue && (sign === "{" || sign === "[")) {
      if (open.length === limits.depth) return { at, what: { type: "too deep", most: limits.depth } };
      open.push(sign);
      at += 1;
      awaited = sign === "{" ? "name or }" : "value or ]";
    } else if (sign === '"' && (isValue || awaited === "name" || awaited === "name or }")) {
      const end = endOfString(text, at);
      if (typeof end !== "number") return end;
      at = end;
      awaited = isValue ? afterValue() : "colon";
    } else if (sign === ":" && awaited === "colon") {
      at += 1;
      awaited = "value";
    } else if (sign === "," && awaited === "comma or end") {
      at += 1;
      awaited = open.at(-1) === "{" ? "name" : "value";
    } else {
      const end = isValue ? endOf(SCALAR, text, at) : at;
      if (end === at) {
        const found = String.fromCodePoint(text.codePointAt(at) ?? 0);
        return { at, what: { type: "instead", awaited: WORDS[awaited], found } };
      }
      at = end;
      awaited = afterValue();
    }
  }
}

function mayClose(awaited: Awaited, bracket: "{" | "["): boolean {
  return awaited === "comma or end" || awaited === (bracket === "{" ? "name or }" : "value or ]");
}

const WORDS: Readonly<Record<Awaited, string>> = {
  value: "a value",
  "value or ]": "a value or a closing bracket",
  "name or }": "a name in quotes or a closing brace",
  name: "a name in quotes",
  colon: "a colon",
  "comma or end": "a comma or a closing bracket",
  nothing: "the end of the text",
};

const SPACE = /[ \t\n\r]*/y;
const SCALAR = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)/y;

function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

// Sign by sign, not by one pattern: a pattern over a string of megabytes can exhaust the engine's stack.
function endOfString(text: string, start: number): number | Found {
  let at = start + 1;
  for (;;) {
    const code = text.charCodeAt(at);
    if (Number.isNaN(code)) return { at: start, what: { type: "unclosed text" } };
    if (code === 34) return at + 1;
    if (code < 32) return { at, what: { type: "break in text" } };
    if (code === 92) {
      const end = endOf(ESCAPE, text, at);
      if (end === at) return { at, what: { type: "escape" } };
      at = end;
    } else at += 1;
  }
}

function place(text: string, at: number): { readonly line: number; readonly column: number } {
  let line = 1;
  let lineStart = 0;
  for (let i = text.indexOf("\n"); i >= 0 && i < at; i = text.indexOf("\n", i + 1)) {
    line += 1;
    lineStart = i + 1;
  }
  return { line, column: at - lineStart + 1 };
}
