/** What the amplifiers share: option fields, ratings, and what is left when the power fails. */

import { flat } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { choice, number } from "./fields.ts";
import type { OptionTrade } from "./optionTrade.ts";
import { MEMORY, type Range } from "./passive.ts";

/** What is left of a signal through an amplifier without power. Order of magnitude, from memory. */
export const UNPOWERED_GAIN = flat(-25);

/** Intermodulation ratios at which outputs are rated: EN 60728-3, from memory. */
export const TV_RATIO_DB = 60;
export const IF_RATIO_DB = 35;

/** `of`: the one of several inputs that it belongs to, by port and label. */
export const gainDb = (max: number, value: number, of?: { readonly port: string; readonly label: string }) =>
  number({
    label: of ? `Gain of ${of.label}` : "Gain",
    ...(of ? { ofInput: of.port } : {}),
    unit: "dB",
    min: 0,
    max,
    step: 0.5,
    default: value,
    source: MEMORY,
    means: "gain",
    onSite: "setting",
    turnsBy: 1,
    spreadDb: 1.5,
  });

/** How much less is amplified at the low end than at the top. */
export const slopeDb = (o: { readonly help: string; readonly max: number; readonly default: number }) =>
  number({
    label: "Slope",
    unit: "dB",
    ...o,
    min: 0,
    step: 1,
    source: MEMORY,
    means: "slope",
    onSite: "setting",
    turnsBy: 1,
    spreadDb: 1,
  });

export const noiseFigureDb = (value: number) =>
  number({
    label: "Noise figure",
    unit: "dB",
    min: 0.2,
    max: 15,
    step: 0.1,
    default: value,
    source: MEMORY,
    spreadDb: 0.5,
  });

export const outputDbuv = (value: number, ratioDb: number) =>
  number({
    label: "Rated output",
    unit: "dBµV",
    help: `Per carrier, where two carriers leave ${numeralAsSet(ratioDb)} dB to their third-order products.`,
    min: 70,
    max: 130,
    step: 0.5,
    default: value,
    source: `two-carrier method of EN 60728-3; ${MEMORY}`,
    spreadDb: 1.5,
  });

/** What an amplifier takes that is fed through the cable at its output. */
export const cableFedFields = (o: { readonly milliamps: number; readonly minVolts: number }) => ({
  milliamps: number({
    label: "Current",
    unit: "mA",
    min: 1,
    max: 500,
    default: o.milliamps,
    source: MEMORY,
  }),
  minVolts: number({
    label: "Works from",
    unit: "V",
    min: 4,
    max: 24,
    step: 0.5,
    default: o.minVolts,
    source: MEMORY,
    advanced: true,
  }),
});

/** The same as a load at its output. */
export function cableFed(o: { readonly milliamps: number; readonly minVolts: number }) {
  return { load: { milliamps: o.milliamps, ports: ["out"], minVolts: o.minVolts } };
}

/** What lies outside the bands of an amplifier comes out this much weaker. From memory. */
export const OUT_OF_BAND_DB = 30;

const UHF_TOP = [
  { value: "694", label: "694 MHz (channel 48)" },
  { value: "790", label: "790 MHz (channel 60)" },
  { value: "862", label: "862 MHz (channel 69)" },
] as const;

export const uhfTo = choice({
  label: "UHF up to",
  choices: UHF_TOP,
  default: "694",
  help: "An older amplifier that reaches higher also takes in the phone masts above the TV band.",
  source: "UHF TV ended at 862 MHz, then at 790, now at 694 (EU Decision 2017/899), from memory",
});

/** Types that reach higher; typical, from memory. */
export const WIDER_UHF = ["790", "862"].map((top) => ({
  name: `a type for UHF up to ${top} MHz`,
  options: { uhfTo: top },
}));

/** FM and DAB [MHz]: Band II from 87, Band III to 240 MHz. */
export const RADIO: Range = { fromMHz: 87, toMHz: 240 };

type SupplyWords = { readonly label: string; readonly help?: string } & Pick<OptionTrade, "onlyWhen">;

/** Whether a part feeds an aerial or masthead before it, and with one of these voltages [V]; off where nobody chooses. */
export function aerialSupplyChoice<const V extends string>(volts: readonly V[], words: SupplyWords) {
  return choice<"0" | V>({
    ...words,
    choices: [{ value: "0", label: "No" }, ...volts.map((value) => ({ value, label: `With ${value} V` }))],
    default: "0",
    source: MEMORY,
    means: "aerial supply",
    onSite: "setting",
  });
}

/** The same of an amplifier with a mains unit, and with how much at most. */
export function aerialSupplyFields({ onlyWhen = {}, ...words }: SupplyWords) {
  return {
    aerialSupply: aerialSupplyChoice(["12", "24"], { ...words, onlyWhen }),
    aerialLimitMa: number({
      label: "Limit of that supply",
      unit: "mA",
      min: 10,
      max: 500,
      default: 100,
      source: MEMORY,
      advanced: true,
      means: "supply limit",
      onlyWhen: { ...onlyWhen, aerialSupply: ["12", "24"] },
    }),
  };
}
