/** Measuring in a faulty system by the names that the plan gives to its plugs. */
import type { Design, PortRef } from "../../design/design.ts";
import { isSamePort, partById, portOf, wireAt } from "../../design/lookup.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type Quantity, type Reading, reading } from "./reading.ts";

/**
 * Reads a meter at a port of the plan. A fault may have put in a part whose ports have other names (another
 * converter, another plate): then the plug is found at the other end of the plan's wire, which has no loss.
 * Null where the plan itself has nothing to connect to.
 */
export function measure(plan: Design, faulty: Evaluation, at: PortRef, quantity: Quantity): Reading | null {
  const part = partById(plan, at[0]);
  if (!part || portOf(part, at[1])?.medium !== "coax") return null;
  const wire = wireAt(plan, at);
  const otherEnd = wire && (isSamePort(wire.from, at) ? wire.to : wire.from);
  return (
    reading(faulty, at, quantity) ??
    (otherEnd ? reading(faulty, otherEnd, quantity) : null) ??
    NOTHING_THERE[quantity]
  );
}

const NOTHING_THERE: Readonly<Record<Quantity, Reading>> = {
  level: { quantity: "level", carriers: [] },
  cn: { quantity: "cn", carriers: [] },
  mer: { quantity: "mer", carriers: [] },
  volts: { quantity: "volts", volts: 0 },
  tone: { quantity: "tone", tone: false },
};
