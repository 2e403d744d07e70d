/** Dish motor: sits in the line between receiver and LNB, and turns the dish when its receiver tells it to. */
import { z } from "zod";
import { curve } from "../signal/response.ts";
import { define, type PartKind } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { INLINE, THROUGH_PORTS } from "./passive.ts";
import { IF_FROM_MHZ, IF_TO_MHZ } from "./quadrants.ts";

/** A sound motor draws no more than this while it turns; one that draws more is held by something [mA]; from memory. */
export const MOST_TURNING_MA = 350;

const OPTIONS = z.object({
  state: choice({
    label: "The motor is",
    choices: [
      { value: "resting", label: "at rest" },
      { value: "turning", label: "turning" },
    ],
    default: "resting",
    means: "motor state",
    onSite: "not ours",
  }),
  restingMa: number({
    label: "Current at rest",
    unit: "mA",
    min: 0,
    max: 200,
    step: 5,
    default: 40,
    source: "typical (20 to 60), from memory",
    onlyWhen: { state: "resting" },
  }),
  turningMa: number({
    label: "Current while turning",
    unit: "mA",
    help: "Beside the LNB’s. It starts with more for a moment.",
    min: 50,
    max: 800,
    step: 10,
    default: 250,
    source: "typical (150 to 350), from memory",
    means: "turning current",
  }),
  lossDb: number({
    label: "Insertion loss",
    unit: "dB",
    help: "At 950 MHz; half a decibel more at 2150 MHz.",
    min: 0,
    max: 5,
    step: 0.5,
    default: 0.5,
    source: "order of magnitude, from memory",
    spreadDb: 0.5,
    advanced: true,
  }),
  ohms: number({
    label: "Series resistance",
    unit: "Ω",
    help: "In the way of the LNB’s supply.",
    min: 0,
    max: 10,
    step: 0.1,
    default: 0.5,
    source: "order of magnitude, from memory",
    advanced: true,
  }),
  minVolts: number({
    label: "Least supply voltage",
    unit: "V",
    min: 8,
    max: 18,
    step: 0.5,
    default: 12,
    source: "it turns at 13 V, slower than at 18 V; from memory",
    advanced: true,
  }),
});

const DISH_MOTOR = define({
  kind: "dish-motor",
  family: "convert",
  name: "Dish motor",
  summary:
    "Turns a dish from satellite to satellite, told by its one receiver over the cable (DiSEqC motor commands).",
  keywords: ["rotor", "positioner", "actuator", "turning", "DiSEqC", "polar mount"],
  prefix: "motor",
  trade: { job: "motor", price: 90, workMinutes: 60, inItsPlace: "coupler", fedWithVolts: 14 },
  options: OPTIONS,
  symbol: "dish-motor",
  caption: (o) => (o.state === "turning" ? `turning · ${o.turningMa} mA` : `at rest · ${o.restingMa} mA`),
  ports: () => THROUGH_PORTS,
  signal: (o) => ({
    paths: [
      { from: "in", to: "out", response: curve([IF_FROM_MHZ, -o.lossDb], [IF_TO_MHZ, -o.lossDb - 0.5]) },
    ],
  }),
  power: (o) => ({
    paths: [{ from: "out", to: "in", tone: true, ohms: o.ohms }],
    load: {
      milliamps: o.state === "turning" ? o.turningMa : o.restingMa,
      ports: ["out"],
      minVolts: o.minVolts,
    },
    motor: { port: "out", turningMa: o.turningMa },
  }),
  inline: INLINE,
  cautions: ["height"],
});

export const DISH_MOTORS: readonly PartKind[] = [DISH_MOTOR];
