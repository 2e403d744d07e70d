/** Rasters of television channels: which number stands where, and how wide a channel is, by the part of the world. */
import { numeral } from "../words/numbers.ts";
import { choice } from "./fields.ts";
import type { OnSite } from "./optionTrade.ts";

/** Width of a television channel [MHz]. */
export type ChannelMHz = 6 | 7 | 8;

/** How wide channels are in Band III and in UHF. */
export type TvRaster = { readonly vhfMHz: ChannelMHz; readonly uhfMHz: ChannelMHz };

/** Europe, Africa, most of Asia (Geneva 2006 plan). */
export const EUROPEAN: TvRaster = { vhfMHz: 7, uhfMHz: 8 };

/** Lowest and highest number of a UHF channel in any raster. */
export const LOWEST_UHF_CHANNEL = 14;
/** The same of Band III; above it numbers are of UHF in every raster. */
export const HIGHEST_VHF_CHANNEL = 13;

type Numbered = { readonly channel: number; readonly centreMHz: number; readonly letter: string };

/**
 * One channel of each raster in UHF. 8 MHz: Geneva 2006 plan, 21 is 470 to 478 MHz, from memory. 7 MHz: Australia, 28 is
 * 526 to 533 MHz; 6 MHz: the Americas and Taiwan, 14 is 470 to 476 MHz; both as in public channel tables.
 */
const UHF: Readonly<Record<ChannelMHz, Numbered>> = {
  8: { channel: 21, centreMHz: 474, letter: "C" },
  7: { channel: 28, centreMHz: 529.5, letter: "C" },
  6: { channel: 14, centreMHz: 473, letter: "C" },
};

/**
 * One channel of each raster in Band III. 7 MHz: Geneva 2006 plan, 5 is 174 to 181 MHz, from memory. 6 MHz: the Americas,
 * 7 is 174 to 180 MHz, as in public channel tables. 8 MHz: Eastern Europe, 6 is 174 to 182 MHz, from memory.
 */
const VHF: Readonly<Record<ChannelMHz, Numbered>> = {
  7: { channel: 5, centreMHz: 177.5, letter: "E" },
  6: { channel: 7, centreMHz: 177, letter: "C" },
  8: { channel: 6, centreMHz: 178, letter: "R" },
};

/**
 * Occupied width of DVB-T and DVB-T2 in a channel [MHz]: 6817 carriers, 1116 Hz apart in 8 MHz and closer in proportion
 * (EN 300 744, from memory).
 */
const OCCUPIED_MHZ: Readonly<Record<ChannelMHz, number>> = { 8: 7.61, 7: 6.66, 6: 5.71 };

export type TvChannel = {
  /** "C23", "E7". */
  readonly name: string;
  readonly centreMHz: number;
  readonly channelMHz: ChannelMHz;
  /** What a signal from the air fills of it [MHz]. */
  readonly occupiedMHz: number;
};

/** A channel by its number; a number that its raster does not have lies where it would stand. */
export function tvChannel(channel: number, raster: TvRaster): TvChannel {
  const isVhf = channel <= HIGHEST_VHF_CHANNEL;
  const channelMHz = isVhf ? raster.vhfMHz : raster.uhfMHz;
  const numbered = (isVhf ? VHF : UHF)[channelMHz];
  return {
    name: `${numbered.letter}${channel}`,
    centreMHz: numbered.centreMHz + channelMHz * (channel - numbered.channel),
    channelMHz,
    occupiedMHz: OCCUPIED_MHZ[channelMHz],
  };
}

/** Number that tells a channel from those of all rasters: the same frequency of one transmitter has the same. */
export function channelEntry(channel: number, raster: TvRaster): number {
  const isVhf = channel <= HIGHEST_VHF_CHANNEL;
  const { channelMHz } = tvChannel(channel, raster);
  return channelMHz === (isVhf ? EUROPEAN.vhfMHz : EUROPEAN.uhfMHz) ? channel : 100 * channelMHz + channel;
}

/** The UHF channel whose centre lies nearest to that of a signal, in the raster that it fills. */
export function uhfChannelOf(signal: { readonly centreMHz: number; readonly widthMHz: number }): {
  readonly channel: number;
  readonly raster: UhfRaster;
} {
  const raster = UHF_RASTERS.find((key) => signal.widthMHz <= OCCUPIED_MHZ[WIDTHS[key]] + 0.1) ?? "8";
  const channelMHz = WIDTHS[raster];
  const { channel, centreMHz } = UHF[channelMHz];
  return { channel: Math.round(channel + (signal.centreMHz - centreMHz) / channelMHz), raster };
}

/** Rasters by the width of their UHF channels, as options name them, the narrowest first. */
export const UHF_RASTERS = ["6", "7", "8"] as const;
export type UhfRaster = (typeof UHF_RASTERS)[number];

const WIDTHS: Readonly<Record<UhfRaster, ChannelMHz>> = { 6: 6, 7: 7, 8: 8 };

/** Raster of a part for both bands: 6 MHz in both, else 7 MHz in Band III. */
export function rasterOf(uhf: UhfRaster): TvRaster {
  return { vhfMHz: uhf === "6" ? 6 : 7, uhfMHz: WIDTHS[uhf] };
}

/** Raster of an aerial for Band III. */
export function vhfRasterOf(vhf: UhfRaster): TvRaster {
  return { ...EUROPEAN, vhfMHz: WIDTHS[vhf] };
}

const example = (of: Readonly<Record<ChannelMHz, Numbered>>, width: UhfRaster) => {
  const { channel, centreMHz } = of[WIDTHS[width]];
  return { value: width, label: `${width} MHz (${channel} is ${numeral(centreMHz)} MHz)` };
};

/** Option of a part that is set to UHF channels. */
export function rasterField(onSite: OnSite) {
  return choice<UhfRaster>({
    label: "Channel raster",
    help: "How wide channels are, and which number stands where: a matter of the country. Alike in aerials, filters and amplifiers.",
    choices: [example(UHF, "8"), example(UHF, "7"), example(UHF, "6")],
    default: "8",
    source:
      "8 MHz: Geneva 2006 plan, from memory; 7 MHz (Australia) and 6 MHz (the Americas): public channel tables",
    means: "channel raster",
    onSite,
    advanced: true,
  });
}

/** Option of an aerial for Band III. */
export const VHF_RASTER_FIELD = choice<UhfRaster>({
  label: "Channel raster",
  help: "How wide channels are, and which number stands where. Australia counts 6, 7, 8, 9, 9A, 10, 11, 12 where 5 to 12 stand here.",
  choices: [example(VHF, "7"), example(VHF, "8"), example(VHF, "6")],
  default: "7",
  source:
    "7 MHz: Geneva 2006 plan; 8 MHz: Eastern Europe; both from memory; 6 MHz (the Americas): public channel tables",
  means: "channel raster",
  onSite: "not ours",
  advanced: true,
});
