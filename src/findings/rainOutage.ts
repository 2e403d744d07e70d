/** How long in a year rain takes the picture, by what a receiver has to spare. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { DISH_OPTIONS, type DishOptions } from "../parts/dishOptions.ts";
import { feedKelvin } from "../parts/linkBudget.ts";
import { type RainRow, rainTable } from "../parts/rainMargin.ts";
import { noiseFigureDbToKelvin } from "../rf/noise.ts";
import type { Polarisation } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";

/** Minutes of a mean year of 365.25 days. */
const MINUTES_A_YEAR = 525_960;

const checked = new WeakMap<object, DishOptions>();
const tables = new WeakMap<DishOptions, Map<string, readonly RainRow[]>>();

/**
 * Minutes of an average year for which a carrier's margin under a clear sky is too small; undefined for a source
 * that is no dish. Between the shares looked at the loss is taken to grow with the logarithm of the share.
 */
export function rainMinutes(
  evaluation: Evaluation,
  dish: PartRecord,
  carrier: { readonly airMHz: number; readonly polarisation: Polarisation; readonly marginDb: number },
): number | undefined {
  if (dish.kind.options !== DISH_OPTIONS) return undefined;
  const o = remembered(checked, dish.options, () => DISH_OPTIONS.parse(dish.options));
  const byCarrier = remembered(tables, o, () => new Map<string, readonly RainRow[]>());
  const systemKelvin = feedKelvin({ ...o, rainLossDb: 0 }) + converterKelvin(evaluation, dish);
  const key = `${carrier.airMHz} ${carrier.polarisation} ${systemKelvin}`;
  const rows = remembered(byCarrier, key, () =>
    rainTable(o, { frequencyMHz: carrier.airMHz, polarisation: carrier.polarisation, systemKelvin }),
  );
  return (shareWithout(rows, carrier.marginDb + o.rainLossDb) / 100) * MINUTES_A_YEAR;
}

/** Share of the year [%] for which rain takes more than a margin; `rows` from the most frequent rain to the rarest. */
export function shareWithout(rows: readonly RainRow[], marginDb: number): number {
  let before: RainRow | undefined;
  for (const row of rows) {
    if (row.lossOfCnDb > marginDb) {
      if (!before) return row.timePercent;
      before = row;
      continue;
    }
    if (!before) return 0;
    const part = (marginDb - before.lossOfCnDb) / (row.lossOfCnDb - before.lossOfCnDb);
    return before.timePercent * (row.timePercent / before.timePercent) ** part;
  }
  return before?.timePercent ?? 0;
}

function converterKelvin(evaluation: Evaluation, dish: PartRecord): number {
  const [end] = Object.values(dish.joined);
  const converter = end && evaluation.record(end[0]);
  const paths =
    converter?.kind.signal(converter.options, { id: converter.part.id, powered: true }).paths ?? [];
  const figure = paths.find((path) => path.noiseFigureDb !== undefined)?.noiseFigureDb;
  return figure === undefined ? 0 : noiseFigureDbToKelvin(figure);
}
