/** The sizes in which parts are offered: as many outputs as are sold, and cables of a length. */

import type { Evaluation } from "../../evaluate/evaluation.ts";
import { defaultOptions } from "../../parts/catalogue.ts";
import type { AnyOptions, PartKind } from "../../parts/contract.ts";
import { describedOptions, metresOf, optionMeaning, optionsMeaning } from "../../parts/meanings.ts";
import type { Made } from "./inputs.ts";

/** Options of a part of which only some are said. */
export function made(kind: PartKind, options: AnyOptions): Made {
  return { kind, options: { ...defaultsOf(kind), ...options } };
}

const defaults = new WeakMap<PartKind, AnyOptions>();

function defaultsOf(kind: PartKind): AnyOptions {
  const known = defaults.get(kind) ?? defaultOptions(kind);
  defaults.set(kind, known);
  return known;
}

/** A kind as it usually is, then in its other sizes: what of its options differs from the typical values. */
export function sizesOf(kind: PartKind): readonly AnyOptions[] {
  const [key] = optionsMeaning(kind, "outputs", "ways");
  const sold = key === undefined ? undefined : describedOptions(kind).get(key)?.sold?.values;
  if (key === undefined || !sold) return [{}];
  const usual = defaultsOf(kind)[key];
  return [{}, ...sold.filter((value) => value !== usual).map((value) => ({ [key]: value }))];
}

/** The length of a part that is sold by the metre, for its options. */
export function lengthOption(kind: PartKind, lengthM: number | undefined): AnyOptions {
  const key = kind.trade.soldBy === "metre" ? optionMeaning(kind, "length") : undefined;
  const { min = 0, max = 0 } = (key !== undefined && describedOptions(kind).get(key)) || {};
  return key === undefined || lengthM === undefined || lengthM < min || lengthM > max
    ? {}
    : { [key]: lengthM };
}

/** Length of the cable that was added last [m]; undefined while there is none. */
export function lastLength({ records }: Evaluation): number | undefined {
  return records
    .map(({ kind, options }) => metresOf(kind, options))
    .findLast((metres) => metres !== undefined);
}
