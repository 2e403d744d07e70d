/** Supplies on a line, made by hand. */
import type { Offer, Request } from "../../src/signal/control.ts";

export const ASKS_V_LOW: Request = { polarisation: "V", half: "low" };
export const ASKS_H_HIGH: Request = { polarisation: "H", half: "high" };

/** A receiver's supply as it leaves it: 13 or 18 V, and commands. */
export function offerOf(o: Partial<Offer> = {}): Offer {
  const request = o.request ?? ASKS_V_LOW;
  return {
    part: "rx",
    port: "sat",
    kind: "commands",
    volts13: 13,
    volts18: 18,
    volts: request.polarisation === "V" ? 13 : 18,
    ohms: 0,
    dropVolts: 0,
    limitMa: 400,
    toneArrives: true,
    request,
    dormant: false,
    ...o,
  };
}

/** A mains unit: one voltage, no commands. */
export function plainOffer(volts: number, o: Partial<Offer> = {}): Offer {
  const { request: _, ...rest } = offerOf({ part: "psu", kind: "plain", ...o });
  return { ...rest, volts13: volts, volts18: volts, volts };
}
