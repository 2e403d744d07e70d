/** Joining two ports by a wire, and the reasons why two ports cannot be joined. */
import type { Port } from "../../parts/contract.ts";
import type { Design, Part, PortRef, Wire } from "../design.ts";
import { LIMITS } from "../limits.ts";
import { isSamePort, partById, partsBeyond, portOf, portsOf, quoted, reaches, wireAt } from "../lookup.ts";
import { overLimitWords } from "../sizeLimits.ts";
import { heldCount } from "../variants.ts";
import { done, type Edit, refuse } from "./edit.ts";

/** Adds the wire between two ports; the ends may be given in either order. */
export function planJoin(design: Design, from: PortRef, to: PortRef): Edit {
  const reason = whyNotJoin(design, from, to);
  if (reason !== null) return refuse(reason);
  const part = partById(design, from[0]);
  const leads = part && portOf(part, from[1])?.side === "out";
  const wire: Wire = leads ? { from, to } : { from: to, to: from };
  return done({ ...design, wires: [...design.wires, wire] });
}

/** One sentence that says why these ports cannot be joined; null when they can. */
export function whyNotJoin(design: Design, from: PortRef, to: PortRef): string | null {
  const a = end(design, from);
  const b = end(design, to);
  if (!a || !b) return "One of the two ports is no longer in the design.";
  if (isSamePort(from, to)) return "A wire needs two different ports.";
  if (a.part === b.part) return `${quoted(a.part)} cannot be connected to itself.`;
  if (a.port.side === b.port.side) {
    const side = a.port.side === "out" ? "outputs" : "inputs";
    return `${named(a)} and ${named(b)} are both ${side}; a wire leads from an output to an input.`;
  }
  if (a.port.medium !== b.port.medium) {
    const [sky, coax] = a.port.medium === "sky" ? [a, b] : [b, a];
    return sky.port.side === "out"
      ? `${named(sky)} is the beam of a dish and needs an LNB; ${named(coax)} takes a coaxial cable.`
      : `${named(sky)} needs a dish before it; ${named(coax)} leads into a coaxial cable.`;
  }
  const [source, target] = a.port.side === "out" ? [a, b] : [b, a];
  const taken = whyTaken(design, source) ?? whyTaken(design, target);
  if (taken !== null) return taken;
  if (reaches(design.wires, target.part.id, source.part.id)) {
    return `${quoted(target.part)} already feeds ${quoted(source.part)}: the signal would run in a circle.`;
  }
  const wires = heldCount(design).wires + 1;
  return wires > LIMITS.wires ? overLimitWords("wires", wires) : null;
}

/** Every port that `from` could be joined to now, for lighting them up while a wire is drawn. */
export function joinTargets(design: Design, from: PortRef): readonly PortRef[] {
  const start = end(design, from);
  if (!start || wireAt(design, from)) return [];
  const way = start.port.side === "out" ? "upstream" : "downstream";
  const circular = partsBeyond(design.wires, [start.part.id], way);
  const taken = new Set(design.wires.flatMap((wire) => [wire.from.join("/"), wire.to.join("/")]));
  return design.parts
    .filter((part) => !circular.has(part.id))
    .flatMap((part) =>
      portsOf(part)
        .filter((port) => port.side !== start.port.side && port.medium === start.port.medium)
        .map((port): PortRef => [part.id, port.id]),
    )
    .filter((ref) => !taken.has(ref.join("/")));
}

type End = { readonly part: Part; readonly port: Port; readonly ref: PortRef };

function end(design: Design, ref: PortRef): End | undefined {
  const part = partById(design, ref[0]);
  const port = part && portOf(part, ref[1]);
  return part && port && { part, port, ref };
}

function named({ part, port }: End): string {
  return portsOf(part).filter((other) => other.side === port.side).length > 1
    ? `${quoted(part)} (${port.label})`
    : quoted(part);
}

function whyTaken(design: Design, { part, port, ref }: End): string | null {
  const wire = wireAt(design, ref);
  if (!wire) return null;
  const other = partById(design, port.side === "out" ? wire.to[0] : wire.from[0]);
  const siblings = portsOf(part).filter((p) => p.side === port.side && p.medium === port.medium);
  const which = siblings.length > 1 ? `${port.label} ` : "";
  const noun = port.side === "out" ? "output" : "input";
  return `${quoted(part)} has no free ${which}${noun}. It is connected to ${quoted(other)} already.`;
}
