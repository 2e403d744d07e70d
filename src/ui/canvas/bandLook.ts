/** How a band is told apart from others: a colour and, never without it, a short tag. */
import type { Band } from "../../signal/band.ts";
import type { Service } from "../../signal/carrier.ts";
import { counted } from "../kit/format.ts";

export type BandLook = {
  /** A colour token of the theme. */
  readonly colour: string;
  /** Fits beside others on a strip: "TV", "V low". */
  readonly tag: string;
  /** For a strip seen from afar: "VL". */
  readonly shortTag: string;
  /** For sentences and screen readers: "Satellite V low". */
  readonly words: string;
};

const PLAIN: Readonly<Record<Exclude<Service, "satellite">, BandLook>> = {
  tv: { colour: "var(--service-tv)", tag: "TV", shortTag: "TV", words: "TV" },
  dab: { colour: "var(--service-dab)", tag: "DAB", shortTag: "DAB", words: "DAB" },
  fm: { colour: "var(--service-fm)", tag: "FM", shortTag: "FM", words: "FM" },
  mobile: { colour: "var(--service-mobile)", tag: "Mob", shortTag: "Mob", words: "Mobile phone" },
  cordless: { colour: "var(--service-cordless)", tag: "DECT", shortTag: "DECT", words: "Cordless phone" },
};

export function bandLook(band: Band): BandLook {
  const { service, polarisation } = band.origin;
  if (service !== "satellite") return PLAIN[service];
  if (band.stack) {
    const n = band.stack.numbers.length;
    return {
      colour: "var(--service-sat-stack)",
      tag: `UB ×${n}`,
      shortTag: "UB",
      words: counted(n, "user band"),
    };
  }
  if (!polarisation) return satellite("", "Sat", "Sat", "");
  if (!band.half)
    return satellite(`-${polarisation.toLowerCase()}`, polarisation, polarisation, polarisation);
  const low = band.half === "low";
  return satellite(
    `-${polarisation.toLowerCase()}${low ? "l" : "h"}`,
    `${polarisation} ${band.half}`,
    `${polarisation}${low ? "L" : "H"}`,
    `${polarisation} ${band.half}`,
  );
}

function satellite(token: string, tag: string, shortTag: string, words: string): BandLook {
  return {
    colour: token === "" ? "var(--service-sat-stack)" : `var(--service-sat${token})`,
    tag,
    shortTag,
    words: `Satellite ${words}`.trim(),
  };
}
