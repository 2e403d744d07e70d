/** Questions about a document that every edit asks. */
import { kindOf } from "../parts/catalogue.ts";
import type { Port } from "../parts/contract.ts";
import type { Design, Part, PartId, PortRef, Wire } from "./design.ts";

export function partById(design: Design, id: PartId): Part | undefined {
  return design.parts.find((part) => part.id === id);
}

// Parts are immutable, so their ports are worked out once for each object.
const portsByPart = new WeakMap<Part, readonly Port[]>();

/** Ports of a part with its present options; none for a kind that the catalogue doesn't have. */
export function portsOf(part: Part): readonly Port[] {
  const known = portsByPart.get(part);
  if (known) return known;
  const ports = kindOf(part.kind)?.ports(part.options) ?? [];
  portsByPart.set(part, ports);
  return ports;
}

export function portOf(part: Part, portId: string): Port | undefined {
  return portsOf(part).find((port) => port.id === portId);
}

export function isSamePort(a: PortRef, b: PortRef): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

/** The wire on a port; a port takes one. */
export function wireAt(design: Design, port: PortRef): Wire | undefined {
  return design.wires.find((wire) => isSamePort(wire.from, port) || isSamePort(wire.to, port));
}

/** Whether signal that leaves `start` can come to `goal`; a part reaches itself. */
export function reaches(wires: readonly Wire[], start: PartId, goal: PartId): boolean {
  return partsBeyond(wires, [start], "downstream").has(goal);
}

/** The given parts and all that lie downstream (towards the receivers) or upstream of them. */
export function partsBeyond(
  wires: readonly Wire[],
  start: Iterable<PartId>,
  way: "downstream" | "upstream",
): ReadonlySet<PartId> {
  const neighbours = new Map<PartId, PartId[]>();
  for (const { from, to } of wires) {
    const [here, there] = way === "downstream" ? [from[0], to[0]] : [to[0], from[0]];
    const list = neighbours.get(here);
    if (list) list.push(there);
    else neighbours.set(here, [there]);
  }
  const seen = new Set(start);
  // A set visits what is added while it is walked: no queue needed.
  for (const id of seen) {
    for (const next of neighbours.get(id) ?? []) seen.add(next);
  }
  return seen;
}

/** A label as it stands in a sentence. */
export function quoted(part: Part | undefined): string {
  return part ? `“${part.label || part.id}”` : "a part that is gone";
}
