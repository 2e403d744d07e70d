/** Putting a part into a wire. */
import { kindOf } from "../../parts/catalogue.ts";
import { type Design, type Part, wireId } from "../design.ts";
import { partById, portOf, quoted } from "../lookup.ts";
import { done, type Edit, refuse, withPart } from "./edit.ts";
import { planJoin } from "./join.ts";
import { addPart, onCanvas } from "./parts.ts";

/**
 * Leads a wire through a part and puts the part half-way between the wire's ends.
 * The part may be new, or stand on the canvas already with its way through free.
 */
export function insertIntoWire(design: Design, part: Part, id: string): Edit {
  const wire = design.wires.find((each) => wireId(each) === id);
  const before = wire && partById(design, wire.from[0]);
  const after = wire && partById(design, wire.to[0]);
  if (!wire || !before || !after) return refuse("That wire is no longer in the design.");
  if (portOf(before, wire.from[1])?.medium === "sky") {
    return refuse(
      `Nothing can be put between ${quoted(before)} and ${quoted(after)}: that is the dish’s beam.`,
    );
  }
  const kind = kindOf(part.kind);
  const way = kind?.inline;
  if (!way) {
    const name = kind?.name ?? part.kind;
    return refuse(
      `“${name}” has no single way through, so it cannot be put into a wire. Connect its ports one by one.`,
    );
  }
  if (part.id === before.id || part.id === after.id) {
    return refuse(`${quoted(part)} is an end of that wire already.`);
  }

  const placed: Part = {
    ...part,
    at: onCanvas([(before.at[0] + after.at[0]) / 2, (before.at[1] + after.at[1]) / 2]),
  };
  const opened: Design = { ...design, wires: design.wires.filter((each) => each !== wire) };
  const added = partById(design, part.id) ? done(withPart(opened, placed)) : addPart(opened, placed);
  if (!added.ok) return added;
  const first = planJoin(added.design, wire.from, [part.id, way.in]);
  if (!first.ok) return first;
  return planJoin(first.design, [part.id, way.out], wire.to);
}
