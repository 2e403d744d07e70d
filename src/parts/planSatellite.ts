/** Transponder plans of satellites: Ku band (10.70–12.75 GHz), C band and Ka band. */
import type { Band } from "../signal/band.ts";
import type { Carrier, SkyHalf, Wave } from "../signal/carrier.ts";

/** Lower end, upper end, and the frequency at which a universal converter changes over [MHz] (EN 61319-1). */
export const SKY_FROM_MHZ = 10_700;
export const SKY_TO_MHZ = 12_750;
export const SKY_SPLIT_MHZ = 11_700;

/** Bands in which satellites are received; a universal LNB is made for Ku band. */
export type SatelliteBand = "C" | "Ku" | "Ka";

/**
 * Where satellites send to fixed dishes [MHz]: C band with its extension up to 4.8 GHz, Ku band as above, Ka band with the
 * part up to 22 GHz (allocations of the Radio Regulations, from memory).
 */
export const SATELLITE_BANDS: Readonly<
  Record<SatelliteBand, { readonly fromMHz: number; readonly toMHz: number }>
> = {
  C: { fromMHz: 3_400, toMHz: 4_800 },
  Ku: { fromMHz: SKY_FROM_MHZ, toMHz: SKY_TO_MHZ },
  Ka: { fromMHz: 17_300, toMHz: 22_000 },
};

/** The band that a frequency on air lies in: Ku band where it is in neither of the others. */
export function satelliteBandOf(airMHz: number): SatelliteBand {
  const { C, Ka } = SATELLITE_BANDS;
  if (airMHz >= C.fromMHz && airMHz <= C.toMHz) return "C";
  return airMHz >= Ka.fromMHz && airMHz <= Ka.toMHz ? "Ka" : "Ku";
}

/** The band that a signal comes from, wherever it lies now, on a single-cable feed as well; one dish has one band. */
export function satelliteBandOn({ grid, stack }: Pick<Band, "grid" | "stack">): SatelliteBand {
  if (stack) {
    const [held] = stack.holds;
    return held ? satelliteBandOn(held) : "Ku";
  }
  return satelliteBandOf(grid.plan[grid.index[0] ?? 0]?.airMHz ?? SKY_FROM_MHZ);
}

/** Half that a receiver asks for to get a frequency on air: only Ku band has a high one, by 22 kHz. */
export function skyHalfOf(airMHz: number): SkyHalf {
  return satelliteBandOf(airMHz) === "Ku" && airMHz >= SKY_SPLIT_MHZ ? "high" : "low";
}

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

type PlainRow = {
  readonly polarisation: Wave;
  readonly firstMHz: number;
  readonly stepMHz: number;
  readonly count: number;
};

function rowsOf({ polarisation, firstMHz, stepMHz, count }: PlainRow) {
  return Array.from({ length: count }, (_, n) => ({
    frequencyMHz: firstMHz + stepMHz * n,
    polarisation,
    mode: n % 2 === 0 ? "dvbs-qpsk-3/4" : "dvbs2-8psk-2/3",
  }));
}

/**
 * C band: twice twelve transponders 40 MHz apart from 3720 MHz, the second polarisation 20 MHz beside the first, as many
 * satellites of this band have them (from memory).
 */
export const DEFAULT_C_TRANSPONDERS = [
  ...rowsOf({ polarisation: "V", firstMHz: 3_720, stepMHz: 40, count: 12 }),
  ...rowsOf({ polarisation: "H", firstMHz: 3_740, stepMHz: 40, count: 12 }),
];

/** Ka band: twice twelve transponders from 19.7 to 20.2 GHz, circular. Invented. */
export const DEFAULT_KA_TRANSPONDERS = [
  ...rowsOf({ polarisation: "R", firstMHz: 19_725, stepMHz: 40, count: 12 }),
  ...rowsOf({ polarisation: "L", firstMHz: 19_745, stepMHz: 40, count: 12 }),
];
