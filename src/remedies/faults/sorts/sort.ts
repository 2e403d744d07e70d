/** What a sort of fault is given, and how it names what it makes. */
import type { Design, Part, PartId, Wire } from "../../../design/design.ts";
import { partById, portOf, portsOf, quoted } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { optionsMeaning } from "../../../parts/meanings.ts";
import type { Meaning } from "../../../parts/optionTrade.ts";
import type { Fault, FaultType } from "../fault.ts";

/** Lists the faults of one sort that a design can have. */
export type Sort = (design: Design) => readonly Fault[];

type Made = {
  /** What tells it from others of its type. */
  readonly key: string;
  readonly title: string;
  readonly parts: readonly [PartId, ...PartId[]];
  readonly apply: Fault["apply"];
};

export function makeFault(type: FaultType, { key, title, parts, apply }: Made): Fault {
  return { id: `${type}:${key}`, type, title, part: parts[0], parts, apply };
}

/** Wires of cable: all but the beam of a dish. */
export function coaxWires(design: Design): readonly Wire[] {
  return design.wires.filter((wire) => {
    const part = partById(design, wire.from[0]);
    return part && portOf(part, wire.from[1])?.medium === "coax";
  });
}

/** "between “Amplifier” (out 2) and “Drop”": ports are named where a part has several of that side. */
export function betweenEnds(design: Design, wire: Wire): string {
  return `between ${endName(design, wire.from)} and ${endName(design, wire.to)}`;
}

function endName(design: Design, [id, port]: Wire["from"]): string {
  const part = partById(design, id);
  const own = part && portOf(part, port);
  const siblings = part ? portsOf(part).filter((p) => p.side === own?.side) : [];
  return siblings.length > 1 ? `${quoted(part)} (${own?.label ?? port})` : quoted(part);
}

/** Keys of a part's options that mean this. */
export function optionsOf(part: Part, meaning: Meaning): readonly string[] {
  const kind = kindOf(part.kind);
  return kind ? optionsMeaning(kind, meaning) : [];
}
