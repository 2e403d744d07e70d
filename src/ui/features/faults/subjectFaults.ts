/** Which of a design's faults concern one part or one wire, in groups that a reader can find his way in. */
import { type Design, type Part, type Wire, wireId } from "../../../design/design.ts";
import { partById, portOf, quoted } from "../../../design/lookup.ts";
import type { Fault } from "../../../remedies/faults/fault.ts";
import type { Subject } from "../../kit/asked/whatFails.ts";

export type FaultGroup = { readonly title: string; readonly faults: readonly Fault[] };

/** Empty for a part or wire that is gone, and for one that nothing can happen to. */
export function faultGroups(design: Design, all: readonly Fault[], subject: Subject): readonly FaultGroup[] {
  const groups = subject.type === "part" ? ofPart(design, all, subject.id) : ofWire(design, all, subject.id);
  return groups.filter((group) => group.faults.length > 0);
}

function ofPart(design: Design, all: readonly Fault[], id: string): readonly FaultGroup[] {
  const part = partById(design, id);
  if (!part) return [];
  const joints = design.wires.filter((w) => w.from[0] === id || w.to[0] === id);
  const own = all.filter((f) => f.parts.includes(id) && !joints.some((w) => isAtWire(f, w)));
  return [
    { title: "The part itself", faults: own },
    ...joints.map((wire) => ({
      title: `The plug ${sideWords(part, wire)}`,
      faults: all.filter((f) => isAtWire(f, wire)),
    })),
  ];
}

function sideWords(part: Part, wire: Wire): string {
  const isOutput = wire.from[0] === part.id;
  const port = portOf(part, isOutput ? wire.from[1] : wire.to[1]);
  return `at ${isOutput ? "output" : "input"} ${port?.label ?? ""}`.trim();
}

function ofWire(design: Design, all: readonly Fault[], id: string): readonly FaultGroup[] {
  const wire = design.wires.find((w) => wireId(w) === id);
  if (!wire) return [];
  return [
    { title: "The joint itself", faults: all.filter((f) => isAtWire(f, wire)) },
    {
      title: "Swapped with its neighbour",
      faults: all.filter((f) => f.type === "swapped" && isSwapOf(f, wire)),
    },
  ];
}

function isAtWire(fault: Fault, wire: Wire): boolean {
  return fault.id === `${fault.type}:${wireId(wire)}`;
}

/** Swaps are named after the part and its two ports: "swapped:plate.tv+sat". */
function isSwapOf(fault: Fault, { from, to }: Wire): boolean {
  return [from, to].some(([part, port]) => {
    const start = `swapped:${part}.`;
    return fault.id.startsWith(start) && fault.id.slice(start.length).split("+").includes(port);
  });
}

/** "“Plate 2”", "the wire from “Drop” to “Plate 2”"; undefined for what is gone. */
export function subjectWords(design: Design, subject: Subject): string | undefined {
  if (subject.type === "part") {
    const part = partById(design, subject.id);
    return part && quoted(part);
  }
  const wire = design.wires.find((w) => wireId(w) === subject.id);
  return (
    wire &&
    `the wire from ${quoted(partById(design, wire.from[0]))} to ${quoted(partById(design, wire.to[0]))}`
  );
}
