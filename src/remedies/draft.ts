/**
 * Several edits in a row. The first that is refused spoils the whole: then there is no result.
 * Only the pure edits of the document are used, so that whatever comes out is a legal design.
 */
import type { Design, Part, PartId, PortRef } from "../design/design.ts";
import { wireId } from "../design/design.ts";
import type { Edit } from "../design/edits/edit.ts";
import { insertIntoWire } from "../design/edits/insert.ts";
import { planJoin } from "../design/edits/join.ts";
import { setOption } from "../design/edits/options.ts";
import { addPart, moveParts, newPart, rename } from "../design/edits/parts.ts";
import { matchPorts, refit } from "../design/edits/refit.ts";
import { removeParts } from "../design/edits/remove.ts";
import { replaceKind } from "../design/edits/replace.ts";
import { partById, wireAt } from "../design/lookup.ts";
import { checkOptions } from "../design/options.ts";
import { kindOf } from "../parts/catalogue.ts";

type Options = Readonly<Record<string, unknown>>;

export type DesignDraft = {
  readonly design: () => Design;
  readonly part: (id: PartId) => Part | undefined;
  /** Whatever is joined to a port. */
  readonly other: (at: PortRef) => PortRef | undefined;
  /** Puts a new part near a place; yields its id. */
  readonly put: (kind: string, options: Options, near: readonly [number, number], label?: string) => PartId;
  /** Leads the wire at a port through a new part. */
  readonly insert: (kind: string, options: Options, at: PortRef) => PartId;
  /** Takes an inline part out of its line and puts it into the wire at a port. */
  readonly move: (id: PartId, at: PortRef) => void;
  readonly join: (from: PortRef, to: PortRef) => void;
  /** Takes the wire at a port off, if there is one. */
  readonly unjoin: (at: PortRef) => void;
  readonly set: (id: PartId, options: Options) => void;
  /** Another kind in the place of a part; the options are set before wires are led anew. */
  readonly swap: (id: PartId, kind: string, options?: Options) => void;
  /** Takes parts away; wires through inline ones close up. */
  readonly remove: (...ids: readonly PartId[]) => void;
  /** Null when an edit was refused, or nothing was changed. */
  readonly result: () => Design | null;
};

/** What a part's card needs on the canvas, with a little air [px]. */
const ROOM = { width: 300, height: 96 } as const;

export function draft(start: Design): DesignDraft {
  let design = start;
  let spoilt = false;
  const take = (edit: Edit): boolean => {
    if (!edit.ok) spoilt = true;
    else design = edit.design;
    return edit.ok;
  };
  const fresh = (kind: string, options: Options, at: readonly [number, number]): Part | undefined => {
    const part = newPart(design, kind, at, options);
    if (!part) spoilt = true;
    return part;
  };
  const api: DesignDraft = {
    design: () => design,
    part: (id) => partById(design, id),
    other: (at) => {
      const wire = wireAt(design, at);
      if (!wire) return undefined;
      return wire.from[0] === at[0] && wire.from[1] === at[1] ? wire.to : wire.from;
    },
    put: (kind, options, near, label) => {
      const part = fresh(kind, options, near);
      if (!part || !take(addPart(design, { ...part, at: freePlace(design, near) }))) return "";
      if (label !== undefined) take(rename(design, part.id, label));
      return part.id;
    },
    insert: (kind, options, at) => {
      const wire = wireAt(design, at);
      const part = fresh(kind, options, [0, 0]);
      if (!wire || !part) {
        spoilt = true;
        return "";
      }
      if (!take(insertIntoWire(design, part, wireId(wire)))) return "";
      const placed = partById(design, part.id)?.at ?? [0, 0];
      const others = { ...design, parts: design.parts.filter((p) => p.id !== part.id) };
      take(moveParts(design, new Map([[part.id, freePlace(others, placed)]])));
      return part.id;
    },
    move: (id, at) => {
      const part = partById(design, id);
      take(removeParts(design, new Set([id]), new Set()));
      const wire = wireAt(design, at);
      if (part && wire) take(insertIntoWire(design, part, wireId(wire)));
      else spoilt = true;
    },
    join: (from, to) => {
      take(planJoin(design, from, to));
    },
    unjoin: (at) => {
      const wire = wireAt(design, at);
      if (wire) take(removeParts(design, new Set(), new Set([wireId(wire)])));
    },
    set: (id, options) => {
      for (const [key, value] of Object.entries(options)) take(setOption(design, id, key, value));
    },
    swap: (id, kind, options = {}) => {
      // The options decide how many ports there are: only then it shows which wires find one.
      const before = partById(design, id);
      const other = kindOf(kind);
      const replaced = replaceKind(design, id, kind);
      const after = replaced.ok ? partById(replaced.design, id) : undefined;
      const checked = other && after && checkOptions(other, { ...after.options, ...options });
      if (!before || !after || !checked?.ok) {
        spoilt = true;
        return;
      }
      const part = { ...after, options: checked.options };
      take(refit(design, part, matchPorts(design, before, part, "in order")));
    },
    remove: (...ids) => {
      take(removeParts(design, new Set(ids), new Set()));
    },
    result: () => (spoilt || design === start ? null : design),
  };
  return api;
}

/** The place itself, or the first below it where no other part stands. */
function freePlace(design: Design, [x, y]: readonly [number, number]): readonly [number, number] {
  const isTaken = (top: number) =>
    design.parts.some(({ at }) => Math.abs(at[0] - x) < ROOM.width && Math.abs(at[1] - top) < ROOM.height);
  let top = y;
  for (let tries = design.parts.length; tries > 0 && isTaken(top); tries--) top += ROOM.height;
  return [x, top];
}
