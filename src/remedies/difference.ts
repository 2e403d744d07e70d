/** What differs between two designs, part by part. */
import type { Design, Part, Wire } from "../design/design.ts";
import { wireId } from "../design/design.ts";
import { isSameValue } from "../design/options.ts";

export type ChangedPart = {
  readonly before: Part;
  readonly after: Part;
  /** Options that differ, when the kind is the same. */
  readonly options: readonly string[];
};

export type Difference = {
  readonly before: Design;
  readonly after: Design;
  readonly added: readonly Part[];
  readonly removed: readonly Part[];
  /** Parts of another kind or with other options; moved or renamed ones are not among them. */
  readonly changed: readonly ChangedPart[];
  readonly wiresAdded: readonly Wire[];
  readonly wiresRemoved: readonly Wire[];
};

/** Parts are the same when they bear the same id. */
export function difference(before: Design, after: Design): Difference {
  const old = new Map(before.parts.map((p) => [p.id, p]));
  const now = new Map(after.parts.map((p) => [p.id, p]));
  const oldWires = new Set(before.wires.map(wireId));
  const newWires = new Set(after.wires.map(wireId));
  return {
    before,
    after,
    added: after.parts.filter((p) => !old.has(p.id)),
    removed: before.parts.filter((p) => !now.has(p.id)),
    changed: after.parts.flatMap((part): ChangedPart[] => {
      const former = old.get(part.id);
      if (!former || former === part) return [];
      if (former.kind !== part.kind) return [{ before: former, after: part, options: [] }];
      const options = Object.keys(part.options).filter(
        (key) => !isSameValue(former.options[key], part.options[key]),
      );
      return options.length > 0 ? [{ before: former, after: part, options }] : [];
    }),
    wiresAdded: after.wires.filter((w) => !oldWires.has(wireId(w))),
    wiresRemoved: before.wires.filter((w) => !newWires.has(wireId(w))),
  };
}
