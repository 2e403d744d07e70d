/** Options of a part: checked and completed by the schema of its kind. */
import { kindOf } from "../parts/catalogue.ts";
import type { AnyOptions, PartKind } from "../parts/contract.ts";
import type { Part } from "./design.ts";
import type { ValueFault } from "./fault.ts";
import { fieldFault } from "./optionFault.ts";
import { typicalOptions } from "./typical.ts";

export type CheckedOptions =
  | { readonly ok: true; readonly options: AnyOptions }
  | {
      readonly ok: false;
      /** Its place names a row at most: whose options they are is for the caller to add. */
      readonly fault: ValueFault;
    };

/**
 * Fills in typical values and drops what the kind doesn't know; the first fault decides. A value that equals the
 * typical one becomes the same object, so that long lists are held once and known again at once.
 */
export function checkOptions(kind: PartKind, raw: Readonly<Record<string, unknown>>): CheckedOptions {
  const typical = typicalOptions(kind);
  const options: Record<string, unknown> = {};
  for (const [key, field] of Object.entries(kind.options.shape)) {
    const value = Object.hasOwn(raw, key) ? raw[key] : undefined;
    if (value === undefined || value === typical[key]) {
      options[key] = typical[key];
      continue;
    }
    const checked = field.safeParse(value);
    if (!checked.success) {
      const issue = checked.error.issues[0];
      return { ok: false, fault: fieldFault({ field, key, value, issue, place: {} }) };
    }
    options[key] = isSameValue(checked.data, typical[key]) ? typical[key] : checked.data;
  }
  return { ok: true, options };
}

/** The options of a part that do not stand at their typical value. */
export function changedOptions(part: Part): AnyOptions {
  const kind = kindOf(part.kind);
  return kind ? changedValues(part.options, typicalOptions(kind)) : part.options;
}

export function changedValues(values: AnyOptions, typical: AnyOptions): AnyOptions {
  return Object.fromEntries(
    Object.entries(values).filter(([key, value]) => !isSameValue(value, typical[key])),
  );
}

/** Whether two option values are the same, row by row. */
export function isSameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = Object.entries(a);
  const right = new Map(Object.entries(b));
  return (
    left.length === right.size &&
    left.every(([key, value]) => right.has(key) && isSameValue(value, right.get(key)))
  );
}
