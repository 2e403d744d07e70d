/** Joining by two taps, and what a drag of a wire that ends on a card or on a wrong port comes to. */
import { type PortRef, wireId } from "../../design/design.ts";
import { planJoin, whyNotJoin } from "../../design/edits/join.ts";
import { partById, portsOf, wireAt } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { joinTargetKeys } from "./state.ts";

/** First tap: begin at this port (or select its wire). Second tap: join, or say why not. */
export function tapPort(ref: PortRef): void {
  const { connecting, design, setConnecting, select } = useApp.getState();
  if (connecting) {
    setConnecting(null);
    if (connecting[0] !== ref[0] || connecting[1] !== ref[1]) joinPorts(connecting, ref);
    return;
  }
  const wire = wireAt(design, ref);
  if (wire) select({ wires: [wireId(wire)] });
  else setConnecting(ref);
}

/** Joins two ports as one undo step; a refusal is shown with its reason. */
export function joinPorts(from: PortRef, to: PortRef): boolean {
  const { change, design } = useApp.getState();
  return change(planJoin(design, from, to));
}

/** Joins to the first port of a part that fits; says why where none does. */
export function joinToPart(from: PortRef, partId: string): boolean {
  const { change, design } = useApp.getState();
  const part = partById(design, partId);
  if (!part || from[0] === partId) return false;
  const targets = joinTargetKeys(design, from);
  const ports = portsOf(part);
  const port = ports.find((p) => targets.has(`${partId}/${p.id}`));
  const start = partById(design, from[0]);
  const side = start && portsOf(start).find((p) => p.id === from[1])?.side;
  // The reason is that of the port one would have meant: one of the other side, if there is any.
  const meant = port ?? ports.find((p) => p.side !== side) ?? ports[0];
  return meant ? change(planJoin(design, from, [partId, meant.id])) : false;
}

export function joinRefusal(from: PortRef, to: PortRef): string | null {
  return whyNotJoin(useApp.getState().design, from, to);
}
