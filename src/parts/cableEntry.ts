/** Hand-over point of a cable network: where its channels come into the house. */
import { z } from "zod";
import type { Grid } from "../signal/band.ts";
import { makeGrid } from "../signal/grid.ts";
import { remembered } from "../signal/remember.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { levelOffset } from "./aerialLevel.ts";
import { channelCount } from "./aerialTelevision.ts";
import { define } from "./contract.ts";
import { choice, number, rows } from "./fields.ts";
import { modeChoices } from "./modeChoices.ts";
import { coaxOut } from "./passive.ts";
import { cableCarrier, DEFAULT_CABLE_ROWS } from "./plans.ts";
import { bandOfQuality } from "./signalQuality.ts";
import type { ChannelMHz } from "./tvRasters.ts";

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
  channelMHz: choice({
    label: "Channel width",
    help: "Decides the symbol rate, and with it how much noise counts in a channel.",
    choices: [
      { value: "8", label: `8 MHz (${numeral(6.9)} MBd)` },
      { value: "7", label: `7 MHz (${numeral(6.04, 2)} MBd)` },
      { value: "6", label: `6 MHz (${numeral(5.217, 3)} MBd)` },
    ],
    default: "8",
    source: "usual symbol rates of 8 and 6 MHz as in public channel lists; of 7 MHz in proportion",
    onSite: "not ours",
    advanced: true,
  }),
  channels: rows({
    label: "Channels",
    help: "Digital channels of the network by their centre, as far apart as a channel is wide.",
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

const WIDTHS: Readonly<Record<"8" | "7" | "6", ChannelMHz>> = { 8: 8, 7: 7, 6: 6 };

type Rows = z.output<typeof OPTIONS>["channels"];

const grids = new WeakMap<Rows, Map<keyof typeof WIDTHS, Grid>>();

/** Worked out once per list and width, so that changing a level keeps the grid. */
function gridOf(channels: Rows, width: keyof typeof WIDTHS): Grid {
  const byWidth = remembered(grids, channels, () => new Map<keyof typeof WIDTHS, Grid>());
  return remembered(byWidth, width, () => makeGrid(channels.map((row) => cableCarrier(row, WIDTHS[width]))));
}

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
                  grid: gridOf(o.channels, o.channelMHz),
                  levelDbuv: (entry) => o.levelDbuv + (o.channels[entry]?.levelOffsetDb ?? 0),
                  cnDb: o.cnDb,
                }),
              ],
      },
    ],
  }),
  cautions: ["bonding"],
});
