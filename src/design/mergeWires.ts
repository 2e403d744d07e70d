/** Three-way merge of wires, end by end: what leads to a port is one value, and a port takes one wire. */
import { type Part, type PartId, type PortRef, type Wire, wireId } from "./design.ts";
import { portOf } from "./lookup.ts";
import { keptList, mergeOrder, type NoteClash } from "./mergeValues.ts";

/**
 * `parts`: the merged ones. Where both sides led a port to somewhere else, theirs stands; a wire whose part or
 * port is gone, or that would join different media, is left out. Both are clashes.
 */
export function mergeWires(
  base: readonly Wire[],
  ours: readonly Wire[],
  theirs: readonly Wire[],
  parts: readonly Part[],
  note: NoteClash,
): readonly Wire[] {
  const here = new Map(parts.map((part) => [part.id, part]));
  const contested = contestedPorts(base, ours, theirs, here);
  for (const port of contested.values()) note(port[0], "wire");

  const [inBase, inOurs, inTheirs] = [base, ours, theirs].map((wires) => byName(wires));
  if (!inBase || !inOurs || !inTheirs) return theirs;
  const merged = new Map<string, Wire>();
  for (const [name, wire] of new Map([...inTheirs, ...inOurs])) {
    const isOurs = inOurs.has(name);
    const isTheirs = inTheirs.has(name);
    const isKept = inBase.has(name) ? isOurs && isTheirs : true;
    const loses = !isTheirs && [wire.from, wire.to].some((port) => contested.has(port.join("/")));
    if (!isKept || loses) continue;
    const end = endWithout(wire, here);
    if (end === null) merged.set(name, wire);
    else note(end, "wire");
  }
  const order = mergeOrder([...inBase.keys()], [...inOurs.keys()], [...inTheirs.keys()], (name) =>
    merged.has(name),
  );
  return keptList(
    ours,
    order.flatMap((name) => merged.get(name) ?? []),
  );
}

function byName(wires: readonly Wire[]): ReadonlyMap<string, Wire> {
  return new Map(wires.map((wire) => [wireId(wire), wire]));
}

/** Ports of parts that are there which both sides led to somewhere else, or one somewhere and one nowhere. */
function contestedPorts(
  base: readonly Wire[],
  ours: readonly Wire[],
  theirs: readonly Wire[],
  parts: ReadonlyMap<PartId, Part>,
): ReadonlyMap<string, PortRef> {
  const ports = new Map<string, PortRef>();
  const [before, left, right] = [base, ours, theirs].map((wires) => {
    const across = new Map<string, string>();
    for (const { from, to } of wires) {
      for (const [port, mate] of [
        [from, to],
        [to, from],
      ] as const) {
        ports.set(port.join("/"), port);
        across.set(port.join("/"), mate.join("/"));
      }
    }
    return across;
  });
  const contested = new Map<string, PortRef>();
  for (const [name, port] of ports) {
    const [was, a, b] = [before?.get(name), left?.get(name), right?.get(name)];
    if (a !== was && b !== was && a !== b && parts.has(port[0])) contested.set(name, port);
  }
  return contested;
}

/** Null for a wire that the parts allow; else the part at which it cannot be, or which is left without it. */
function endWithout({ from, to }: Wire, parts: ReadonlyMap<PartId, Part>): PartId | null {
  const [source, target] = [parts.get(from[0]), parts.get(to[0])];
  if (!source || !target) return source?.id ?? to[0];
  const [out, into] = [portOf(source, from[1]), portOf(target, to[1])];
  if (out?.side !== "out") return source.id;
  if (into?.side !== "in") return target.id;
  return out.medium === into.medium ? null : source.id;
}
