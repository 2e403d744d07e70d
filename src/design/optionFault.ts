/** From what a schema of described fields complains of to a fact with the labels of the form. */
import type { z } from "zod";
import { type FieldMeta, fieldMeta } from "../parts/fields.ts";
import type { Allowed, FaultPlace, ValueFault } from "./fault.ts";
import { isObject } from "./raw.ts";

type Issue = z.core.$ZodIssue;

/**
 * The first fault that a schema found in the value of one field. The path of the issue begins inside the field:
 * empty for the value itself, [2] for its third row, [2, "channel"] for a field of that row.
 */
export function fieldFault(o: {
  readonly field: unknown;
  readonly key: string;
  readonly value: unknown;
  readonly issue: Issue | undefined;
  readonly place: FaultPlace;
}): ValueFault {
  const { field, key, value, issue, place } = o;
  const meta = metaOf(field);
  const label = fieldLabel(field, key);
  const [row, rowKey] = issue?.path ?? [];
  if (typeof row !== "number")
    return { type: "value", place, field: label, found: value, allowed: allowedOf(meta, value, issue) };
  const found: unknown = Array.isArray(value) ? value[row] : undefined;
  const within = { ...place, row: { list: label, number: row + 1 } };
  if (typeof rowKey !== "string")
    return { type: "value", place: within, field: "the row", found, allowed: { type: "values" } };
  const cell = isObject(found) ? found[rowKey] : undefined;
  const cellMeta = metaOf(meta?.row?.shape[rowKey]);
  return {
    type: "value",
    place: within,
    field: cellMeta?.label ?? rowKey,
    found: cell,
    allowed: allowedOf(cellMeta, cell, issue),
  };
}

/** The label of a field; the fallback where it has none. */
export function fieldLabel(field: unknown, fallback: string): string {
  return metaOf(field)?.label ?? fallback;
}

function metaOf(field: unknown): FieldMeta | undefined {
  // The shape of a zod object is loosely typed; only schemas made by the field builders are described.
  return typeof field === "object" && field !== null ? fieldMeta(field as z.ZodType) : undefined;
}

function allowedOf(meta: FieldMeta | undefined, found: unknown, issue: Issue | undefined): Allowed {
  const most = issue?.code === "too_big" ? Number(issue.maximum) : undefined;
  switch (meta?.control) {
    case "number": {
      const { min, max, unit } = meta;
      const isWithin = typeof found === "number" && found >= (min ?? -Infinity) && found <= (max ?? Infinity);
      // What lies within the range and is refused all the same is not whole.
      return { type: "number", min, max, isWhole: isWithin, ...(unit === undefined ? {} : { unit }) };
    }
    case "choice":
      return { type: "choice", labels: (meta.choices ?? []).map((choice) => choice.label) };
    case "switch":
      return { type: "yes or no" };
    case "rows":
      return { type: "list", ...(most === undefined ? {} : { most }) };
    default:
      return { type: "text", ...(most === undefined ? {} : { most }) };
  }
}
