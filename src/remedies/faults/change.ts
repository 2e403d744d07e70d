/** Small changes that faults are made of. One that cannot be made gives the same design back. */
import { type Design, type Part, type PartId, type Wire, wireId } from "../../design/design.ts";
import type { Edit } from "../../design/edits/edit.ts";
import { insertIntoWire } from "../../design/edits/insert.ts";
import { addPart, newPart } from "../../design/edits/parts.ts";
import { matchPorts, refit } from "../../design/edits/refit.ts";
import { partById } from "../../design/lookup.ts";
import { checkOptions } from "../../design/options.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { fieldMeta } from "../../parts/fields.ts";
import { optionsMeaning } from "../../parts/meanings.ts";
import type { Meaning } from "../../parts/optionTrade.ts";

type Options = Readonly<Record<string, unknown>>;

function or(design: Design, edit: Edit): Design {
  return edit.ok ? edit.design : design;
}

/** Sets several options of a part at once. */
export function withOptions(design: Design, id: PartId, changed: Options): Design {
  const part = partById(design, id);
  return part ? withOtherKind(design, id, part.kind, { ...part.options, ...changed }) : design;
}

/** Puts a part of another kind in the place of one; wires go to ports of the same name, then as said. */
export function withOtherKind(
  design: Design,
  id: PartId,
  kindKey: string,
  options: Options = {},
  leftOver: "in order" | "falls away" = "in order",
): Design {
  const part = partById(design, id);
  const kind = kindOf(kindKey);
  const checked = kind && checkOptions(kind, options);
  if (!part || !checked?.ok) return design;
  const changed: Part = { ...part, kind: kindKey, options: checked.options };
  return or(design, refit(design, changed, matchPorts(design, part, changed, leftOver)));
}

export function withoutWire(design: Design, id: string): Design {
  const wires = design.wires.filter((wire) => wireId(wire) !== id);
  return wires.length === design.wires.length ? design : { ...design, wires };
}

/** Puts a new part into a wire. */
export function inWire(design: Design, id: string, kindKey: string, options: Options): Design {
  const part = newPart(design, kindKey, [0, 0], options);
  return part ? or(design, insertIntoWire(design, part, id)) : design;
}

/** Lets a cable that leads nowhere hang on a wire. */
export function withDeadCable(design: Design, id: string, lengthM: number): Design {
  const wire = design.wires.find((each) => wireId(each) === id);
  const joint = wire && newPart(design, "t-joint", [0, 0]);
  const jointed = joint && addPart(design, joint);
  const tail = jointed?.ok ? newPart(jointed.design, "cable", [0, 0], { lengthM }) : undefined;
  const whole = jointed?.ok && tail ? addPart(jointed.design, tail) : undefined;
  if (!wire || !joint || !tail || !whole?.ok) return design;
  const wires: readonly Wire[] = [
    ...whole.design.wires.filter((each) => each !== wire),
    { from: wire.from, to: [joint.id, "in"] },
    { from: [joint.id, "out1"], to: wire.to },
    { from: [joint.id, "out2"], to: [tail.id, "in"] },
  ];
  return { ...whole.design, wires };
}

/** Lets two wires change places at one end. */
export function withSwappedEnds(design: Design, first: string, second: string, end: "from" | "to"): Design {
  const a = design.wires.find((wire) => wireId(wire) === first);
  const b = design.wires.find((wire) => wireId(wire) === second);
  if (!a || !b) return design;
  const swap = (wire: Wire): Wire =>
    wire === a ? { ...a, [end]: b[end] } : wire === b ? { ...b, [end]: a[end] } : wire;
  return { ...design, wires: design.wires.map(swap) };
}

/** A number option moved by so much, as far as its range goes; undefined where the part has no such number. */
export function movedOption(part: Part, key: string, by: number): number | undefined {
  const value = part.options[key];
  const schema = kindOf(part.kind)?.options.shape[key];
  const meta = schema && fieldMeta(schema);
  if (typeof value !== "number" || !meta) return undefined;
  const within = Math.min(meta.max ?? Infinity, Math.max(meta.min ?? -Infinity, value + by));
  return within === value ? undefined : within;
}

/** Keys of a part's options that mean this. */
export function optionsOf(part: Part, meaning: Meaning): readonly string[] {
  const kind = kindOf(part.kind);
  return kind ? optionsMeaning(kind, meaning) : [];
}
