/** How long in a year rain takes the picture, by what a receiver has to spare. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { type CarrierId, findCarrier, type TraceStep } from "../evaluate/trace.ts";
import { dishOptionsOf } from "../parts/dishBands.ts";
import { feedsOf } from "../parts/dishFeeds.ts";
import type { DishOptions } from "../parts/dishOptions.ts";
import { feedKelvin } from "../parts/linkBudget.ts";
import { type Against, type RainRow, rainNow, rainTable } from "../parts/rainMargin.ts";
import { dbToRatio } from "../rf/decibel.ts";
import { noiseFigureDbToKelvin } from "../rf/noise.ts";
import type { Polarisation } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";

/** Minutes of a mean year of 365.25 days. */
const MINUTES_A_YEAR = 525_960;

const tables = new WeakMap<DishOptions, Map<string, readonly RainRow[]>>();

/**
 * Minutes of an average year for which a carrier's margin under a clear sky is too small; undefined for a source
 * that is no dish. `against`: what stands against it; absent: noise of dish and converter alone. Between the shares looked at the loss is taken to grow with the logarithm of the share.
 */
export function rainMinutes(
  evaluation: Evaluation,
  dish: PartRecord,
  carrier: {
    readonly airMHz: number;
    readonly polarisation: Polarisation;
    readonly marginDb: number;
    readonly against?: Against;
    /** Output of the dish that it comes from; absent: the one in the focus. */
    readonly port?: string;
  },
): number | undefined {
  const o = dishOptionsOf(dish);
  if (!o) return undefined;
  const byCarrier = remembered(tables, o, () => new Map<string, readonly RainRow[]>());
  const systemKelvin = feedKelvin({ ...o, rainLossDb: 0 }) + converterKelvin(evaluation, dish);
  const { airMHz: frequencyMHz, polarisation, marginDb, against } = carrier;
  const feeds = feedsOf(o);
  const feed = feeds.find(({ port }) => port === carrier.port) ?? feeds[0];
  const mix = `${feed?.number ?? 1} ${against ? `${against.sky} ${against.falling}` : ""}`;
  const rows = remembered(byCarrier, `${frequencyMHz} ${polarisation} ${systemKelvin} ${mix}`, () =>
    rainTable(o, {
      frequencyMHz,
      polarisation,
      systemKelvin,
      ...(against ? { against } : {}),
      ...(feed ? { feed } : {}),
    }),
  );
  const hadDb = feed ? rainNow(o, feed)({ frequencyMHz, wave: polarisation }) : 0;
  return (shareWithout(rows, marginDb + hadDb) / 100) * MINUTES_A_YEAR;
}

/**
 * What stands against a carrier where it is judged, apart by what rain does to it. `cnDb`: C/(N+I) there, a tuner's noise in it.
 * Leakage comes from the sky with the carrier; whatever else disturbs is taken to stay, so nothing is made better than it is.
 */
export function againstOf(
  evaluation: Evaluation,
  steps: readonly TraceStep[],
  judged: CarrierId & { readonly cnDb: number; readonly userBand?: number },
): Against | undefined {
  const converted = steps.find(({ part }) => evaluation.record(part)?.kind.family === "convert");
  const last = steps.at(-1);
  const end = last && evaluation.record(last.part)?.outputs[last.to];
  const found = end && findCarrier(end.bands, judged, judged.userBand);
  if (!converted || !found) return undefined;
  const all = dbToRatio(-judged.cnDb);
  const falling = Math.min(1, (found.band.leakShare?.[found.i] ?? 0) / all);
  const sky = Math.min(1 - falling, dbToRatio(-converted.cnDb) / all);
  return { sky, falling, behind: 1 - falling - sky };
}

/** Share of the year [%] for which rain takes more than a margin; `rows` from the most frequent rain to the rarest. */
export function shareWithout(rows: readonly RainRow[], marginDb: number): number {
  const n = rows.findIndex((row) => row.lossOfCnDb > marginDb);
  const row = rows[n];
  if (!row) return 0;
  const before = rows[n - 1];
  if (!before) return row.timePercent;
  const part = (marginDb - before.lossOfCnDb) / (row.lossOfCnDb - before.lossOfCnDb);
  return before.timePercent * (row.timePercent / before.timePercent) ** part;
}

function converterKelvin(evaluation: Evaluation, dish: PartRecord): number {
  const [end] = Object.values(dish.joined);
  const converter = end && evaluation.record(end[0]);
  const paths =
    converter?.kind.signal(converter.options, { id: converter.part.id, powered: true }).paths ?? [];
  const figure = paths.find((path) => path.noiseFigureDb !== undefined)?.noiseFigureDb;
  return figure === undefined ? 0 : noiseFigureDbToKelvin(figure);
}
