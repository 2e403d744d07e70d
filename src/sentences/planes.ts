/** Planes in words: which quadrants of which satellite. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Plane } from "../findings/missing.ts";
import { QUADRANTS, type Quadrant } from "../signal/carrier.ts";
import { list, partName } from "./phrases.ts";

const QUADRANT_NAMES: Readonly<Record<Quadrant, string>> = {
  VL: "low vertical",
  VH: "high vertical",
  HL: "low horizontal",
  HH: "high horizontal",
};

/** Two quadrants together that have a name. */
const PAIR_NAMES: Readonly<Record<string, string>> = {
  "VL VH": "all vertical",
  "HL HH": "all horizontal",
  "VL HL": "the low band",
  "VH HH": "the high band",
};

/** "high horizontal", "the low band of ⟦dish2⟧"; empty where no plane is named. The dish is named where there are several. */
export function planesWords(planes: readonly Plane[], evaluation: Evaluation): string {
  const sources = [...new Set(planes.map((p) => p.source))].sort();
  const dishes = evaluation.records.filter((r) =>
    r.ports.some((p) => p.medium === "sky" && p.side === "out"),
  );
  return list(
    sources.map((source) => {
      const words = quadrantsWords(planes.filter((p) => p.source === source));
      return dishes.length > 1 ? `${words} of ${partName(source)}` : words;
    }),
  );
}

function quadrantsWords(planes: readonly Plane[]): string {
  const own = new Set(planes.map(quadrantOf));
  const quadrants = QUADRANTS.filter((q) => own.has(q));
  if (quadrants.length === QUADRANTS.length) return "the whole satellite";
  return PAIR_NAMES[quadrants.join(" ")] ?? list(quadrants.map((q) => QUADRANT_NAMES[q]));
}

/** The quadrant of a plane. */
export function quadrantOf({ polarisation, half }: Plane): Quadrant {
  return `${polarisation}${half === "low" ? "L" : "H"}`;
}
