/** What a design may hold: edits are refused where they would make more of it than can be opened again. */
import { kindOf } from "../parts/catalogue.ts";
import type { AnyOptions } from "../parts/contract.ts";
import type { Design, Part } from "./design.ts";
import type { Edit } from "./edits/edit.ts";
import type { LimitedThing } from "./fault.ts";
import { countWords } from "./faultPhrases.ts";
import { LIMITS } from "./limits.ts";
import { isSameValue } from "./options.ts";
import { shownNumber } from "./shown.ts";
import { typicalOptions } from "./typical.ts";
import { heldCount } from "./variants.ts";

/**
 * The edit itself, or a refusal with the number where its design would hold more than is allowed. A design that
 * already holds more (it came from the storage of an edition that allowed it) may still be made smaller.
 */
export function withinSizeLimits(before: Design, edit: Edit): Edit {
  if (!edit.ok || edit.design === before) return edit;
  const [was, is] = [held(before), held(edit.design)];
  for (const what of COUNTED) {
    const most = LIMITS[what];
    if (is[what] > most && is[what] > was[what]) return { ok: false, reason: overLimitWords(what, is[what]) };
  }
  return edit;
}

const COUNTED = ["variants", "parts", "wires", "rows"] as const;

/** "A design holds at most 5,000 parts; this would make 5,012." */
export function overLimitWords(what: LimitedThing, count: number): string {
  const variants = what === "variants" ? "" : ", all variants together";
  return `A design holds at most ${countWords(LIMITS[what], what)}${variants}; this would make ${shownNumber(count)}.`;
}

function held(design: Design): Readonly<Record<LimitedThing, number>> {
  return { ...heldCount(design), rows: rowCount(design), variants: design.variants?.length ?? 0 };
}

/** Rows in the lists of all parts of all variants, as far as the lists differ from the typical ones. */
export function rowCount(design: Design): number {
  const sum = (parts: readonly Part[]) => parts.reduce((n, part) => n + rowsOf(part), 0);
  return (design.variants ?? []).reduce((n, { parts }) => n + sum(parts), sum(design.parts));
}

// Options are immutable: counted once for each object.
const counted = new WeakMap<AnyOptions, number>();

function rowsOf({ kind: key, options }: Part): number {
  const known = counted.get(options);
  if (known !== undefined) return known;
  const kind = kindOf(key);
  const typical = kind ? typicalOptions(kind) : {};
  let rows = 0;
  for (const [name, value] of Object.entries(options)) {
    if (Array.isArray(value) && !isSameValue(value, typical[name])) rows += value.length;
  }
  counted.set(options, rows);
  return rows;
}
