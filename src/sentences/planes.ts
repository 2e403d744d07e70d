/** Planes in words: which quadrants of which satellite. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Plane } from "../findings/missing.ts";
import { optionMeaning } from "../parts/meanings.ts";
import type { SatelliteBand } from "../parts/planSatellite.ts";
import { type Polarisation, QUADRANTS, type Quadrant, type Wave } from "../signal/carrier.ts";
import { waveOf } from "../signal/leak.ts";
import { list, partName } from "./phrases.ts";

const WAVE_NAMES: Readonly<Record<Wave, string>> = {
  V: "vertical",
  H: "horizontal",
  R: "right-hand circular",
  L: "left-hand circular",
};

/** "vertical", "left-hand circular" */
export function polarisationName(of: Pick<Plane, "polarisation" | "circular">): string {
  return WAVE_NAMES[waveOf(of)];
}

/** What is asked for by 13 V (V) and by 18 V (H) at an LNB, which may be made for circular waves, or at a switch that takes them in. */
export function askedWords(lnb: PartRecord | undefined, polarisation: Polarisation): string {
  const key = lnb && optionMeaning(lnb.kind, "feed type");
  const turns = lnb && (key === undefined ? takesCircular(lnb) : lnb.options[key] === "circular");
  return polarisationName({ polarisation, ...(turns ? { circular: true } : {}) });
}

/** Whether what a part takes in now are circular waves: its receiver then asks for right-hand (13 V) or left-hand (18 V). */
export function takesCircular({ inputs, outputs, kind }: PartRecord): boolean {
  const spectra = Object.values(kind.family === "use" ? inputs : outputs);
  return spectra.some(({ bands }) => bands.some((b) => b.selected && b.origin.circular === true));
}

/** What a receiver asks for by its voltage, as the waves are called that it takes in: "H", "L". */
export function waveAsked(receiver: PartRecord | undefined, polarisation: Polarisation): Wave {
  return waveOf({ polarisation, ...(receiver && takesCircular(receiver) ? { circular: true } : {}) });
}

/** The line under a part's name, with the waves named that it takes in now. */
export function captionOf(record: PartRecord): string {
  return record.kind.caption(record.options, { circular: takesCircular(record) });
}

/** What an LNB for a band is called. */
export function bandLnbWords(band: SatelliteBand): string {
  return band === "Ku" ? "a universal LNB" : `an LNB for ${band} band`;
}

/** Both quadrants of a half, and both halves of a polarisation, have names of their own. */
const HALF_NAMES: Readonly<Record<string, string>> = { "VL HL": "the low band", "VH HH": "the high band" };
const WHOLE: Readonly<Record<string, Polarisation>> = { "VL VH": "V", "HL HH": "H" };

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
  const turning = planes.filter((p) => p.circular);
  const linear = planes.filter((p) => !p.circular);
  return list([linear, turning].filter((some) => some.length > 0).map(alikeWords));
}

/** Of planes that are all linear, or all circular. */
function alikeWords(planes: readonly Plane[]): string {
  const turns = planes.some((p) => p.circular) ? { circular: true as const } : {};
  const own = new Set(planes.map(quadrantOf));
  if (planes.every((p) => p.isUndivided)) {
    const waves = (["V", "H"] as const).filter((polarisation) =>
      planes.some((p) => p.polarisation === polarisation),
    );
    if (waves.length === 2) return "the whole satellite";
    return list(waves.map((polarisation) => `all ${polarisationName({ polarisation, ...turns })}`));
  }
  const quadrants = QUADRANTS.filter((q) => own.has(q));
  if (quadrants.length === QUADRANTS.length) return "the whole satellite";
  const pair = quadrants.join(" ");
  const whole = WHOLE[pair];
  if (whole) return `all ${polarisationName({ polarisation: whole, ...turns })}`;
  const inWords = (q: Quadrant) =>
    `${q.endsWith("L") ? "low" : "high"} ${polarisationName({ polarisation: q.startsWith("V") ? "V" : "H", ...turns })}`;
  return HALF_NAMES[pair] ?? list(quadrants.map(inWords));
}

/** The quadrant of a plane. */
export function quadrantOf({ polarisation, half }: Plane): Quadrant {
  return `${polarisation}${half === "low" ? "L" : "H"}`;
}
