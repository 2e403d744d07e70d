/** Options of a part: checked and completed by the schema of its kind. */
import type { AnyOptions, PartKind } from "../parts/contract.ts";
import { fieldMeta } from "../parts/fields.ts";

export type CheckedOptions =
  | { readonly ok: true; readonly options: AnyOptions }
  | {
      readonly ok: false;
      /** Where in the options: ["channels", 3, "mode"]. */
      readonly path: readonly PropertyKey[];
      /** What is wrong, with the label of the field: "Length: at most 500 m". */
      readonly message: string;
    };

/** Fills in defaults and drops what the kind doesn't know; the first fault decides. */
export function checkOptions(kind: PartKind, raw: Readonly<Record<string, unknown>>): CheckedOptions {
  const result = kind.options.safeParse(raw);
  if (result.success) return { ok: true, options: result.data };
  const issue = result.error.issues[0];
  const path = issue?.path ?? [];
  const row = typeof path[1] === "number" ? `${fieldLabel(kind, path[0])}, row ${path[1] + 1}: ` : "";
  return { ok: false, path, message: `${row}${issue?.message ?? "not a valid set of options"}` };
}

function fieldLabel(kind: PartKind, key: PropertyKey | undefined): string {
  const schema = typeof key === "string" ? kind.options.shape[key] : undefined;
  return (schema && fieldMeta(schema)?.label) ?? String(key);
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
