/** Whom an aerial hears: the transmitter of each row, and what the aerial takes off what comes from elsewhere. */
import type { z } from "zod";
import {
  beamDiscriminationDb,
  bearingDifferenceDeg,
  type PatternBand,
  referenceDiscriminationDb,
  withPolarisationDb,
} from "../rf/aerialPattern.ts";
import { choice, number, text, toggle } from "./fields.ts";
import { MEMORY } from "./passive.ts";

/** Fields of a row: who sends it, from where, and whether anybody here wants it. */
export const transmitterRow = () => ({
  transmitter: text({
    label: "Transmitter",
    help: "Name of the transmitter. The same channel of the same transmitter is one signal, by whichever aerial.",
    maxLength: 40,
    default: "",
  }),
  bearingDeg: number({
    label: "Bearing of the transmitter",
    unit: "°",
    help: "Clockwise from north. Counts once the aerial’s own bearing is given.",
    min: 0,
    max: 359,
    step: 1,
    default: 0,
  }),
  polarisation: choice({
    label: "Polarisation",
    help: "Of the transmitter. Counts once the aerial’s own bearing is given.",
    choices: [
      { value: "like", label: "As the aerial" },
      { value: "H", label: "Horizontal" },
      { value: "V", label: "Vertical" },
    ],
    default: "like",
  }),
  wanted: toggle({
    label: "Wanted here",
    help: "Off: a distant transmitter that nobody here wants. It disturbs what shares its channel and is not missed.",
    default: true,
    means: "wanted here",
  }),
});

/** Direction and pattern with which nothing is taken off. */
export const AS_LISTED = "listed";
export const ALL_ROUND = "round";
export const OWN_BEAM = "beam";

const TURNED = { aim: "bearing" } as const;

/** Where an aerial looks, and how sharply. */
export const aimFields = () => ({
  aim: choice({
    label: "Direction",
    help: "As listed: levels hold as it is aimed now. By bearing: levels hold for an aerial turned to each transmitter, and its pattern takes off the rest.",
    choices: [
      { value: AS_LISTED, label: "As listed" },
      { value: "bearing", label: "By bearing" },
    ],
    default: AS_LISTED,
    means: "aim",
    onSite: "not ours",
  }),
  bearingDeg: number({
    label: "Bearing of the aerial",
    unit: "°",
    help: "Where it points, clockwise from north.",
    min: 0,
    max: 359,
    step: 1,
    default: 0,
    means: "bearing",
    onSite: "aligning",
    onlyWhen: { ...TURNED, pattern: ["reference", OWN_BEAM] },
  }),
  polarisation: choice({
    label: "Polarisation",
    help: "How its elements lie. The other polarisation comes in 16 dB weaker at all angles, direction included.",
    choices: [
      { value: "H", label: "Horizontal" },
      { value: "V", label: "Vertical" },
    ],
    default: "H",
    source: "16 dB: Recommendation ITU-R BT.419-3, from memory",
    means: "polarisation",
    onSite: "aligning",
    onlyWhen: TURNED,
  }),
  pattern: choice({
    label: "Pattern",
    choices: [
      { value: "reference", label: "Reference aerial of the ITU" },
      { value: OWN_BEAM, label: "Beam width and front-to-back ratio" },
      { value: ALL_ROUND, label: "All directions alike" },
    ],
    default: "reference",
    means: "pattern",
    source: "Recommendations ITU-R BT.419-3 (TV, DAB) and BS.599 (FM), as quoted in public implementations",
    onlyWhen: TURNED,
  }),
  beamWidthDeg: number({
    label: "Beam width",
    unit: "°",
    help: "Between the points where it receives 3 dB less than along its axis.",
    min: 10,
    max: 180,
    step: 1,
    default: 45,
    source: MEMORY,
    means: "beam width",
    onlyWhen: { ...TURNED, pattern: OWN_BEAM },
  }),
  frontToBackDb: number({
    label: "Front-to-back ratio",
    unit: "dB",
    help: "How much less it receives from behind.",
    min: 0,
    max: 40,
    step: 1,
    default: 20,
    source: MEMORY,
    spreadDb: 2,
    means: "front to back",
    onlyWhen: { ...TURNED, pattern: OWN_BEAM },
  }),
});

export type AimOptions = z.output<z.ZodObject<ReturnType<typeof aimFields>>>;
export type TransmitterRow = z.output<z.ZodObject<ReturnType<typeof transmitterRow>>>;

/** What an aerial loses of a transmitter by where it points and how its elements lie [dB, positive]. */
export function aimLossDb(
  aerial: AimOptions,
  row: Pick<TransmitterRow, "bearingDeg" | "polarisation">,
  band: PatternBand,
): number {
  if (aerial.aim === AS_LISTED) return 0;
  const angleDeg = bearingDifferenceDeg(aerial.bearingDeg, row.bearingDeg);
  const orthogonal = row.polarisation !== "like" && row.polarisation !== aerial.polarisation;
  return withPolarisationDb(directionLossDb(aerial, angleDeg, band), orthogonal);
}

function directionLossDb(aerial: AimOptions, angleDeg: number, band: PatternBand): number {
  switch (aerial.pattern) {
    case "reference":
      return referenceDiscriminationDb(band, angleDeg);
    case OWN_BEAM:
      return beamDiscriminationDb({ ...aerial, angleDeg });
    case ALL_ROUND:
      return 0;
  }
}

/** A transmitter's name as it is shown: without stray blanks and signs that nobody sees. */
export function transmitterName(name: string): string {
  return name.replaceAll(/[\s\p{Cc}\p{Cf}]+/gu, " ").trim();
}

/** A transmitter's name as it is compared: "Hill" and " hill" are one. */
export function transmitterKey(name: string): string {
  return transmitterName(name).toLowerCase();
}
