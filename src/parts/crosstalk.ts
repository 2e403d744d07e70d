/** Crosstalk of a switch: what comes to an output from the inputs that it has not chosen. */
import type { Path } from "./contract.ts";
import { number } from "./fields.ts";

export function crosstalkField() {
  return number({
    label: "Crosstalk",
    unit: "dB",
    help: "How far signals of another input lie below, at equal levels. It disturbs only what uses the same frequencies.",
    min: 0,
    max: 80,
    step: 1,
    default: 30,
    source: "typical (25 to 35), from memory; manuals of single units name up to 45 dB",
    means: "crosstalk",
    spreadDb: 3,
    advanced: true,
  });
}

/** What an input's path hears of its neighbours. */
export function crosstalkFrom(
  inputs: readonly string[],
  own: string,
  isolationDb: number,
): Required<Pick<Path, "crosstalk">> {
  return { crosstalk: { from: inputs.filter((input) => input !== own), isolationDb } };
}
