/** A modulator: puts one TV channel of one's own onto the network. */
import { z } from "zod";
import { makeGrid } from "../signal/grid.ts";
import { noiseBeside } from "../signal/treat.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { define } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { modeChoices } from "./modeChoices.ts";
import { coaxOut, MAINS_ON, MEMORY } from "./passive.ts";
import {
  FIRST_UHF_CHANNEL,
  FIRST_VHF_CHANNEL,
  LAST_FORMER_UHF_CHANNEL,
  LAST_VHF_CHANNEL,
  modulatedCarrier,
} from "./plans.ts";
import { bandOfQuality } from "./signalQuality.ts";
import {
  HIGHEST_VHF_CHANNEL,
  LOWEST_UHF_CHANNEL,
  rasterField,
  rasterOf,
  tvChannel,
  type UhfRaster,
} from "./tvRasters.ts";

/** Range over which it makes noise beside its channel [MHz]: 102 channels of 8 MHz, from 46 to 862. */
const NOISE = { fromMHz: 46, toMHz: 862, sliceMHz: 8 } as const;

const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

/** Channels of a raster as choices; the lowest of UHF by the raster, the highest 69 in all of them. */
function channelsOf(uhf: UhfRaster, lowest: number) {
  const vhf = uhf === "6" ? range(7, HIGHEST_VHF_CHANNEL) : range(FIRST_VHF_CHANNEL, LAST_VHF_CHANNEL);
  return [...vhf, ...range(lowest, LAST_FORMER_UHF_CHANNEL)].map((channel) => {
    const { name, centreMHz } = tvChannel(channel, rasterOf(uhf));
    return { value: String(channel), label: `${name} · ${numeral(centreMHz)} MHz` };
  });
}

const channelField = (o: { raster: UhfRaster; label: string; lowest: number; value: string }) =>
  choice({
    label: o.label,
    help: "Must be free on the network, and best not beside a weak one.",
    choices: channelsOf(o.raster, o.lowest),
    default: o.value,
    means: "own channel",
    onSite: "setting",
    onlyWhen: { raster: o.raster },
  });

/** The channel that counts: each raster has numbers of its own. */
function channelSet(o: {
  readonly raster: UhfRaster;
  readonly channel: string;
  readonly channel7: string;
  readonly channel6: string;
}): string {
  return { 8: o.channel, 7: o.channel7, 6: o.channel6 }[o.raster];
}

export const MODULATOR = define({
  kind: "modulator",
  family: "receive",
  name: "Modulator",
  summary: "Puts a picture of your own, from a camera or player, onto the network as a TV channel.",
  keywords: [
    "HDMI",
    "camera",
    "DVB-T",
    "DVB-C",
    "headend",
    "head end",
    "transmodulator",
    "own channel",
    "RF",
  ],
  prefix: "mod",
  trade: { job: "signal source", price: 150, workMinutes: 30, isRare: true },
  options: z.object({
    channel: channelField({ raster: "8", label: "Channel", lowest: FIRST_UHF_CHANNEL, value: "42" }),
    channel7: channelField({ raster: "7", label: "Channel of 7 MHz", lowest: 28, value: "42" }),
    channel6: channelField({
      raster: "6",
      label: "Channel of 6 MHz",
      lowest: LOWEST_UHF_CHANNEL,
      value: "42",
    }),
    raster: rasterField("setting"),
    mode: choice({
      label: "Modulation",
      help: "Decides the C/N that the channel needs.",
      choices: modeChoices("dvbt-", "dvbc-"),
      default: "dvbt-64qam-7/8",
      onSite: "setting",
    }),
    levelDbuv: number({
      label: "Output level",
      unit: "dBµV",
      min: 40,
      max: 120,
      step: 1,
      default: 80,
      source: MEMORY,
      means: "output level",
      onSite: "setting",
      turnsBy: 1,
      spreadDb: 1,
    }),
    merDb: number({
      label: "MER",
      unit: "dB",
      help: "How clean its own channel is.",
      min: 15,
      max: 50,
      step: 1,
      default: 35,
      source: MEMORY,
      spreadDb: 1,
    }),
    noiseDbc: number({
      label: "Noise beside its channel",
      unit: "dB",
      help: "How far below its level the noise lies that it puts into each other channel of 8 MHz.",
      min: 20,
      max: 100,
      step: 1,
      default: 65,
      source: MEMORY,
      spreadDb: 3,
    }),
    switchedOn: MAINS_ON,
  }),
  symbol: "modulator",
  caption: (o) => (o.switchedOn ? `channel ${channelSet(o)} · ${numeralAsSet(o.levelDbuv)} dBµV` : "off"),
  ports: () => [coaxOut("out")],
  signal: (o, { id }) => {
    if (!o.switchedOn) return { emits: [{ port: "out", bands: [] }] };
    const origin = { key: id, service: "tv", part: id } as const;
    const carrier = modulatedCarrier({ channel: Number(channelSet(o)), mode: o.mode }, rasterOf(o.raster));
    // Its own channel and its noise never meet: what lies in the channel is in its MER.
    const bands = [
      bandOfQuality({ origin, grid: makeGrid([carrier]), levelDbuv: () => o.levelDbuv, cnDb: o.merDb }),
      noiseBeside({
        ...NOISE,
        origin: { ...origin, key: `${id}/noise` },
        sliceDbuv: o.levelDbuv - o.noiseDbc,
      }),
    ];
    return { emits: [{ port: "out", bands }] };
  },
  power: (o) => ({ selfPowered: o.switchedOn }),
  cautions: ["mains", "bonding"],
});
