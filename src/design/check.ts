/** From parsed JSON to a document: everything is checked, and the first fault is named with its place. */
import { kindOf } from "../parts/catalogue.ts";
import { checkContent } from "./checkContent.ts";
import type { Design, DesignContent, Variant } from "./design.ts";
import type { InputFault, LimitedThing, NameOrNumber } from "./fault.ts";
import { faultWords, leftOutWords } from "./faultWords.ts";
import { fileFault, partMark } from "./fileFault.ts";
import { LIMITS } from "./limits.ts";
import { fieldLabel } from "./optionFault.ts";
import { type Fields, isObject } from "./raw.ts";
import { type DesignFile, designFile, MIGRATIONS, VERSION } from "./schema.ts";
import { quotedText } from "./shown.ts";
import { rowCount } from "./sizeLimits.ts";
import { TYPICAL_SET, TYPICAL_SETS, underSet } from "./typical.ts";
import { activeName } from "./variants.ts";

export type DesignReading =
  | {
      readonly ok: true;
      readonly design: Design;
      /** What was in the file but is not in the design, one sentence each. */
      readonly notes: readonly string[];
    }
  | {
      readonly ok: false;
      /** What is wrong and where, in plain words. */
      readonly problem: string;
    };

/** Where a text comes from: limits of size are for what comes from outside, not for what the app has stored. */
export type TextOrigin = "outside" | "own storage";

/** Checks the value of a design file. */
export function checkFile(value: unknown, origin: TextOrigin = "outside"): DesignReading {
  const checked = checkedFile(value, origin);
  return "type" in checked ? refusedReading(checked) : checked;
}

export function refusedReading(fault: InputFault): DesignReading {
  return { ok: false, problem: faultWords(fault) };
}

type Read = DesignReading & { ok: true };

function checkedFile(value: unknown, origin: TextOrigin): Read | InputFault {
  if (!isObject(value) || value.format !== "downlead") return { type: "no design" };
  const fault = versionFault(value) ?? (origin === "outside" ? sizeFault(value) : null);
  if (fault) return fault;
  const file = migrated(value);
  const set = file.defaults === undefined ? 1 : file.defaults;
  if (typeof set !== "number" || !Number.isInteger(set) || set < 1) return setFault(file.defaults);
  const former = TYPICAL_SETS.get(set);
  if (!former) return { type: "newer values", set, newest: TYPICAL_SET };
  const whole = underSet(file, former);
  const parsed = designFile.safeParse(whole);
  if (!parsed.success) return fileFault(whole, parsed.error.issues[0]);
  const read = checkDesign(parsed.data);
  if ("type" in read || origin !== "outside") return read;
  return tooMany("rows", rowCount(read.design), LIMITS.rows) ?? read;
}

function versionFault(file: Fields): InputFault | null {
  const { version } = file;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    return { type: "no version", newest: VERSION };
  return version > VERSION ? { type: "newer", version, newest: VERSION } : null;
}

function setFault(found: unknown): InputFault {
  const allowed = { type: "number", min: undefined, max: undefined, isWhole: true } as const;
  return { type: "value", place: {}, field: "the set of typical values", found, allowed };
}

/** Counts before anything is looked at one by one; what variants hold counts together with the rest. */
function sizeFault(file: Fields): InputFault | null {
  const variants: readonly unknown[] = Array.isArray(file.variants) ? file.variants : [];
  const contents = [file, ...variants.filter(isObject)];
  const count = (list: "parts" | "wires") => contents.reduce((n, of) => n + lengthOf(of[list]), 0);
  return (
    tooMany("variants", variants.length, LIMITS.variants) ??
    tooMany("parts", count("parts"), LIMITS.parts) ??
    tooMany("wires", count("wires"), LIMITS.wires) ??
    firstOf(contents, longList)
  );
}

function tooMany(what: LimitedThing, count: number, most: number): InputFault | null {
  return count > most ? { type: "too many", what, count, most } : null;
}

/** A list that is longer than any option's may be: looking at its rows one by one would be work for nothing. */
function longList(content: Fields): InputFault | null {
  const parts: readonly unknown[] = Array.isArray(content.parts) ? content.parts : [];
  return firstOf(parts, (part, i) => {
    if (!isObject(part) || !isObject(part.options)) return null;
    const long = Object.entries(part.options).find(([, list]) => lengthOf(list) > LIMITS.listLength);
    if (!long) return null;
    const [key, found] = long;
    const shape = typeof part.kind === "string" ? kindOf(part.kind)?.options.shape : undefined;
    const field = fieldLabel(shape && Object.hasOwn(shape, key) ? shape[key] : undefined, quotedText(key));
    const allowed = { type: "list", most: LIMITS.listLength } as const;
    return { type: "value", place: { part: partMark(part, i) }, field, found, allowed };
  });
}

function lengthOf(list: unknown): number {
  return Array.isArray(list) ? list.length : 0;
}

function firstOf<T>(
  list: readonly T[],
  fault: (entry: T, i: number) => InputFault | null,
): InputFault | null {
  for (const [i, entry] of list.entries()) {
    const found = fault(entry, i);
    if (found !== null) return found;
  }
  return null;
}

function migrated(file: Fields): Fields {
  let current = file;
  for (;;) {
    const step = MIGRATIONS.get(Number(current.version));
    if (!step) return current;
    current = step(current);
  }
}

function checkDesign(file: DesignFile): Read | InputFault {
  const leftOut: { part: NameOrNumber; key: string }[] = [];
  let count = 0;
  const note = (part: NameOrNumber, key: string) => {
    count += 1;
    if (count <= 3) leftOut.push({ part, key });
  };
  const own = checkContent(file, {}, note);
  if ("type" in own) return own;
  const variants = checkVariants(file, note);
  if ("type" in variants) return variants;
  const { title, lesson, settings, variant } = file;
  const design: Design = {
    title,
    ...(lesson === undefined ? {} : { lesson }),
    ...(settings === undefined ? {} : { settings }),
    ...own,
    ...(variant === undefined ? {} : { variant }),
    ...(variants.list.length === 0 ? {} : { variants: variants.list }),
  };
  return { ok: true, design, notes: count === 0 ? [] : [leftOutWords({ first: leftOut, count })] };
}

function checkVariants(
  file: DesignFile,
  note: (part: NameOrNumber, key: string) => void,
): { readonly list: readonly Variant[] } | InputFault {
  const names = new Set([activeName(file)]);
  const list: (DesignContent & { readonly name: string })[] = [];
  for (const [i, variant] of (file.variants ?? []).entries()) {
    const { name } = variant;
    if (names.has(name)) return { type: "same variant", name };
    names.add(name);
    const checked = checkContent(variant, { variant: { name, number: i + 1 } }, note);
    if ("type" in checked) return checked;
    list.push({ name, ...checked });
  }
  return { list };
}
