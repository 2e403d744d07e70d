/** What the carriers on the sockets of an outlet have to spare. */
import { settingsOf } from "../design/settings.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Band } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { carrierToDb, cniDb } from "../signal/readout.ts";
import { carrierKey } from "./carrierResult.ts";
import type { Verdict } from "./finding.ts";
import { type HandedOn, handedOn } from "./handedOn.ts";
import { type Judged, leastOf, type Margin } from "./margin.ts";
import { ownPowers } from "./stackedReception.ts";
import { type Kept, keptWhile } from "./watched.ts";

const kept = new WeakMap<Verdict, Kept<ReadonlyMap<Service, Margin>>>();

/** Margins of an outlet by service, of those that it hands on in full. Nothing is known of the noise of a tuner. */
export function outletMargins(
  evaluation: Evaluation,
  record: PartRecord,
  verdict: Verdict,
): ReadonlyMap<Service, Margin> {
  const sockets = record.kind.delivery?.(record.options).sockets ?? [];
  const settings = settingsOf(evaluation.design);
  return keptWhile(kept, verdict, { evaluation, also: [record, settings] }, (watched) => {
    const margins = new Map<Service, Margin>();
    for (const { service, wanted, got } of verdict.services) {
      const carriers = got === wanted ? judgedAt(record, handedOn(record, sockets, service)) : [];
      const margin = leastOf(watched, service, carriers);
      if (margin) margins.set(service, margin);
    }
    return margins;
  });
}

/** Carriers socket by socket, each by the best way; on a single-cable feed those that can be asked for. */
function judgedAt({ part }: PartRecord, on: readonly HandedOn[]): readonly Judged[] {
  const best = new Map<string, Judged>();
  for (const one of on)
    for (const judged of one.band.stack ? heldCarriers(part.id, one) : plainCarrier(part.id, one)) {
      const key = `${one.port} ${carrierKey(judged.origin, judged.index)}`;
      const former = best.get(key);
      if (!former || judged.cnDb > former.cnDb) best.set(key, judged);
    }
  return [...best.values()];
}

function plainCarrier(part: string, { port, band, i }: HandedOn): readonly Judged[] {
  const index = band.grid.index[i] ?? 0;
  const carrier = band.grid.plan[index];
  if (!carrier) return [];
  const levelDbuv = band.level[i] ?? 0;
  const requiredDb = band.grid.required[i] ?? 0;
  return [judged(part, port, band, { index, carrier, levelDbuv, cnDb: cniDb(band, i), requiredDb })];
}

/** Whatever a user band can hold, with the level and the noise of that user band at the socket. */
function heldCarriers(part: string, { port, band, i }: HandedOn): readonly Judged[] {
  const { stack } = band;
  return (stack?.holds ?? []).flatMap((held) =>
    Array.from(held.grid.index).flatMap((index, n): Judged[] => {
      const carrier = held.grid.plan[index];
      if (!stack || !carrier || held.cut[n]) return [];
      const { levelDbuv, noise, interference } = ownPowers({ band, stack, held, i: n }, i);
      const cnDb = carrierToDb(levelDbuv, noise + interference);
      const requiredDb = held.grid.required[n] ?? 0;
      const userBand = stack.numbers[i] ?? 0;
      return [judged(part, port, held, { index, carrier, userBand, levelDbuv, cnDb, requiredDb })];
    }),
  );
}

function judged(
  part: string,
  port: string,
  { origin }: Band,
  figures: Omit<Judged, "origin" | "end" | "plane">,
): Judged {
  const { key, part: source, polarisation } = origin;
  return {
    ...figures,
    origin: key,
    end: { part, port },
    ...(polarisation ? { plane: { source, polarisation } } : {}),
  };
}
