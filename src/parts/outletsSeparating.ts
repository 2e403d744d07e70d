/** Plates that take a shared cable apart: TV, radio and satellite each to a socket of its own. */

import { z } from "zod";
import { flat, type Response, series } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import type { PartKind } from "./contract.ts";
import { choice, number, toggle } from "./fields.ts";
import { insertionLoss, MEMORY, passing, plainLoss, type Range, returnLoss } from "./passive.ts";
import { dwellingField, plate, type Socket, satellitePassFields, satSocket } from "./plate.ts";
import { equipmentScreening } from "./screening.ts";

const separating = {
  satFromMHz: number({
    label: "Satellite socket from",
    unit: "MHz",
    help: "A wideband feed starts at about 300 MHz and loses all below this limit.",
    min: 250,
    max: 1200,
    default: 950,
    source: "950 MHz, Spanish Royal Decree 346/2011",
    advanced: true,
  }),
  satToMHz: number({
    label: "Satellite socket up to",
    unit: "MHz",
    help: "1750 or 2050 MHz on older outlets, 2400 on those for all feeds.",
    min: 1700,
    max: 3000,
    default: 2150,
    source: "2150 MHz, Spanish Royal Decree 346/2011; some outlets reach 2400 MHz",
    advanced: true,
  }),
  tvToMHz: number({
    label: "TV socket up to",
    unit: "MHz",
    help: "Ends at the latest where the satellite socket begins: no filter gives all of a signal to both.",
    min: 230,
    max: 1000,
    default: 862,
    source: "862 MHz, Spanish Royal Decree 346/2011",
    advanced: true,
  }),
  rejectionDb: number({
    label: "Rejection between sockets",
    unit: "dB",
    min: 5,
    max: 80,
    step: 1,
    default: 30,
    source: MEMORY,
    advanced: true,
    spreadDb: 5,
  }),
  ...satellitePassFields("Satellite socket passes DC"),
  tvDc: toggle({
    label: "TV socket passes DC",
    help: "For a set that feeds a masthead amplifier through its socket; most outlets stop it.",
    default: false,
    source: MEMORY,
    advanced: true,
  }),
};

/** What the TV socket passes: no set asks anything by 22 kHz. */
const tvPass = (o: { readonly tvDc: boolean }) => ({ dc: o.tvDc ? "open" : "none", tone: false }) as const;

type Separating = {
  readonly satelliteDc: "none" | "open" | "diode";
  readonly satelliteTone: boolean;
  readonly tvDc: boolean;
  readonly satFromMHz: number;
  readonly satToMHz: number;
  readonly tvToMHz: number;
  readonly rejectionDb: number;
  readonly satLossDb: number;
};

const filtered = (ranges: readonly Range[], lossDb: number, o: Separating): Response =>
  series(flat(-lossDb), passing(ranges, o.rejectionDb));

const tvTop = (o: Separating): number => Math.min(o.tvToMHz, o.satFromMHz);

const satWindow = (o: Separating): Response =>
  filtered([{ fromMHz: o.satFromMHz, toMHz: o.satToMHz }], o.satLossDb, o);

/** Typical, from memory. */
const WIDER_PLATES = [
  { name: "an outlet that passes satellite up to 2400 MHz", options: { satToMHz: 2400 } },
  { name: "an outlet that passes TV up to 862 MHz", options: { tvToMHz: 862 } },
];

/** Typical, from memory. */
const WIDER_TRIPLEXED = [
  ...WIDER_PLATES,
  { name: "an outlet with FM and DAB at its radio socket", options: { radio: "fm-dab" } },
];

const outletDiplexed = plate(
  {
    kind: "outlet-diplexed",
    name: "Outlet, TV and satellite",
    summary: "Outlet that separates a shared cable into a TV and a satellite socket.",
    keywords: ["wall plate", "diplexed", "socket", "TV/SAT"],
    trade: {
      job: "plate",
      price: 8,
      workMinutes: 15,
      widerTypes: WIDER_PLATES,
      mistakenFor: [{ kind: "outlet-tv" }, { kind: "outlet-triplexed" }],
    },
    symbol: "outlet-2",
    screened: (o) => o.screening,
    options: z.object({
      tvLossDb: insertionLoss(1.5, "Loss to the TV socket"),
      satLossDb: insertionLoss(2, "Loss to the satellite socket"),
      ...separating,
      screening: equipmentScreening(),
      returnLossDb: returnLoss(14),
      dwelling: dwellingField(),
    }),
    caption: (o) => `TV / SAT ${numeralAsSet(o.satFromMHz)}–${numeralAsSet(o.satToMHz)} MHz`,
  },
  (o) => [
    {
      port: "tv",
      label: "TV",
      from: "in",
      gain: filtered([{ fromMHz: 5, toMHz: tvTop(o) }], o.tvLossDb, o),
      services: ["tv", "dab", "fm"],
      ...tvPass(o),
    },
    satSocket(o, satWindow(o)),
  ],
);

const triplexing = {
  radio: choice({
    label: "Radio socket",
    choices: [
      { value: "fm-dab", label: "FM and DAB; TV from 470 MHz" },
      { value: "fm", label: "FM only; TV gets what lies beside it" },
    ],
    default: "fm-dab",
    source: MEMORY,
  }),
  tvLossDb: insertionLoss(2, "Loss to the TV socket"),
  radioLossDb: insertionLoss(3, "Loss to the radio socket"),
  satLossDb: insertionLoss(2, "Loss to the satellite sockets"),
  ...separating,
  screening: equipmentScreening(),
  returnLossDb: returnLoss(14),
  dwelling: dwellingField(),
};

type Triplexing = Separating & {
  readonly radio: "fm" | "fm-dab";
  readonly tvLossDb: number;
  readonly radioLossDb: number;
};

/** TV, radio and satellite from one cable. Edges of the radio branch typical, from memory. */
function triplexed(o: Triplexing, satLabel: string): readonly Socket[] {
  const withDab = o.radio === "fm-dab";
  const tv: readonly Range[] = withDab
    ? above(470, tvTop(o))
    : [{ fromMHz: 5, toMHz: 68 }, ...above(118, tvTop(o))];
  return [
    {
      port: "tv",
      label: "TV",
      from: "in",
      gain: filtered(tv, o.tvLossDb, o),
      services: withDab ? ["tv"] : ["tv", "dab"],
      ...tvPass(o),
    },
    {
      port: "radio",
      label: "Radio",
      from: "in",
      gain: filtered([{ fromMHz: 87, toMHz: withDab ? 240 : 108 }], o.radioLossDb, o),
      services: withDab ? ["fm", "dab"] : ["fm"],
      dc: "none",
      tone: false,
    },
    satSocket(o, satWindow(o), "sat", "in", satLabel),
  ];
}

/** Nothing is left of a branch whose top lies below its start. */
const above = (fromMHz: number, toMHz: number): readonly Range[] =>
  toMHz > fromMHz ? [{ fromMHz, toMHz }] : [];

const radioWords = (o: Triplexing) => (o.radio === "fm" ? "FM" : "FM+DAB");

const outletTriplexed = plate(
  {
    kind: "outlet-triplexed",
    name: "Outlet, TV, radio and satellite",
    summary: "Outlet that separates a shared cable into a TV, a radio and a satellite socket.",
    keywords: ["wall plate", "triplexed", "socket", "FM", "DAB"],
    trade: {
      job: "plate",
      price: 8,
      workMinutes: 15,
      widerTypes: WIDER_TRIPLEXED,
      mistakenFor: [{ kind: "outlet-diplexed" }, { kind: "outlet-tv" }],
    },
    symbol: "outlet-3",
    screened: (o) => o.screening,
    options: z.object(triplexing),
    caption: (o) => `TV / ${radioWords(o)} / SAT`,
  },
  (o) => triplexed(o, "SAT"),
);

const outletQuad = plate(
  {
    kind: "outlet-quad",
    name: "Outlet, TV, radio and two satellite",
    summary:
      "Outlet on two cables: the first separated into TV, radio and satellite, the second satellite only.",
    keywords: ["wall plate", "quadplexed", "quadruplexed", "socket", "twin"],
    trade: {
      job: "plate",
      price: 8,
      workMinutes: 15,
      widerTypes: WIDER_TRIPLEXED,
      mistakenFor: [{ kind: "outlet-triplexed" }, { kind: "outlet-sat-twin" }],
    },
    symbol: "outlet-4",
    screened: (o) => o.screening,
    options: z.object({ ...triplexing, sat2LossDb: insertionLoss(1, "Loss to the second satellite socket") }),
    caption: (o) => `TV / ${radioWords(o)} / 2 × SAT`,
  },
  (o) => [...triplexed(o, "SAT 1"), satSocket(o, plainLoss(o.sat2LossDb), "sat2", "in2", "SAT 2")],
);

export const SEPARATING_OUTLETS: readonly PartKind[] = [outletDiplexed, outletTriplexed, outletQuad];
