/** Where a meter can be connected, and how hard that is. */
import type { Design, Part, PortRef } from "../../design/design.ts";
import { portOf, portsOf, quoted } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Service } from "../../signal/carrier.ts";

export type Point = {
  readonly at: PortRef;
  /** "the TV socket of “Plate”", "the input of “Amplifier”" */
  readonly where: string;
  /** 0: in the room. 1: behind a plate, in a cupboard or loft. 2: on the roof. */
  readonly effort: 0 | 1 | 2;
  /** Services that a socket or a receiver's input is meant for; absent elsewhere. */
  readonly services?: readonly Service[];
};

/** Every joined cable port: there a plug can be taken off and the meter looped in. */
export function pointsOf(design: Design): readonly Point[] {
  const joined = new Set(design.wires.flatMap((wire) => [wire.from.join("/"), wire.to.join("/")]));
  return design.parts.flatMap((part) =>
    portsOf(part)
      .filter((port) => port.medium === "coax" && joined.has(`${part.id}/${port.id}`))
      .map(({ id }) => pointAt(part, id)),
  );
}

function pointAt(part: Part, portId: string): Point {
  const kind = kindOf(part.kind);
  const meant = [
    ...(kind?.delivery?.(part.options).sockets ?? []),
    ...(kind?.reception?.(part.options).inputs ?? []),
  ].find(({ port }) => port === portId);
  return {
    at: [part.id, portId],
    where: placeName(part, portId),
    effort: effortAt(part, portId),
    ...(meant ? { services: meant.services } : {}),
  };
}

/** A port in words; ports are named where a part has several of that side. */
export function placeName(part: Part, portId: string): string {
  const port = portOf(part, portId);
  const siblings = portsOf(part).filter((p) => p.side === port?.side && p.medium === "coax");
  const label = siblings.length > 1 ? `${port?.label ?? portId} ` : "";
  const isSocket = kindOf(part.kind)?.delivery !== undefined && port?.side === "out";
  if (isSocket) return `the ${port?.label ?? portId} socket of ${quoted(part)}`;
  return `the ${label}${port?.side === "out" ? "output" : "input"} of ${quoted(part)}`;
}

function effortAt(part: Part, portId: string): Point["effort"] {
  const kind = kindOf(part.kind);
  if (kind?.family === "use") return 0;
  if (kind?.delivery) return portOf(part, portId)?.side === "out" ? 0 : 1;
  return kind?.cautions?.includes("height") || kind?.family === "receive" ? 2 : 1;
}
