/** Hand-over point of a cable network: where its channels come into the house. */
import { z } from "zod";
import type { Grid } from "../signal/band.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { levelOffset } from "./aerialLevel.ts";
import { channelCount } from "./aerialTelevision.ts";
import { define } from "./contract.ts";
import { choice, number, rows } from "./fields.ts";
import { modeChoices } from "./modeChoices.ts";
import { coaxOut } from "./passive.ts";
import { cableCarrier, DEFAULT_CABLE_ROWS } from "./plans.ts";
import { bandOfQuality } from "./signalQuality.ts";

const OPTIONS = z.object({
  levelDbuv: number({
    label: "Level",
    unit: "dBµV",
    help: "Of each channel at the hand-over point; measured, or what the network’s operator promises.",
    min: 0,
    max: 110,
    step: 0.5,
    default: 70,
    source: "plausible, no source; measure yours",
    means: "source level",
    onSite: "not ours",
    spreadDb: 2,
  }),
  cnDb: number({
    label: "C/N",
    unit: "dB",
    help: "At the hand-over point: what the network has already added in noise.",
    min: 10,
    max: 60,
    step: 0.5,
    default: 40,
    source: "typical of a sound network, from memory",
    onSite: "not ours",
    spreadDb: 1,
  }),
  channels: rows({
    label: "Channels",
    help: "Digital channels of the network by their centre, 8 MHz apart.",
    row: z.object({
      frequencyMHz: number({
        label: "Centre",
        unit: "MHz",
        min: 51,
        max: 1002,
        step: 0.5,
        default: 330,
      }),
      mode: choice({
        label: "Modulation",
        help: "Decides the C/N that the channel needs.",
        choices: modeChoices("dvbc-"),
        default: "dvbc-256qam",
      }),
      levelOffsetDb: levelOffset(),
    }),
    maxRows: 200,
    default: DEFAULT_CABLE_ROWS,
    source: "invented list",
    onSite: "not ours",
  }),
});

const grids = new WeakMap<object, Grid>();

export const CABLE_ENTRY = define({
  kind: "cable-entry",
  family: "receive",
  name: "Cable hand-over point",
  summary: "Where a cable network comes into the house; lists its digital channels, their level and C/N.",
  keywords: [
    "DVB-C",
    "cable television",
    "CATV",
    "hand-over",
    "network",
    "QAM",
    "head end",
    "transmodulator",
  ],
  prefix: "cabletv",
  trade: { job: "signal source", price: 0, workMinutes: 0, isRare: true },
  options: OPTIONS,
  symbol: "cable-entry",
  caption: (o) => `${channelCount(o.channels.length)} · ${numeralAsSet(o.levelDbuv)} dBµV`,
  ports: () => [coaxOut("out")],
  signal: (o, { id }) => ({
    emits: [
      {
        port: "out",
        bands:
          o.channels.length === 0
            ? []
            : [
                bandOfQuality({
                  origin: { key: id, service: "tv", part: id },
                  grid: remembered(grids, o.channels, () => makeGrid(o.channels.map(cableCarrier))),
                  levelDbuv: (entry) => o.levelDbuv + (o.channels[entry]?.levelOffsetDb ?? 0),
                  cnDb: o.cnDb,
                }),
              ],
      },
    ],
  }),
  cautions: ["bonding"],
});
