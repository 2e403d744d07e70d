/** Position switch: one receiver cable and several converters, chosen by a position command or by tone burst. */

import { z } from "zod";
import { curve } from "../signal/response.ts";
import { numeral } from "../words/numbers.ts";
import { define, type PartKind, type Port } from "./contract.ts";
import { crosstalkField, crosstalkFrom } from "./crosstalk.ts";
import { choice, number } from "./fields.ts";
import { LNB_LEAST_VOLTS, SWITCH_THRESHOLD_VOLTS } from "./lnbFields.ts";
import { IF_FROM_MHZ, IF_TO_MHZ, upTo } from "./quadrants.ts";

const OPTIONS = z.object({
  inputs: choice({
    label: "Inputs",
    help: "One for each satellite, or each LNB.",
    choices: [
      { value: "2", label: "2 positions" },
      { value: "4", label: "4 positions" },
      { value: "8", label: "8 positions" },
      { value: "16", label: "16 positions" },
    ],
    default: "2",
  }),
  heeds: choice({
    label: "Listens to",
    help: "Committed commands reach 4 positions, uncommitted ones 16, a tone burst two; in a row two switches multiply.",
    choices: [
      { value: "committed", label: "Position (committed)" },
      { value: "uncommitted", label: "Uncommitted input" },
      { value: "burst", label: "Tone burst A/B" },
    ],
    default: "committed",
  }),
  lossDb: number({
    label: "Loss at 950 MHz",
    unit: "dB",
    help: `About ${numeral(1.5)} dB more at 2150 MHz.`,
    min: 0,
    max: 15,
    step: 0.5,
    default: 2,
    source: "typical (1 to 4), from memory",
    spreadDb: 0.5,
  }),
  crosstalkDb: crosstalkField(),
  ownMa: number({
    label: "Own current",
    unit: "mA",
    min: 0,
    max: 200,
    step: 1,
    default: 15,
    source: "order of magnitude, from memory",
    advanced: true,
  }),
  ohms: number({
    label: "Series resistance",
    unit: "Ω",
    help: "In the way of the LNB’s supply.",
    min: 0,
    max: 20,
    step: 0.1,
    default: 1,
    source: "order of magnitude, from memory",
    advanced: true,
  }),
});

const OUT: Port = { id: "out", side: "out", medium: "coax", label: "out", role: "output" };
const inputId = (n: number): string => `in${n}`;

type Options = z.output<typeof OPTIONS>;

/** Positions that each command tells apart (DiSEqC levels 1.0 and 1.1 and the tone burst, from memory). */
const MOST_POSITIONS = { committed: 4, uncommitted: 16, burst: 2 } as const;

/** Inputs beyond those that its command reaches are not there. */
const positionsOf = (o: Options): number => Math.min(Number(o.inputs), MOST_POSITIONS[o.heeds]);

const positionLabel = (o: Options, n: number): string =>
  o.heeds === "burst" ? (n === 1 ? "A" : "B") : String(n);

const POSITION_SWITCH = define({
  kind: "position-switch",
  family: "convert",
  name: "Position switch",
  summary: "Lets one receiver choose between LNBs by a position command (DiSEqC) or a tone burst.",
  keywords: [
    "DiSEqC",
    "committed",
    "uncommitted",
    "tone burst",
    "A/B",
    "16 positions",
    "satellite",
    "two satellites",
    "four satellites",
    "relay",
  ],
  prefix: "position",
  trade: { job: "position switch", price: 30, workMinutes: 40, fedWithVolts: 14 },
  options: OPTIONS,
  symbol: "position-switch",
  caption: (o) =>
    o.heeds === "burst"
      ? "A/B · tone burst"
      : `${positionsOf(o)} positions${o.heeds === "uncommitted" ? " · uncommitted" : ""}`,
  ports: (o) => [
    ...upTo(positionsOf(o)).map(
      (n): Port => ({
        id: inputId(n),
        side: "in",
        medium: "coax",
        label: positionLabel(o, n),
        role: "position",
      }),
    ),
    OUT,
  ],
  signal: (o) => {
    const response = curve([IF_FROM_MHZ, -o.lossDb], [IF_TO_MHZ, -o.lossDb - 1.5]);
    // Where it stands without supply, nobody knows: then its setting is null and no path is selected.
    const inputs = upTo(Number(o.inputs)).map(inputId);
    return {
      paths: upTo(positionsOf(o)).map((n) => ({
        from: inputId(n),
        to: OUT.id,
        response,
        ...crosstalkFrom(inputs, inputId(n), o.crosstalkDb),
        condition: { port: OUT.id, setting: String(n) },
      })),
    };
  },
  power: (o) => ({
    paths: upTo(positionsOf(o)).map((position) => ({
      from: OUT.id,
      to: inputId(position),
      ohms: o.ohms,
      tone: true,
      position,
      heeds: o.heeds,
    })),
    load: { milliamps: o.ownMa, ports: [OUT.id], minVolts: LNB_LEAST_VOLTS },
    switches: [
      {
        port: OUT.id,
        by: "position",
        positions: positionsOf(o),
        heeds: o.heeds,
        thresholdVolts: SWITCH_THRESHOLD_VOLTS,
      },
    ],
  }),
});

export const POSITION_SWITCHES: readonly PartKind[] = [POSITION_SWITCH];
