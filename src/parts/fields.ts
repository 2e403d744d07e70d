/**
 * Builders for option fields: a zod schema and, beside it, what a form needs to draw it
 * (label, unit, range, help, where the typical value comes from). What a schema refuses is put into words from
 * this description, by `src/design/optionFault.ts`, never by the schema library.
 */
import { z } from "zod";
import type { OptionTrade } from "./optionTrade.ts";

export type LabelledValue<V extends string = string> = {
  readonly value: V;
  readonly label: string;
  /** The label where what comes in are circular waves. */
  readonly circular?: string;
};

export type FieldMeta = OptionTrade & {
  readonly label: string;
  readonly unit?: string;
  readonly help?: string;
  readonly min?: number;
  readonly max?: number;
  readonly step?: number;
  /** Where the default comes from: a standard, a law, or "typical, from memory". */
  readonly source?: string;
  /** Words for the values of a choice, in order. */
  readonly choices?: readonly LabelledValue[];
  /** The label where what comes in are circular waves. */
  readonly circular?: string;
  readonly control: "number" | "choice" | "switch" | "text" | "rows";
  /** Fields of one row, for control "rows". */
  readonly row?: z.ZodObject;
  /** At most so many rows. */
  readonly maxRows?: number;
  /** Shown only under "More values" in the inspector. */
  readonly advanced?: boolean;
};

// A map of our own, not zod's registry: that one rewrites the types inside the stored value.
const described = new WeakMap<z.ZodType, FieldMeta>();

/** The form description of an option field; undefined for a schema not made by these builders. */
export function fieldMeta(schema: z.ZodType): FieldMeta | undefined {
  return described.get(schema);
}

/** A field as its form shows it where what comes in are circular waves. */
export function circularMeta(meta: FieldMeta): FieldMeta {
  const { label, choices, circular } = meta;
  return {
    ...meta,
    label: circular ?? label,
    ...(choices ? { choices: choices.map((c) => ({ ...c, label: c.circular ?? c.label })) } : {}),
  };
}

/** Minus zero is zero: a file cannot tell them apart. */
function withoutMinus(value: number): number {
  return value + 0;
}

type Common = Pick<
  FieldMeta,
  "label" | "circular" | "unit" | "help" | "source" | "advanced" | keyof OptionTrade
>;

export function number(
  m: Common & {
    readonly min: number;
    readonly max: number;
    readonly step?: number;
    readonly default: number;
  },
) {
  const { default: value, ...meta } = m;
  const schema = z.number().min(m.min).max(m.max).overwrite(withoutMinus).default(value);
  described.set(schema, { ...meta, control: "number" });
  return schema;
}

export function wholeNumber(
  m: Common & { readonly min: number; readonly max: number; readonly default: number },
) {
  const { default: value, ...meta } = m;
  const schema = z.int().min(m.min).max(m.max).overwrite(withoutMinus).default(value);
  described.set(schema, { ...meta, step: 1, control: "number" });
  return schema;
}

export function choice<const V extends string>(
  m: Common & {
    readonly choices: readonly LabelledValue<V>[];
    readonly default: NoInfer<V>;
  },
) {
  const { default: value, ...meta } = m;
  const values = m.choices.map((c) => c.value) as [V, ...V[]];
  const schema = z.enum(values).default(value as never);
  described.set(schema, { ...meta, control: "choice" });
  return schema;
}

export function toggle(m: Common & { readonly default: boolean }) {
  const { default: value, ...meta } = m;
  const schema = z.boolean().default(value);
  described.set(schema, { ...meta, control: "switch" });
  return schema;
}

export function text(m: Common & { readonly maxLength: number; readonly default: string }) {
  const { default: value, maxLength, ...meta } = m;
  const schema = z.string().max(maxLength).default(value);
  described.set(schema, { ...meta, control: "text" });
  return schema;
}

/** A short list of rows, each an object of fields made by these builders (a carrier plan, user bands). */
export function rows<R extends z.ZodObject>(
  m: Common & { readonly row: R; readonly maxRows: number; readonly default: readonly z.input<R>[] },
) {
  const { default: value, ...meta } = m;
  const schema = z
    .array(m.row)
    .max(m.maxRows)
    .default(() => z.array(m.row).parse(value) as never);
  described.set(schema, { ...meta, control: "rows" });
  return schema;
}
