/** Isolation between dwellings: how much of what one flat's receiver sends out reaches the next flat. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Path } from "../parts/contract.ts";
import { gainDb } from "../signal/gain.ts";

export type IsolationPair = {
  /** Part at whose outputs the two ways part. */
  readonly at: string;
  /** The two outlets, of different dwellings. */
  readonly outlets: readonly [string, string];
  readonly dwellings: readonly [string, string];
  readonly frequencyMHz: number;
  /** Loss of the two legs and the decoupling between the outputs [dB]. */
  readonly isolationDb: number;
};

/**
 * The worst isolation at every part that branches, at one frequency.
 * From one socket up to the branching part, across its outputs, and down to the other socket; only passive
 * ways count, for nothing goes backwards through an amplifier worth speaking of.
 * Outlets without a dwelling are left out. What couples through a common input is smaller and left out too.
 */
export function worstIsolation(evaluation: Evaluation, frequencyMHz: number): readonly IsolationPair[] {
  const below = new Map<string, readonly Leg[]>();
  const legsFrom = (part: string, port: string): readonly Leg[] => {
    const key = `${part}.${port}`;
    const known = below.get(key);
    if (known) return known;
    // Set before it is worked out: a loop then ends here instead of going on for ever.
    below.set(key, []);
    const legs = legsBelow(evaluation.record(part), port, frequencyMHz, legsFrom);
    below.set(key, legs);
    return legs;
  };
  return evaluation.records.flatMap((record) => {
    const decoupling = treatmentOf(record).isolationDb;
    if (decoupling === undefined || record.looped) return [];
    const outputs = record.ports.filter((p) => p.side === "out" && record.joined[p.id]);
    const legs = outputs.map((p) => {
      const end = record.joined[p.id];
      return end ? legsFrom(end[0], end[1]) : [];
    });
    const worst = worstPair(legs);
    if (!worst) return [];
    const [a, b] = worst;
    return [
      {
        at: record.part.id,
        outlets: [a.outlet, b.outlet],
        dwellings: [a.dwelling, b.dwelling],
        frequencyMHz,
        isolationDb: a.lossDb + b.lossDb + decoupling,
      },
    ];
  });
}

/** A way from a port down to an outlet's socket; of each dwelling the one with the least loss. */
type Leg = { readonly dwelling: string; readonly outlet: string; readonly lossDb: number };

function treatmentOf(record: PartRecord) {
  return record.treatment;
}

function legsBelow(
  record: PartRecord | undefined,
  port: string,
  frequencyMHz: number,
  legsFrom: (part: string, port: string) => readonly Leg[],
): readonly Leg[] {
  if (!record || record.looped) return [];
  const found: Leg[] = [];
  const sockets = record.kind.delivery?.(record.options).sockets ?? [];
  const dwelling = typeof record.options.dwelling === "string" ? record.options.dwelling.trim() : "";
  for (const path of treatmentOf(record).paths ?? []) {
    if (path.from !== port || !isPassive(path)) continue;
    const lossDb = -gainDb(path.response, frequencyMHz);
    if (sockets.some((s) => s.port === path.to)) {
      if (dwelling !== "") found.push({ dwelling, outlet: record.part.id, lossDb });
      continue;
    }
    const end = record.joined[path.to];
    if (end) for (const leg of legsFrom(end[0], end[1])) found.push({ ...leg, lossDb: leg.lossDb + lossDb });
  }
  return leastByDwelling(found);
}

function isPassive(path: Path): boolean {
  return path.noiseFigureDb === undefined && path.rating === undefined && !path.loMHz;
}

function leastByDwelling(legs: readonly Leg[]): readonly Leg[] {
  const least = new Map<string, Leg>();
  for (const leg of legs) {
    const known = least.get(leg.dwelling);
    if (!known || leg.lossDb < known.lossDb) least.set(leg.dwelling, leg);
  }
  return [...least.values()];
}

/** The two legs on different outputs and of different dwellings with the least loss together. */
function worstPair(outputs: readonly (readonly Leg[])[]): readonly [Leg, Leg] | undefined {
  let worst: readonly [Leg, Leg] | undefined;
  outputs.forEach((legs, i) => {
    for (const other of outputs.slice(i + 1))
      for (const a of legs)
        for (const b of other) {
          if (a.dwelling === b.dwelling) continue;
          if (!worst || a.lossDb + b.lossDb < worst[0].lossDb + worst[1].lossDb) worst = [a, b];
        }
  });
  return worst;
}
