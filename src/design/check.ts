/** From parsed JSON to a document: everything is checked, and the first fault is named with its place. */
import { type Content, checkContent, type Fault } from "./checkContent.ts";
import type { Design, Variant } from "./design.ts";
import { LIMITS } from "./limits.ts";
import { type Fields, isObject, placeOf, shortened } from "./place.ts";
import { type FileV1, fileV1, MIGRATIONS, VERSION } from "./schema.ts";
import { activeName } from "./variants.ts";

export type Reading =
  | {
      readonly ok: true;
      readonly design: Design;
      /** What was in the file but is not in the design, one sentence each. */
      readonly notes: readonly string[];
    }
  | {
      readonly ok: false;
      /** What is wrong and where, in one sentence. */
      readonly problem: string;
    };

const MOST_NOTES = 20;

/** Checks the value of a design file. */
export function checkFile(value: unknown): Reading {
  const problem = notADesign(value) ?? tooLarge(value);
  if (problem !== null) return { ok: false, problem };
  const parsed = fileV1.safeParse(migrated(value));
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return refused(value, { path: issue?.path ?? [], message: issue?.message ?? "not a design" });
  }
  return checkDesign(parsed.data);
}

function notADesign(value: unknown): string | null {
  if (!isObject(value)) return "This is not a design: expected one object in braces.";
  if (value.format !== "downlead") return 'This is not a design: "format" should be "downlead".';
  const version = value.version;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return `This is not a design: "version" should be a whole number from 1 to ${VERSION}.`;
  }
  if (version > VERSION) {
    return `"version" is ${version}: the file was written by a newer edition; this one reads up to version ${VERSION}.`;
  }
  return null;
}

/** Counts before anything is looked at one by one; what variants hold counts together with the rest. */
function tooLarge(file: unknown): string | null {
  if (!isObject(file)) return null;
  const variants = Array.isArray(file.variants) ? file.variants : [];
  if (variants.length > LIMITS.variants)
    return `variants: ${variants.length} are too many; a design holds at most ${LIMITS.variants} beside the one at work.`;
  const contents: Fields[] = [file, ...variants.filter(isObject)];
  for (const list of ["parts", "wires"] as const) {
    const count = contents.reduce((n, of) => n + (Array.isArray(of[list]) ? of[list].length : 0), 0);
    if (count > LIMITS[list]) {
      return `${list}: ${count} are too many; a design holds at most ${LIMITS[list]}.`;
    }
  }
  return longOptions(file, file, []) ?? firstOf(variants, (v, i) => longOptions(file, v, ["variants", i]));
}

function longOptions(file: unknown, content: unknown, at: readonly PropertyKey[]): string | null {
  const parts = isObject(content) && Array.isArray(content.parts) ? content.parts : [];
  return firstOf(parts, (part, i) => {
    if (!isObject(part) || !isObject(part.options)) return null;
    return firstOf(Object.entries(part.options), ([key, list]) =>
      Array.isArray(list) && list.length > LIMITS.listLength
        ? `${placeOf(file, [...at, "parts", i])}: options.${shortened(key)}: ${list.length} entries are too many, at most ${LIMITS.listLength}.`
        : null,
    );
  });
}

function firstOf<T>(list: readonly T[], fault: (entry: T, i: number) => string | null): string | null {
  for (const [i, entry] of list.entries()) {
    const found = fault(entry, i);
    if (found !== null) return found;
  }
  return null;
}

function migrated(file: unknown): unknown {
  let current = file;
  while (isObject(current)) {
    const step = MIGRATIONS.get(Number(current.version));
    if (!step) return current;
    current = step(current);
  }
  return current;
}

function checkDesign(file: FileV1): Reading {
  const notes: string[] = [];
  const note = (path: readonly PropertyKey[], text: string) => notes.push(`${placeOf(file, path)}: ${text}`);
  const own = checkContent(file, [], note);
  if (!own.ok) return refused(file, own.fault);
  const variants = checkVariants(file, note);
  if (!variants.ok) return refused(file, variants.fault);
  const { title, lesson, settings, variant } = file;
  const design: Design = {
    title,
    ...(lesson === undefined ? {} : { lesson }),
    ...(settings === undefined ? {} : { settings }),
    ...own.content,
    ...(variant === undefined ? {} : { variant }),
    ...(variants.list.length === 0 ? {} : { variants: variants.list }),
  };
  return { ok: true, design, notes: shortList(notes) };
}

type Variants =
  | { readonly ok: true; readonly list: readonly Variant[] }
  | { readonly ok: false; readonly fault: Fault };

function checkVariants(file: FileV1, note: (path: readonly PropertyKey[], text: string) => void): Variants {
  const names = new Set([activeName(file)]);
  const list: (Content & { readonly name: string })[] = [];
  for (const [i, variant] of (file.variants ?? []).entries()) {
    const path = ["variants", i];
    if (names.has(variant.name))
      return { ok: false, fault: { path, message: "another variant has the same name" } };
    names.add(variant.name);
    const checked = checkContent(variant, path, note);
    if (!checked.ok) return checked;
    list.push({ name: variant.name, ...checked.content });
  }
  return { ok: true, list };
}

function shortList(notes: readonly string[]): readonly string[] {
  if (notes.length <= MOST_NOTES) return notes;
  const more = notes.length - MOST_NOTES;
  return [...notes.slice(0, MOST_NOTES), `${more} more options are not known and were left out.`];
}

function refused(file: unknown, { path, message }: Fault): Reading {
  const place = placeOf(file, path);
  return { ok: false, problem: `${place === "" ? "" : `${place}: `}${message}.` };
}
