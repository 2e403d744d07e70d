/** Which carriers are walked, and what is known of them from the start. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { CarrierId } from "../../evaluate/trace.ts";
import type { Carrier, Polarisation, Service } from "../../signal/carrier.ts";
import { carrierToDb, isLive } from "../../signal/readout.ts";
import { ABSENT, type CarrierResult, type CarrierResults, carrierKey } from "../carrierResult.ts";
import { addInputResults, receiverResults } from "../inputReception.ts";
import { destinationOf } from "./destination.ts";
import { powersAt } from "./powers.ts";

export type Choice = {
  readonly carrier: CarrierId;
  /** Its entry in the source's plan. */
  readonly planned: Carrier;
  /** C/N that its modulation needs [dB]. */
  readonly requiredDb: number;
  readonly source: PartId;
  /** Of a satellite's carrier. */
  readonly polarisation?: Polarisation;
  readonly circular?: true;
  readonly service: Service;
  /** What becomes of it at a receiver; absent at an outlet. */
  readonly result?: CarrierResult;
};

/** The carriers asked for, in rising frequency; or the lowest, the highest and the one in the worst state. */
export function chosenCarriers(
  evaluation: Evaluation,
  record: PartRecord,
  o: { readonly service: Service; readonly port?: string; readonly carriers?: readonly CarrierId[] },
): readonly Choice[] {
  const offered = carriersOffered(evaluation, record, o);
  if (o.carriers) {
    const asked = new Set(o.carriers.map((c) => carrierKey(c.origin, c.index)));
    return offered.filter((c) => asked.has(carrierKey(c.carrier.origin, c.carrier.index)));
  }
  const standings = offered.map((choice) => standing(evaluation, record, choice, o.port));
  const worst = standings.indexOf(Math.min(...standings));
  return offered.filter((_, n) => n === 0 || n === offered.length - 1 || n === worst);
}

/** Every carrier that could come: those of the sources upstream, or else of all that are drawn. */
export function carriersOffered(
  evaluation: Evaluation,
  record: PartRecord,
  { service, port }: { readonly service: Service; readonly port?: string },
): readonly Choice[] {
  const results = resultsAt(record, service, port);
  const all = evaluation.records
    .filter((r) => r.kind.family === "receive")
    .flatMap((source) => sentBy(source, service));
  const upstream = all.filter((c) => record.sources.includes(c.source));
  // What two aerials hear of one transmitter is one carrier.
  const once = new Map(
    (upstream.length > 0 ? upstream : all).map((c) => [carrierKey(c.carrier.origin, c.carrier.index), c]),
  );
  return [...once.values()]
    .map((c) => {
      const key = carrierKey(c.carrier.origin, c.carrier.index);
      return results ? { ...c, result: results.get(key) ?? ABSENT } : c;
    })
    .sort((a, b) => a.planned.airMHz - b.planned.airMHz);
}

/** What a receiver gets, at one of its inputs or over all; undefined for an outlet. */
function resultsAt(
  record: PartRecord,
  service: Service,
  port: string | undefined,
): ReadonlyMap<string, CarrierResult> | undefined {
  const inputs = record.kind.reception?.(record.options).inputs;
  if (!inputs || port === undefined) return inputs && receiverResults(record, service);
  const results: CarrierResults = new Map();
  for (const input of inputs.filter((each) => each.port === port))
    addInputResults(record, { receiver: record.part.id, input, alone: false }, service, results);
  return results;
}

function sentBy(source: PartRecord, service: Service): readonly Choice[] {
  return Object.values(source.outputs).flatMap(({ bands }) =>
    bands
      .filter((b) => b.origin.part === source.part.id && b.origin.service === service)
      .flatMap((band) =>
        Array.from(band.grid.index).flatMap((index, i): Choice[] => {
          const planned = band.grid.plan[index];
          // What nobody sends any more is not looked for.
          if (!planned || planned.former) return [];
          const requiredDb = band.grid.required[i] ?? 0;
          return [
            {
              carrier: { origin: band.origin.key, index },
              planned,
              requiredDb,
              source: source.part.id,
              service,
              ...(band.origin.polarisation ? { polarisation: band.origin.polarisation } : {}),
              ...(band.origin.circular ? { circular: band.origin.circular } : {}),
            },
          ];
        }),
      ),
  );
}

/** So far below all others stands what comes, and cannot be had [dB]. */
const REFUSED_DB = 1000;

/** What does not come first, then what cannot be had, then by what is left above the need; each by how far. */
function standing(
  evaluation: Evaluation,
  record: PartRecord,
  choice: Choice,
  port: string | undefined,
): number {
  const { result, carrier, requiredDb } = choice;
  if (result?.got) return result.cnDb - requiredDb;
  const { arrives } = destinationOf(evaluation, record, choice, port);
  if (!arrives || !isLive(arrives.band, arrives.i)) return Number.NEGATIVE_INFINITY;
  const { levelDbuv, noise, interference } = powersAt(arrives, carrier);
  return carrierToDb(levelDbuv, noise + interference) - requiredDb - (result ? REFUSED_DB : 0);
}
