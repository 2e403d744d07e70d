/** Copying and pasting: a fragment is parts, the wires among them, and which outputs fed them from outside. */
import { kindOf } from "../../parts/catalogue.ts";
import type { Design, Part, PartId, Wire } from "../design.ts";
import { inNamingOrder, type Names, namer } from "../names.ts";
import { withinSizeLimits } from "../sizeLimits.ts";
import { nextFreeOutput } from "./alike.ts";
import { done, type Edit } from "./edit.ts";
import { planJoin } from "./join.ts";
import { onCanvas } from "./parts.ts";

/** Write it as a file of its own (`writeDesign` with a title) to carry it from window to window. */
export type Fragment = Pick<Design, "parts" | "wires"> & {
  /** Wires that came in from parts left behind: a copy is fed by the next free output like that one. */
  readonly feeds?: readonly Wire[];
};

export type Paste =
  | (Edit & { readonly ok: true; readonly added: ReadonlySet<PartId> })
  | (Edit & { ok: false });

/** How far a paste without a place of its own lies from what it was copied from [px]. */
const STEP = 32;

export function copyParts(design: Design, ids: ReadonlySet<PartId>): Fragment {
  return {
    parts: design.parts.filter((part) => ids.has(part.id)),
    wires: design.wires.filter((wire) => ids.has(wire.from[0]) && ids.has(wire.to[0])),
    feeds: design.wires.filter((wire) => !ids.has(wire.from[0]) && ids.has(wire.to[0])),
  };
}

/**
 * Adds a fragment under new ids and labels, its top left corner at `at`; without `at`, a step beside where
 * it came from, and further on while that place is taken by an earlier paste.
 */
export function pasteFragment(design: Design, fragment: Fragment, at?: readonly [number, number]): Paste {
  const [dx, dy] = offset(design, fragment, at);
  const names = namesOfCopies(design, fragment);
  const newIds = new Map<PartId, PartId>();
  const parts = fragment.parts.flatMap((part): Part[] => {
    const own = names.get(part.id);
    if (!own) return [];
    newIds.set(part.id, own.id);
    return [{ ...part, ...own, at: onCanvas([part.at[0] + dx, part.at[1] + dy]) }];
  });
  const wires = fragment.wires.flatMap(({ from, to }): Wire[] => {
    const source = newIds.get(from[0]);
    const target = newIds.get(to[0]);
    if (source === undefined || target === undefined) return [];
    return [{ from: [source, from[1]], to: [target, to[1]] }];
  });
  const pasted =
    parts.length === 0
      ? design
      : { ...design, parts: [...design.parts, ...parts], wires: [...design.wires, ...wires] };
  const edit = withinSizeLimits(design, done(fed(pasted, fragment.feeds ?? [], newIds)));
  return edit.ok ? { ...edit, added: new Set(newIds.values()) } : edit;
}

/** By the id of the original; parts of a kind that is not known have none. */
function namesOfCopies(design: Design, fragment: Fragment): ReadonlyMap<PartId, Names> {
  const { copyOf } = namer(design.parts);
  const names = new Map<PartId, Names>();
  for (const part of inNamingOrder(fragment.parts)) {
    const kind = kindOf(part.kind);
    if (kind) names.set(part.id, copyOf(part, kind));
  }
  return names;
}

/** Joins each copy to what fed its original, as far as there are free outputs of the same sort. */
function fed(design: Design, feeds: readonly Wire[], newIds: ReadonlyMap<PartId, PartId>): Design {
  return feeds.reduce((now, { from, to }) => {
    const target = newIds.get(to[0]);
    const source = target === undefined ? undefined : nextFreeOutput(now, from);
    if (target === undefined || !source) return now;
    const joined = planJoin(now, source, [target, to[1]]);
    return joined.ok ? joined.design : now;
  }, design);
}

function offset(
  design: Design,
  fragment: Fragment,
  at?: readonly [number, number],
): readonly [number, number] {
  const [first] = fragment.parts;
  if (!first) return [0, 0];
  if (at) {
    const left = fragment.parts.reduce((least, part) => Math.min(least, part.at[0]), Infinity);
    const top = fragment.parts.reduce((least, part) => Math.min(least, part.at[1]), Infinity);
    return [at[0] - left, at[1] - top];
  }
  const places = new Set(design.parts.map((part) => part.at.join()));
  let step = STEP;
  while (places.has(`${first.at[0] + step},${first.at[1] + step}`)) step += STEP;
  return [step, step];
}
