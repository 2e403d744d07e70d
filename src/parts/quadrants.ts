/** The four quadrants of a satellite as ports, and how a converter takes them out of the sky band. */
import type { Polarisation, Quadrant, SkyHalf } from "../signal/carrier.ts";
import type { Path, Port } from "./contract.ts";
import { choice } from "./fields.ts";
import { SKY_FROM_MHZ, SKY_SPLIT_MHZ, SKY_TO_MHZ } from "./planSatellite.ts";

export type QuadrantPort = {
  readonly port: "vl" | "vh" | "hl" | "hh";
  readonly quadrant: Quadrant;
  readonly polarisation: Polarisation;
  readonly half: SkyHalf;
};

/** In the order of ports everywhere. */
export const QUADRANT_PORTS: readonly QuadrantPort[] = [
  { port: "vl", quadrant: "VL", polarisation: "V", half: "low" },
  { port: "vh", quadrant: "VH", polarisation: "V", half: "high" },
  { port: "hl", quadrant: "HL", polarisation: "H", half: "low" },
  { port: "hh", quadrant: "HH", polarisation: "H", half: "high" },
];

/** Port of a quadrant of the n-th satellite: "vl", and "vl2" for the second. */
export function satellitePort(port: string, satellite: number): string {
  return satellite === 1 ? port : `${port}${satellite}`;
}

/** How many satellite trunks a unit has: four for each position. */
export function trunkCount(words: { readonly label: string; readonly help: string }) {
  return choice({
    ...words,
    choices: [
      { value: "4", label: "4 (one satellite)" },
      { value: "8", label: "8 (two satellites)" },
      { value: "12", label: "12 (three satellites)" },
      { value: "16", label: "16 (four satellites)" },
    ],
    default: "4",
  });
}

/** Inputs for `satellites` times four quadrants. */
export function quadrantInputs(satellites: number): readonly Port[] {
  return upTo(satellites).flatMap((s) =>
    QUADRANT_PORTS.map(({ port, quadrant, polarisation, half }) => ({
      id: satellitePort(port, s),
      side: "in" as const,
      medium: "coax" as const,
      label: satellites > 1 ? `${s} ${quadrant}` : quadrant,
      role: "plane" as const,
      plane: { position: s, polarisation, half },
    })),
  );
}

/** Inputs for `satellites` times two whole polarisations. */
export function polarisationInputs(satellites: number): readonly Port[] {
  return upTo(satellites).flatMap((s) =>
    (["V", "H"] as const).map(
      (polarisation): Port => ({
        id: satellitePort(polarisation.toLowerCase(), s),
        side: "in",
        medium: "coax",
        label: satellites > 1 ? `${s} ${polarisation}` : polarisation,
        role: "plane",
        plane: { position: s, polarisation },
      }),
    ),
  );
}

/** Outputs "out1" to "outn", or just "out" where there is one. */
export function numberedOutputs(count: number): readonly Port[] {
  return upTo(count).map((n) => ({
    id: outputId(n, count),
    side: "out" as const,
    medium: "coax" as const,
    label: count > 1 ? `out ${n}` : "out",
    role: "output" as const,
  }));
}

export function outputId(n: number, count: number): string {
  return count > 1 ? `out${n}` : "out";
}

/** 1, 2, … n. */
export function upTo(n: number): readonly number[] {
  return Array.from({ length: n }, (_, i) => i + 1);
}

/** Local oscillators of a universal converter [MHz] (EN 61319-1, from memory; public converter tables agree). */
export const UNIVERSAL_LOW_LO_MHZ = 9_750;
export const UNIVERSAL_HIGH_LO_MHZ = 10_600;

/** Of an LNB for C band, above the band, and of a usual one for Ka band, below it [MHz] (LNB tables, from memory). */
export const C_BAND_LO_MHZ = 5_150;
export const KA_BAND_LO_MHZ = 18_250;

/** Satellite IF that a universal converter puts out and a receiver tunes [MHz]. */
export const IF_FROM_MHZ = 950;
export const IF_TO_MHZ = 2_150;

/** What a universal converter does to the sky band to get one quadrant at its IF. */
export function quadrantConversion(
  q: QuadrantPort,
  oscillators: { readonly lowLoMHz: number; readonly highLoMHz: number },
): { readonly takes: Required<NonNullable<Path["takes"]>>; readonly loMHz: number } {
  const low = q.half === "low";
  return {
    takes: {
      polarisation: q.polarisation,
      half: q.half,
      fromMHz: low ? SKY_FROM_MHZ : SKY_SPLIT_MHZ,
      toMHz: low ? SKY_SPLIT_MHZ : SKY_TO_MHZ,
    },
    loMHz: low ? oscillators.lowLoMHz : oscillators.highLoMHz,
  };
}

/** What turns a whole polarisation at its wideband IF into one quadrant where a universal receiver looks for it. */
export function quadrantOfWhole(q: QuadrantPort, widebandLoMHz: number): Pick<Path, "takes" | "shiftMHz"> {
  const { takes, loMHz } = quadrantConversion(q, {
    lowLoMHz: UNIVERSAL_LOW_LO_MHZ,
    highLoMHz: UNIVERSAL_HIGH_LO_MHZ,
  });
  return {
    takes: {
      half: q.half,
      fromMHz: takes.fromMHz - widebandLoMHz,
      toMHz: takes.toMHz - widebandLoMHz,
    },
    shiftMHz: widebandLoMHz - loMHz,
  };
}
