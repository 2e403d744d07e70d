/** Parts and wires of a file, of the design itself or of one of its variants: checked against the catalogue. */
import { kindOf } from "../parts/catalogue.ts";
import type { Port } from "../parts/contract.ts";
import type { DesignContent, Part, Wire } from "./design.ts";
import type { FaultPlace, InputFault, NameOrNumber, PortMark } from "./fault.ts";
import { partMark } from "./fileFault.ts";
import { portOf, portsOf } from "./lookup.ts";
import { checkOptions } from "./options.ts";
import type { DesignFile } from "./schema.ts";

type Raw = Pick<DesignFile, "parts" | "wires">;

/** The content, or what is wrong with it. `note` hears of each option that the kind doesn't know. */
export function checkContent(
  raw: Raw,
  place: FaultPlace,
  note: (part: NameOrNumber, key: string) => void,
): DesignContent | InputFault {
  const parts = new Map<string, Part>();
  for (const [i, entry] of raw.parts.entries()) {
    const mark = partMark(entry, i);
    const here: FaultPlace = { ...place, part: mark };
    const twin = parts.get(entry.id);
    if (twin) return { type: "same id", place: here, id: entry.id, other: markOf(twin) };
    const kind = kindOf(entry.kind);
    if (!kind) return { type: "unknown kind", place: here, kind: entry.kind };
    const checked = checkOptions(kind, entry.options);
    if (!checked.ok) return { ...checked.fault, place: { ...here, ...checked.fault.place } };
    for (const key of Object.keys(entry.options)) {
      if (!Object.hasOwn(kind.options.shape, key)) note(mark, key);
    }
    const { id, label = id } = entry;
    parts.set(id, { id, kind: entry.kind, label, options: checked.options, at: entry.at ?? cell(i) });
  }
  const fault = wireFault(raw.wires, parts, place);
  return fault ?? { parts: [...parts.values()], wires: raw.wires };
}

type Parts = ReadonlyMap<string, Part>;
type End = { readonly part: Part; readonly port: Port };

function wireFault(wires: readonly Wire[], parts: Parts, place: FaultPlace): InputFault | null {
  const taken = new Set<string>();
  for (const [i, wire] of wires.entries()) {
    const here: FaultPlace = { ...place, wire: i + 1 };
    const ends = { from: endOf(wire, "from", parts, here), to: endOf(wire, "to", parts, here) };
    for (const key of ["from", "to"] as const) {
      const end = ends[key];
      if ("type" in end) return end;
      const port = wire[key].join("/");
      if (taken.has(port)) return { type: "two wires", place, port: portMark(end) };
      taken.add(port);
    }
    const { from, to } = ends;
    if ("type" in from || "type" in to || from.port.medium === to.port.medium) continue;
    const { medium } = from.port;
    return { type: "wrong medium", place: here, from: markOf(from.part), to: markOf(to.part), medium };
  }
  return null;
}

function endOf(wire: Wire, end: "from" | "to", parts: Parts, place: FaultPlace): End | InputFault {
  const [id, portId] = wire[end];
  const side = end === "from" ? "out" : "in";
  const part = parts.get(id);
  if (!part) return { type: "no part", place, end, id };
  const port = portOf(part, portId);
  if (!port) {
    // As a file writes them: what a port is called on the drawing is no use to whoever mends the file.
    const known = portsOf(part)
      .filter((each) => each.side === side)
      .map((each) => each.id);
    return { type: "no port", place, part: markOf(part), side, port: portId, known };
  }
  return port.side === side ? { part, port } : { type: "wrong side", place, port: portMark({ part, port }) };
}

function markOf(part: Part): NameOrNumber {
  return partMark(part, 0);
}

function portMark({ part, port: { side, label } }: End): PortMark {
  const isOnly = portsOf(part).filter((each) => each.side === side).length === 1;
  return { part: markOf(part), side, label, isOnly };
}

/** Where a part goes that came without a place: rows of eight [px]. */
function cell(index: number): readonly [number, number] {
  return [(index % 8) * 240, Math.floor(index / 8) * 160];
}
