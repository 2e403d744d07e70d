/** Options of a multiswitch. */
import { z } from "zod";
import { terrestrialFields } from "./besideSatellite.ts";
import { choice, number, toggle, whole } from "./fields.ts";
import { lnbSupplyFields } from "./lnbSupply.ts";
import { decoupling } from "./passive.ts";

export const MULTISWITCH_OPTIONS = z.object({
  satelliteInputs: choice({
    label: "Satellite inputs",
    help: "Four for each satellite position.",
    choices: [
      { value: "4", label: "4 (one satellite)" },
      { value: "8", label: "8 (two satellites)" },
      { value: "16", label: "16 (four satellites)" },
    ],
    default: "4",
  }),
  outputs: whole({ label: "Outputs", help: "One for each receiver input.", min: 2, max: 32, default: 8 }),
  supply: choice({
    label: "Supply",
    choices: [
      { value: "mains", label: "Own mains unit" },
      { value: "receivers", label: "From the receivers" },
      { value: "trunk", label: "Through the trunk" },
    ],
    help: "Through the trunk: from the next unit of the cascade, over the through outputs.",
    default: "mains",
  }),
  ...lnbSupplyFields(),
  ownMa: number({
    label: "Own current",
    unit: "mA",
    help: "When fed from the receivers or the trunk.",
    min: 0,
    max: 500,
    step: 5,
    default: 60,
    source: "order of magnitude, from memory",
    advanced: true,
  }),
  build: choice({
    label: "Satellite path",
    choices: [
      { value: "active", label: "Active (gain)" },
      { value: "tap", label: "Tap (loss)" },
    ],
    help: "Tap units of a cascade take a little off the trunk for each output.",
    default: "active",
  }),
  satLowGainDb: number({
    label: "Gain at 950 MHz",
    unit: "dB",
    help: "When active.",
    min: -20,
    max: 20,
    step: 0.5,
    default: -2,
    source: "typical (−2 to +6), from memory",
  }),
  satHighGainDb: number({
    label: "Gain at 2150 MHz",
    unit: "dB",
    help: "When active; often higher than at 950 MHz, against the slope of the cable.",
    min: -20,
    max: 20,
    step: 0.5,
    default: 2,
    source: "typical (−2 to +6), from memory",
  }),
  tapLossDb: number({
    label: "Tap loss",
    unit: "dB",
    help: "From the trunk to an output, when built as a tap.",
    min: 0,
    max: 40,
    step: 1,
    default: 20,
    source: "typical (16 to 25), from memory",
  }),
  satNoiseDb: number({
    label: "Noise figure",
    unit: "dB",
    help: "Of the active satellite path.",
    min: 1,
    max: 15,
    step: 0.5,
    default: 7,
    source: "typical (5 to 9), from memory",
    advanced: true,
  }),
  satRatedDbuv: number({
    label: "Rated output",
    unit: "dBµV",
    help: "Of the active satellite path: per carrier, with two carriers and 35 dB to their third-order products.",
    min: 70,
    max: 120,
    step: 1,
    default: 98,
    source: "typical (85 to 100), from memory",
    advanced: true,
  }),
  ...terrestrialFields(),
  cascade: toggle({
    label: "Through outputs",
    help: "Hands all inputs on to the next unit of a cascade.",
    default: false,
  }),
  throughLossDb: number({
    label: "Through loss at 950 MHz",
    unit: "dB",
    help: "Along the trunk; half as much again at 2150 MHz, half at 47 MHz.",
    min: 0,
    max: 15,
    step: 0.5,
    default: 2,
    source: "typical (1 to 4), from memory",
  }),
  // Typical 25 to 35 dB.
  isolationDb: decoupling(28),
});

export type MultiswitchOptions = z.output<typeof MULTISWITCH_OPTIONS>;
