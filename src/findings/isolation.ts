/** Isolation between dwellings: how much of what one flat's receiver sends out reaches the next flat. */

import type { PortRef } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Path } from "../parts/contract.ts";
import { gainDbAt } from "../signal/gain.ts";

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
 * Tells before each part how much work it is.
 */
export function* worstIsolation(
  evaluation: Evaluation,
  frequencyMHz: number,
): Generator<number, readonly IsolationPair[], void> {
  const below: Below = new Map();
  const pairs: IsolationPair[] = [];
  for (const record of evaluation.records) {
    const decoupling = record.treatment.isolationDb;
    yield record.ports.length;
    if (decoupling === undefined || record.looped) continue;
    const legs = record.ports.flatMap((p) => {
      const end = p.side === "out" ? record.joined[p.id] : undefined;
      return end ? [legsFrom(evaluation, end, { frequencyMHz, below })] : [];
    });
    const worst = worstPair(legs);
    if (!worst) continue;
    const [a, b] = worst;
    pairs.push({
      at: record.part.id,
      outlets: [a.outlet, b.outlet],
      dwellings: [a.dwelling, b.dwelling],
      frequencyMHz,
      isolationDb: a.lossDb + b.lossDb + decoupling,
    });
  }
  return pairs;
}

/** A way from a port down to an outlet's socket. */
type Leg = { readonly dwelling: string; readonly outlet: string; readonly lossDb: number };

/**
 * By part and port: the two legs of different dwellings with the least loss. More are never needed: whichever
 * dwelling lies across, one of the two belongs to another.
 */
type Below = Map<string, readonly Leg[]>;

type Search = { readonly frequencyMHz: number; readonly below: Below };

/** A list of what is still to be looked at instead of recursion: a chain may be thousands of parts long. */
function legsFrom(evaluation: Evaluation, from: PortRef, search: Search): readonly Leg[] {
  const { below } = search;
  const open: PortRef[] = [from];
  for (let ref = open.at(-1); ref; ref = open.at(-1)) {
    const key = keyOf(ref);
    const record = evaluation.record(ref[0]);
    const isNew = !below.has(key);
    const waiting = isNew ? onwards(record, ref[1]).filter((next) => !below.has(keyOf(next))) : [];
    if (isNew) {
      // Set before it is worked out: a loop then ends here instead of going on for ever.
      below.set(key, NOT_YET);
      open.push(...waiting);
    }
    if (waiting.length > 0) continue;
    if (below.get(key) === NOT_YET) below.set(key, legsBelow(record, ref[1], search));
    open.pop();
  }
  return below.get(keyOf(from)) ?? [];
}

const NOT_YET: readonly Leg[] = [];

function keyOf([part, port]: PortRef): string {
  return `${part}.${port}`;
}

/** Ways on through a part that is not an end. */
function onwards(record: PartRecord | undefined, port: string): readonly PortRef[] {
  return passiveWays(record, port).flatMap((path) => {
    const end = record?.joined[path.to];
    return end ? [end] : [];
  });
}

function passiveWays(record: PartRecord | undefined, port: string): readonly Path[] {
  if (!record || record.looped) return [];
  return (record.treatment.paths ?? []).filter((path) => path.from === port && isPassive(path));
}

function legsBelow(
  record: PartRecord | undefined,
  port: string,
  { frequencyMHz, below }: Search,
): readonly Leg[] {
  if (!record) return [];
  const found: Leg[] = [];
  const sockets = record.kind.delivery?.(record.options).sockets ?? [];
  const dwelling = flatOf(record);
  for (const path of passiveWays(record, port)) {
    const lossDb = -gainDbAt(path.response, frequencyMHz);
    if (sockets.some((s) => s.port === path.to)) {
      if (dwelling !== "") found.push({ dwelling, outlet: record.part.id, lossDb });
      continue;
    }
    const end = record.joined[path.to];
    const legs = (end && below.get(keyOf(end))) ?? [];
    for (const leg of legs) found.push({ ...leg, lossDb: leg.lossDb + lossDb });
  }
  return leastOfTwo(found);
}

/** The flat that an outlet belongs to, as its user names it; empty where it is not said. */
export function flatOf(record: PartRecord | undefined): string {
  const name = record?.options["dwelling"];
  return typeof name === "string" ? name.trim() : "";
}

function isPassive(path: Path): boolean {
  return path.noiseFigureDb === undefined && path.rating === undefined && !path.loMHz && !path.shiftMHz;
}

/** The leg with the least loss, and the least of those that belong to another dwelling. */
function leastOfTwo(legs: readonly Leg[]): readonly Leg[] {
  const least = leastOf(legs);
  const other = least && leastOf(legs.filter((leg) => leg.dwelling !== least.dwelling));
  if (!least) return [];
  return other ? [least, other] : [least];
}

function leastOf(legs: readonly Leg[]): Leg | undefined {
  return legs.reduce<Leg | undefined>(
    (least, leg) => (least && least.lossDb <= leg.lossDb ? least : leg),
    undefined,
  );
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
