/** Runs of coaxial cable, grade by grade. */

import { z } from "zod";
import { resistanceGrowth } from "../rf/coax.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { badJoint } from "./badJoint.ts";
import { define, type PartKind } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { LINE_FITTING } from "./lineFitting.ts";
import { INLINE, LINE_POWER, returnLoss, THROUGH_PORTS, throughPath } from "./passive.ts";
import { cableScreening, cableScreeningDb, ingress } from "./screening.ts";

export type Grade = {
  readonly conductor: "copper" | "clad steel";
  /** Words of the trade: conductor and dielectric, never a brand. */
  readonly name: string;
  readonly short: string;
  /** Conductor term [dB/100 m per √MHz] and dielectric term [dB/100 m per MHz] at 20 °C. */
  readonly k1: number;
  readonly k2: number;
  /** Direct current resistance of inner conductor and screen together [Ω/km]. */
  readonly loopOhmPerKm: number;
  /** How fast a wave runs in it, as a share of the speed of light. */
  readonly velocityFactor: number;
};

/** A diameter as the trade writes it: "0.8 mm", "1.0 mm", "1.25 mm". */
const mm = (diameter: number): string => `${numeral(diameter, 2, 1)} mm`;

/**
 * Generic grades. Copper foam classes: skin effect in inner and outer conductor and a foam of tan δ 1.5·10⁻⁴,
 * computed; data sheets of these classes agree (from memory). Copper-clad steel, trunk and old cable: constants
 * of a public coax calculator. Loop resistance: inner conductor by its diameter (copper 0.01724 Ω·mm²/m, clad
 * steel 21 % of that conductivity) and a typical screen, from memory. Velocity factors: foam 0.82 to 0.85, solid
 * polyethylene 0.66, of the same calculator.
 */
export const GRADES = {
  "copper-0.8": {
    conductor: "copper",
    name: `${mm(0.8)} copper, foam`,
    short: `${mm(0.8)} copper`,
    k1: 0.731,
    k2: 0.00167,
    loopOhmPerKm: 52,
    velocityFactor: 0.82,
  },
  "copper-1.0": {
    conductor: "copper",
    name: `${mm(1)} copper, foam`,
    short: `${mm(1)} copper`,
    k1: 0.585,
    k2: 0.00167,
    loopOhmPerKm: 36,
    velocityFactor: 0.82,
  },
  "copper-1.25": {
    conductor: "copper",
    name: `${mm(1.25)} copper, foam`,
    short: `${mm(1.25)} copper`,
    k1: 0.488,
    k2: 0.00165,
    loopOhmPerKm: 26,
    velocityFactor: 0.82,
  },
  "copper-1.65": {
    conductor: "copper",
    name: `${mm(1.65)} copper, foam`,
    short: `${mm(1.65)} copper`,
    k1: 0.366,
    k2: 0.00165,
    loopOhmPerKm: 17,
    velocityFactor: 0.82,
  },
  "trunk-10": {
    conductor: "copper",
    name: "10 mm trunk, copper, low loss",
    short: "10 mm trunk",
    k1: 0.3705,
    k2: 0.00123,
    loopOhmPerKm: 14,
    velocityFactor: 0.85,
  },
  "clad-1.0": {
    conductor: "clad steel",
    name: `${mm(1)} copper-clad steel, foam`,
    short: `${mm(1)} copper-clad steel`,
    k1: 0.645,
    k2: 0.00062,
    loopOhmPerKm: 130,
    velocityFactor: 0.83,
  },
  "clad-0.8": {
    conductor: "clad steel",
    name: `${mm(0.8)} copper-clad steel, foam`,
    short: `${mm(0.8)} copper-clad steel`,
    k1: 0.735,
    k2: 0.0017,
    loopOhmPerKm: 188,
    velocityFactor: 0.83,
  },
  "old-solid": {
    conductor: "copper",
    name: `Old cable, ${mm(0.6)} copper, solid polyethylene`,
    short: "old solid cable",
    k1: 1.0496,
    k2: 0.00575,
    loopOhmPerKm: 75,
    velocityFactor: 0.66,
  },
} as const satisfies Record<string, Grade>;

export type GradeKey = keyof typeof GRADES;

/** Grades that new runs in a house are pulled in, the cheapest first. */
export const NEW_RUN_GRADES = [
  "copper-1.0",
  "copper-1.25",
  "copper-1.65",
] as const satisfies readonly GradeKey[];

const cable = define({
  kind: "cable",
  family: "run",
  name: "Cable",
  summary: "A length of coaxial cable: it costs level, more at the top, and volts.",
  keywords: ["coax", "coaxial", "drop", "trunk", "run", "copper-clad steel", "RG-6", "RG-59", "RG-11"],
  prefix: "cable",
  trade: {
    job: "cable",
    price: 0.5,
    workMinutes: 60,
    soldBy: "metre",
    inItsPlace: "another of its kind",
  },
  options: z.object({
    lengthM: number({
      label: "Length",
      unit: "m",
      min: 0.1,
      max: 500,
      step: 0.5,
      default: 20,
      means: "length",
    }),
    grade: choice({
      label: "Grade",
      choices: [
        { value: "copper-0.8", label: GRADES["copper-0.8"].name },
        { value: "copper-1.0", label: GRADES["copper-1.0"].name },
        { value: "copper-1.25", label: GRADES["copper-1.25"].name },
        { value: "copper-1.65", label: GRADES["copper-1.65"].name },
        { value: "trunk-10", label: GRADES["trunk-10"].name },
        { value: "clad-1.0", label: GRADES["clad-1.0"].name },
        { value: "clad-0.8", label: GRADES["clad-0.8"].name },
        { value: "old-solid", label: GRADES["old-solid"].name },
        { value: "own", label: "From the data sheet" },
      ],
      default: "copper-1.0",
      help: "Copper-clad steel loses no more signal, but four to five times the volts.",
      source: "calculated from conductor and foam; data sheets agree, from memory",
      means: "grade",
      sold: {
        values: NEW_RUN_GRADES,
        source: "grades of new runs in a house, the cheapest first; from memory",
      },
      soundValue: "copper-1.0",
      defectValues: ["clad-1.0", "clad-0.8", "old-solid"],
      spreadShare: 0.05,
    }),
    temperatureC: number({
      label: "Temperature",
      unit: "°C",
      help: `For each degree the loss of the conductor grows by ${numeral(0.2)} %, its resistance by ${numeral(0.4)} %.`,
      min: -40,
      max: 80,
      default: 20,
      source: "attenuation and resistance are stated at 20 °C",
      advanced: true,
      onSite: "not ours",
    }),
    screening: cableScreening(),
    k1: number({
      label: "Data sheet: conductor term",
      unit: "dB/100 m/√MHz",
      help: "Used with “From the data sheet”: loss per 100 m = k1·√f + k2·f.",
      min: 0,
      max: 5,
      step: 0.001,
      default: GRADES["copper-1.0"].k1,
      advanced: true,
      onlyWhen: { grade: "own" },
      soundValue: GRADES["copper-1.0"].k1,
      defectAbove: GRADES["copper-0.8"].k1,
    }),
    k2: number({
      label: "Data sheet: dielectric term",
      unit: "dB/100 m/MHz",
      min: 0,
      max: 0.1,
      step: 0.0001,
      default: GRADES["copper-1.0"].k2,
      advanced: true,
      onlyWhen: { grade: "own" },
      soundValue: GRADES["copper-1.0"].k2,
      defectAbove: 0.0025,
    }),
    loopOhmPerKm: number({
      label: "Data sheet: loop resistance",
      unit: "Ω/km",
      min: 0,
      max: 1000,
      default: GRADES["copper-1.0"].loopOhmPerKm,
      advanced: true,
      onlyWhen: { grade: "own" },
      soundValue: GRADES["copper-1.0"].loopOhmPerKm,
      defectAbove: 80,
    }),
    velocityFactor: number({
      label: "Data sheet: velocity factor",
      help: `Speed of the wave as a share of that of light: foam about ${numeral(0.83, 2)}, solid polyethylene ${numeral(0.66, 2)}.`,
      min: 0.5,
      max: 1,
      step: 0.01,
      default: GRADES["copper-1.0"].velocityFactor,
      advanced: true,
      onlyWhen: { grade: "own" },
    }),
    returnLossDb: returnLoss(22),
  }),
  symbol: "cable",
  caption: (o) => `${numeralAsSet(o.lengthM)} m · ${o.grade === "own" ? "own grade" : GRADES[o.grade].short}`,
  onWire: (o) => `${numeralAsSet(o.lengthM)} m`,
  ports: () => THROUGH_PORTS,
  signal: (o, context) => {
    const { k1, k2, velocityFactor } = o.grade === "own" ? o : GRADES[o.grade];
    const { lengthM, temperatureC, returnLossDb } = o;
    return {
      paths: throughPath({ type: "cable", k1, k2, lengthM, temperatureC }),
      returnLossDb,
      electricalM: lengthM / velocityFactor,
      ...ingress(context, (f) => cableScreeningDb(o.screening, f), [{ port: "out" }]),
    };
  },
  power: (o) => {
    const { loopOhmPerKm } = o.grade === "own" ? o : GRADES[o.grade];
    return {
      paths: [
        { ...LINE_POWER, ohms: ((loopOhmPerKm * o.lengthM) / 1000) * resistanceGrowth(o.temperatureC) },
      ],
    };
  },
  inline: INLINE,
});

export const CABLES: readonly PartKind[] = [cable, badJoint, LINE_FITTING];
