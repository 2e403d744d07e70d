/** A spectrum in one colour and one mark: what a wire shows when it is seen from afar. */
import type { Band, Spectrum } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import { bandLook } from "./bandLook.ts";
import { carrierState } from "./carrierState.ts";

export type WireSummary = {
  readonly worst: "clear" | "touched" | "hit";
  /** Colour of the main service; null when nothing usable is on the wire. */
  readonly colour: string | null;
};

/** Which service names a wire that carries several. */
const RANK: Readonly<Record<Service, number>> = {
  satellite: 0,
  tv: 1,
  dab: 2,
  fm: 3,
  distant: 4,
  mobile: 5,
  cordless: 6,
};

export function wireSummary(spectrum: Spectrum): WireSummary {
  let summary = known.get(spectrum);
  if (!summary) {
    summary = summarise(spectrum);
    known.set(spectrum, summary);
  }
  return summary;
}

const known = new WeakMap<Spectrum, WireSummary>();

function summarise(spectrum: Spectrum): WireSummary {
  let worst: WireSummary["worst"] = "clear";
  let main: Band | null = null;
  for (const band of spectrum.bands) {
    if (!band.selected) continue;
    let usable = false;
    for (let i = 0; i < band.level.length; i++) {
      const state = carrierState(band, i);
      if (state === "hit") worst = "hit";
      else if (state === "touched" && worst === "clear") worst = "touched";
      if (state !== "cut") usable = true;
    }
    if (usable && (!main || RANK[band.origin.service] < RANK[main.origin.service])) main = band;
  }
  return { worst, colour: main && bandLook(main).colour };
}
