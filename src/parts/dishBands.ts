/** Dishes for C band and Ka band: the options of the usual dish with what is typical there, and who has which. */
import { numeral } from "../words/numbers.ts";
import type { AnyOptions, OptionsSchema } from "./contract.ts";
import {
  DISH_FIELDS,
  DISH_OPTIONS,
  type DishOptions,
  SIDE_FEED_ROW,
  TRANSPONDER_ROW,
} from "./dishOptions.ts";
import { number, rows } from "./fields.ts";
import {
  DEFAULT_C_TRANSPONDERS,
  DEFAULT_KA_TRANSPONDERS,
  SATELLITE_BANDS,
  type SatelliteBand,
} from "./planSatellite.ts";

type Typical = {
  readonly band: SatelliteBand;
  readonly frequencyMHz: number;
  readonly diameterM: number;
  readonly soldM: readonly number[];
  readonly eirpDbw: number;
  readonly eirpSource: string;
  readonly clearSkyLossDb: number;
  readonly clearSkySource: string;
  readonly antennaKelvin: number;
  readonly antennaSource: string;
  readonly offsetAngleDeg: number;
  readonly transponders: typeof DEFAULT_C_TRANSPONDERS;
  readonly planSource: string;
};

function optionsFor(t: Typical) {
  const { fromMHz, toMHz } = SATELLITE_BANDS[t.band];
  const row = TRANSPONDER_ROW.extend({
    frequencyMHz: number({
      label: "Frequency",
      unit: "MHz",
      min: fromMHz,
      max: toMHz,
      step: 0.25,
      default: t.frequencyMHz,
    }),
  });
  return DISH_OPTIONS.extend({
    diameterM: DISH_FIELDS.diameter({
      usual: t.diameterM,
      most: 7.5,
      soldM: t.soldM,
      source: "usual in this band, from memory",
    }),
    eirpDbw: DISH_FIELDS.eirp({ usual: t.eirpDbw, range: [20, 70], source: t.eirpSource }),
    offsetAngleDeg: DISH_FIELDS.offsetAngle({
      usual: t.offsetAngleDeg,
      source: "as such dishes are usually built, from memory; see the maker’s sheet",
    }),
    clearSkyLossDb: DISH_FIELDS.clearSkyLoss({ usual: t.clearSkyLossDb, source: t.clearSkySource }),
    antennaKelvin: DISH_FIELDS.antennaTemperature({ usual: t.antennaKelvin, source: t.antennaSource }),
    neighbours: DISH_FIELDS.neighbours(
      "They disturb the more, the smaller the dish is: at 4 GHz its beam is three times as wide as at 12 GHz.",
    ),
    sideFeeds: rows({
      label: "Further feeds",
      help: "LNBs beside the focus, each for another satellite. Their transponders have the number of the feed; without any, the plan of the first is taken.",
      row: SIDE_FEED_ROW.extend({
        eirpDbw: number({ label: "EIRP", unit: "dBW", min: 20, max: 70, step: 0.5, default: t.eirpDbw }),
      }),
      maxRows: 3,
      default: [],
      means: "further feeds",
      onSite: "aligning",
      advanced: true,
    }),
    focalRatio: DISH_FIELDS.focalRatio({
      usual: t.offsetAngleDeg === 0 ? 0.38 : 0.7,
      source:
        t.offsetAngleDeg === 0
          ? `centre-fed dishes ${numeral(0.35)} to ${numeral(0.42)}, from memory`
          : `offset dishes with a focal length of ${numeral(0.6)} diameters, from memory`,
    }),
    transponders: rows({
      label: "Transponders",
      help: "The satellite’s plan.",
      row,
      maxRows: 250,
      default: t.transponders,
      source: t.planSource,
      onSite: "not ours",
    }),
  });
}

/** Large and often centre-fed: the beam is wide, the satellites are weak, rain hardly counts. */
export const C_DISH_OPTIONS = optionsFor({
  band: "C",
  frequencyMHz: 3_720,
  diameterM: 1.8,
  soldM: [1.2, 1.5, 1.8, 2.4, 3, 3.7],
  eirpDbw: 38,
  eirpSource: "typical for a regional beam (35 to 42), from memory",
  clearSkyLossDb: 0.1,
  clearSkySource: "order of magnitude at 4 GHz, from memory",
  antennaKelvin: 35,
  antennaSource: "mostly from the ground; typical above 20° elevation, from memory",
  offsetAngleDeg: 0,
  transponders: DEFAULT_C_TRANSPONDERS,
  planSource: "invented: 24 transponders, in the regular order of many satellites",
});

/** Small and strong, and every shower counts: air and rain glow as well. */
export const KA_DISH_OPTIONS = optionsFor({
  band: "Ka",
  frequencyMHz: 19_725,
  diameterM: 0.75,
  soldM: [0.6, 0.75, 0.9, 1, 1.2, 1.8],
  eirpDbw: 52,
  eirpSource: "order of magnitude of a regional beam; spot beams reach 60, from memory",
  clearSkyLossDb: 0.7,
  clearSkySource: `water vapour and cloud at 20 GHz, ${numeral(0.5)} to 1 dB above 25° elevation, from memory`,
  antennaKelvin: 65,
  antennaSource: `${numeral(0.7)} dB of air glow with 41 K, the rest comes from the ground; from memory`,
  offsetAngleDeg: 25,
  transponders: DEFAULT_KA_TRANSPONDERS,
  planSource: "invented regular plan of 24 transponders",
});

const DISHES = [DISH_OPTIONS, C_DISH_OPTIONS, KA_DISH_OPTIONS] as const;
const checked = new WeakMap<AnyOptions, DishOptions>();

/** Options of a dish of any band, checked once; undefined for any other kind of part. */
export function dishOptionsOf({
  kind,
  options,
}: {
  readonly kind: { readonly options: OptionsSchema };
  readonly options: AnyOptions;
}): DishOptions | undefined {
  const known = checked.get(options);
  if (known) return known;
  const schema = DISHES.find((each) => each === kind.options);
  if (!schema) return undefined;
  const own = schema.parse(options);
  checked.set(options, own);
  return own;
}
