/** How a dish has to stand, what its weakest transponder brings, and how much rain that stands. */

import type { Evaluation, PartRecord } from "../../../../evaluate/evaluation.ts";
import { findCarrier } from "../../../../evaluate/trace.ts";
import { feedPort, feedsOf, obstructionOf } from "../../../../parts/dishFeeds.ts";
import type { DishOptions } from "../../../../parts/dishOptions.ts";
import { dishAim, feedKelvin, feedLevelDbuv } from "../../../../parts/linkBudget.ts";
import { outagePercent, type RainRow, rainNow, rainTable } from "../../../../parts/rainMargin.ts";
import { ratioToDb } from "../../../../rf/decibel.ts";
import { dishGainDbi } from "../../../../rf/dish.ts";
import { noiseFigureDbToKelvin, thermalNoiseUv2 } from "../../../../rf/noise.ts";
import { freeSpaceLossDb } from "../../../../rf/path.ts";
import { type Band, SILENCE } from "../../../../signal/band.ts";
import type { Carrier, Polarisation } from "../../../../signal/carrier.ts";
import { waveOf } from "../../../../signal/leak.ts";
import { cnDb, marginDb } from "../../../../signal/readout.ts";

export type Budget = {
  readonly band: Band;
  readonly i: number;
  readonly carrier: Carrier;
  readonly polarisation: Polarisation;
  readonly eirpDbw: number;
  readonly freeSpaceLossDb: number;
  readonly gainDbi: number;
  /** Rain of now, as this transponder meets it, and all that is lost beside free space [dB]. */
  readonly rainLossDb: number;
  readonly otherLossDb: number;
  /** At the feed [dBµV, dB]; C/N there counts the noise of sky and ground alone. */
  readonly feedDbuv: number;
  readonly feedCnDb: number;
  readonly requiredDb: number;
};

/** Behind the converter that the dish is joined to. */
export type Converted = {
  readonly part: string;
  readonly port: string;
  readonly band: Band;
  readonly i: number;
  readonly levelDbuv: number;
  readonly cnDb: number;
};

export type Rain = {
  readonly systemKelvin: number;
  /** C/N under a clear sky above what the transponder needs [dB]. */
  readonly marginDb: number;
  readonly rows: readonly RainRow[];
  /** Share of the year that rains through the margin [%]; null: none of those looked at. */
  readonly outage: number | null;
};

/** The transponder with the least C/N over what it needs; null for a dish that receives nothing. */
export function weakestBudget(record: PartRecord, o: DishOptions): Budget | null {
  let weakest: { band: Band; i: number } | null = null;
  // What the form tells is of the satellite that the dish is aligned on.
  const { bands } = record.outputs[feedPort(1)] ?? SILENCE;
  for (const band of bands)
    for (let i = 0; i < band.level.length; i++)
      if (!weakest || marginDb(band, i) < marginDb(weakest.band, weakest.i)) weakest = { band, i };
  const carrier = weakest?.band.grid.plan[weakest.band.grid.index[weakest.i] ?? 0];
  if (!weakest || !carrier) return null;
  const { band, i } = weakest;
  const frequencyMHz = carrier.airMHz;
  const aim = dishAim(o);
  const { rangeKm } = aim;
  const hiddenDb = obstructionOf(o, aim, frequencyMHz)?.lossDb ?? 0;
  const feedDbuv = band.level[i] ?? 0;
  const [feed] = feedsOf(o);
  const rainLossDb = feed ? rainNow(o, feed)({ frequencyMHz, wave: waveOf(band.origin) }) : 0;
  return {
    band,
    i,
    carrier,
    polarisation: band.origin.polarisation ?? "V",
    // A transponder may lie above or below the satellite's common EIRP.
    eirpDbw: o.eirpDbw + feedDbuv + hiddenDb - feedLevelDbuv({ ...o, rainLossDb }, { frequencyMHz, rangeKm }),
    freeSpaceLossDb: freeSpaceLossDb({ distanceKm: rangeKm, frequencyMHz }),
    gainDbi: dishGainDbi({ diameterM: o.diameterM, efficiency: o.efficiency, frequencyMHz }),
    rainLossDb,
    otherLossDb: o.clearSkyLossDb + rainLossDb + o.pointingLossDb + hiddenDb,
    feedDbuv,
    feedCnDb: cnDb(band, i),
    requiredDb: band.grid.required[i] ?? 0,
  };
}

/** The same transponder behind the converter; null where none is joined or none lets it through. */
export function converted(evaluation: Evaluation, record: PartRecord, budget: Budget): Converted | null {
  const converter = converterOf(evaluation, record);
  if (!converter) return null;
  const id = { origin: budget.band.origin.key, index: budget.band.grid.index[budget.i] ?? 0 };
  for (const [port, spectrum] of Object.entries(converter.outputs)) {
    const found = findCarrier((spectrum ?? SILENCE).bands, id, undefined);
    if (!found) continue;
    const { band, i } = found;
    return { part: converter.part.id, port, band, i, levelDbuv: band.level[i] ?? 0, cnDb: cnDb(band, i) };
  }
  return null;
}

/**
 * How much rain the transponder stands, from the noise of the antenna and of the converter behind it; null without one.
 * Reckoned from a clear sky, whatever rain the dish's own options hold now.
 */
export function rainOf(
  evaluation: Evaluation,
  record: PartRecord,
  o: DishOptions,
  budget: Budget,
): Rain | null {
  const noiseFigureDb = converterNoiseDb(evaluation, record);
  if (noiseFigureDb === null) return null;
  const clear = { ...o, rainLossDb: 0 };
  const systemKelvin = feedKelvin(clear) + noiseFigureDbToKelvin(noiseFigureDb);
  const noiseDbuv = ratioToDb(thermalNoiseUv2(budget.carrier.noiseMHz, systemKelvin));
  const margin = budget.feedDbuv + budget.rainLossDb - noiseDbuv - budget.requiredDb;
  const rows = rainTable(o, {
    frequencyMHz: budget.carrier.airMHz,
    polarisation: budget.polarisation,
    systemKelvin,
  });
  return { systemKelvin, marginDb: margin, rows, outage: outagePercent(rows, margin) };
}

function converterOf(evaluation: Evaluation, record: PartRecord): PartRecord | undefined {
  const [end] = Object.values(record.joined);
  return end && evaluation.record(end[0]);
}

function converterNoiseDb(evaluation: Evaluation, record: PartRecord): number | null {
  const converter = converterOf(evaluation, record);
  const paths =
    converter?.kind.signal(converter.options, { id: converter.part.id, powered: true }).paths ?? [];
  return paths.find((path) => path.noiseFigureDb !== undefined)?.noiseFigureDb ?? null;
}
