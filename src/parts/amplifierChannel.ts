/** Channel amplifiers: each channel filtered out, amplified by itself and held at a level. */
import { z } from "zod";
import { flat, series } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { noiseFigureDb, outputDbuv, TV_RATIO_DB, UNPOWERED_GAIN } from "./amplifierFields.ts";
import { define, type Path } from "./contract.ts";
import { number, rows, wholeNumber } from "./fields.ts";
import { INLINE, MAINS_ON, MEMORY, passing, THROUGH_PORTS } from "./passive.ts";
import { DEFAULT_TV_ROWS, FIRST_VHF_CHANNEL, LAST_FORMER_UHF_CHANNEL, tvChannelEdges } from "./plans.ts";
import { rasterField, rasterOf } from "./tvRasters.ts";

/** How well a channel filter keeps out what lies well beside it [dB]; typical, from memory. */
const SELECTION_DB = 50;

/** With no channel in its list nothing passes. */
const CLOSED: Path = { from: "in", to: "out", response: flat(0), takes: { fromMHz: 0, toMHz: 0 } };

export const CHANNEL_AMPLIFIER = define({
  kind: "amp-channel",
  family: "lift",
  name: "Channel amplifier",
  summary:
    "Mains unit that takes the listed TV channels out of the line, holds each at its level and stops all else.",
  keywords: ["channel processor", "selective", "AGC", "levelling", "headend", "programmable", "mains"],
  prefix: "chanamp",
  trade: { job: "amplifier", price: 250, workMinutes: 60, inItsPlace: "coupler", isRare: true },
  options: z.object({
    levelDbuv: number({
      label: "Output level",
      unit: "dBµV",
      help: "At which every channel is held, whatever comes in.",
      min: 60,
      max: 125,
      step: 1,
      default: 90,
      source: MEMORY,
      means: "output level",
      onSite: "setting",
      turnsBy: 1,
      spreadDb: 1,
    }),
    mostGainDb: number({
      label: "Most gain",
      unit: "dB",
      help: "A channel that comes in weaker than level less gain does not reach its level.",
      min: 10,
      max: 80,
      step: 1,
      default: 50,
      source: MEMORY,
      spreadDb: 2,
    }),
    noiseFigureDb: noiseFigureDb(7),
    outputDbuv: outputDbuv(115, TV_RATIO_DB),
    channels: rows({
      label: "Channels",
      help: "What it takes: channels of Band III by numbers up to 13, and of UHF from there on.",
      row: z.object({
        channel: wholeNumber({
          label: "Channel",
          min: FIRST_VHF_CHANNEL,
          max: LAST_FORMER_UHF_CHANNEL,
          default: 21,
        }),
        levelOffsetDb: number({
          label: "Level offset",
          unit: "dB",
          help: "How far this channel is held above or below the common level.",
          min: -30,
          max: 10,
          step: 0.5,
          default: 0,
        }),
      }),
      maxRows: 64,
      default: DEFAULT_TV_ROWS.map(({ channel }) => ({ channel })),
      source: "the channels of a new aerial in this program",
      onSite: "setting",
      means: "channel list",
    }),
    raster: rasterField("setting"),
    switchedOn: MAINS_ON,
  }),
  symbol: "amplifier-channel",
  caption: (o) =>
    o.switchedOn
      ? `${plural(o.channels.length, { one: (n) => `${n} channel`, other: (n) => `${n} channels` })} · ${numeralAsSet(o.levelDbuv)} dBµV`
      : "off",
  ports: () => THROUGH_PORTS,
  signal: (o) => {
    const taken = new Map(o.channels.map((row) => [row.channel, row]));
    const paths = [...taken.values()].map(({ channel, levelOffsetDb }): Path => {
      const edges = tvChannelEdges(channel, rasterOf(o.raster));
      const way = { from: "in", to: "out", takes: edges };
      const filter = passing([edges], SELECTION_DB);
      if (!o.switchedOn) return { ...way, response: series(UNPOWERED_GAIN, filter) };
      return {
        ...way,
        response: series(flat(0), filter),
        noiseFigureDb: o.noiseFigureDb,
        rating: { outputDbuv: o.outputDbuv, ratioDb: TV_RATIO_DB },
        levelControl: { outputDbuv: o.levelDbuv + levelOffsetDb, mostGainDb: o.mostGainDb },
      };
    });
    return { paths: paths.length > 0 ? paths : [CLOSED] };
  },
  power: (o) => ({ selfPowered: o.switchedOn }),
  inline: INLINE,
  cautions: ["mains", "bonding"],
});
