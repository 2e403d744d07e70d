/** The way that one supply took to where it arrives, and what each part on it took of the volts. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import type { PowerPath } from "../../parts/contract.ts";
import { COPPER_RESISTANCE_PER_KELVIN, resistanceGrowth } from "../../rf/coax.ts";
import type { Feed, Offer } from "../../signal/control.ts";

/** One part that a supply passed through. */
export type SupplyPassage = {
  readonly part: PartId;
  /** Output at which it came in, and input on which it left. */
  readonly from: string;
  readonly to: string;
  /** Series resistance [Ω] and current through it, with all that hangs above [mA]. */
  readonly ohms: number;
  readonly milliamps: number;
  /** What a steering diode takes, and what is taken in all [V]. */
  readonly diodeVolts: number;
  readonly dropVolts: number;
  readonly tone: boolean;
};

/** Which of its voltages: the one of now, or the one for a vertical or a horizontal request. */
export type VoltsAsked = "volts" | "volts13" | "volts18";

/** From the part nearest to the place where the offer arrives down to the last one before its source. */
export function supplyWay(
  evaluation: Evaluation,
  at: { readonly part: PartId; readonly port: string },
  offer: Offer,
  asked: VoltsAsked = "volts",
): readonly SupplyPassage[] {
  const way: SupplyPassage[] = [];
  let here = evaluation.record(at.part)?.joined[at.port];
  // A way is no longer than the number of parts; loops carry no supply, so this only guards.
  for (let guard = evaluation.records.length; here && guard > 0; guard--) {
    const [part, to] = here;
    const record = evaluation.record(part);
    if (!record || (part === offer.part && to === offer.port)) break;
    const path = strongestPath(record, to, offer);
    if (!path) break;
    way.push(passage(record, path, { offer, asked }));
    here = record.joined[path.from];
  }
  return way;
}

/** The path by which most of this supply comes to an input. */
function strongestPath(record: PartRecord, to: string, offer: Offer): PowerPath | undefined {
  const arriving = (path: PowerPath) => {
    const own = ownOf(record.feeds[path.from], offer);
    const milliamps = record.demands[path.from]?.milliamps ?? 0;
    const drop = (path.dropVolts ?? 0) + ((path.ohms ?? 0) * milliamps) / 1000;
    return own ? own.volts - drop : Number.NEGATIVE_INFINITY;
  };
  const paths = record.power.paths ?? [];
  // What a head end gives comes down by the ways that conduct both ways.
  const down = paths
    .filter(({ from, dropVolts, oneWay }) => from === to && dropVolts === undefined && !oneWay)
    .map((path) => ({ ...path, from: path.to, to: path.from }));
  const ways = [...paths, ...down].filter((path) => path.to === to && arriving(path) > -Infinity);
  return ways.reduce<PowerPath | undefined>(
    (best, path) => (best && arriving(best) >= arriving(path) ? best : path),
    undefined,
  );
}

function ownOf(feed: Feed | undefined, { part, port }: Offer): Offer | undefined {
  return feed?.find((o) => o.part === part && o.port === port);
}

function passage(
  record: PartRecord,
  path: PowerPath,
  { offer, asked }: { readonly offer: Offer; readonly asked: VoltsAsked },
): SupplyPassage {
  const below = ownOf(record.feeds[path.from], offer)?.[asked] ?? 0;
  const above = ownOf(record.offers[path.to], offer)?.[asked] ?? below;
  return {
    part: record.part.id,
    from: path.from,
    to: path.to,
    ohms: path.ohms ?? 0,
    milliamps: record.demands[path.from]?.milliamps ?? 0,
    diodeVolts: path.dropVolts ?? 0,
    dropVolts: Math.max(0, below - above),
    tone: path.tone,
  };
}

/** What takes most of the volts on a way; of equals the one nearest to the source. */
export function mostTaking(way: readonly SupplyPassage[]): SupplyPassage | undefined {
  return way.reduce<SupplyPassage | undefined>(
    (most, step) => (most && most.dropVolts > step.dropVolts ? most : step),
    undefined,
  );
}

/**
 * Temperature of the cables at which so many volts are lost beside what they lose now. [°C]
 * Infinite where no cable loses any. `ohmicVolts`: what they would lose at 20 °C; `nowVolts`: what they lose now, where
 * they are at another temperature. T = 20 + (now + spare − U₂₀)/(α·U₂₀)
 */
export function failingTemperatureC(o: {
  readonly spareVolts: number;
  readonly ohmicVolts: number;
  readonly nowVolts?: number;
}): number {
  const { spareVolts, ohmicVolts, nowVolts = ohmicVolts } = o;
  const more = nowVolts - ohmicVolts + Math.max(0, spareVolts);
  return ohmicVolts > 0 ? 20 + more / (COPPER_RESISTANCE_PER_KELVIN * ohmicVolts) : Number.POSITIVE_INFINITY;
}

/** What the cables of a way take by their resistance: now, and what it would be at 20 °C [V]. */
export function cableVolts(
  evaluation: Evaluation,
  way: readonly SupplyPassage[],
): { readonly nowVolts: number; readonly ohmicVolts: number } {
  let nowVolts = 0;
  let ohmicVolts = 0;
  for (const step of way) {
    const temperatureC = cableTemperatureC(evaluation.record(step.part));
    if (temperatureC === undefined) continue;
    const volts = step.dropVolts - step.diodeVolts;
    nowVolts += volts;
    ohmicVolts += volts / resistanceGrowth(temperatureC);
  }
  return { nowVolts, ohmicVolts };
}

/** Temperature of a length of cable; undefined for any other part. */
function cableTemperatureC(record: PartRecord | undefined): number | undefined {
  for (const { response } of record?.treatment.paths ?? [])
    if (response.type === "cable") return response.temperatureC;
  return undefined;
}

/** A length of cable, whatever its kind is called. */
export function isCable(record: PartRecord | undefined): boolean {
  return (record?.treatment.paths ?? []).some((path) => path.response.type === "cable");
}
