import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";
import type { Offer } from "../../signal/control.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

export type DishMotorFacts =
  /** Its receiver feeds it, but never tells it where to turn. */
  | { readonly kind: "no commands"; readonly receiver: PartId }
  /** Several receivers are on its line: each turns the dish away from what the others watch. */
  | { readonly kind: "shared"; readonly receivers: readonly PartId[] }
  /** While it turns, more is drawn than the supply gives. */
  | { readonly kind: "too much current"; readonly supply: PartId };

/** A dish motor that nobody, or more than one, commands, or that its supply cannot turn. */
export const dishMotor: RuleOf<"motor-line"> = {
  id: "motor-line",
  check: ({ record }) => {
    const { motor, load } = record.power;
    if (!motor || record.looped) return [];
    const feed = (record.feeds[motor.port] ?? []).filter((offer) => !offer.dormant && offer.volts > 0);
    const drawnMa = record.demands[motor.port]?.milliamps ?? 0;
    const turningMa = drawnMa - (load?.milliamps ?? 0) + motor.turningMa;
    return [...commanded(record, motor.port, feed), ...overdrawn(record, motor.port, { feed, turningMa })];
  },
};

type Drafted = Draft<"motor-line">;

function commanded(record: PartRecord, port: string, feed: readonly Offer[]): readonly Drafted[] {
  const speakers = [...new Set(feed.filter((o) => o.kind === "commands").map((o) => o.part))];
  const [first] = speakers;
  if (first === undefined) return [];
  const common = {
    at: { part: record.part.id, port },
    wires: wireIdsAt(record, port),
  };
  if (speakers.length > 1)
    return [
      {
        ...common,
        severity: "error",
        parts: culpritFirst(record.part.id, speakers),
        value: speakers.length,
        limit: 1,
        unit: "receivers",
        facts: { kind: "shared", receivers: speakers },
      },
    ];
  if (feed.some((o) => o.request?.motor)) return [];
  return [
    {
      ...common,
      severity: "warning",
      parts: culpritFirst(first, [record.part.id]),
      facts: { kind: "no commands", receiver: first },
    },
  ];
}

function overdrawn(
  record: PartRecord,
  port: string,
  { feed, turningMa }: { readonly feed: readonly Offer[]; readonly turningMa: number },
): readonly Drafted[] {
  const [strongest] = feed;
  if (!strongest || turningMa <= strongest.limitMa) return [];
  return [
    {
      at: { part: record.part.id, port, side: "too much" },
      wires: wireIdsAt(record, port),
      severity: "warning",
      parts: culpritFirst(strongest.part, [record.part.id]),
      value: turningMa,
      limit: strongest.limitMa,
      unit: "mA",
      facts: { kind: "too much current", supply: strongest.part },
    },
  ];
}
