/**
 * Typical values and their sets. What is written short (a file, a link) leaves out what stands at its typical
 * value, under the number of the set that it means. A set that was once released never changes its meaning.
 */
import { defaultOptions } from "../parts/catalogue.ts";
import type { AnyOptions, PartKind } from "../parts/contract.ts";
import { type Fields, isObject } from "./raw.ts";

/** The set that the catalogue and the settings hold today, and that is written. */
export const TYPICAL_SET = 1;

/** What a set had otherwise than the catalogue and the settings have today. */
export type FormerValues = {
  readonly settings: Fields;
  /** By kind, then by option. */
  readonly options: ReadonlyMap<string, Fields>;
};

/**
 * All sets by their numbers. Where a typical value changes, `TYPICAL_SET` grows by one, and each older set names
 * here the value that it had.
 */
export const TYPICAL_SETS: ReadonlyMap<number, FormerValues> = new Map([
  [1, { settings: {}, options: new Map() }],
]);

// Worked out once for each kind: a dish alone brings a plan of 80 rows.
const known = new WeakMap<PartKind, AnyOptions>();

/** The typical options of a kind, the same object each time. */
export function typicalOptions(kind: PartKind): AnyOptions {
  const options = known.get(kind) ?? defaultOptions(kind);
  known.set(kind, options);
  return options;
}

/** The value of a file in which the set of its time has filled in what it meant, where that has changed since. */
export function underSet(file: Fields, { settings, options }: FormerValues): Fields {
  if (options.size === 0 && Object.keys(settings).length === 0) return file;
  const part = (raw: unknown): unknown => {
    const former = isObject(raw) && typeof raw.kind === "string" ? options.get(raw.kind) : undefined;
    return isObject(raw) && former ? { ...raw, options: over(former, raw.options) } : raw;
  };
  const content = (raw: unknown): unknown =>
    isObject(raw) && Array.isArray(raw.parts) ? { ...raw, parts: raw.parts.map(part) } : raw;
  return {
    ...file,
    ...(Array.isArray(file.parts) ? { parts: file.parts.map(part) } : {}),
    ...(Array.isArray(file.variants) ? { variants: file.variants.map(content) } : {}),
    ...(Object.keys(settings).length > 0 ? { settings: over(settings, file.settings) } : {}),
  };
}

/** What was written lies over what was meant; a value of the wrong type is left for the reader to refuse. */
function over(former: Fields, written: unknown = {}): unknown {
  return isObject(written) ? { ...former, ...written } : written;
}
