/** How a band is told apart from others: a colour and, never without it, a texture and a short tag. */
import { satelliteBandOn } from "../../parts/planSatellite.ts";
import type { Band } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import { counted } from "../kit/format.ts";
import { colourOf, type ServiceTexture } from "./textures.ts";

export type BandLook = {
  /** A colour token of the theme, for lines and words. */
  readonly colour: string;
  /** For areas: `fillOf` gives colour and texture together. */
  readonly texture: ServiceTexture;
  /** Fits beside others on a strip: "TV", "V low". */
  readonly tag: string;
  /** For a strip seen from afar: "VL". */
  readonly shortTag: string;
  /** For sentences and screen readers: "Satellite V low". */
  readonly words: string;
};

const PLAIN: Readonly<Record<Exclude<Service, "satellite">, BandLook>> = {
  tv: look("tv", "TV", "TV", "TV"),
  dab: look("dab", "DAB", "DAB", "DAB"),
  fm: look("fm", "FM", "FM", "FM"),
  distant: look("distant", "Dist", "Dist", "Distant transmitter"),
  mobile: look("mobile", "Mob", "Mob", "Mobile phone"),
  cordless: look("cordless", "DECT", "DECT", "Cordless phone"),
};

export function bandLook(band: Band): BandLook {
  const { service, polarisation } = band.origin;
  if (service !== "satellite") return PLAIN[service];
  if (band.stack) {
    const n = band.stack.numbers.length;
    return look("sat-stack", `UB ×${n}`, "UB", counted(n, "user band"));
  }
  if (!polarisation) return look("sat", "Sat", "Sat", "Satellite");
  const plane = polarisation === "V" ? "sat-v" : "sat-h";
  // C band and Ka band have no halves: an LNB for them only switches the polarisation.
  if (!band.half || satelliteBandOn(band) !== "Ku")
    return look(plane, polarisation, polarisation, `Satellite ${polarisation}`);
  const isLow = band.half === "low";
  return look(
    `${plane}${isLow ? "l" : "h"}`,
    `${polarisation} ${band.half}`,
    `${polarisation}${isLow ? "L" : "H"}`,
    `Satellite ${polarisation} ${band.half}`,
  );
}

function look(texture: ServiceTexture, tag: string, shortTag: string, words: string): BandLook {
  return { colour: colourOf(texture), texture, tag, shortTag, words };
}
