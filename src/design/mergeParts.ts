/** Three-way merge of the parts of a design: part by part, then label, place, kind and each option by itself. */
import { kindOf } from "../parts/catalogue.ts";
import type { Part, PartId } from "./design.ts";
import { keptList, mergeOrder, mergeValue, type NoteClash } from "./mergeValues.ts";
import { checkOptions, isSameValue } from "./options.ts";

/** By id. A part that one side took out is gone, unless the other worked on it meanwhile: that is a clash. */
export function mergeParts(
  base: readonly Part[],
  ours: readonly Part[],
  theirs: readonly Part[],
  note: NoteClash,
): readonly Part[] {
  const [inBase, inOurs, inTheirs] = [base, ours, theirs].map((parts) => byId(parts));
  if (!inBase || !inOurs || !inTheirs) return theirs;
  const merged = new Map<PartId, Part>();
  for (const id of new Set([...inTheirs.keys(), ...inOurs.keys()])) {
    const part = mergeEntry(inBase.get(id), inOurs.get(id), inTheirs.get(id), note);
    if (part) merged.set(id, part);
  }
  const order = mergeOrder([...inBase.keys()], [...inOurs.keys()], [...inTheirs.keys()], (id) =>
    merged.has(id),
  );
  return keptList(
    ours,
    order.flatMap((id) => merged.get(id) ?? []),
  );
}

function byId(parts: readonly Part[]): ReadonlyMap<PartId, Part> {
  return new Map(parts.map((part) => [part.id, part]));
}

function mergeEntry(
  base: Part | undefined,
  ours: Part | undefined,
  theirs: Part | undefined,
  note: NoteClash,
): Part | undefined {
  if (ours && theirs) return mergePart(base ?? theirs, ours, theirs, note);
  const survivor = ours ?? theirs;
  if (!survivor || !base) return survivor;
  if (!isWorkedOn(base, survivor)) return undefined;
  note(survivor.id, "removed");
  return survivor;
}

/**
 * Whether somebody did more to a part than move it. Moving is tidying the drawing: who took the part out of the
 * installation has decided about it. Who set a value, named it or exchanged it counts on its staying.
 */
function isWorkedOn(base: Part, part: Part): boolean {
  return part.kind !== base.kind || part.label !== base.label || !isSameValue(part.options, base.options);
}

function mergePart(base: Part, ours: Part, theirs: Part, note: NoteClash): Part {
  const { id } = ours;
  const label = mergeValue(base.label, ours.label, theirs.label, () => note(id, "label"));
  const at = mergeValue(base.at, ours.at, theirs.at, () => note(id, "place"));
  const { kind, options } = mergeKind(base, ours, theirs, note);
  const same = [ours, theirs].find(
    (part) => part.kind === kind && part.label === label && part.options === options && part.at === at,
  );
  return same ?? { id, kind, label, options, at };
}

type Kind = Pick<Part, "kind" | "options">;

function mergeKind(base: Kind, ours: Kind, theirs: Part, note: NoteClash): Kind {
  if (ours.kind === theirs.kind) return mergeOptions(base, ours, theirs, note);
  // An option that was set on a part has nowhere to go once the part is of another kind: both are one value.
  const isChanged = ({ kind, options }: Kind) => kind !== base.kind || !isSameValue(options, base.options);
  if (!isChanged(theirs)) return ours;
  if (isChanged(ours)) note(theirs.id, "kind");
  return theirs;
}

function mergeOptions(base: Kind, ours: Kind, theirs: Part, note: NoteClash): Kind {
  const before = base.kind === ours.kind ? base.options : {};
  if (isSameValue(ours.options, theirs.options) || isSameValue(before, theirs.options)) return ours;
  if (isSameValue(before, ours.options)) return theirs;
  const options: Record<string, unknown> = {};
  for (const key of new Set([...Object.keys(ours.options), ...Object.keys(theirs.options)])) {
    const value = mergeValue(before[key], ours.options[key], theirs.options[key], () => note(theirs.id, key));
    if (value !== undefined) options[key] = value;
  }
  if (isSameValue(options, ours.options)) return ours;
  if (isSameValue(options, theirs.options)) return theirs;
  // Values that are good one by one may not go together.
  const kind = kindOf(ours.kind);
  const checked = kind && checkOptions(kind, options);
  if (checked?.ok) return { kind: ours.kind, options: checked.options };
  note(theirs.id, "kind");
  return theirs;
}
