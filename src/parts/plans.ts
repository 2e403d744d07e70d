/**
 * Frequency plans of terrestrial services: which carrier stands where.
 * The default lists are invented; every aerial has its own, which the user edits.
 */
import { type Carrier, isCableMode } from "../signal/carrier.ts";
import { type ChannelMHz, EUROPEAN, type TvRaster, tvChannel } from "./tvRasters.ts";

/** Channels of the present European UHF band (470–694 MHz), and the last one of the former band (to 862 MHz). */
export const FIRST_UHF_CHANNEL = 21;
export const LAST_FORMER_UHF_CHANNEL = 69;

/** European television channels of Band III (174–230 MHz), 7 MHz apart. */
export const FIRST_VHF_CHANNEL = 5;
export const LAST_VHF_CHANNEL = 12;

/** A TV channel by its number: Band III up to 13, UHF above. */
export function tvCarrier(row: { channel: number; mode: string }, raster: TvRaster = EUROPEAN): Carrier {
  const { name, centreMHz, occupiedMHz } = tvChannel(row.channel, raster);
  return { name, airMHz: centreMHz, widthMHz: occupiedMHz, noiseMHz: occupiedMHz, mode: row.mode };
}

/** Edges of a TV channel [MHz]. */
export function tvChannelEdges(
  channel: number,
  raster: TvRaster = EUROPEAN,
): { readonly fromMHz: number; readonly toMHz: number } {
  const { centreMHz, channelMHz } = tvChannel(channel, raster);
  return { fromMHz: centreMHz - channelMHz / 2, toMHz: centreMHz + channelMHz / 2 };
}

/**
 * Upper edge of terrestrial TV where channels are 8 or 7 MHz wide [MHz]: channel 48 in Europe since the 700 MHz band went
 * to phones (Decision (EU) 2017/899, from memory), and channel 51 in Australia (from memory).
 */
const BAND_EDGE_MHZ = 694;
/** The same of channels of 6 MHz: channel 51 in Latin America, from memory; some countries end earlier. */
const BAND_EDGE_OF_6_MHZ = 698;

/** Where terrestrial TV ends, by the width of a channel or of what fills it [MHz]. */
export function bandEdgeMHz(widthMHz: number): number {
  return widthMHz > 6 ? BAND_EDGE_MHZ : BAND_EDGE_OF_6_MHZ;
}

/** A channel of a list that nobody sends by any more where phones are now. */
export function tvCarrierOnAir(row: { channel: number; mode: string }, raster: TvRaster): Carrier {
  const carrier = tvCarrier(row, raster);
  return carrier.airMHz > bandEdgeMHz(carrier.widthMHz) ? { ...carrier, former: true } : carrier;
}

/**
 * Usual symbol rate of cable television by the width of a channel [MBd]: 6.9 in 8 MHz, in 7 MHz as much less, and
 * 5.217 in 6 MHz, where 6 MHz is all that its roll-off fills (networks in the Debian package dtv-scan-tables).
 */
const CABLE_MBD: Readonly<Record<ChannelMHz, number>> = { 8: 6.9, 7: (6.9 * 7) / 8, 6: 5.217 };
/** What the roll-off adds to the symbol rate (EN 300 429, from memory). */
const CABLE_ROLL_OFF = 0.15;

/** What a modulator sends in a TV channel: as from the air, or as a cable network does. */
export function modulatedCarrier(
  row: { channel: number; mode: string },
  raster: TvRaster = EUROPEAN,
): Carrier {
  const onAir = tvCarrier(row, raster);
  if (!isCableMode(row.mode)) return onAir;
  const symbols = CABLE_MBD[tvChannel(row.channel, raster).channelMHz];
  return { ...onAir, widthMHz: symbols * (1 + CABLE_ROLL_OFF), noiseMHz: symbols };
}

/** A channel of a cable network; noise counts in the bandwidth of the symbol rate. */
export function cableCarrier(
  row: { frequencyMHz: number; mode: string },
  channelMHz: ChannelMHz = 8,
): Carrier {
  const symbols = CABLE_MBD[channelMHz];
  return {
    name: `${row.frequencyMHz} MHz`,
    airMHz: row.frequencyMHz,
    widthMHz: symbols * (1 + CABLE_ROLL_OFF),
    noiseMHz: symbols,
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
