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
  tvCarrier,
} from "./plans.ts";
import { bandOfQuality } from "./signalQuality.ts";

/** Range over which it makes noise beside its channel [MHz]: 102 channels of 8 MHz, from 46 to 862. */
const NOISE = { fromMHz: 46, toMHz: 862, sliceMHz: 8 } as const;

const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

const CHANNELS = [
  ...range(FIRST_VHF_CHANNEL, LAST_VHF_CHANNEL),
  ...range(FIRST_UHF_CHANNEL, LAST_FORMER_UHF_CHANNEL),
].map((channel) => {
  const { name, airMHz } = tvCarrier({ channel, mode: "" });
  return { value: String(channel), label: `${name} · ${numeral(airMHz)} MHz` };
});

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
    channel: choice({
      label: "Channel",
      help: "Must be free on the network, and best not beside a weak one.",
      choices: CHANNELS,
      default: "42",
      means: "own channel",
      onSite: "setting",
    }),
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
  caption: (o) => (o.switchedOn ? `channel ${o.channel} · ${numeralAsSet(o.levelDbuv)} dBµV` : "off"),
  ports: () => [coaxOut("out")],
  signal: (o, { id }) => {
    if (!o.switchedOn) return { emits: [{ port: "out", bands: [] }] };
    const origin = { key: id, service: "tv", part: id } as const;
    const carrier = modulatedCarrier({ channel: Number(o.channel), mode: o.mode });
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
