/** Isolation between dwellings: how much of what one flat's receiver sends out reaches the next flat. */

import type { PortRef } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Path } from "../parts/contract.ts";
import { gainDbAt } from "../signal/gain.ts";
import { decouplingDb, passivePaths } from "./decoupling.ts";
import { passiveNetworks } from "./passiveNetwork.ts";

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
 * The worst isolation at every part where ways part, at one frequency: splitters and taps, filters, multiswitches, and
 * plates on a riser, whose own sockets count against whatever hangs on the line behind them.
 * From one socket up to that part, across its outputs, and down to the other socket; only passive
 * ways count, for nothing goes backwards through an amplifier worth speaking of.
 * Outlets without a dwelling are left out. What couples through a common input is smaller and left out too.
 * Tells before each part how much work it is; nothing where the passive side of the design is as it was.
 */
export function* worstIsolation(
  evaluation: Evaluation,
  frequencyMHz: number,
): Generator<number, readonly IsolationPair[], void> {
  const { answers } = networkOf(evaluation);
  const known = answers.get(frequencyMHz);
  if (known) return known;
  const below: Below = new Map();
  const pairs: IsolationPair[] = [];
  for (const record of evaluation.records) {
    yield record.ports.length;
    if (record.looped) continue;
    const worst = worstPair(record, outputsOf(evaluation, record, { frequencyMHz, below }), frequencyMHz);
    if (!worst) continue;
    const { legs, isolationDb } = worst;
    const [a, b] = legs;
    pairs.push({
      at: record.part.id,
      outlets: [a.outlet, b.outlet],
      dwellings: [a.dwelling, b.dwelling],
      frequencyMHz,
      isolationDb,
    });
  }
  if (answers.size >= MOST_ANSWERS) answers.clear();
  answers.set(frequencyMHz, pairs);
  return pairs;
}

/** A channel that is moved makes other frequencies at every step; the memory starts afresh beyond this many. */
const MOST_ANSWERS = 64;

const networkOf = passiveNetworks<readonly IsolationPair[]>(flatOf);

/** An output and what hangs on it; a socket of a plate leads to its own flat. */
type Output = { readonly port: string; readonly legs: readonly Leg[] };

function outputsOf(evaluation: Evaluation, record: PartRecord, search: Search): readonly Output[] {
  const outputs = record.ports.filter((p) => p.side === "out");
  if (outputs.length < 2) return [];
  const own = ownSocket(record, search.frequencyMHz);
  return outputs.flatMap(({ id: port }) => {
    const end = record.joined[port];
    const far = end ? legsFrom(evaluation, end, search) : [];
    const legs = own?.port === port ? [own.leg, ...far] : far;
    return legs.length > 0 ? [{ port, legs }] : [];
  });
}

/** The socket of a plate that lets most of a frequency out, as a way that ends there. */
function ownSocket(record: PartRecord, frequencyMHz: number) {
  const dwelling = flatOf(record);
  if (dwelling === "") return undefined;
  const sockets = new Set((record.kind.delivery?.(record.options).sockets ?? []).map((s) => s.port));
  let best: { readonly port: string; readonly db: number } | undefined;
  for (const { to, response } of passivePaths(record)) {
    if (!sockets.has(to)) continue;
    const db = gainDbAt(response, frequencyMHz);
    if (!best || db > best.db) best = { port: to, db };
  }
  return best && { port: best.port, leg: { dwelling, outlet: record.part.id, lossDb: 0 } };
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
  return record ? passivePaths(record).filter((path) => path.from === port) : [];
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
    if (dwelling !== "" && sockets.some((s) => s.port === path.to))
      found.push({ dwelling, outlet: record.part.id, lossDb });
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

type Across = { readonly legs: readonly [Leg, Leg]; readonly isolationDb: number };

/** The two legs on different outputs and of different dwellings with the least loss from one to the other. */
function worstPair(record: PartRecord, outputs: readonly Output[], frequencyMHz: number): Across | undefined {
  let worst: Across | undefined;
  outputs.forEach((one, i) => {
    for (const other of outputs.slice(i + 1)) {
      const legs = nearestTwo(one.legs, other.legs);
      const across = legs && decouplingDb(record, [one.port, other.port], frequencyMHz);
      if (!legs || across === undefined) continue;
      const isolationDb = legs[0].lossDb + legs[1].lossDb + across;
      if (!worst || isolationDb < worst.isolationDb) worst = { legs, isolationDb };
    }
  });
  return worst;
}

function nearestTwo(legs: readonly Leg[], others: readonly Leg[]): readonly [Leg, Leg] | undefined {
  let nearest: readonly [Leg, Leg] | undefined;
  for (const a of legs)
    for (const b of others) {
      if (a.dwelling === b.dwelling) continue;
      if (!nearest || a.lossDb + b.lossDb < nearest[0].lossDb + nearest[1].lossDb) nearest = [a, b];
    }
  return nearest;
}
