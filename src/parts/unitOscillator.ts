/** The oscillator of a wideband LNB, as a unit behind it has it. */
import { number } from "./fields.ts";

/** What the unit reckons with [MHz], where it is made for whole polarisations. */
export function unitOscillator() {
  return number({
    label: "Oscillator of the wideband LNB",
    unit: "MHz",
    help: "What the unit is set to. Behind an LNB with another one, everything comes out shifted by the difference.",
    min: 10_200,
    max: 10_600,
    step: 1,
    default: 10_400,
    source: "usual value, from memory",
    advanced: true,
    onSite: "setting",
    means: "unit oscillator",
    onlyWhen: { feed: "wideband" },
  });
}
