import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { Supply } from "../../parts/contract.ts";
import { MOST_TURNING_MA } from "../../parts/dishMotor.ts";
import { isBroken } from "../../parts/meanings.ts";
import type { Draw } from "../../signal/control.ts";
import { remembered } from "../../signal/remember.ts";
import type { Draft } from "../finding.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";

export type SupplyOverloadedFacts =
  /** The culprit joins inner conductor and screen; these supplies shut down. */
  | { readonly kind: "short"; readonly supplies: readonly PartId[] }
  /** A resistor at the end of a line that carries direct current: it gets hot for nothing. */
  | { readonly kind: "resistor"; readonly ohms: number; readonly watts: number }
  /** Whoever draws, most first; `inputs`: how many inputs of the supply share its limit; `jammed`: a motor that is held. */
  | {
      readonly kind: "too much";
      readonly draws: readonly Draw[];
      readonly inputs: number;
      readonly jammed?: Draw;
    };

/** A supply that is shorted or asked for too much, and a resistor that draws from one for nothing. */
export const supplyOverloaded: RuleOf<"supply-overloaded"> = {
  id: "supply-overloaded",
  check: ({ record }) => [...shortsOf(record), ...resistorsOf(record), ...overloadsOf(record)],
  blame: (draft, evaluation) => {
    if (draft.facts.kind !== "too much") return draft;
    const { draws } = draft.facts;
    const jammed = draws.find(({ part, milliamps }) => {
      const isMotor = evaluation.record(part)?.power.motor !== undefined;
      return isMotor && milliamps > MOST_TURNING_MA;
    });
    if (jammed)
      return {
        ...draft,
        parts: culpritFirst(jammed.part, draft.parts),
        facts: { ...draft.facts, jammed },
      };
    // What is broken draws what it should not; else whoever is too much for several supplies.
    const broken = draws.find(({ part }) => {
      const record = evaluation.record(part);
      return record && isBroken(record.kind, record.options);
    });
    const greedy =
      broken ??
      draws.find(({ part }) => (overloadedBy(evaluation).get(part) ?? 0) > 1) ??
      tooMany(evaluation, draft);
    return greedy ? { ...draft, parts: culpritFirst(greedy.part, draft.parts) } : draft;
  },
};

/**
 * Of several LNBs on one receiver, which feeds one at a time, the greediest: who fits a second one takes the LNBs in hand. Where
 * one alone is too much, or something else draws beside one, the receiver is too weak.
 */
function tooMany(
  evaluation: Evaluation,
  { at, facts, limit = 0 }: Draft<"supply-overloaded">,
): Draw | undefined {
  if (facts.kind !== "too much" || !evaluation.record(at.part)?.kind.reception) return undefined;
  const lnbs = facts.draws.filter(({ part }) => evaluation.record(part)?.kind.trade.job === "converter");
  return lnbs.length > 1 && lnbs.every(({ milliamps }) => milliamps <= limit) ? lnbs[0] : undefined;
}

function shortsOf(record: PartRecord): readonly Draft<"supply-overloaded">[] {
  const { shorts: supplies, feeds, power } = record;
  if (supplies.length === 0) return [];
  const part = record.part.id;
  const shorted = power.shorts ?? [];
  const port = shorted.find((at) => feeds[at]?.length) ?? shorted[0] ?? "";
  return [
    {
      severity: "error",
      at: { part, port },
      parts: culpritFirst(part, supplies),
      wires: wireIdsAt(record, port),
      facts: { kind: "short", supplies },
    },
  ];
}

function resistorsOf(record: PartRecord): readonly Draft<"supply-overloaded">[] {
  const [resistor] = record.power.resistors ?? [];
  // What leaks in a wet joint is the least of its harm, and no terminator's.
  if (!resistor || record.drawsMa <= 0 || record.kind.trade.defect) return [];
  const { port, ohms } = resistor;
  const part = record.part.id;
  return [
    {
      severity: "warning",
      at: { part, port },
      parts: [part],
      wires: wireIdsAt(record, port),
      value: record.drawsMa,
      unit: "mA",
      facts: { kind: "resistor", ohms, watts: ohms * (record.drawsMa / 1000) ** 2 },
    },
  ];
}

/** One for each limit that is exceeded, however many inputs share it. */
function overloadsOf(record: PartRecord): readonly Draft<"supply-overloaded">[] {
  const part = record.part.id;
  return overloadedLimits(record).map(({ supplies, draws }) => {
    const [first] = supplies;
    const port = first?.port ?? "";
    const sorted = draws.toSorted((a, b) => b.milliamps - a.milliamps || (a.part < b.part ? -1 : 1));
    return {
      severity: "error",
      at: { part, port },
      parts: culpritFirst(
        part,
        sorted.map((draw) => draw.part),
      ),
      wires: supplies.flatMap((supply) => wireIdsAt(record, supply.port)),
      value: sorted.reduce((sum, draw) => sum + draw.milliamps, 0),
      limit: first?.limitMa ?? 0,
      unit: "mA",
      facts: { kind: "too much", draws: sorted, inputs: supplies.length },
    };
  });
}

type OverloadedLimit = { readonly supplies: readonly Supply[]; readonly draws: readonly Draw[] };

/** Limits of a part that are exceeded, and what is drawn of each in all; none where a short is what shuts it down. */
function overloadedLimits({ power, demands, shutDown }: PartRecord): readonly OverloadedLimit[] {
  const down = (power.supplies ?? []).filter(({ port }) => shutDown.includes(port));
  const groups = new Map<string, Supply[]>();
  for (const supply of down)
    remembered(groups, supply.shares ?? `port ${supply.port}`, () => []).push(supply);
  return [...groups.values()].flatMap((supplies) => {
    const drawn = supplies.flatMap(({ port }) => demands[port] ?? []);
    if (drawn.some(({ shortedBy }) => shortedBy !== null)) return [];
    const byPart = new Map<PartId, number>();
    for (const { part, milliamps } of drawn.flatMap(({ draws }) => draws))
      byPart.set(part, (byPart.get(part) ?? 0) + milliamps);
    return [{ supplies, draws: [...byPart].map(([part, milliamps]) => ({ part, milliamps })) }];
  });
}

const known = new WeakMap<Evaluation, ReadonlyMap<PartId, number>>();

/** How many supplies each load helps to overload: where there are several, it is too much for any. */
function overloadedBy(evaluation: Evaluation): ReadonlyMap<PartId, number> {
  return remembered(known, evaluation, () => {
    const counts = new Map<PartId, number>();
    for (const record of evaluation.records)
      for (const { draws } of record.shutDown.length > 0 ? overloadedLimits(record) : [])
        for (const { part } of draws) counts.set(part, (counts.get(part) ?? 0) + 1);
    return counts;
  });
}
