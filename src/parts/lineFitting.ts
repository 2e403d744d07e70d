/** What sits in a run of cable beside the cable itself: coupler, earthing block, surge arrester, flat window lead. */
import { z } from "zod";
import { curve, type Response, series } from "../signal/response.ts";
import { define } from "./contract.ts";
import { choice } from "./fields.ts";
import {
  dcPass,
  INLINE,
  insertionLoss,
  LINE_POWER,
  MEMORY,
  plainLoss,
  THROUGH_PORTS,
  throughPath,
} from "./passive.ts";
import { type EquipmentClass, equipmentScreeningDb, ingress } from "./screening.ts";

type Fitting = {
  readonly caption: string;
  /** At 862 and at 2150 MHz [dB]. */
  readonly tvDb: number;
  readonly satDb: number;
  /** In the way of the supply, inner conductor and screen together [Ω]. */
  readonly ohms: number;
  readonly returnLossDb: number;
  readonly screening: EquipmentClass;
};

/** Typical, from memory: a flat lead is no line of 75 Ω, so that it reflects, and its screen is two strips of foil. */
const FITTINGS: Readonly<Record<"coupler" | "earthing" | "arrester" | "window", Fitting>> = {
  coupler: { caption: "coupler", tvDb: 0.1, satDb: 0.3, ohms: 0.01, returnLossDb: 24, screening: "A" },
  earthing: {
    caption: "earthing block",
    tvDb: 0.2,
    satDb: 0.5,
    ohms: 0.02,
    returnLossDb: 20,
    screening: "A",
  },
  arrester: {
    caption: "surge arrester",
    tvDb: 0.3,
    satDb: 0.8,
    ohms: 0.05,
    returnLossDb: 18,
    screening: "A",
  },
  window: { caption: "flat window lead", tvDb: 0.8, satDb: 2, ohms: 0.3, returnLossDb: 10, screening: "B" },
};

const own = (label: string, value: number) => insertionLoss(value, label, { loss: "own" });

const OPTIONS = z.object({
  fitting: choice({
    label: "Fitting",
    help: "An arrester or an earthing block works only where its bonding conductor is connected.",
    choices: [
      { value: "coupler", label: "Coupler, adaptor" },
      { value: "earthing", label: "Earthing block" },
      { value: "arrester", label: "Surge arrester" },
      { value: "window", label: "Flat lead through a window" },
    ],
    default: "coupler",
  }),
  loss: choice({
    label: "Loss",
    choices: [
      { value: "typical", label: "Typical of the fitting" },
      { value: "own", label: "From its data sheet" },
    ],
    default: "typical",
    help: "At 2150 MHz an arrester takes about 1 dB, a flat lead about 2 dB, the others less.",
    source: MEMORY,
  }),
  ownTvDb: own("Own loss at 862 MHz", 0.3),
  ownSatDb: own("Own loss at 2150 MHz", 0.8),
  dcPass: dcPass(true),
});

/** Half the loss at the low end, then straight through both figures. */
function fittingGain(o: z.output<typeof OPTIONS>): Response {
  const { tvDb, satDb } = o.loss === "own" ? { tvDb: o.ownTvDb, satDb: o.ownSatDb } : FITTINGS[o.fitting];
  return series(curve([5, -tvDb / 2], [862, -tvDb], [2150, -satDb]), plainLoss(0));
}

export const LINE_FITTING = define({
  kind: "line-fitting",
  family: "run",
  name: "Line fitting",
  summary: "A coupler, an earthing block, a surge arrester or a flat window lead in a run of cable.",
  keywords: [
    "coupler",
    "F connector",
    "barrel",
    "adaptor",
    "joint",
    "grounding block",
    "earth",
    "lightning protector",
    "surge protector",
    "overvoltage",
    "window feed-through",
    "flat cable",
  ],
  prefix: "fitting",
  trade: { job: "joint", price: 5, workMinutes: 10, inItsPlace: "coupler", isRare: true },
  options: OPTIONS,
  symbol: "line-fitting",
  caption: (o) => `${FITTINGS[o.fitting].caption}${o.dcPass ? "" : " · no DC pass"}`,
  ports: () => THROUGH_PORTS,
  signal: (o, context) => ({
    paths: throughPath(fittingGain(o)),
    returnLossDb: FITTINGS[o.fitting].returnLossDb,
    ...ingress(context, (f) => equipmentScreeningDb(FITTINGS[o.fitting].screening, f), [{ port: "out" }]),
  }),
  power: (o) => (o.dcPass ? { paths: [{ ...LINE_POWER, ohms: FITTINGS[o.fitting].ohms }] } : {}),
  inline: INLINE,
  cautions: ["bonding"],
});
