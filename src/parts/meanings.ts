/** Options of a kind found by what they mean, and what their declarations say of their values. */
import { remembered } from "../signal/remember.ts";
import type { AnyOptions, PartKind } from "./contract.ts";
import { type FieldMeta, fieldMeta } from "./fields.ts";
import type { Meaning, OnSite } from "./optionTrade.ts";

const known = new WeakMap<PartKind, ReadonlyMap<string, FieldMeta>>();

/** The descriptions of a kind's options by their keys, in the order of the form. */
export function describedOptions(kind: PartKind): ReadonlyMap<string, FieldMeta> {
  const found =
    known.get(kind) ??
    new Map(
      Object.entries(kind.options.shape).flatMap(([key, schema]) => {
        const meta = fieldMeta(schema);
        return meta ? [[key, meta] as const] : [];
      }),
    );
  known.set(kind, found);
  return found;
}

const keysByMeaning = new WeakMap<PartKind, Map<string, readonly string[]>>();

/** Keys of the options that mean one of these, in the order of the form. Searches ask it of every part over and over. */
export function optionsMeaning(kind: PartKind, ...meanings: readonly Meaning[]): readonly string[] {
  const byMeaning = remembered(keysByMeaning, kind, () => new Map<string, readonly string[]>());
  return remembered(byMeaning, meanings.join("|"), () =>
    [...describedOptions(kind)].flatMap(([key, meta]) =>
      meta.means && meanings.includes(meta.means) ? [key] : [],
    ),
  );
}

/** Key of the option that means this; undefined where the kind has none. */
export function optionMeaning(kind: PartKind, meaning: Meaning): string | undefined {
  return optionsMeaning(kind, meaning)[0];
}

/** Whether an option counts while the others are as they are. */
export function doesCount(meta: FieldMeta, options: AnyOptions): boolean {
  return Object.entries(meta.onlyWhen ?? {}).every(([key, wanted]) => {
    const now = options[key];
    return typeof wanted === "object" ? typeof now === "string" && wanted.includes(now) : now === wanted;
  });
}

/** Metres of a part that is sold by the metre; undefined for any other. */
export function metresOf(kind: PartKind, options: AnyOptions): number | undefined {
  const key = kind.trade.soldBy === "metre" ? optionMeaning(kind, "length") : undefined;
  const metres = key === undefined ? undefined : options[key];
  return typeof metres === "number" ? metres : undefined;
}

/** What another value of an option takes on site; undefined: another part. */
export function onSiteOf(kind: PartKind, key: string): OnSite | undefined {
  const way = describedOptions(kind).get(key)?.onSite ?? kind.trade.onSite;
  return way === "factory" ? undefined : way;
}

/** Numbers that an option can be given: those that are sold, or the steps of its knob; lowest first. */
export function standardValues(kind: PartKind, key: string): readonly number[] {
  const meta = describedOptions(kind).get(key);
  if (meta?.sold) return meta.sold.values.filter((value) => typeof value === "number");
  const { turnsBy = 0, min = 0, max = 0 } = meta ?? {};
  if (turnsBy === 0) return [];
  const first = Math.ceil(min / turnsBy);
  return Array.from({ length: Math.floor(max / turnsBy) - first + 1 }, (_, i) => (first + i) * turnsBy);
}

/** An option that stands at a value which is a defect, and the value it has once that is mended. */
export type OptionDefect = { readonly option: string; readonly value: unknown; readonly soundValue: unknown };

/** What is wrong with a part by its own options: mains off, a dish off its aim, a cable of steel. */
export function defectsOf(kind: PartKind, options: AnyOptions): readonly OptionDefect[] {
  return [...describedOptions(kind)].flatMap(([option, meta]): OptionDefect[] => {
    const value = options[option];
    if (meta.soundValue === undefined || !doesCount(meta, options) || !isDefect(meta, value)) return [];
    return [{ option, value, soundValue: meta.soundValue }];
  });
}

/** Whether a part is known to be broken: made to be a defect, or with an option off its sound value. */
export function isBroken(kind: PartKind, options: AnyOptions): boolean {
  return kind.trade.defect === true || defectsOf(kind, options).length > 0;
}

function isDefect(meta: FieldMeta, value: unknown): boolean {
  if (meta.defectValues) return meta.defectValues.includes(value);
  if (meta.defectAbove !== undefined) return typeof value === "number" && value > meta.defectAbove;
  return value !== meta.soundValue;
}
