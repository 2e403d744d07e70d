/** Options of a dish: the satellite, the site, the dish itself, and the transponders on air. */

import { z } from "zod";
import { numeral } from "../words/numbers.ts";
import { choice, number, rows, text } from "./fields.ts";
import { modeChoices } from "./modeChoices.ts";
import { DEFAULT_TRANSPONDERS, ROLL_OFFS, SKY_FROM_MHZ, SKY_TO_MHZ } from "./planSatellite.ts";

/** A dish carries at most this many LNBs side by side. */
const FEED_NUMBERS = ["1", "2", "3", "4"] as const;

export const TRANSPONDER_ROW = z.object({
  frequencyMHz: number({
    label: "Frequency",
    unit: "MHz",
    min: SKY_FROM_MHZ,
    max: SKY_TO_MHZ,
    step: 0.25,
    default: 11_778,
  }),
  polarisation: choice({
    label: "Polarisation",
    choices: [
      { value: "V", label: "Vertical" },
      { value: "H", label: "Horizontal" },
      { value: "R", label: "Circular, right-hand" },
      { value: "L", label: "Circular, left-hand" },
    ],
    help: "Receivers ask for right-hand with 13 V like vertical, for left-hand with 18 V like horizontal.",
    default: "V",
  }),
  symbolRateMsps: number({
    label: "Symbol rate",
    unit: "MBd",
    min: 0.1,
    max: 60,
    step: 0.1,
    default: 27.5,
    source: "usual for a whole transponder, from memory",
  }),
  mode: choice({
    label: "Modulation",
    help: "Decides the C/N that the transponder needs.",
    choices: modeChoices("dvbs-", "dvbs2-", "dvbs2x-"),
    default: "dvbs-qpsk-3/4",
  }),
  rollOff: choice({
    label: "Roll-off",
    help: "Occupied width is symbol rate × (1 + roll-off). The widest is a safe guess.",
    choices: ROLL_OFFS.map((value) => ({ value, label: numeral(Number(value), 2, 2) })),
    default: "0.35",
    source: "EN 300 421 (DVB-S: 0.35 only), EN 302 307-2 (0.05 to 0.15), from memory",
    advanced: true,
  }),
  eirpOffsetDb: number({
    label: "EIRP offset",
    unit: "dB",
    help: "How much stronger or weaker this transponder is than the satellite’s common EIRP.",
    min: -20,
    max: 10,
    step: 0.5,
    default: 0,
  }),
  feed: choice({
    label: "Feed",
    help: "At which LNB of the dish it arrives; beside the focus only where there are further feeds.",
    choices: FEED_NUMBERS.map((value) => ({ value, label: value === "1" ? "1 (focus)" : value })),
    default: "1",
    advanced: true,
  }),
});

const NEIGHBOUR_ROW = z.object({
  separationDeg: number({
    label: "Away",
    unit: "°",
    help: "From the dish’s own satellite along the orbit, east positive.",
    min: -30,
    max: 30,
    step: 0.1,
    default: 3,
  }),
  eirpDifferenceDb: number({
    label: "EIRP difference",
    unit: "dB",
    help: "How much stronger it is at your site on the same frequencies; negative: weaker, or there on few of them.",
    min: -40,
    max: 20,
    step: 1,
    default: -8,
  }),
});

const OBSTACLE_ROW = z.object({
  fromDeg: number({ label: "From azimuth", unit: "°", min: 0, max: 360, step: 1, default: 150 }),
  toDeg: number({ label: "To azimuth", unit: "°", min: 0, max: 360, step: 1, default: 180 }),
  elevationDeg: number({
    label: "Top",
    unit: "°",
    help: "How high it stands above the horizon, seen from the dish.",
    min: 0,
    max: 90,
    step: 1,
    default: 20,
  }),
  distanceM: number({
    label: "Distance",
    unit: "m",
    min: 1,
    max: 2000,
    step: 1,
    default: 20,
    source: "usual for a roof edge or a tree, from memory",
    advanced: true,
  }),
});

export const SIDE_FEED_ROW = z.object({
  orbitalPositionDegE: number({
    label: "Orbital position",
    unit: "°E",
    min: -180,
    max: 180,
    step: 0.1,
    default: 24,
  }),
  satelliteName: text({ label: "Name", maxLength: 24, default: "" }),
  eirpDbw: number({ label: "EIRP", unit: "dBW", min: 30, max: 65, step: 0.5, default: 51 }),
  spacingMm: number({
    label: "From the first LNB",
    unit: "mm",
    help: "From middle to middle. 0: where its satellite needs it. A monoblock’s is fixed: one for 6° on 80 cm has about 70 mm.",
    min: 0,
    max: 600,
    step: 1,
    default: 0,
  }),
});

/** What differs from one band of the sky to another: `usual` is the value that a new dish has. */
type Usual = { readonly usual: number; readonly source: string };

/** Fields of a dish whose usual values and limits follow from the band of the sky. */
export const DISH_FIELDS = {
  diameter: ({
    usual,
    source,
    most,
    soldM,
  }: Usual & { readonly most: number; readonly soldM: readonly number[] }) =>
    number({
      label: "Diameter",
      unit: "m",
      help: "Of an offset dish: the width, its shorter axis.",
      min: 0.3,
      max: most,
      step: 0.05,
      default: usual,
      source,
      means: "diameter",
      sold: { values: [...soldM], source: "usual diameters, from memory" },
    }),
  eirp: ({ usual, source, range }: Usual & { readonly range: readonly [least: number, most: number] }) =>
    number({
      label: "EIRP",
      unit: "dBW",
      help: "Of one transponder towards your site, from the satellite’s footprint map.",
      min: range[0],
      max: range[1],
      step: 0.5,
      default: usual,
      source,
      onSite: "not ours",
      spreadDb: 1,
    }),
  offsetAngle: ({ usual, source }: Usual) =>
    number({
      label: "Offset angle",
      unit: "°",
      help: "How much steeper an offset dish looks than it stands; 0 for a centre-fed one. For the alignment only.",
      min: 0,
      max: 35,
      step: 0.5,
      default: usual,
      source,
      advanced: true,
    }),
  clearSkyLoss: ({ usual, source }: Usual) =>
    number({
      label: "Clear-sky loss",
      unit: "dB",
      help: "Air and cloud without rain.",
      min: 0,
      max: 5,
      step: 0.1,
      default: usual,
      source,
      onSite: "not ours",
      spreadDb: 0.1,
      advanced: true,
    }),
  antennaTemperature: ({ usual, source }: Usual) =>
    number({
      label: "Antenna temperature",
      unit: "K",
      help: "Noise that the dish picks up from sky and ground under a clear sky.",
      min: 5,
      max: 290,
      step: 1,
      default: usual,
      source,
      onSite: "not ours",
      advanced: true,
    }),
  neighbours: (help: string) =>
    rows({
      label: "Neighbouring satellites",
      help,
      row: NEIGHBOUR_ROW,
      maxRows: 8,
      default: [
        { separationDeg: -3, eirpDifferenceDb: -8 },
        { separationDeg: 3, eirpDifferenceDb: -8 },
      ],
      source: "invented: a satellite 3° to either side that shares a part of the frequencies",
      means: "neighbouring satellites",
      onSite: "not ours",
      advanced: true,
    }),
  /** How deep it is: from the LNB to the middle, in diameters. */
  focalRatio: ({ usual, source }: Usual) =>
    number({
      label: "From LNB to dish, in diameters",
      help: "From the LNB to the middle of the dish, divided by the diameter: both by tape measure. Decides where further LNBs belong.",
      min: 0.3,
      max: 2,
      step: 0.01,
      default: usual,
      source,
      advanced: true,
    }),
};

export const DISH_OPTIONS = z.object({
  diameterM: DISH_FIELDS.diameter({
    usual: 0.6,
    most: 5,
    soldM: [0.6, 0.8, 1, 1.2, 1.8],
    source: "usual for a house, from memory",
  }),
  orbitalPositionDegE: number({
    label: "Orbital position",
    unit: "°E",
    help: "Longitude of the satellite; west is negative.",
    min: -180,
    max: 180,
    step: 0.1,
    default: 20,
    source: "invented",
    onSite: "aligning",
  }),
  satelliteName: text({
    label: "Name of the satellite",
    help: "Shown on strips and in tables; its orbital position if left empty.",
    maxLength: 24,
    default: "",
    onSite: "not ours",
  }),
  eirpDbw: DISH_FIELDS.eirp({
    usual: 51,
    range: [30, 65],
    source: "typical for a European beam (50 to 54), from memory",
  }),
  siteLatitudeDeg: number({
    label: "Latitude of the site",
    unit: "°N",
    help: "South is negative.",
    min: -85,
    max: 85,
    step: 0.1,
    default: 50,
    source: "invented",
    onSite: "not ours",
  }),
  siteLongitudeDeg: number({
    label: "Longitude of the site",
    unit: "°E",
    help: "West is negative.",
    min: -180,
    max: 180,
    step: 0.1,
    default: 10,
    source: "invented",
    onSite: "not ours",
  }),
  pointingLossDb: number({
    label: "Pointing loss",
    unit: "dB",
    help: "What a not quite perfect alignment costs.",
    min: 0,
    max: 20,
    step: 0.1,
    default: 0.5,
    source: "common planning value, from memory",
    means: "pointing loss",
    onSite: "aligning",
    soundValue: 0.5,
    defectAbove: 1,
    spreadDb: 0.3,
  }),
  rainLossDb: number({
    label: "Rain loss now",
    unit: "dB",
    help: "0 under a clear sky. Of the transponder hit hardest; the others lose less, by frequency, polarisation and elevation.",
    source: "shares by ITU-R P.618-13 and P.838-3",
    min: 0,
    max: 30,
    step: 0.5,
    default: 0,
    means: "rain loss",
    onSite: "not ours",
  }),
  rainRateMmPerH: number({
    label: "Rain rate of the site",
    unit: "mm/h",
    help: `Exceeded for ${numeral(0.01, 2)} % of a year (53 minutes). Gives the rain margin; it does not change the level now.`,
    min: 0,
    max: 150,
    step: 1,
    default: 30,
    source: "26 to 34 mm/h at 42 to 52° latitude: ITU-R validation sites of P.837-7",
    onSite: "not ours",
    advanced: true,
  }),
  rainHeightKm: number({
    label: "Rain height",
    unit: "km",
    help: "Above sea level; below it, it rains.",
    min: 0.1,
    max: 6,
    step: 0.1,
    default: 2.5,
    source: "2.45 km at 51.5° latitude, 3.05 km at 41.9°: ITU-R validation sites of P.839-4",
    onSite: "not ours",
    advanced: true,
  }),
  efficiency: number({
    label: "Efficiency",
    help: "Share of the dish’s area that works.",
    min: 0.3,
    max: 0.85,
    step: 0.01,
    default: 0.65,
    source: "typical of offset dishes (0.60 to 0.75), from memory",
    advanced: true,
  }),
  offsetAngleDeg: DISH_FIELDS.offsetAngle({
    usual: 25,
    source: "typical (20 to 28), from memory; see the maker’s sheet",
  }),
  clearSkyLossDb: DISH_FIELDS.clearSkyLoss({ usual: 0.3, source: "textbook link budgets at 12 GHz" }),
  antennaKelvin: DISH_FIELDS.antennaTemperature({
    usual: 35,
    source: "typical above 20° elevation, from memory",
  }),
  siteHeightM: number({
    label: "Height of the site",
    unit: "m",
    help: "Above sea level.",
    min: 0,
    max: 5000,
    step: 10,
    default: 100,
    onSite: "not ours",
    advanced: true,
  }),
  satelliteTiltDeg: number({
    label: "Turn of the satellite’s polarisation",
    unit: "°",
    help: "By which its own polarisation planes are turned in orbit; counts in the skew of the LNB. See the operator’s page.",
    min: -45,
    max: 45,
    step: 0.5,
    default: 0,
    source: `0 for most; one European fleet has 7°, some satellites ${numeral(3.5)}°: pages of installers`,
    onSite: "not ours",
    advanced: true,
  }),
  offAxisPattern: choice({
    label: "Pattern beside the axis",
    help: "Decides how much is heard of neighbouring satellites.",
    choices: [
      { value: "home", label: "Home dish (ITU-R BO.1213)" },
      { value: "station", label: "Earth station (ITU-R S.465)" },
    ],
    default: "home",
    advanced: true,
  }),
  neighbours: DISH_FIELDS.neighbours("They disturb the more, the smaller the dish is."),
  obstacles: rows({
    label: "Obstacles",
    help: "Roof edges, houses or trees as seen from the dish. Leaves and wet branches count as a wall.",
    row: OBSTACLE_ROW,
    maxRows: 16,
    default: [],
    means: "obstacles",
    onSite: "not ours",
  }),
  sideFeeds: rows({
    label: "Further feeds",
    help: "LNBs beside the focus, each for another satellite. Their transponders have the number of the feed; without any, the plan of the first is taken.",
    row: SIDE_FEED_ROW,
    maxRows: FEED_NUMBERS.length - 1,
    default: [],
    means: "further feeds",
    onSite: "aligning",
    advanced: true,
  }),
  focalRatio: DISH_FIELDS.focalRatio({
    usual: 0.7,
    source: `offset dishes with a focal length of ${numeral(0.6)} diameters, from memory`,
  }),
  transponders: rows({
    label: "Transponders",
    help: "The satellite’s plan.",
    row: TRANSPONDER_ROW,
    maxRows: 250,
    default: DEFAULT_TRANSPONDERS,
    source: "invented regular plan of 80 transponders",
    onSite: "not ours",
  }),
});

export type DishOptions = z.output<typeof DISH_OPTIONS>;
