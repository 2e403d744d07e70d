/** Making, naming and moving parts. */
import { kindOf } from "../../parts/catalogue.ts";
import type { Design, Part, PartId } from "../design.ts";
import { LIMITS } from "../limits.ts";
import { partById, quoted } from "../lookup.ts";
import { namer } from "../names.ts";
import { checkOptions } from "../options.ts";
import { withinSizeLimits } from "../sizeLimits.ts";
import { done, type Edit, refuse, withPart } from "./edit.ts";

/** A part with the next free id and label, not yet in the design; undefined for an unknown kind or wrong options. */
export function newPart(
  design: Design,
  kindKey: string,
  at: readonly [number, number],
  options: Readonly<Record<string, unknown>> = {},
): Part | undefined {
  const kind = kindOf(kindKey);
  if (!kind) return undefined;
  const checked = checkOptions(kind, options);
  if (!checked.ok) return undefined;
  return { ...namer(design.parts).fresh(kind), kind: kindKey, options: checked.options, at: onCanvas(at) };
}

export function addPart(design: Design, part: Part): Edit {
  if (partById(design, part.id)) return refuse(`There is a part with the id “${part.id}” already.`);
  return withinSizeLimits(design, done({ ...design, parts: [...design.parts, part] }));
}

/** Moves parts to new places; parts that the design doesn't have are passed over. */
export function moveParts(design: Design, positions: ReadonlyMap<PartId, readonly [number, number]>): Edit {
  let moved = false;
  const parts = design.parts.map((part) => {
    const wanted = positions.get(part.id);
    if (!wanted) return part;
    const at = onCanvas(wanted);
    if (at[0] === part.at[0] && at[1] === part.at[1]) return part;
    moved = true;
    return { ...part, at };
  });
  return done(moved ? { ...design, parts } : design);
}

export function rename(design: Design, id: PartId, label: string): Edit {
  const part = partById(design, id);
  if (!part) return refuse("That part is no longer in the design.");
  const text = label.trim();
  if (text === "") return refuse(`${quoted(part)} needs a name.`);
  if (text.length > LIMITS.labelLength) {
    return refuse(`A name has at most ${LIMITS.labelLength} characters; this one has ${text.length}.`);
  }
  return done(text === part.label ? design : withPart(design, { ...part, label: text }));
}

export function retitle(design: Design, title: string): Edit {
  const text = title.trim();
  if (text === "") return refuse("A design needs a title.");
  if (text.length > LIMITS.titleLength) {
    return refuse(`A title has at most ${LIMITS.titleLength} characters; this one has ${text.length}.`);
  }
  return done(text === design.title ? design : { ...design, title: text });
}

/** A place that a file can hold: finite, within reach, and no minus zero (which JSON does not know). */
export function onCanvas([x, y]: readonly [number, number]): readonly [number, number] {
  const clamp = (value: number) =>
    Number.isFinite(value) ? Math.min(LIMITS.reach, Math.max(-LIMITS.reach, value)) + 0 : 0;
  return [clamp(x), clamp(y)];
}
