/** Receiver for a channel-stacked feed: its tuners share one cable, each through a user band of its own. */
import { z } from "zod";
import type { Request } from "../signal/control.ts";
import { plural } from "../words/plural.ts";
import { define, type PartKind } from "./contract.ts";
import { choice, number, rows, wholeNumber } from "./fields.ts";
import { coaxIn } from "./passive.ts";
import { IF_FROM_MHZ, IF_TO_MHZ } from "./quadrants.ts";
import { frontEndFields, frontEndOf, OVERLOAD } from "./receiverFrontEnd.ts";
import { MENU_FIELDS, MESSAGES_FIELD, menuOf } from "./receiverMenu.ts";
import {
  commandSupply,
  feedsCable,
  halfField,
  polarisationField,
  STATE_WORDS,
  SUPPLY_FIELDS,
} from "./receiverSupply.ts";
import { switchedInput } from "./receiversSatellite.ts";
import { USUAL_CENTRES_MHZ } from "./userBands.ts";

const stacked = define({
  kind: "receiver-stacked",
  family: "use",
  name: "SCR/dSCR receiver",
  firstName: "Single-cable receiver",
  summary: "Receiver whose tuners share one cable, each with its own user band.",
  keywords: [
    "single cable",
    "EN 50494",
    "EN 50607",
    "user band",
    "one cable",
    "recorder",
    "SAT>IP",
    "IP server",
  ],
  prefix: "single",
  trade: { job: "receiver", price: 150, workMinutes: 10, onSite: "setting", takes: "stacked" },
  options: z.object({
    mode: choice({
      label: "Set to",
      help: "A receiver left in universal mode holds the cable at 13 or 18 V and disturbs all others on it.",
      choices: [
        { value: "single-cable", label: "single-cable mode" },
        { value: "universal", label: "universal mode (wrong here)" },
      ],
      default: "single-cable",
      means: "receiver mode",
      soundValue: "single-cable",
    }),
    tuners: wholeNumber({ label: "Tuners", min: 1, max: 16, default: 2 }),
    userBands: rows({
      label: "User bands set in the receiver",
      help: "One for each tuner, and none that another receiver on the same cable uses.",
      row: z.object({
        number: wholeNumber({ label: "Number", min: 1, max: 32, default: 1 }),
        centreMHz: number({ label: "Centre", unit: "MHz", min: 950, max: 2150, default: 1210 }),
      }),
      maxRows: 32,
      default: USUAL_CENTRES_MHZ.four.slice(0, 2).map((centreMHz, i) => ({ number: i + 1, centreMHz })),
      source: "first two of the usual set of four, as quoted in public tables of LNBs",
      means: "receiver user bands",
    }),
    polarisation: polarisationField("In universal mode asks for", "H"),
    half: halfField("In universal mode, band"),
    messages: MESSAGES_FIELD,
    ...SUPPLY_FIELDS,
    ...MENU_FIELDS,
    ...frontEndFields(OVERLOAD.satellite),
  }),
  symbol: "receiver-stacked",
  caption: (o) => {
    if (o.state !== "on") return STATE_WORDS[o.state];
    if (o.mode === "universal") return "in universal mode";
    const numbers = o.userBands.map((b) => b.number).join(", ");
    const tuners = plural(o.tuners, { one: (n) => `${n} tuner`, other: (n) => `${n} tuners` });
    const bands = plural(o.userBands.length, {
      zero: "no user band",
      one: `user band ${numbers}`,
      other: `user bands ${numbers}`,
    });
    return `${tuners} · ${bands}`;
  },
  ports: () => [coaxIn("sat", "SAT")],
  signal: () => ({}),
  power: (o) => {
    if (!feedsCable(o)) return {};
    // Between messages the line rests at 13 V without tone (EN 50494 and EN 50607, as quoted in public code).
    const request: Request =
      o.mode === "universal"
        ? { polarisation: o.polarisation, half: o.half }
        : { polarisation: "V", half: "low", userBands: o.userBands.map((b) => b.number) };
    return { supplies: [commandSupply(o, "sat", request)] };
  },
  reception: (o) => ({
    inputs: [
      o.mode === "universal"
        ? { ...switchedInput("sat", o), tuners: o.tuners }
        : {
            port: "sat",
            feed: "stacked",
            services: ["satellite"],
            tunesFromMHz: IF_FROM_MHZ,
            tunesToMHz: IF_TO_MHZ,
            tuners: o.tuners,
            userBands: o.userBands,
            standard: o.messages,
            frontEnd: frontEndOf(o),
            menu: menuOf(o),
          },
    ],
    wants: o.state === "on" ? ["satellite"] : [],
  }),
});

export const STACKED_RECEIVERS: readonly PartKind[] = [stacked];
