/** Keeping the wires of a part whose ports change with its options or its kind. */
import type { Port } from "../../parts/contract.ts";
import type { Design, Part, Wire } from "../design.ts";
import { partById, portsOf, quoted } from "../lookup.ts";
import { done, type Edit, withPart } from "./edit.ts";

/** Where each wired port of the old part goes on the new one; a port without entry loses its wire. */
export type PortMap = ReadonlyMap<string, string>;

/** Replaces a part by a new version of itself and leads its wires to the mapped ports. */
export function refit(design: Design, part: Part, ports: PortMap): Edit {
  const notes: string[] = [];
  const wires = design.wires.flatMap((wire): Wire[] => {
    const leaves = wire.from[0] === part.id;
    const enters = wire.to[0] === part.id;
    if (!leaves && !enters) return [wire];
    const from = leaves ? ports.get(wire.from[1]) : wire.from[1];
    const to = enters ? ports.get(wire.to[1]) : wire.to[1];
    if (from === undefined || to === undefined) {
      const other = partById(design, leaves ? wire.to[0] : wire.from[0]);
      notes.push(`The wire to ${quoted(other)} had no port left on ${quoted(part)} and was removed.`);
      return [];
    }
    if (from === wire.from[1] && to === wire.to[1]) return [wire];
    return [{ from: [wire.from[0], from], to: [wire.to[0], to] }];
  });
  // The same list where no wire changed: the evaluator then knows at once that the graph is the same.
  const isSame = wires.length === design.wires.length && wires.every((wire, i) => wire === design.wires[i]);
  return done({ ...withPart(design, part), wires: isSame ? design.wires : wires }, notes);
}

/**
 * Matches the wired ports of `before` to ports of `after` of the same side and medium: first by the same
 * id ("out" and "out1" count as the same: the first of one and the first of many); then, if asked, what is
 * left over in order.
 */
export function matchPorts(
  design: Design,
  before: Part,
  after: Part,
  leftOver: "in order" | "falls away",
): PortMap {
  const wired = wiredPorts(design, before);
  const free = [...portsOf(after)];
  const map = new Map<string, string>();
  const match = (fits: (old: Port, port: Port) => boolean) => {
    for (const old of wired) {
      if (map.has(old.id)) continue;
      const index = free.findIndex(
        (port) => port.side === old.side && port.medium === old.medium && fits(old, port),
      );
      const [port] = index < 0 ? [] : free.splice(index, 1);
      if (port) map.set(old.id, port.id);
    }
  };
  match((old, port) => port.id === old.id);
  match((old, port) => port.id === `${old.id}1` || old.id === `${port.id}1`);
  if (leftOver === "in order") match(() => true);
  return map;
}

function wiredPorts(design: Design, part: Part): Port[] {
  const used = new Set(
    design.wires.flatMap(({ from, to }) => [
      ...(from[0] === part.id ? [from[1]] : []),
      ...(to[0] === part.id ? [to[1]] : []),
    ]),
  );
  return portsOf(part).filter((port) => used.has(port.id));
}
