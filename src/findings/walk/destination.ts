/** Where the walk of a carrier ends, or how far it comes. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type Found, findCarrier } from "../../evaluate/trace.ts";
import { isLive, usedUserBands } from "../../signal/readout.ts";
import type { Choice } from "./choice.ts";

type Output = { readonly part: PartId; readonly port: string };

export type Destination = {
  /** Socket or input; null where none is joined to anything. */
  readonly port: string | null;
  /** User band that carries it there. */
  readonly userBand?: number;
  /** Output whose wire brings it, and its place there; null: it does not come. */
  readonly arrives: (Found & { readonly at: Output }) | null;
  /** Where it does not come: the last output that has it, and the part behind that. */
  readonly seen: { readonly at: Output; readonly next: PartId } | null;
};

/** A way in: a socket's or input's name, and the output that feeds it. */
type Entry = { readonly port: string; readonly at: Output; readonly userBand?: number };

export function destinationOf(
  evaluation: Evaluation,
  record: PartRecord,
  choice: Choice,
  port?: string,
): Destination {
  const { result, carrier } = choice;
  const all = entriesOf(evaluation, record, choice).filter((e) => port === undefined || e.port === port);
  const best = result?.got && port === undefined ? all.filter((e) => e.port === result.port) : all;
  const found = best.flatMap((entry) => {
    const userBand = result?.got && result.port === entry.port ? result.userBand : entry.userBand;
    const bands = evaluation.record(entry.at.part)?.outputs[entry.at.port]?.bands ?? [];
    const place = findCarrier(bands, carrier, userBand);
    return place ? [{ port: entry.port, userBand, arrives: { ...place, at: entry.at } }] : [];
  });
  const chosen = found.find(({ arrives: { band, i } }) => isLive(band, i)) ?? found[0];
  if (chosen) {
    const { arrives } = chosen;
    const userBand = arrives.band.stack?.numbers[arrives.i];
    return { port: chosen.port, arrives, seen: null, ...(userBand === undefined ? {} : { userBand }) };
  }
  return { port: all[0]?.port ?? null, arrives: null, seen: lastSeen(evaluation, record, all, choice) };
}

function entriesOf(evaluation: Evaluation, record: PartRecord, { service }: Choice): readonly Entry[] {
  const { kind, options, joined, outputs } = record;
  const sockets = kind.delivery?.(options).sockets ?? [];
  const inputs = kind.reception?.(options).inputs ?? [];
  return [
    ...sockets
      .filter((s) => s.services.includes(service))
      .map(({ port }) => ({
        port,
        at: { part: record.part.id, port },
        ...userBandAmong(outputs[port]?.bands ?? []),
      })),
    ...inputs
      .filter((input) => input.services.includes(service))
      .flatMap(({ port, userBands }) => {
        const end = joined[port];
        if (!end) return [];
        const bands = evaluation.record(end[0])?.outputs[end[1]]?.bands ?? [];
        const own = userBands?.find((ub) => bands.some((b) => b.stack?.numbers.includes(ub.number)));
        return [{ port, at: { part: end[0], port: end[1] }, ...(own ? { userBand: own.number } : {}) }];
      }),
  ];
}

/** At a socket: the first user band that some receiver behind it is set to. */
function userBandAmong(bands: readonly Found["band"][]): { readonly userBand?: number } {
  for (const { stack } of bands)
    for (const number of stack ? usedUserBands(stack) : [])
      if (stack?.numbers.includes(number)) return { userBand: number };
  return {};
}

/** Row by row upwards from the entries, the first output that has the carrier. */
function lastSeen(
  evaluation: Evaluation,
  record: PartRecord,
  entries: readonly Entry[],
  { carrier }: Choice,
): Destination["seen"] {
  const visited = new Set<string>();
  let row = entries.map(({ at }) => ({ at, next: record.part.id }));
  while (row.length > 0) {
    const above: typeof row = [];
    for (const { at, next } of row) {
      const here = evaluation.record(at.part);
      if (!here || visited.has(`${at.part}.${at.port}`)) continue;
      visited.add(`${at.part}.${at.port}`);
      if (findCarrier(here.outputs[at.port]?.bands ?? [], carrier, undefined)) return { at, next };
      for (const { id, side } of here.ports) {
        const end = side === "in" ? here.joined[id] : undefined;
        if (end) above.push({ at: { part: end[0], port: end[1] }, next: at.part });
      }
    }
    row = above;
  }
  return null;
}
