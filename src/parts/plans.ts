/**
 * Frequency plans of terrestrial services: which carrier stands where.
 * The default lists are invented; every aerial has its own, which the user edits.
 */
import { type Carrier, isCableMode } from "../signal/carrier.ts";

/** Channels of the present UHF band (470–694 MHz), and the last one of the former band (to 862 MHz). */
export const FIRST_UHF_CHANNEL = 21;
export const LAST_UHF_CHANNEL = 48;
export const LAST_FORMER_UHF_CHANNEL = 69;

/** Television channels of Band III (174–230 MHz), 7 MHz apart. */
export const FIRST_VHF_CHANNEL = 5;
export const LAST_VHF_CHANNEL = 12;

/** Occupied width of a DVB-T or DVB-T2 signal in an 8 MHz channel, and in one of 7 MHz [MHz] (EN 300 744, from memory). */
const TV_WIDTH_MHZ = 7.61;
const VHF_TV_WIDTH_MHZ = 6.66;

/** Centre of a channel of Band III [MHz]: 177.5 + 7·(N − 5) (Geneva 2006 plan for 7 MHz channels, from memory). */
export function vhfCentreMHz(channel: number): number {
  return 177.5 + 7 * (channel - FIRST_VHF_CHANNEL);
}

/** Centre of a UHF TV channel [MHz]: 306 + 8·N (Geneva 2006 plan for 8 MHz channels, from memory). */
export function uhfCentreMHz(channel: number): number {
  return 306 + 8 * channel;
}

/** The channel whose centre lies nearest. */
export function uhfChannelAt(centreMHz: number): number {
  return Math.round((centreMHz - 306) / 8);
}

/** A TV channel by its number: 5 to 12 in Band III, 21 and above in UHF. */
export function tvCarrier(row: { channel: number; mode: string }): Carrier {
  const isVhf = row.channel <= LAST_VHF_CHANNEL;
  const widthMHz = isVhf ? VHF_TV_WIDTH_MHZ : TV_WIDTH_MHZ;
  return {
    name: `${isVhf ? "E" : "C"}${row.channel}`,
    airMHz: isVhf ? vhfCentreMHz(row.channel) : uhfCentreMHz(row.channel),
    widthMHz,
    noiseMHz: widthMHz,
    mode: row.mode,
  };
}

/** The same of a list that nobody sends by any more above channel 48, where phones are now. */
export function tvCarrierOnAir(row: { channel: number; mode: string }): Carrier {
  const carrier = tvCarrier(row);
  return row.channel > LAST_UHF_CHANNEL ? { ...carrier, former: true } : carrier;
}

/** Edges of a TV channel [MHz]: 7 MHz in Band III, 8 MHz in UHF. */
export function tvChannelEdges(channel: number): { readonly fromMHz: number; readonly toMHz: number } {
  const { airMHz } = tvCarrier({ channel, mode: "" });
  const half = (channel <= LAST_VHF_CHANNEL ? 7 : 8) / 2;
  return { fromMHz: airMHz - half, toMHz: airMHz + half };
}

/** Symbol rate of cable television in 8 MHz channels [MBd], and what its roll-off of 0.15 adds to it (EN 300 429, from memory). */
const CABLE_MBD = 6.9;
const CABLE_ROLL_OFF = 0.15;

/** What a modulator sends in a TV channel: as from the air, or as a cable network does. */
export function modulatedCarrier(row: { channel: number; mode: string }): Carrier {
  const onAir = tvCarrier(row);
  if (!isCableMode(row.mode)) return onAir;
  // In a channel of 7 MHz the symbols are as much slower.
  const symbols = (CABLE_MBD * (row.channel <= LAST_VHF_CHANNEL ? 7 : 8)) / 8;
  return { ...onAir, widthMHz: symbols * (1 + CABLE_ROLL_OFF), noiseMHz: symbols };
}

/** A channel of a cable network; noise counts in the bandwidth of the symbol rate. */
export function cableCarrier(row: { frequencyMHz: number; mode: string }): Carrier {
  return {
    name: `${row.frequencyMHz} MHz`,
    airMHz: row.frequencyMHz,
    widthMHz: CABLE_MBD * (1 + CABLE_ROLL_OFF),
    noiseMHz: CABLE_MBD,
    mode: row.mode,
  };
}

/**
 * Centres of the DAB blocks in band III [kHz] (EN 300 401 / CEPT table, as quoted in public tables).
 * Steps of 1712 kHz within a 7 MHz channel; the last step of channel 13 and the steps between
 * channels differ, so the table is written out.
 */
export const DAB_BLOCKS_KHZ = {
  "5A": 174_928,
  "5B": 176_640,
  "5C": 178_352,
  "5D": 180_064,
  "6A": 181_936,
  "6B": 183_648,
  "6C": 185_360,
  "6D": 187_072,
  "7A": 188_928,
  "7B": 190_640,
  "7C": 192_352,
  "7D": 194_064,
  "8A": 195_936,
  "8B": 197_648,
  "8C": 199_360,
  "8D": 201_072,
  "9A": 202_928,
  "9B": 204_640,
  "9C": 206_352,
  "9D": 208_064,
  "10A": 209_936,
  "10N": 210_096,
  "10B": 211_648,
  "10C": 213_360,
  "10D": 215_072,
  "11A": 216_928,
  "11N": 217_088,
  "11B": 218_640,
  "11C": 220_352,
  "11D": 222_064,
  "12A": 223_936,
  "12N": 224_096,
  "12B": 225_648,
  "12C": 227_360,
  "12D": 229_072,
  "13A": 230_784,
  "13B": 232_496,
  "13C": 234_208,
  "13D": 235_776,
  "13E": 237_488,
  "13F": 239_200,
} as const;

export type DabBlock = keyof typeof DAB_BLOCKS_KHZ;

/** Width of a DAB ensemble [MHz]: 1536 carriers, 1 kHz apart (EN 300 401). */
const DAB_WIDTH_MHZ = 1.536;

export function dabCarrier(row: { block: DabBlock }): Carrier {
  return {
    name: row.block,
    airMHz: DAB_BLOCKS_KHZ[row.block] / 1000,
    widthMHz: DAB_WIDTH_MHZ,
    noiseMHz: DAB_WIDTH_MHZ,
    mode: "dab",
  };
}

/** Width in which an FM station's noise counts, and which it about occupies [MHz] (from memory). */
const FM_WIDTH_MHZ = 0.2;

export function fmCarrier(row: { frequencyMHz: number; mode: string }): Carrier {
  return {
    name: row.frequencyMHz.toFixed(1),
    airMHz: row.frequencyMHz,
    widthMHz: FM_WIDTH_MHZ,
    noiseMHz: FM_WIDTH_MHZ,
    mode: row.mode,
  };
}

/** Six invented multiplexes, spread over the present band. */
export const DEFAULT_TV_ROWS = [
  { channel: 23, mode: "dvbt-64qam-2/3" },
  { channel: 26, mode: "dvbt-64qam-3/4" },
  { channel: 30, mode: "dvbt-64qam-3/4" },
  { channel: 34, mode: "dvbt2-256qam-2/3" },
  { channel: 39, mode: "dvbt2-256qam-2/3" },
  { channel: 45, mode: "dvbt2-256qam-2/3" },
] as const;

/** Three invented ensembles, with enough room between them. */
export const DEFAULT_DAB_ROWS = [{ block: "8B" }, { block: "10D" }, { block: "12A" }] as const;

/** Twelve invented stations, 1.6 MHz apart. */
export const DEFAULT_FM_ROWS = Array.from({ length: 12 }, (_, i) => ({
  frequencyMHz: Math.round((88.3 + 1.6 * i) * 10) / 10,
}));

/** Two invented multiplexes in Band III. */
export const DEFAULT_VHF_ROWS = [
  { channel: 7, mode: "dvbt-64qam-2/3" },
  { channel: 10, mode: "dvbt-64qam-2/3" },
] as const;

/** Sixteen invented channels of a cable network, 256QAM with some 64QAM 6 dB lower, as networks set them (from memory). */
export const DEFAULT_CABLE_ROWS = Array.from({ length: 16 }, (_, i) => ({
  frequencyMHz: 330 + 8 * i,
  mode: i % 4 === 3 ? ("dvbc-64qam" as const) : ("dvbc-256qam" as const),
  levelOffsetDb: i % 4 === 3 ? -6 : 0,
}));
