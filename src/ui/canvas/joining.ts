/** What a tap on a port, and a wire that was led to a port, a card or an empty place, come to. */
import { type PortRef, wireId } from "../../design/design.ts";
import { nextFreeOutput } from "../../design/edits/alike.ts";
import { planJoin, whyNotJoin } from "../../design/edits/join.ts";
import { isSamePort, partById, portsOf, wireAt } from "../../design/lookup.ts";
import { partnersIn } from "../../findings/fitting/partners.ts";
import { useApp } from "../../store/app.ts";
import type { Point } from "./layout.ts";
import { openOffer } from "./offer.ts";
import { roomy } from "./place.ts";

/** First tap: begin at this port (or select its wire). Second tap: join, or say why not. */
export function tapPort(ref: PortRef): void {
  const { connecting, design, setConnecting, select } = useApp.getState();
  if (connecting) {
    setConnecting(null);
    if (!isSamePort(connecting, ref)) joinPorts(connecting, ref);
    return;
  }
  const wire = wireAt(design, ref);
  if (wire) select({ wires: [wireId(wire)] });
  else setConnecting(ref);
}

/** Joins two ports as one undo step; a refusal is shown with its reason. */
export function joinPorts(from: PortRef, to: PortRef): boolean {
  const { change, design } = useApp.getState();
  return change(roomy(design, planJoin(design, from, to)));
}

/** Joins to the port of a part that is meant; asks where several may be, says why where none fits. True: joined. */
export function joinToPart(from: PortRef, partId: string, at?: Point): boolean {
  const { design, evaluation } = useApp.getState();
  const part = partById(design, partId);
  if (!part || from[0] === partId) return false;
  const partners = partnersIn(evaluation, from, partId);
  const [first] = partners;
  if (first && (partners.length === 1 || !at)) return joinPorts(from, first);
  if (at && first) openOffer({ about: "partners", from, to: partners }, at);
  else sayWhyNot(from, partId);
  return false;
}

/** The reason is that of the port one would have meant: one of the other side, if there is any. */
function sayWhyNot(from: PortRef, partId: string): void {
  const { design } = useApp.getState();
  const start = partById(design, from[0]);
  const part = partById(design, partId);
  const ports = part ? portsOf(part) : [];
  const side = start && portsOf(start).find((p) => p.id === from[1])?.side;
  const meant = ports.find((p) => p.side !== side) ?? ports[0];
  if (meant) joinPorts(from, [partId, meant.id]);
}

/** A wire that ends on bare canvas asks there what it leads to; from a taken output it leads on from the next like it. */
export function offerAt(from: PortRef, at: Point): void {
  const { design, preview } = useApp.getState();
  const free = wireAt(design, from) ? nextFreeOutput(design, from) : from;
  if (free && !preview) openOffer({ about: "parts", from: free }, at);
}

export function joinRefusal(from: PortRef, to: PortRef): string | null {
  return whyNotJoin(useApp.getState().design, from, to);
}
