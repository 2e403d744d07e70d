/** Outputs that are as good as one another: those of a splitter or a multiswitch, sockets for the same services. */
import { kindOf } from "../../parts/catalogue.ts";
import type { Port } from "../../parts/contract.ts";
import type { Design, Part, PortRef } from "../design.ts";
import { partById, portOf, portsOf, wireAt } from "../lookup.ts";

/** The output itself where it is free, else the next free one of its part that is like it; undefined where none is. */
export function nextFreeOutput(design: Design, [id, portId]: PortRef): PortRef | undefined {
  const part = partById(design, id);
  const port = part && portOf(part, portId);
  if (!part || port?.side !== "out") return undefined;
  const alike = portsOf(part).filter((other) => other === port || isAlike(part, port, other));
  const at = alike.indexOf(port);
  return [...alike.slice(at), ...alike.slice(0, at)]
    .map((other): PortRef => [id, other.id])
    .find((ref) => !wireAt(design, ref));
}

/** Whether two ports of a part can stand for one another; one that carries a plane of its own has no like. */
export function isAlike(part: Part, a: Port, b: Port): boolean {
  if (a.side !== b.side || a.medium !== b.medium || a.role !== b.role || a.role === "band") return false;
  return !a.plane && !b.plane && servicesAt(part, a) === servicesAt(part, b);
}

function servicesAt(part: Part, port: Port): string {
  const { sockets = [] } = kindOf(part.kind)?.delivery?.(part.options) ?? {};
  return sockets.find((socket) => socket.port === port.id)?.services.join() ?? "";
}
