import type { PartId } from "../../design/design.ts";
import type { Evaluation } from "../../evaluate/evaluation.ts";
import type { Draw } from "../../signal/control.ts";
import { remembered } from "../../signal/remember.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

export type SupplyOverloadedFacts =
  /** The culprit joins inner conductor and screen; these supplies shut down. */
  | { readonly kind: "short"; readonly supplies: readonly PartId[] }
  /** Whoever draws, most first. */
  | { readonly kind: "too much"; readonly draws: readonly Draw[] };

/** A supply that is shorted or asked for too much. */
export const supplyOverloaded: RuleOf<"supply-overloaded"> = {
  id: "supply-overloaded",
  check: ({ record }) => {
    const part = record.part.id;
    const shorts = (record.power.shorts ?? []).flatMap((port) => {
      const supplies = [...new Set((record.feeds[port] ?? []).map((offer) => offer.part))].sort();
      if (supplies.length === 0) return [];
      return [
        {
          severity: "error" as const,
          at: { part, port },
          parts: culpritFirst(part, supplies),
          wires: wireIdsAt(record, port),
          facts: { kind: "short" as const, supplies },
        },
      ];
    });
    const overloads = (record.power.supplies ?? []).flatMap((supply) => {
      const demand = record.demands[supply.port];
      if (!demand || demand.shortedBy !== null || demand.milliamps <= supply.limitMa) return [];
      const draws = [...demand.draws].sort((a, b) => b.milliamps - a.milliamps || (a.part < b.part ? -1 : 1));
      return [
        {
          severity: "error" as const,
          at: { part, port: supply.port },
          parts: culpritFirst(
            part,
            draws.map((draw) => draw.part),
          ),
          wires: wireIdsAt(record, supply.port),
          value: demand.milliamps,
          limit: supply.limitMa,
          unit: "mA",
          facts: { kind: "too much" as const, draws },
        },
      ];
    });
    return [...shorts, ...overloads];
  },
  blame: (draft, evaluation) => {
    if (draft.facts.kind === "short") return draft;
    const greedy = draft.facts.draws.find(({ part }) => (overloadedBy(evaluation).get(part) ?? 0) > 1);
    return greedy ? { ...draft, parts: culpritFirst(greedy.part, draft.parts) } : draft;
  },
};

const known = new WeakMap<Evaluation, ReadonlyMap<PartId, number>>();

/** How many supplies each load helps to overload: where there are several, it is too much for any. */
function overloadedBy(evaluation: Evaluation): ReadonlyMap<PartId, number> {
  return remembered(known, evaluation, () => {
    const counts = new Map<PartId, number>();
    for (const { power, demands } of evaluation.records)
      for (const { port, limitMa } of power.supplies ?? []) {
        const demand = demands[port];
        if (!demand || demand.shortedBy !== null || demand.milliamps <= limitMa) continue;
        for (const { part } of demand.draws) counts.set(part, (counts.get(part) ?? 0) + 1);
      }
    return counts;
  });
}
