/** What one step of work has changed, in words, for undo and redo: "delete “Plate bedroom 1”". */
import { type Design, type Part, type Wire, wireId } from "../design/design.ts";
import { partById, quoted } from "../design/lookup.ts";
import { isSameValue } from "../design/options.ts";
import { kindOf } from "../parts/catalogue.ts";
import { describedOptions } from "../parts/meanings.ts";
import { plural } from "../words/plural.ts";

/** From the design before the step to the one after it; the gravest change is the one that is named. */
export function stepWords(before: Design, after: Design): string {
  if (before.variant !== after.variant) return "turn to another variant";
  const removed = without(before.parts, after.parts);
  const added = without(after.parts, before.parts);
  if (removed.length > 0 && added.length > 0) return "change several parts";
  if (removed.length > 0) return `delete ${named(removed)}`;
  if (added.length > 0) return `add ${named(added)}`;
  const changed = changedParts(before, after);
  return (
    changeWords(changed) ??
    wireWords(before, after) ??
    moveWords(changed) ??
    (before.title !== after.title ? "change the title" : otherWords(before, after))
  );
}

type Changed = { readonly was: Part; readonly is: Part };

function without(parts: readonly Part[], others: readonly Part[]): readonly Part[] {
  const ids = new Set(others.map(({ id }) => id));
  return parts.filter(({ id }) => !ids.has(id));
}

function changedParts(before: Design, after: Design): readonly Changed[] {
  const was = new Map(before.parts.map((part) => [part.id, part]));
  return after.parts.flatMap((is) => {
    const former = was.get(is.id);
    return former && former !== is ? [{ was: former, is }] : [];
  });
}

function named(parts: readonly Part[]): string {
  const [only] = parts;
  return parts.length === 1 && only
    ? quoted(only)
    : plural(parts.length, { one: (n) => `${n} part`, other: (n) => `${n} parts` });
}

function changeWords(changed: readonly Changed[]): string | undefined {
  const replaced = changed.filter(({ was, is }) => was.kind !== is.kind);
  if (replaced.length > 0) return `replace ${named(replaced.map(({ was }) => was))}`;
  const set = changed.filter(({ was, is }) => !isSameValue(was.options, is.options));
  const [first] = set;
  if (first) return `set ${optionOf(first)} of ${named(set.map(({ is }) => is))}`;
  const renamed = changed.filter(({ was, is }) => was.label !== is.label);
  return renamed.length > 0 ? `rename ${named(renamed.map(({ was }) => was))}` : undefined;
}

/** "Length" as its field is called, or "values" where there are several. */
function optionOf({ was, is }: Changed): string {
  const kind = kindOf(is.kind);
  const keys = Object.keys(is.options).filter((key) => !isSameValue(was.options[key], is.options[key]));
  const [key] = keys;
  const label = kind && key !== undefined ? describedOptions(kind).get(key)?.label : undefined;
  return keys.length === 1 && label ? `“${label}”` : "values";
}

function wireWords(before: Design, after: Design): string | undefined {
  const had = new Set(before.wires.map(wireId));
  const has = new Set(after.wires.map(wireId));
  const made = after.wires.filter((wire) => !had.has(wireId(wire)));
  const gone = before.wires.filter((wire) => !has.has(wireId(wire)));
  const [join] = made;
  const [cut] = gone;
  if (join) return made.length === 1 ? `connect ${ends(after, join)}` : "connect several parts";
  if (cut)
    return gone.length === 1 ? `take off the wire between ${ends(before, cut)}` : "take off several wires";
  return undefined;
}

function ends(design: Design, { from, to }: Wire): string {
  return `${quoted(partById(design, from[0]))} and ${quoted(partById(design, to[0]))}`;
}

function moveWords(changed: readonly Changed[]): string | undefined {
  const moved = changed.filter(({ was, is }) => was.at[0] !== is.at[0] || was.at[1] !== is.at[1]);
  return moved.length > 0 ? `move ${named(moved.map(({ is }) => is))}` : undefined;
}

function otherWords(before: Design, after: Design): string {
  return before.variants === after.variants ? "change the settings" : "change the variants";
}
