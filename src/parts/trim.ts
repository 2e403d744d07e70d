/** Small parts that adjust a line: less level, less slope, another supply, no supply, a proper end. */

import { z } from "zod";
import { curve, type Response, series } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { define, type PartKind, type PowerPath } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import {
  between,
  coaxIn,
  coaxOut,
  dB,
  dcPass,
  INLINE,
  insertionLoss,
  LINE_POWER,
  MAINS_ON,
  MEMORY,
  plainLoss,
  THROUGH_PORTS,
  throughPath,
} from "./passive.ts";

const linePower = (o: { readonly dcPass: boolean }) => (o.dcPass ? { paths: [LINE_POWER] } : {});

const attenuator = define({
  kind: "attenuator",
  family: "lift",
  name: "Attenuator",
  summary: "Takes the same level off everything.",
  keywords: ["pad", "too strong", "overload"],
  prefix: "pad",
  trade: { job: "pad", price: 4, workMinutes: 10, inItsPlace: "coupler" },
  options: z.object({
    lossDb: number({
      label: "Attenuation",
      unit: "dB",
      help: "Fixed attenuators come in 3, 6, 10, 12, 16 and 20 dB.",
      min: 0,
      max: 40,
      step: 1,
      default: 6,
      source: MEMORY,
      means: "chosen loss",
      sold: { values: [3, 6, 10, 12, 16, 20], source: MEMORY },
      spreadDb: 0.5,
    }),
    dcPass: dcPass(false),
  }),
  symbol: "attenuator",
  caption: (o) => `${dB(o.lossDb)}${o.dcPass ? " · passes DC" : ""}`,
  ports: () => THROUGH_PORTS,
  signal: (o) => ({ paths: throughPath(plainLoss(o.lossDb)) }),
  power: linePower,
  inline: INLINE,
});

/**
 * Gain of an equaliser that mirrors a cable: the insertion loss at the top, `slopeDb` more at the low end,
 * and between them the shape of √f. [dB]
 */
function equaliserGain(o: { fromMHz: number; toMHz: number; slopeDb: number; lossDb: number }): Response {
  const steps = 8;
  const span = Math.sqrt(o.toMHz) - Math.sqrt(o.fromMHz);
  return curve(
    ...Array.from({ length: steps + 1 }, (_, i) => {
      const f = o.fromMHz + ((o.toMHz - o.fromMHz) * i) / steps;
      const share = span > 0 ? (Math.sqrt(o.toMHz) - Math.sqrt(f)) / span : 0;
      return [f, -o.lossDb - o.slopeDb * share] as const;
    }),
  );
}

const equaliser = define({
  kind: "equaliser",
  family: "lift",
  name: "Equaliser",
  summary: "Takes more off the low end than off the top, to undo the slope of a cable.",
  keywords: ["slope", "tilt", "cable simulator"],
  prefix: "eq",
  trade: { job: "equaliser", price: 25, workMinutes: 20, inItsPlace: "coupler" },
  options: z.object({
    range: choice({
      label: "Works over",
      choices: [
        { value: "tv", label: "47–862 MHz" },
        { value: "sat", label: "950–2150 MHz" },
        { value: "own", label: "Own range" },
      ],
      default: "sat",
      source: "network ranges of Spanish Royal Decree 346/2011",
    }),
    slopeDb: number({
      label: "Slope",
      unit: "dB",
      min: 0,
      max: 24,
      step: 1,
      default: 6,
      source: MEMORY,
      means: "slope",
      sold: { values: [6, 9, 12, 18], source: MEMORY },
      spreadDb: 1,
    }),
    lossDb: insertionLoss(1, "Loss at the top"),
    fromMHz: number({
      label: "Own range from",
      unit: "MHz",
      min: 5,
      max: 3000,
      default: 290,
      advanced: true,
      onlyWhen: { range: "own" },
    }),
    toMHz: number({
      label: "Own range to",
      unit: "MHz",
      min: 5,
      max: 3000,
      default: 2350,
      advanced: true,
      onlyWhen: { range: "own" },
    }),
    dcPass: dcPass(true),
  }),
  symbol: "equaliser",
  caption: (o) => `${dB(o.slopeDb)} slope`,
  ports: () => THROUGH_PORTS,
  signal: (o) => {
    const range = o.range === "own" ? between(o.fromMHz, o.toMHz) : EQUALISED[o.range];
    return { paths: throughPath(series(equaliserGain({ ...o, ...range }), plainLoss(0))) };
  },
  power: linePower,
  inline: INLINE,
});

const EQUALISED = { tv: between(47, 862), sat: between(950, 2150) } as const;

/** With which of its sides an inserter feeds anything. */
const FEEDING = ["up", "down", "both"];
/** How it is set where what comes from below may go on upwards: a line that it feeds downwards has its own volts. */
const OPEN_BELOW = ["up", "nothing"];

const powerInserter = define({
  kind: "power-inserter",
  family: "lift",
  name: "Power inserter",
  summary: "Mains unit that feeds an amplifier or LNB through the cable.",
  keywords: ["power supply", "masthead supply", "PSU", "line power"],
  prefix: "psu",
  trade: { job: "supply", price: 25, workMinutes: 20, inItsPlace: "coupler" },
  options: z.object({
    volts: number({
      label: "Voltage",
      unit: "V",
      min: 5,
      max: 30,
      step: 0.5,
      default: 12,
      source: MEMORY,
      means: "supply volts",
      onlyWhen: { feeds: FEEDING },
      sold: { values: [12, 14, 18, 24], source: MEMORY },
    }),
    limitMa: number({
      label: "Limit",
      unit: "mA",
      min: 10,
      max: 5000,
      default: 100,
      source: MEMORY,
      means: "supply limit",
      onlyWhen: { feeds: FEEDING },
    }),
    receiver: choice({
      label: "DC and 22 kHz of the receiver",
      choices: [
        { value: "stopped", label: "stop here" },
        { value: "passed", label: "pass, beside this one" },
      ],
      default: "stopped",
      source: MEMORY,
      passes: ["passed"],
      onlyWhen: { feeds: OPEN_BELOW },
    }),
    lossDb: insertionLoss(0.5),
    switchedOn: MAINS_ON,
    feeds: choice({
      label: "Feeds",
      choices: [
        { value: "up", label: "upwards, towards aerial or LNB" },
        { value: "down", label: "downwards, units on the line below" },
        { value: "both", label: "both ways" },
        { value: "nothing", label: "nothing" },
      ],
      default: "up",
      help: "Both ways share the limit. Downwards is for amplifiers and multiswitches that are fed from the head end.",
      source: "sold with a jumper for each side; common practice, no source",
    }),
  }),
  symbol: "inserter",
  caption: (o) => {
    if (!o.switchedOn) return "off";
    if (o.feeds === "nothing") return "feeds nothing";
    const side = { up: "", down: ", downwards", both: ", both ways" }[o.feeds];
    return `${numeralAsSet(o.volts)} V, ${numeralAsSet(o.limitMa)} mA${side}`;
  },
  ports: () => THROUGH_PORTS,
  signal: (o) => ({ paths: throughPath(plainLoss(o.lossDb)) }),
  power: (o) => {
    // A diode keeps the unit's own voltage out of the receiver.
    const passes = o.receiver === "passed" && OPEN_BELOW.includes(o.feeds);
    const paths: readonly PowerPath[] = passes ? [{ ...LINE_POWER, oneWay: true }] : [];
    if (!o.switchedOn) return { paths };
    const supply = { kind: "plain", volts13: o.volts, volts18: o.volts, limitMa: o.limitMa } as const;
    const shared = o.feeds === "both" ? { ...supply, shares: "both ways" } : supply;
    return {
      paths,
      selfPowered: true,
      supplies: [
        ...(o.feeds === "up" || o.feeds === "both" ? [{ port: "in", ...shared }] : []),
        ...(o.feeds === "down" || o.feeds === "both"
          ? [{ port: "out", down: true as const, ...shared }]
          : []),
      ],
    };
  },
  inline: INLINE,
  cautions: ["mains"],
});

const dcBlock = define({
  kind: "dc-block",
  family: "lift",
  name: "DC block",
  summary: "Lets signals through and stops DC and 22 kHz.",
  keywords: ["isolator", "capacitor", "galvanic"],
  prefix: "block",
  trade: { job: "block", price: 5, workMinutes: 10, inItsPlace: "coupler" },
  options: z.object({ lossDb: insertionLoss(0.5) }),
  symbol: "dc-block",
  caption: (o) => dB(o.lossDb),
  ports: () => THROUGH_PORTS,
  signal: (o) => ({ paths: throughPath(plainLoss(o.lossDb)) }),
  inline: INLINE,
});

/** The impedance of the line, which a resistor at its end has [Ω]. */
const LOAD_OHMS = 75;

const load = define({
  kind: "load",
  family: "lift",
  name: "Terminator",
  firstName: "Terminating load",
  summary: "75 Ω at the end of a trunk, at an unused output, or in an unused input.",
  keywords: ["load", "terminating", "75 ohm", "end resistor", "dummy"],
  prefix: "load",
  trade: { job: "load", price: 1, workMinutes: 5 },
  options: z.object({
    place: choice({
      label: "Closes",
      choices: [
        { value: "output", label: "an output or the end of a line" },
        { value: "input", label: "an unused input" },
      ],
      default: "output",
    }),
    dcBlocked: toggle({
      label: "Blocks DC",
      help: "Without a capacitor its 75 Ω draws a quarter of an ampere from 18 V and gets hot.",
      default: true,
      source: MEMORY,
      means: "direct current block",
      soundValue: true,
    }),
  }),
  symbol: "load",
  caption: (o) => (o.dcBlocked ? "75 Ω, DC-blocked" : "75 Ω, not DC-blocked"),
  ports: (o) => [o.place === "input" ? coaxOut("out") : coaxIn("in")],
  signal: () => ({}),
  power: (o) =>
    o.dcBlocked ? {} : { resistors: [{ port: o.place === "input" ? "out" : "in", ohms: LOAD_OHMS }] },
});

export const TRIMMERS: readonly PartKind[] = [attenuator, equaliser, powerInserter, dcBlock, load];
