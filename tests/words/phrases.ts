/** Every text that stands in the source for people to read, found by parsing it: for tests that look at words alone. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parseSync } from "vite";

/** A text and where it stands. What is put in at run time reads "…". */
export type Phrase = { readonly file: string; readonly line: number; readonly words: string };

type Node = {
  readonly type: string;
  readonly start: number;
  readonly value?: unknown;
  readonly name?: unknown;
  readonly namespace?: unknown;
  readonly declaration?: unknown;
  readonly computed?: unknown;
  readonly quasis?: unknown;
  readonly expressions?: unknown;
};

/** Syntax that holds names for programs, not words for people. */
const SILENT = /^(?:Import|Export(?:All|Named)|TS(?!As|Satisfies|NonNull))/;

/** Attributes of elements whose values nobody reads. */
const SILENT_ATTRIBUTES =
  /^(?:className|type|role|id|key|name|href|rel|d|viewBox|style|data-.*|aria-(?:live|current|haspopup))$/;

/** All phrases of one source file. A phrase has two words, or begins with a capital. */
export function phrasesIn(file: string, source: string): readonly Phrase[] {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  const found: Phrase[] = [];
  for (const { start, words } of textsIn(program)) {
    const tidy = words.replace(/[^\S\u00a0\u202f]+/g, " ").trim();
    if (!/\p{L}{2}/u.test(tidy) || !/^[“\p{Lu}]|\s/u.test(tidy)) continue;
    found.push({ file, line: source.slice(0, start).split("\n").length, words: tidy });
  }
  return found;
}

function* textsIn(value: unknown): Generator<{ start: number; words: string }> {
  if (Array.isArray(value)) for (const one of value) yield* textsIn(one);
  else if (isNode(value)) yield* textsOfNode(value);
}

function* textsOfNode(node: Node): Generator<{ start: number; words: string }> {
  const { type, start } = node;
  if (SILENT.test(type) && node.declaration == null) return;
  if (type === "Literal" && typeof node.value === "string") yield { start, words: node.value };
  else if (type === "JSXText") yield { start, words: String(node.value) };
  else if (type === "TemplateLiteral") yield* templateTexts(node);
  else if (type === "JSXAttribute" && SILENT_ATTRIBUTES.test(nameOf(node.name))) return;
  else
    for (const [key, child] of Object.entries(node))
      if (!(key === "key" && type === "Property" && node.computed !== true)) yield* textsIn(child);
}

function* templateTexts(node: Node): Generator<{ start: number; words: string }> {
  const quasis = Array.isArray(node.quasis) ? node.quasis : [];
  yield { start: node.start, words: quasis.map((q) => q.value.cooked ?? "").join("…") };
  yield* textsIn(node.expressions);
}

function nameOf(value: unknown): string {
  if (!isNode(value)) return "";
  if (value.type === "JSXNamespacedName") return `${nameOf(value.namespace)}:${nameOf(value.name)}`;
  return typeof value.name === "string" ? value.name : "";
}

function isNode(value: unknown): value is Node {
  return typeof value === "object" && value !== null && "type" in value && "start" in value;
}

/** All phrases of the program, in the order of the files. */
export function allPhrases(): readonly Phrase[] {
  const files = readdirSync("src", { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join("src", name))
    .sort();
  return files.flatMap((file) => phrasesIn(file, readFileSync(file, "utf8")));
}
