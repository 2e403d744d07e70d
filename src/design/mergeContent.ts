/** Three-way merge of parts and wires: of a design, or of one of its variants. */
import { kindOf } from "../parts/catalogue.ts";
import type { DesignContent, Part, PartId, PortRef } from "./design.ts";
import { mergeParts } from "./mergeParts.ts";
import type { NoteClash } from "./mergeValues.ts";
import { mergeWires } from "./mergeWires.ts";
import { namer } from "./names.ts";
import { isSameValue } from "./options.ts";

export function mergeContent(
  base: DesignContent,
  ours: DesignContent,
  theirs: DesignContent,
  note: NoteClash,
): DesignContent {
  const own = withNewIds(base, ours, theirs);
  const parts = mergeParts(base.parts, own.parts, theirs.parts, note);
  return { parts, wires: mergeWires(base.wires, own.wires, theirs.wires, parts, note) };
}

/**
 * Two windows count on from the same number: a new part here and another one there may have the same id. Theirs
 * keeps it; ours goes on under the next free one, with its wires. The same part on both sides is one part.
 */
function withNewIds(base: DesignContent, ours: DesignContent, theirs: DesignContent): DesignContent {
  const before = new Set(base.parts.map((part) => part.id));
  const theirParts = new Map(theirs.parts.map((part) => [part.id, part]));
  const isDouble = (part: Part) => {
    const other = before.has(part.id) ? undefined : theirParts.get(part.id);
    return other !== undefined && !isSameValue(part, other);
  };
  if (!ours.parts.some(isDouble)) return ours;
  const names = namer([...base.parts, ...theirs.parts, ...ours.parts.filter((part) => !isDouble(part))]);
  const newIds = new Map<PartId, PartId>();
  const parts = ours.parts.map((part) => {
    const kind = isDouble(part) ? kindOf(part.kind) : undefined;
    if (!kind) return part;
    const { id, label } = names.copyOf(part, kind);
    newIds.set(part.id, id);
    return { ...part, id, label };
  });
  const renamed = ([part, port]: PortRef): PortRef => [newIds.get(part) ?? part, port];
  const wires = ours.wires.map((wire) =>
    newIds.has(wire.from[0]) || newIds.has(wire.to[0])
      ? { from: renamed(wire.from), to: renamed(wire.to) }
      : wire,
  );
  return { parts, wires };
}
