/** Where a meter can be connected, and how hard that is. */
import type { Design, Part, PortRef } from "../../design/design.ts";
import { portOf, portsOf } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Service } from "../../signal/carrier.ts";

export type MeasuringPoint = {
  readonly at: PortRef;
  /** 0: in the room. 1: behind a plate, in a cupboard or loft. 2: on the roof. */
  readonly effort: 0 | 1 | 2;
  /** Services that a socket or a receiver's input is meant for; absent elsewhere. */
  readonly services?: readonly Service[];
};

/** Every joined cable port: there a plug can be taken off and the meter looped in. */
export function pointsOf(design: Design): readonly MeasuringPoint[] {
  const joined = new Set(design.wires.flatMap((wire) => [wire.from.join("/"), wire.to.join("/")]));
  return design.parts.flatMap((part) =>
    portsOf(part)
      .filter((port) => port.medium === "coax" && joined.has(`${part.id}/${port.id}`))
      .map(({ id }) => pointAt(part, id)),
  );
}

function pointAt(part: Part, portId: string): MeasuringPoint {
  const kind = kindOf(part.kind);
  const meant = [
    ...(kind?.delivery?.(part.options).sockets ?? []),
    ...(kind?.reception?.(part.options).inputs ?? []),
  ].find(({ port }) => port === portId);
  return {
    at: [part.id, portId],
    effort: effortAt(part, portId),
    ...(meant ? { services: meant.services } : {}),
  };
}

function effortAt(part: Part, portId: string): MeasuringPoint["effort"] {
  const kind = kindOf(part.kind);
  if (kind?.family === "use") return 0;
  if (kind?.delivery) return portOf(part, portId)?.side === "out" ? 0 : 1;
  return kind?.cautions?.includes("height") || kind?.family === "receive" ? 2 : 1;
}
