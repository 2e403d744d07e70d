/** Transponder plan of a satellite in the 10.70–12.75 GHz band. */
import type { Carrier, Wave } from "../signal/carrier.ts";

/** Lower end, upper end, and the frequency at which a universal converter changes over [MHz] (EN 61319-1). */
export const SKY_FROM_MHZ = 10_700;
export const SKY_TO_MHZ = 12_750;
export const SKY_SPLIT_MHZ = 11_700;

/**
 * Roll-off factors: DVB-S has 0.35 only (EN 300 421), DVB-S2 down to 0.20 (EN 302 307-1), DVB-S2X also 0.15, 0.10
 * and 0.05 (EN 302 307-2), from memory.
 * A transponder occupies symbol rate · (1 + roll-off); its noise counts in the symbol rate.
 */
export const ROLL_OFFS = ["0.35", "0.25", "0.20", "0.15", "0.10", "0.05"] as const;

export type TransponderRow = {
  readonly frequencyMHz: number;
  readonly polarisation: Wave;
  readonly symbolRateMsps: number;
  readonly mode: string;
  readonly rollOff: (typeof ROLL_OFFS)[number];
};

export function transponder(row: TransponderRow): Carrier {
  return {
    name: `${grouped(row.frequencyMHz)} ${row.polarisation}`,
    airMHz: row.frequencyMHz,
    widthMHz: row.symbolRateMsps * (1 + Number(row.rollOff)),
    noiseMHz: row.symbolRateMsps,
    mode: row.mode,
  };
}

/** 10714.25 as "10 714.25". */
function grouped(frequencyMHz: number): string {
  const thousands = Math.floor(frequencyMHz / 1000);
  const rest = Math.round((frequencyMHz - thousands * 1000) * 100) / 100;
  const [whole = "0", fraction] = String(rest).split(".");
  return `${thousands}\u202f${whole.padStart(3, "0")}${fraction ? `.${fraction}` : ""}`;
}

/**
 * Four regular rows of twenty transponders, one for each quadrant. Invented: real satellites are less
 * regular. No carrier straddles 11 700 MHz or leaves the band, whichever roll-off it has.
 */
const QUADRANT_ROWS = [
  { polarisation: "V", firstMHz: 10_729, stepMHz: 48 },
  { polarisation: "H", firstMHz: 10_753, stepMHz: 48 },
  { polarisation: "V", firstMHz: 11_727, stepMHz: 50 },
  { polarisation: "H", firstMHz: 11_752, stepMHz: 50 },
] as const;
const PER_QUADRANT = 20;

/** The default plan: 80 transponders of 27.5 MBd, DVB-S and DVB-S2 by turns. */
export const DEFAULT_TRANSPONDERS = QUADRANT_ROWS.flatMap(({ polarisation, firstMHz, stepMHz }) =>
  Array.from({ length: PER_QUADRANT }, (_, n) => ({
    frequencyMHz: firstMHz + stepMHz * n,
    polarisation,
    mode: n % 2 === 0 ? "dvbs-qpsk-3/4" : "dvbs2-8psk-2/3",
  })),
);
