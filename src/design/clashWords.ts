/** What two windows changed differently, in words for the user. */
import { kindOf } from "../parts/catalogue.ts";
import { fieldMeta } from "../parts/fields.ts";
import type { Design, Part, PartId } from "./design.ts";
import type { MergeClash } from "./mergeValues.ts";
import { SETTINGS } from "./settings.ts";
import { someOf } from "./shown.ts";

const OF_PART: Readonly<Record<string, string>> = {
  label: "name",
  place: "place",
  kind: "kind of part",
  wire: "wires",
  removed: "removed in one window",
};

const OF_DESIGN: Readonly<Record<string, string>> = {
  title: "the title",
  lesson: "the description",
  variant: "the variants",
  size: "the number of parts",
};

/** “Cable 3” (Length), “Plate 1” (name), the title and 14 more; "" for no clashes. Parts are named as in `design`. */
export function clashWords(clashes: readonly MergeClash[], design: Design): string {
  const parts = partsOf(design);
  const phrases = [...new Set(clashes.map((clash) => phraseOf(clash, parts)))];
  return someOf(phrases);
}

/** Those of the variant at work win over those that rest. */
function partsOf({ parts, variants = [] }: Design): ReadonlyMap<PartId, Part> {
  const all = [...variants.flatMap((variant) => variant.parts), ...parts];
  return new Map(all.map((part) => [part.id, part]));
}

function phraseOf({ part: id, what }: MergeClash, parts: ReadonlyMap<PartId, Part>): string {
  if (id === null) return OF_DESIGN[what] ?? `the setting “${settingLabel(what)}”`;
  const part = parts.get(id);
  return `“${part?.label || id}” (${OF_PART[what] ?? optionLabel(part, what)})`;
}

function settingLabel(key: string): string {
  const schema = new Map(Object.entries(SETTINGS.shape)).get(key);
  return (schema && fieldMeta(schema)?.label) ?? key;
}

function optionLabel(part: Part | undefined, key: string): string {
  const schema = part && kindOf(part.kind)?.options.shape[key];
  return (schema && fieldMeta(schema)?.label) ?? "a value";
}
