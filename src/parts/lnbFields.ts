/** What all low-noise block converters share: option fields, ports, power, and the way out of the sky band. */

import { curve, passBand, type Response } from "../signal/response.ts";
import { numeral } from "../words/numbers.ts";
import type { Path, Port, PowerTreatment } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { feedFields } from "./lnbFeed.ts";
import type { OptionTrade } from "./optionTrade.ts";
import { IF_FROM_MHZ, IF_TO_MHZ, UNIVERSAL_HIGH_LO_MHZ, UNIVERSAL_LOW_LO_MHZ } from "./quadrants.ts";

/** Least voltage at a converter's output for it to work [V] (EN 61319-1 cl. 5.2, from memory). */
export const LNB_LEAST_VOLTS = 11.5;

/** Most voltage that a converter is made for [V] (EN 61319-1 cl. 5.2, from memory). */
export const LNB_MOST_VOLTS = 19;

/** Between 13 V and 18 V: from here on horizontal is taken [V] (EN 61319-1, 14 to 16 undefined, from memory). */
export const SWITCH_THRESHOLD_VOLTS = 15;

/** A universal or quattro converter's IF. */
export const UNIVERSAL_IF = { fromMHz: IF_FROM_MHZ, toMHz: IF_TO_MHZ };

/** A wideband converter's IF: 300 to 2350 MHz with its oscillator at 10 400, 290 to 2340 at 10 410. */
export const WIDEBAND_IF = { fromMHz: 290, toMHz: 2_350 };

/** A converter's own filter at the ends of its IF [dB]; from memory, order of magnitude. */
export const LNB_REJECTION_DB = 40;

/** Outputs of an LNB that is sold with one, two or four; `help`: what each of them gives. */
export function outputsField(help: string) {
  return choice({
    label: "Outputs",
    help,
    choices: [
      { value: "1", label: "1 (single)" },
      { value: "2", label: "2 (twin)" },
      { value: "4", label: "4 (quad)" },
    ],
    default: "1",
    means: "outputs",
    sold: { values: ["1", "2", "4"], source: "usual, from memory" },
  });
}

/** What an LNB with outputs of its own draws [mA]: a common part, and more for each output in use. */
export function currentFields(typical: {
  readonly commonMa: number;
  readonly outputMa: number;
  readonly source: string;
}) {
  const { commonMa, outputMa, source } = typical;
  return {
    commonMa: number({
      label: "Current, common part",
      unit: "mA",
      help: "What the LNB draws whatever its number of outputs.",
      min: 0,
      max: 500,
      step: 5,
      default: commonMa,
      source,
      advanced: true,
    }),
    outputMa: number({
      label: "Current for each output",
      unit: "mA",
      help: "What each output adds while a receiver feeds it.",
      min: 0,
      max: 200,
      step: 5,
      default: outputMa,
      source,
      advanced: true,
    }),
  };
}

/** Option fields of the microwave side; `typical`: where it is not that of an LNB for Ku band. */
export function lnbFields(typical: { readonly gainDb?: number; readonly feedType?: "circular" } = {}) {
  return {
    gainDb: number({
      label: "Conversion gain",
      unit: "dB",
      help: "From the feed to the output, at the lower end of the satellite IF.",
      min: 30,
      max: 75,
      step: 0.5,
      default: typical.gainDb ?? 55,
      source: "typical (50 to 65), from memory",
      means: "conversion gain",
      spreadDb: 2.5,
    }),
    noiseFigureDb: number({
      label: "Noise figure",
      unit: "dB",
      help: `Makers state ${numeral(0.1)} to ${numeral(0.3)} dB; ${numeral(0.7)} dB is a cautious planning value.`,
      min: 0.1,
      max: 5,
      step: 0.1,
      default: 0.7,
      source: "cautious planning value, from memory",
      spreadDb: 0.2,
    }),
    slopeDb: number({
      label: "Slope",
      unit: "dB",
      help: "How much more gain there is at the upper end of the satellite IF.",
      min: -10,
      max: 10,
      step: 0.5,
      default: 0,
      source: "level on average; ripple of ±2 to 4 dB is not modelled, from memory",
      spreadDb: 1.5,
      advanced: true,
    }),
    rollOffDb: number({
      label: "Noise below the band",
      unit: "dB",
      help: "How much weaker the LNB’s noise is at 850 MHz than in its band from 950 MHz; a wideband LNB’s likewise below its own.",
      min: 10,
      max: 60,
      step: 1,
      default: 25,
      source: "20 to 30 dB, order of magnitude, from memory",
      spreadDb: 3,
      advanced: true,
    }),
    ratedDbuv: number({
      label: "Rated output",
      unit: "dBµV",
      help: "Per carrier, with two carriers and 35 dB to their third-order products.",
      min: 60,
      max: 120,
      step: 1,
      default: 98,
      source: "from a third-order intercept of about +7 dBm at the output; typical, from memory",
      spreadDb: 2,
      advanced: true,
    }),
    ...feedFields(typical.feedType),
    regulator: choice({
      label: "Draws",
      help: "With a switching regulator the stated current is that at 13 V: 18 V need less, a long line that drops volts more.",
      choices: [
        { value: "linear", label: "the same current at every voltage" },
        { value: "switching", label: "the same power (switching regulator)" },
      ],
      default: "linear",
      source: "linear regulators were usual, newer LNBs switch; from memory",
      onSite: "factory",
      advanced: true,
    }),
  };
}

type LnbOptions = {
  readonly gainDb: number;
  readonly noiseFigureDb: number;
  readonly slopeDb: number;
  readonly ratedDbuv: number;
  readonly rollOffDb: number;
};

/** Field for the current that a converter draws in all. */
export function currentField(milliamps: number, range: string) {
  return number({
    label: "Current",
    unit: "mA",
    help: "Drawn in all, from whichever output carries the highest voltage.",
    min: 10,
    max: 800,
    step: 5,
    default: milliamps,
    source: `typical (${range}), from memory`,
  });
}

/** Local oscillators of a universal converter, for those who meet an unusual one. */
export function universalOscillatorFields(when: Pick<OptionTrade, "onlyWhen"> = {}) {
  const oscillator = (label: string, value: number) =>
    number({
      label,
      unit: "MHz",
      min: 9_000,
      max: 11_600,
      step: 1,
      default: value,
      source: "EN 61319-1, as quoted in public LNB tables",
      advanced: true,
      ...when,
    });
  return {
    lowLoMHz: oscillator("Oscillator, low band", UNIVERSAL_LOW_LO_MHZ),
    highLoMHz: oscillator("Oscillator, high band", UNIVERSAL_HIGH_LO_MHZ),
  };
}

/** The active part of a path through the microwave side: gain, noise, rated output. */
export function conversion(
  o: LnbOptions,
  passes: { readonly fromMHz: number; readonly toMHz: number },
): Required<Pick<Path, "response" | "noiseFigureDb" | "rating" | "floor">> {
  return {
    floor: { ...passes, rollOffDb: o.rollOffDb },
    response: passBand({ ...passes, gain: conversionGain(o), rejectionDb: LNB_REJECTION_DB }),
    noiseFigureDb: o.noiseFigureDb,
    rating: { outputDbuv: o.ratedDbuv, ratioDb: 35 },
  };
}

function conversionGain(o: LnbOptions): Response {
  return curve([IF_FROM_MHZ, o.gainDb], [IF_TO_MHZ, o.gainDb + o.slopeDb]);
}

export const SKY_INPUT: Port = { id: "sky", side: "in", medium: "sky", label: "feed", role: "beam" };

/** At which voltage makers of LNBs with a switching regulator state the current [V]; our choice. */
const STATED_AT_VOLTS = 13;

/** Load of a converter that can be fed through any of its outputs; `perFedPort`: what outputs add while in use. */
export function lnbLoad(
  { regulator }: { readonly regulator: "linear" | "switching" },
  milliamps: number,
  ports: readonly string[],
  perFedPort?: NonNullable<PowerTreatment["load"]>["perFedPort"],
): NonNullable<PowerTreatment["load"]> {
  return {
    milliamps,
    ports,
    minVolts: LNB_LEAST_VOLTS,
    mostVolts: LNB_MOST_VOLTS,
    ...(perFedPort ? { perFedPort } : {}),
    ...(regulator === "switching" ? { constantPowerAtVolts: STATED_AT_VOLTS } : {}),
  };
}
