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
  const legsBelow = legsOf(evaluation, frequencyMHz);
  return evaluation.records.flatMap((record) => {
    const decoupling = record.treatment.isolationDb;
    if (decoupling === undefined || record.looped) return [];
    const outputs = record.ports.filter((p) => p.side === "out" && record.joined[p.id]);
    const legs = outputs.map((p) => legsBelow(record.joined[p.id]));
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

/** A way from a port down to an outlet's socket. */
type Leg = { readonly dwelling: string; readonly outlet: string; readonly lossDb: number };

type End = readonly [part: string, port: string];

/**
 * The legs below an input, worked out once for each: of the two dwellings with the least loss, the shortest way.
 * More are never needed, for a pair of different dwellings with the least loss is among these.
 */
function legsOf(evaluation: Evaluation, frequencyMHz: number): (end: End | undefined) => readonly Leg[] {
  const found = new Map<string, readonly Leg[]>();
  const keyOf = ([part, port]: End) => `${part}.${port}`;
  return (from) => {
    if (!from) return [];
    // Not by recursion: a riser may have thousands of outlets.
    const open: End[] = [from];
    for (;;) {
      const end = open.at(-1);
      if (!end) break;
      const ways = waysBelow(evaluation.record(end[0]), end[1], frequencyMHz);
      const missing = ways.next.flatMap(({ end: next }) => (found.has(keyOf(next)) ? [] : [next]));
      // Nothing until it is worked out: a loop then ends here instead of going on for ever.
      if (missing.length > 0 && !found.has(keyOf(end))) {
        found.set(keyOf(end), []);
        open.push(...missing);
        continue;
      }
      open.pop();
      const below = ways.next.flatMap(({ end: next, lossDb }) =>
        (found.get(keyOf(next)) ?? []).map((leg) => ({ ...leg, lossDb: leg.lossDb + lossDb })),
      );
      found.set(keyOf(end), twoLeast([...ways.sockets, ...below]));
    }
    return found.get(keyOf(from)) ?? [];
  };
}

/** Where a signal goes from an input: to sockets of this part, and on to the next parts. */
function waysBelow(
  record: PartRecord | undefined,
  port: string,
  frequencyMHz: number,
): { readonly sockets: readonly Leg[]; readonly next: readonly { end: End; lossDb: number }[] } {
  const sockets: Leg[] = [];
  const next: { end: End; lossDb: number }[] = [];
  if (!record || record.looped) return { sockets, next };
  const delivered = record.kind.delivery?.(record.options).sockets ?? [];
  const dwelling = typeof record.options.dwelling === "string" ? record.options.dwelling.trim() : "";
  for (const path of record.treatment.paths ?? []) {
    if (path.from !== port || !isPassive(path)) continue;
    const lossDb = -gainDb(path.response, frequencyMHz);
    if (delivered.some((s) => s.port === path.to)) {
      if (dwelling !== "") sockets.push({ dwelling, outlet: record.part.id, lossDb });
      continue;
    }
    const end = record.joined[path.to];
    if (end) next.push({ end, lossDb });
  }
  return { sockets, next };
}

function isPassive(path: Path): boolean {
  return path.noiseFigureDb === undefined && path.rating === undefined && !path.loMHz;
}

/** The shortest leg of each of the two dwellings that are reached with the least loss. */
function twoLeast(legs: readonly Leg[]): readonly Leg[] {
  let [first, second]: (Leg | undefined)[] = [];
  for (const leg of legs) {
    if (!first || leg.lossDb < first.lossDb) {
      if (first && first.dwelling !== leg.dwelling) second = first;
      first = leg;
    } else if (leg.dwelling !== first.dwelling && (!second || leg.lossDb < second.lossDb)) second = leg;
  }
  return [first, second].filter((leg) => leg !== undefined);
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
