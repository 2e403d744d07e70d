/** What a receiver's tuners take and add: noise, most power at the input, how well they tell neighbours apart. */
import type { FrontEnd } from "./contract.ts";
import { choice, number } from "./fields.ts";

/** Most power at the input [dBµV] by what a receiver is for. */
export const OVERLOAD = {
  /** −10 dBm into 75 Ω: can tuners −10 to 0 dBm, silicon ones −15 to −5 dBm. */
  tv: { dbuv: 98.75, source: "−10 dBm; real tuners −15 to 0 dBm, from memory" },
  /** −5 dBm: three blocks of the 94 dBµV that an outlet may have come to 98.8 dBµV. */
  dab: { dbuv: 103.75, source: "−5 dBm, from memory" },
  fm: { dbuv: 110, source: "about 0.3 V at the aerial plug, from memory" },
  /** Forty transponders at the top of a usual control range, 84 dBµV: 84 + 10·log10(40) = 100. */
  satellite: {
    dbuv: 100,
    source: "40 transponders of 84 dBµV, the top of a usual control range in receivers’ manuals",
  },
} as const;

/** How far tuners of one kind stray in what blocks them, one standard deviation [dB]; from the ranges quoted, from memory. */
export const BLOCKING_SPREAD_DB = 3;

/** Noise figure of a tuner where nobody says otherwise [dB]. */
export const TUNER_NOISE_FIGURE_DB = 8;

/** Option fields of every receiver. */
export function frontEndFields({ dbuv, source }: { readonly dbuv: number; readonly source: string }) {
  return {
    noiseFigureDb: number({
      label: "Noise figure of the tuner",
      unit: "dB",
      min: 1,
      max: 20,
      step: 0.5,
      default: TUNER_NOISE_FIGURE_DB,
      onSite: "factory",
      source: "typical, from memory; TV tuners 5 to 8, satellite tuners up to 12",
      advanced: true,
      spreadDb: 1,
    }),
    overloadDbuv: number({
      label: "Most power at an input",
      unit: "dBµV",
      help: "Of all signals together that its tuner lets in. Above it nothing is received, however strong.",
      min: 70,
      max: 130,
      step: 0.25,
      default: dbuv,
      onSite: "factory",
      source,
      advanced: true,
      spreadDb: BLOCKING_SPREAD_DB,
    }),
  };
}

export const tunerField = choice({
  label: "Tuner",
  help: "A can tuner also hears the channel nine above the wanted one.",
  choices: [
    { value: "silicon", label: "on a chip (silicon)" },
    { value: "can", label: "in a can (older)" },
  ],
  default: "silicon",
  onSite: "factory",
  source: "usual today, from memory",
  advanced: true,
});

/** Of a receiver's own options; satellite tuners are not told apart. */
export function frontEndOf(o: {
  readonly noiseFigureDb: number;
  readonly overloadDbuv: number;
  readonly tuner?: FrontEnd["tuner"];
}): FrontEnd {
  const { noiseFigureDb, overloadDbuv, tuner = "silicon" } = o;
  return { noiseFigureDb, overloadDbuv, tuner };
}
