/** What a wire that is pulled would be led to if it were let go where it is: a port, else the card there. */
import type { Design, PartId, PortRef } from "../../design/design.ts";
import { PORT_PITCH_PX } from "./frames.ts";
import type { Point } from "./layout.ts";
import { cardAt, nearestPort, type PlacedPort } from "./ports.ts";
import { joinTargetKeys } from "./state.ts";

export type WireTarget = { readonly port: PlacedPort } | { readonly card: PartId } | null;

type Sight = {
  /** Width of the field of a port, on the screen [px]. */
  readonly fieldPx: number;
  readonly zoom: number;
};

export function wireTargetAt(design: Design, from: PortRef, at: Point, sight: Sight): WireTarget {
  const card = cardAt(design, at);
  // Where the fields of a card's ports lie over one another, the card asks which is meant.
  const isCrowded = PORT_PITCH_PX * sight.zoom < sight.fieldPx / 2;
  const port = isCrowded && card !== undefined ? undefined : portAimedAt(design, from, at, sight);
  if (port) return { port };
  return card === undefined ? null : { card };
}

/** One that fits before one that does not. */
function portAimedAt(design: Design, from: PortRef, at: Point, sight: Sight): PlacedPort | undefined {
  const among = joinTargetKeys(design, from);
  return nearestPort(design, at, { ...sight, among }) ?? nearestPort(design, at, sight);
}

/** Whether a card has a free port that a wire from there may lead to. */
export function takesWire(design: Design, from: PortRef, card: PartId): boolean {
  return [...joinTargetKeys(design, from)].some((key) => key.startsWith(`${card}/`));
}
