/** What weather and neighbours do to the options of a part: rain, a tropospheric lift, phone masts. */
import type { z } from "zod";
import type { AnyOptions, PartKind } from "./contract.ts";
import { dishOptionsOf } from "./dishBands.ts";
import { type FieldMeta, fieldMeta } from "./fields.ts";
import { describedOptions, doesCount, optionsMeaning } from "./meanings.ts";
import type { Meaning } from "./optionTrade.ts";
import { planRainDb } from "./rainMargin.ts";

export type Surroundings =
  | { readonly type: "dry" | "masts on" | "masts off" }
  /** Rain that is exceeded for a share of an average year [%]. */
  | { readonly type: "rain"; readonly yearPercent: number }
  /** Distant transmitters rise, those that are wanted fade [dB, positive]. */
  | { readonly type: "lift"; readonly riseDb: number; readonly fadeDb: number };

/** Options that differ from those of the part; none where the surroundings do nothing to it. */
export function changedBySurroundings(
  kind: PartKind,
  options: AnyOptions,
  surroundings: Surroundings,
): AnyOptions {
  switch (surroundings.type) {
    case "dry":
      return inRain(kind, options, undefined);
    case "rain":
      return inRain(kind, options, surroundings.yearPercent);
    case "lift":
      return kind.trade.job === "aerial" ? inLift(kind, options, surroundings) : {};
    case "masts on":
      return mastsOn(kind, options);
    case "masts off":
      return differing(options, Object.fromEntries(mastKeys(kind).map((key) => [key, false])));
  }
}

function inRain(kind: PartKind, options: AnyOptions, yearPercent: number | undefined): AnyOptions {
  const [key] = optionsMeaning(kind, "rain loss");
  const dish = dishOptionsOf({ kind, options });
  if (key === undefined || !dish) return {};
  const rainDb = yearPercent === undefined ? 0 : planRainDb(dish, yearPercent);
  return differing(options, { [key]: within(describedOptions(kind).get(key), rainDb) });
}

function inLift(
  kind: PartKind,
  options: AnyOptions,
  { riseDb, fadeDb }: Extract<Surroundings, { type: "lift" }>,
): AnyOptions {
  const changed: Record<string, unknown> = {};
  for (const key of optionsMeaning(kind, "source level")) {
    const meta = describedOptions(kind).get(key);
    const value = options[key];
    if (meta && doesCount(meta, options) && typeof value === "number")
      changed[key] = within(meta, value - fadeDb);
  }
  for (const [key, meta] of describedOptions(kind)) {
    const rows = options[key];
    if (!meta.row || !Array.isArray(rows)) continue;
    const lifted = liftedRows(meta.row, rows, riseDb + fadeDb);
    if (lifted) changed[key] = lifted;
  }
  return differing(options, changed);
}

/** Rows that nobody here wants come in so much stronger; undefined where there are none. */
function liftedRows(
  row: z.ZodObject,
  rows: readonly AnyOptions[],
  byDb: number,
): readonly AnyOptions[] | undefined {
  const wanted = rowField(row, "wanted here");
  const offset = rowField(row, "level offset");
  if (!wanted || !offset || !rows.some((r) => r[wanted.key] === false)) return undefined;
  return rows.map((r) => {
    const value = r[offset.key];
    if (r[wanted.key] !== false || typeof value !== "number") return r;
    return { ...r, [offset.key]: within(offset.meta, value + byDb) };
  });
}

function rowField(
  row: z.ZodObject,
  means: Meaning,
): { readonly key: string; readonly meta: FieldMeta } | undefined {
  for (const [key, schema] of Object.entries(row.shape)) {
    const meta = fieldMeta(schema);
    if (meta?.means === means) return { key, meta };
  }
  return undefined;
}

function mastKeys(kind: PartKind): readonly string[] {
  return optionsMeaning(kind, "mast signal");
}

/** Those that are drawn; or where none is, those that a new part has on. */
function mastsOn(kind: PartKind, options: AnyOptions): AnyOptions {
  const keys = mastKeys(kind);
  if (keys.some((key) => options[key] === true)) return {};
  const usual: AnyOptions = kind.options.parse({});
  return differing(options, Object.fromEntries(keys.map((key) => [key, usual[key]])));
}

function within(meta: FieldMeta | undefined, value: number): number {
  return Math.min(meta?.max ?? value, Math.max(meta?.min ?? value, value));
}

function differing(options: AnyOptions, changed: AnyOptions): AnyOptions {
  return Object.fromEntries(Object.entries(changed).filter(([key, value]) => options[key] !== value));
}
