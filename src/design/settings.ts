/** What a design is reckoned and judged by, beside its parts: limits, the distance kept from them, amplifiers. */

import { z } from "zod";
import { choice, number, rows, text, toggle } from "../parts/fields.ts";
import { numeral } from "../words/numbers.ts";

const OWN_ROW = z.object({
  service: choice({
    label: "Service",
    choices: [
      { value: "tv", label: "TV" },
      { value: "dab", label: "DAB" },
      { value: "fm", label: "FM" },
      { value: "satellite", label: "Satellite" },
    ],
    default: "tv",
  }),
  minDbuv: number({ label: "Min", unit: "dBµV", min: 0, max: 120, default: 47 }),
  maxDbuv: number({ label: "Max", unit: "dBµV", min: 0, max: 120, default: 74 }),
  cnDb: number({
    label: "Min C/N",
    unit: "dB",
    help: "0: what the modulation needs, and the reserve.",
    min: 0,
    max: 60,
    default: 0,
  }),
  merDb: number({
    label: "Min MER",
    unit: "dB",
    help: "0: not judged. C/N then counts interference too.",
    min: 0,
    max: 60,
    default: 0,
  }),
  differenceDb: number({
    label: "Max difference",
    unit: "dB",
    help: "Between any two carriers of the service. 0: not judged.",
    min: 0,
    max: 40,
    default: 0,
  }),
});

const ISOLATION_ROW = z.object({
  fromMHz: number({ label: "From", unit: "MHz", min: 5, max: 2400, default: 47 }),
  toMHz: number({ label: "To", unit: "MHz", min: 5, max: 2400, default: 862 }),
  db: number({ label: "At least", unit: "dB", min: 0, max: 80, default: 40 }),
});

export const SETTINGS = z.object({
  limits: choice({
    label: "Limits at outlets",
    help: "Which levels, differences, C/N and isolation the findings hold the design to.",
    choices: [
      { value: "en60728", label: "EN 60728-1, as quoted" },
      { value: "rd346", label: "Royal Decree 346/2011, Annex I" },
      { value: "practice", label: "Good practice (UK), as quoted" },
      { value: "germany", label: "Germany: EN 60728-1 with the trade’s isolation" },
      { value: "switzerland", label: "Switzerland: EN 60728-1 with the guideline’s isolation" },
      { value: "italy", label: "Italy: CEI 100-7, as quoted" },
      { value: "own", label: "My own limits" },
    ],
    default: "en60728",
  }),
  ownLimits: rows({
    label: "My own limits",
    help: "A service without a row is not judged.",
    row: OWN_ROW,
    maxRows: 12,
    default: [
      { service: "tv", minDbuv: 47, maxDbuv: 70, cnDb: 25 },
      { service: "dab", minDbuv: 35, maxDbuv: 70, cnDb: 18 },
      { service: "fm", minDbuv: 50, maxDbuv: 70, cnDb: 38 },
      { service: "satellite", minDbuv: 50, maxDbuv: 77, cnDb: 12 },
    ],
  }),
  ownName: text({
    label: "Name of my own limits",
    help: "Empty: “My own limits”.",
    maxLength: 60,
    default: "",
  }),
  ownSource: text({
    label: "Where my own limits come from",
    help: "A contract, a local code, an operator’s sheet, with its date. Findings name it as their source.",
    maxLength: 160,
    default: "",
  }),
  ownIsolation: rows({
    label: "My own isolation between flats",
    help: "A range without a row is not judged.",
    row: ISOLATION_ROW,
    maxRows: 12,
    default: [
      { fromMHz: 47, toMHz: 300, db: 38 },
      { fromMHz: 300, toMHz: 862, db: 30 },
      { fromMHz: 950, toMHz: 2150, db: 20 },
    ],
    source: "Spanish Royal Decree 346/2011, Annex I 4.4",
  }),
  ownReserveDb: number({
    label: "My own reserve",
    unit: "dB",
    help: "Least C/N above what a modulation needs.",
    min: 0,
    max: 20,
    step: 0.5,
    default: 3,
    source: "a usual reserve in link budgets, from memory",
  }),
  keepDb: number({
    label: "Distance from every limit",
    unit: "dB",
    help: "Levels, C/N, MER, differences, slope and isolation are held to their limits with so much to spare. A receiver with less works on a knife’s edge.",
    min: 0,
    max: 20,
    step: 0.5,
    default: 0,
  }),
  judgeRain: toggle({
    label: "Also judged in rain",
    help: "One of the conditions beside the design as it is drawn.",
    default: true,
  }),
  rainPercent: number({
    label: "Rain that must be stood",
    unit: "%",
    help: `Exceeded for this share of the time: ${numeral(0.1, 1)} % of a year are nine hours.`,
    min: 0.001,
    max: 5,
    step: 0.1,
    default: 0.1,
    source: "usual planning value for reception at home, from memory",
  }),
  rainOf: choice({
    label: "Share of",
    choices: [
      { value: "year", label: "an average year" },
      { value: "worst month", label: "the worst month" },
    ],
    default: "year",
    source: "worst month by ITU-R P.841-4, from memory",
  }),
  judgeLift: toggle({
    label: "Also judged in a tropospheric lift",
    help: "Warm air over cold carries distant transmitters further, for hours or days.",
    default: true,
  }),
  liftRiseDb: number({
    label: "Distant transmitters rise by",
    unit: "dB",
    min: 0,
    max: 60,
    step: 1,
    default: 15,
    source: "1 % against 50 % of the time at about 100 km, ITU-R P.1546, order of magnitude, from memory",
  }),
  liftFadeDb: number({
    label: "Wanted transmitters fade by",
    unit: "dB",
    min: 0,
    max: 30,
    step: 1,
    default: 3,
    source: "common practice, no source",
  }),
  judgeMasts: toggle({
    label: "Also judged with phone masts on and off",
    help: "Where a part of the design lets them in.",
    default: true,
  }),
  judgeReceivers: toggle({
    label: "Also judged with all receivers on and each one alone",
    help: "Receivers share supply and commands; some work only beside others, some only alone.",
    default: true,
  }),
  derating: choice({
    label: "Derating for many carriers",
    help: "How much less each carrier may have at an amplifier’s output than the two of its rating.",
    choices: [
      { value: "usual", label: `usual: ${numeral(7.5)}·log10(n − 1) for TV, 10·log10(n/2) for satellite` },
      { value: "beats", label: `${numeral(7.5)}·log10(n − 1) everywhere` },
      { value: "channels", label: "10·log10(n − 1) everywhere" },
      { value: "power", label: "10·log10(n/2) everywhere" },
    ],
    default: "usual",
    source:
      "all three rules are in use; the first and the last from trade appendices, the other without a source",
  }),
  cascade: choice({
    label: "Cascaded amplifiers",
    help: "How third-order products of amplifiers behind each other add on one path.",
    choices: [
      { value: "in step", label: "in step: 6 dB of C/I for each doubling" },
      { value: "by power", label: "by power: 3 dB of C/I for each doubling" },
    ],
    default: "in step",
    source:
      "CATV formulas, 20·log10(n) for n equal stages: the worst case, and right for amplifiers alike; some plan with 10·log10(n)",
  }),
  mastBand: choice({
    label: "Phone mast near by",
    help: "Its field gets in wherever cable, outlet or joint is poorly screened.",
    choices: [
      { value: "none", label: "None" },
      { value: "700", label: "In the 700 MHz band" },
      { value: "800", label: "In the 800 MHz band" },
      { value: "1800", label: "In the 1800 MHz band" },
    ],
    default: "none",
  }),
  mastFieldFrom: choice({
    label: "Field of the mast",
    choices: [
      { value: "distance", label: "From distance and power" },
      { value: "measured", label: "As measured or stated" },
    ],
    default: "distance",
  }),
  mastDistanceM: number({
    label: "Distance of the mast",
    unit: "m",
    min: 5,
    max: 5000,
    step: 5,
    default: 100,
  }),
  mastEirpDbm: number({
    label: "Power of the mast",
    unit: "dBm EIRP",
    min: 20,
    max: 75,
    step: 1,
    default: 61,
    source: "an ordinary sector of a phone mast, from memory",
  }),
  mastDbuvPerM: number({
    label: "Field of the mast at the building",
    unit: "dBµV/m",
    min: 60,
    max: 150,
    step: 1,
    default: 120,
    source: "assumed field of a trade note for screening against digital services",
  }),
  cordlessDistanceM: number({
    label: "Cordless phone at",
    unit: "m",
    help: "Distance of the nearest cordless phone (DECT) from cables and outlets; 0: none.",
    min: 0,
    max: 50,
    step: 0.5,
    default: 0,
    source: "24 dBm EIRP, EN 300 175-2, from memory",
  }),
});

export type Settings = Readonly<z.output<typeof SETTINGS>>;

export const USUAL_SETTINGS: Settings = SETTINGS.parse({});

/** Settings of a design; the usual ones where it names none. */
export function settingsOf(design: { readonly settings?: Settings }): Settings {
  return design.settings ?? USUAL_SETTINGS;
}
