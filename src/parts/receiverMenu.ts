/** What a satellite receiver's menu says of the LNB: its oscillators, and the standard of single-cable messages. */
import { numeral } from "../words/numbers.ts";
import type { MenuOscillators } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { C_BAND_LO_MHZ, KA_BAND_LO_MHZ, UNIVERSAL_HIGH_LO_MHZ, UNIVERSAL_LOW_LO_MHZ } from "./quadrants.ts";
import { STANDARD_CHOICES } from "./userBands.ts";

function menuField(
  label: string,
  value: number,
  range: { readonly min: number; readonly max: number; readonly source?: string } = {
    min: 9_000,
    max: 11_600,
  },
) {
  return number({
    label,
    unit: "MHz",
    help: "As in the receiver’s menu. Where the LNB has another one, everything appears shifted by the difference.",
    min: range.min,
    max: range.max,
    step: 1,
    default: value,
    onSite: "setting",
    means: "menu oscillator",
    source: range.source ?? "EN 61319-1, as quoted in public LNB tables",
    advanced: true,
  });
}

/**
 * Of a universal LNB, and of those for C band and Ka band, for receivers of switched and single-cable feeds: a menu has an
 * entry for each satellite.
 */
export const MENU_FIELDS = {
  menuLowMHz: menuField("Menu: oscillator, low band", UNIVERSAL_LOW_LO_MHZ),
  menuHighMHz: menuField("Menu: oscillator, high band", UNIVERSAL_HIGH_LO_MHZ),
  menuCBandMHz: menuField("Menu: oscillator, C band", C_BAND_LO_MHZ, {
    min: 5_000,
    max: 11_600,
    source: "usual in LNB tables of receivers, from memory",
  }),
  menuKaBandMHz: menuField("Menu: oscillator, Ka band", KA_BAND_LO_MHZ, {
    min: 9_000,
    max: 23_000,
    source: "one of those that are sold, from memory; the LNB’s sheet tells its own",
  }),
};

/** Of a wideband LNB. */
export const WIDEBAND_MENU_FIELD = choice({
  label: "Menu: oscillator",
  help: "Some receivers find it out by themselves; others must be told.",
  choices: [
    { value: "found", label: "finds it out by itself" },
    { value: "10400", label: `${numeral(10.4, 2, 2)} GHz` },
    { value: "10410", label: `${numeral(10.41, 2, 2)} GHz` },
  ],
  default: "found",
  onSite: "setting",
  means: "menu oscillator",
  advanced: true,
});

export function menuOf(o: {
  readonly menuLowMHz: number;
  readonly menuHighMHz: number;
  readonly menuCBandMHz: number;
  readonly menuKaBandMHz: number;
}): MenuOscillators {
  return {
    lowMHz: o.menuLowMHz,
    highMHz: o.menuHighMHz,
    cBandMHz: o.menuCBandMHz,
    kaBandMHz: o.menuKaBandMHz,
  };
}

/** Of a wideband receiver; nothing where it finds out by itself. */
export function widebandMenuOf(oscillator: "found" | "10400" | "10410"): { readonly menu?: MenuOscillators } {
  if (oscillator === "found") return {};
  const widebandMHz = Number(oscillator);
  return { menu: { lowMHz: UNIVERSAL_LOW_LO_MHZ, highMHz: UNIVERSAL_HIGH_LO_MHZ, widebandMHz } };
}

/** Which messages a single-cable receiver can send. */
export const MESSAGES_FIELD = choice({
  label: "Messages",
  help: "SCR and dSCR messages differ: a unit that knows the other kind only does not obey.",
  choices: STANDARD_CHOICES,
  default: "both",
  onSite: "setting",
  means: "receiver messages",
});
