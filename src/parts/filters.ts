/** Filters on one line: a band pass or stop, a guard against mobile phones, single channels. */

import { z } from "zod";
import { curve, flat, type Response, series } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { define, type PartKind } from "./contract.ts";
import { choice, number, rows, wholeNumber } from "./fields.ts";
import {
  between,
  dcPass,
  INLINE,
  insertionLoss,
  LINE_POWER,
  MEMORY,
  passing,
  type Range,
  THROUGH_PORTS,
  throughPath,
} from "./passive.ts";
import { LAST_FORMER_UHF_CHANNEL, tvChannelEdges } from "./plans.ts";
import { LOWEST_UHF_CHANNEL, rasterField, rasterOf } from "./tvRasters.ts";

const rejectionDb = number({
  label: "Rejection",
  unit: "dB",
  help: "Far from the edge; beside it a filter manages about 20 dB.",
  min: 5,
  max: 80,
  step: 1,
  default: 40,
  source: MEMORY,
  spreadDb: 5,
});

const linePower = (o: { readonly dcPass: boolean }) => (o.dcPass ? { paths: [LINE_POWER] } : {});

const filter = define({
  kind: "filter",
  family: "join",
  name: "Filter",
  summary: "Lets a range of frequencies through, or stops it.",
  keywords: ["band pass", "band stop", "trap", "high pass", "low pass"],
  prefix: "filter",
  trade: { job: "filter", price: 8, workMinutes: 10, inItsPlace: "coupler" },
  options: z.object({
    mode: choice({
      label: "The range",
      choices: [
        { value: "pass", label: "passes, all else is stopped" },
        { value: "stop", label: "is stopped, all else passes" },
        { value: "lower", label: "is lowered by the rejection, all else passes" },
      ],
      default: "pass",
    }),
    fromMHz: number({ label: "From", unit: "MHz", min: 1, max: 3000, default: 470 }),
    toMHz: number({ label: "To", unit: "MHz", min: 1, max: 3000, default: 694 }),
    lossDb: insertionLoss(1),
    rejectionDb,
    dcPass: dcPass(false),
  }),
  symbol: (o) => (o.mode === "pass" ? "filter" : "notch"),
  caption: (o) => {
    const { fromMHz, toMHz } = between(o.fromMHz, o.toMHz);
    return `${FILTER_VERBS[o.mode]} ${numeralAsSet(fromMHz)}–${numeralAsSet(toMHz)} MHz`;
  },
  ports: () => THROUGH_PORTS,
  signal: (o) => {
    const range = between(o.fromMHz, o.toMHz);
    return { paths: throughPath(series(flat(-o.lossDb), filterEdge(o.mode, range, o.rejectionDb))) };
  },
  power: linePower,
  inline: INLINE,
});

const FILTER_VERBS = { pass: "passes", stop: "stops", lower: "lowers" } as const;

/** How far beside its range a trap still takes something [MHz]; typical of tuned traps, from memory. */
const TRAP_FLANK_MHZ = 2;

function filterEdge(mode: keyof typeof FILTER_VERBS, range: Range, db: number): Response {
  if (mode === "pass") return passing([range], db);
  if (mode === "stop") return { type: "notch", windows: [range], rejectionDb: db };
  // A trap that is not too deep leaves a channel that can be received: it brings it down to the others.
  const { fromMHz, toMHz } = range;
  return curve(
    [Math.max(0, fromMHz - TRAP_FLANK_MHZ), 0],
    [fromMHz, -db],
    [toMHz, -db],
    [toMHz + TRAP_FLANK_MHZ, 0],
  );
}

/** Top of the TV band below each mobile band [MHz] (EU Decision 2017/899 and the 790 MHz clearance, from memory). */
const MOBILE_EDGE_MHZ = { "700": 694, "800": 790, "900": 862 } as const;

const filterMobile = define({
  kind: "filter-mobile",
  family: "join",
  name: "4G/5G filter",
  firstName: "Mobile phone filter",
  summary: "Keeps the signals of phone masts above the TV band out of an amplifier.",
  keywords: ["mobile phone", "LTE", "700 MHz", "800 MHz", "low pass"],
  prefix: "filter",
  trade: {
    job: "filter",
    price: 8,
    workMinutes: 10,
    inItsPlace: "coupler",
    widerTypes: [
      { name: "a type that passes up to channel 60", options: { band: "800" } },
      { name: "a type that passes up to channel 69", options: { band: "900" } },
    ],
  },
  options: z.object({
    band: choice({
      label: "Stops",
      choices: [
        { value: "700", label: "from 700 MHz; TV up to channel 48 passes" },
        { value: "800", label: "from 800 MHz; TV up to channel 60 passes" },
        { value: "900", label: "from 870 MHz; TV up to channel 69 passes" },
      ],
      default: "700",
      source: "TV ends at 694 or 790 MHz (EU Decision 2017/899, from memory)",
    }),
    lossDb: insertionLoss(1),
    edgeLossDb: insertionLoss(3, "Loss on the last two channels"),
    rejectionDb,
    dcPass: dcPass(true),
  }),
  symbol: "lowpass",
  caption: (o) => `TV to ${numeralAsSet(MOBILE_EDGE_MHZ[o.band])} MHz`,
  ports: () => THROUGH_PORTS,
  signal: (o) => {
    const edge = MOBILE_EDGE_MHZ[o.band];
    // The flank begins inside the pass band: the last two channels pay for it.
    const gain = curve([edge - 24, -o.lossDb], [edge - 4, -Math.max(o.lossDb, o.edgeLossDb)]);
    return { paths: throughPath(series(gain, passing([{ fromMHz: 5, toMHz: edge }], o.rejectionDb))) };
  },
  power: linePower,
  inline: INLINE,
});

const filterChannel = define({
  kind: "filter-channel",
  family: "join",
  name: "Channel filter",
  summary: "Lets only the UHF channels on its list through.",
  keywords: ["single channel", "cluster", "UHF", "channel pass"],
  prefix: "filter",
  trade: { job: "filter", price: 8, workMinutes: 10, inItsPlace: "coupler" },
  options: z.object({
    channels: rows({
      label: "Channels that pass",
      row: z.object({
        channel: wholeNumber({
          label: "UHF channel",
          min: LOWEST_UHF_CHANNEL,
          max: LAST_FORMER_UHF_CHANNEL,
          default: 22,
        }),
      }),
      maxRows: 16,
      means: "channel list",
      default: [{ channel: 22 }, { channel: 25 }, { channel: 28 }],
    }),
    raster: rasterField("setting"),
    lossDb: insertionLoss(3),
    rejectionDb,
    dcPass: dcPass(false),
  }),
  symbol: "filter-channel",
  caption: (o) => {
    const names = o.channels.map((c) => c.channel);
    if (names.length === 0) return "no channel";
    return names.length > 5 ? `${names.length} channels` : `C${names.join(", C")}`;
  },
  ports: () => THROUGH_PORTS,
  signal: (o) => {
    const channels = o.channels.map(({ channel }) => {
      const { fromMHz, toMHz } = tvChannelEdges(channel, rasterOf(o.raster));
      return between(fromMHz, toMHz);
    });
    return { paths: throughPath(series(flat(-o.lossDb), passing(channels, o.rejectionDb))) };
  },
  power: linePower,
  inline: INLINE,
});

export const FILTERS: readonly PartKind[] = [filter, filterMobile, filterChannel];
