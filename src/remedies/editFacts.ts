/** What an edit did, as facts: read from the two designs, whoever made it and by whatever way. */
import type { Design, Part, PartId, Wire } from "../design/design.ts";
import { isSameValue } from "../design/options.ts";
import { activeName } from "../design/variants.ts";
import { type ChangedPart, type Difference, difference } from "./difference.ts";

/** One part before and after; told apart by its id. */
type Turned = { readonly before: Part; readonly after: Part };

export type EditFacts =
  | { readonly what: "added"; readonly parts: readonly Part[]; readonly wires: number }
  /** Into a wire, between its two ends. */
  | {
      readonly what: "inserted";
      readonly part: Part;
      readonly from: Part | undefined;
      readonly to: Part | undefined;
    }
  /** `isClosed`: the parts on both sides of a gap are connected to each other again. */
  | { readonly what: "removed"; readonly parts: readonly Part[]; readonly isClosed: boolean }
  | { readonly what: "replaced"; readonly parts: readonly Turned[] }
  | { readonly what: "set"; readonly parts: readonly ChangedPart[] }
  | { readonly what: "renamed"; readonly parts: readonly Turned[] }
  | { readonly what: "connected" | "disconnected"; readonly wires: readonly Ends[] }
  | { readonly what: "reconnected"; readonly gone: number; readonly come: number }
  | { readonly what: "moved"; readonly parts: readonly Part[]; readonly isAll: boolean }
  | { readonly what: "retitled"; readonly title: string }
  | { readonly what: "variant"; readonly name: string }
  | { readonly what: "variants" | "settings" }
  /** Several of these at once, as a cure or an older state brings them. */
  | {
      readonly what: "several";
      readonly added: number;
      readonly removed: number;
      readonly changed: number;
    };

export type Ends = { readonly from: Part | undefined; readonly to: Part | undefined };

/** Null where both designs say the same. */
export function editFacts(before: Design, after: Design): EditFacts | null {
  if (before === after) return null;
  const name = activeName(after);
  if (name !== activeName(before)) return { what: "variant", name };
  return (
    partFacts(difference(before, after)) ??
    wireFacts(before, after) ??
    renamed(before, after) ??
    moved(before, after) ??
    frameFacts(before, after)
  );
}

/** Parts that came, went or became others; wires and places that follow from it are not told apart. */
function partFacts({ before, after, ...diff }: Difference): EditFacts | null {
  const { added, removed, changed, wiresAdded, wiresRemoved } = diff;
  const replaced = changed.filter((c) => c.before.kind !== c.after.kind);
  const [first] = added;
  if ([added, removed, changed].filter((list) => list.length > 0).length > 1 || isMixed(changed, replaced))
    return { what: "several", added: added.length, removed: removed.length, changed: changed.length };
  if (first && added.length === 1 && wiresRemoved.length === 1)
    return { what: "inserted", part: first, ...insertedInto(wiresRemoved, before) };
  if (first) return { what: "added", parts: added, wires: wiresAdded.length };
  if (removed.length > 0) return { what: "removed", parts: removed, isClosed: wiresAdded.length > 0 };
  if (replaced.length > 0) return { what: "replaced", parts: replaced };
  return changed.length > 0 ? { what: "set", parts: changed } : null;
}

function isMixed(changed: readonly ChangedPart[], replaced: readonly ChangedPart[]): boolean {
  return replaced.length > 0 && replaced.length < changed.length;
}

function insertedInto([wire]: readonly Wire[], design: Design): Ends {
  return endsOf(wire, new Map(design.parts.map((p) => [p.id, p])));
}

function endsOf(wire: Wire | undefined, parts: ReadonlyMap<PartId, Part>): Ends {
  return { from: parts.get(wire?.from[0] ?? ""), to: parts.get(wire?.to[0] ?? "") };
}

function wireFacts(before: Design, after: Design): EditFacts | null {
  const { wiresAdded, wiresRemoved } = difference(before, after);
  if (wiresAdded.length > 0 && wiresRemoved.length > 0)
    return { what: "reconnected", gone: wiresRemoved.length, come: wiresAdded.length };
  const parts = new Map(after.parts.map((p) => [p.id, p]));
  if (wiresAdded.length > 0) return { what: "connected", wires: wiresAdded.map((w) => endsOf(w, parts)) };
  if (wiresRemoved.length === 0) return null;
  return { what: "disconnected", wires: wiresRemoved.map((w) => endsOf(w, parts)) };
}

function renamed(before: Design, after: Design): EditFacts | null {
  const parts = turned(before, after).filter((t) => t.before.label !== t.after.label);
  return parts.length > 0 ? { what: "renamed", parts } : null;
}

function moved(before: Design, after: Design): EditFacts | null {
  const parts = turned(before, after)
    .filter((t) => t.before.at[0] !== t.after.at[0] || t.before.at[1] !== t.after.at[1])
    .map((t) => t.after);
  if (parts.length === 0) return null;
  return { what: "moved", parts, isAll: parts.length > 1 && parts.length === after.parts.length };
}

function turned(before: Design, after: Design): readonly Turned[] {
  const former = new Map(before.parts.map((p) => [p.id, p]));
  return after.parts.flatMap((part) => {
    const was = former.get(part.id);
    return was && was !== part ? [{ before: was, after: part }] : [];
  });
}

/** What stands around the drawing. */
function frameFacts(before: Design, after: Design): EditFacts | null {
  if (before.title !== after.title) return { what: "retitled", title: after.title };
  if (!isSameValue(before.settings, after.settings)) return { what: "settings" };
  return isSameValue(before.variants, after.variants) ? null : { what: "variants" };
}
