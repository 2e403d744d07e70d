import type { PartId } from "../../design/design.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

/** Who gives so much. */
export type OverVoltageFacts = {
  readonly kind: "too high";
  readonly supply: PartId;
  readonly isFixed: boolean;
};

/** Beyond the most that a part is made for, so much more may destroy it [V]; from memory: LNBs stand 20 to 21 V. */
const DESTROYS_BY_VOLTS = 2;

/** Volts that a meter rounds away. */
const ROUNDING_VOLTS = 0.05;

/** More volts at a converter than it is made for. */
export const overVoltage: RuleOf<"over-voltage"> = {
  id: "over-voltage",
  check: ({ record }) => {
    const { load, selfPowered } = record.power;
    const most = load?.mostVolts;
    if (record.looped || selfPowered || most === undefined) return [];
    const arriving = (load?.ports ?? []).flatMap((port) =>
      (record.feeds[port] ?? []).filter((o) => !o.dormant).map((offer) => ({ port, offer })),
    );
    const highest = arriving.reduce<(typeof arriving)[number] | undefined>(
      (best, one) => (best && best.offer.volts >= one.offer.volts ? best : one),
      undefined,
    );
    if (!highest || highest.offer.volts <= most + ROUNDING_VOLTS) return [];
    const { port, offer } = highest;
    return [
      {
        severity: offer.volts > most + DESTROYS_BY_VOLTS ? "error" : "warning",
        at: { part: record.part.id, port },
        parts: culpritFirst(offer.part, [record.part.id]),
        wires: wireIdsAt(record, port),
        value: offer.volts,
        limit: most,
        unit: "V",
        facts: { kind: "too high", supply: offer.part, isFixed: offer.kind === "plain" },
      },
    ];
  },
};
