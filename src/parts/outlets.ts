/** Wall plates: what they let out at which socket, and which socket lets supply and tone back in. */
import { z } from "zod";
import { flat, series } from "../signal/response.ts";
import type { PartKind } from "./contract.ts";
import { toggle } from "./fields.ts";
import { RISER_OUTLETS } from "./outletsRiser.ts";
import { SEPARATING_OUTLETS } from "./outletsSeparating.ts";
import {
  bandEnd,
  insertionLoss,
  MEMORY,
  passing,
  plainLoss,
  returnLoss,
  TO_THE_END,
  TV_TO_THE_END,
  tvEnd,
} from "./passive.ts";
import { dwellingField, plate, satellitePassFields, satSocket } from "./plate.ts";
import { equipmentScreening } from "./screening.ts";

const outletSat = plate(
  {
    kind: "outlet-sat",
    name: "Outlet, satellite",
    summary: "Plain outlet with one satellite socket; lets a wideband feed through whole.",
    keywords: ["wall plate", "socket", "F connector", "direct", "single"],
    trade: {
      job: "plate",
      price: 8,
      workMinutes: 15,
      widerTypes: TO_THE_END,
      mistakenFor: [{ kind: "outlet-tv" }, { kind: "outlet-diplexed" }],
    },
    symbol: "outlet-1",
    screened: (o) => o.screening,
    options: z.object({
      lossDb: insertionLoss(1),
      upTo: bandEnd(),
      ...satellitePassFields("Satellite socket passes DC"),
      screening: equipmentScreening(),
      returnLossDb: returnLoss(14),
      dwelling: dwellingField(),
    }),
    caption: (o) => `direct, 5–${o.upTo} MHz`,
  },
  (o) => [satSocket(o, plainLoss(o.lossDb, o.upTo))],
);

const outletTwin = plate(
  {
    kind: "outlet-sat-twin",
    name: "Outlet, twin satellite",
    summary: "Plain outlet with two satellite sockets, each on its own cable.",
    keywords: ["wall plate", "socket", "F connector", "dual", "two cables"],
    trade: {
      job: "plate",
      price: 8,
      workMinutes: 15,
      widerTypes: TO_THE_END,
      mistakenFor: [{ kind: "outlet-quad" }],
    },
    symbol: "outlet-2",
    screened: (o) => o.screening,
    options: z.object({
      lossDb: insertionLoss(1),
      upTo: bandEnd(),
      ...satellitePassFields("Satellite sockets pass DC"),
      screening: equipmentScreening(),
      returnLossDb: returnLoss(14),
      dwelling: dwellingField(),
    }),
    caption: (o) => `two cables, 5–${o.upTo} MHz`,
  },
  (o) => {
    const gain = plainLoss(o.lossDb, o.upTo);
    return [satSocket(o, gain, "sat", "in", "SAT 1"), satSocket(o, gain, "sat2", "in2", "SAT 2")];
  },
);

const outletTv = plate(
  {
    kind: "outlet-tv",
    name: "Outlet, TV",
    summary: "Outlet with one TV socket, on the cable of the aerial.",
    keywords: ["wall plate", "socket", "coaxial", "aerial socket", "terrestrial", "radio"],
    trade: {
      job: "plate",
      price: 8,
      workMinutes: 15,
      widerTypes: TV_TO_THE_END,
      mistakenFor: [{ kind: "outlet-diplexed" }, { kind: "outlet-through" }],
    },
    symbol: "outlet-1",
    screened: (o) => o.screening,
    options: z.object({
      lossDb: insertionLoss(1),
      tvTo: tvEnd(),
      dcPass: toggle({
        label: "DC and 22 kHz pass",
        help: "A plain outlet may pass them; an isolated one does not. Needed to feed a masthead amplifier from the room.",
        default: false,
        source: MEMORY,
        means: "supply pass",
        passes: [true],
      }),
      screening: equipmentScreening(),
      returnLossDb: returnLoss(14),
      dwelling: dwellingField(),
    }),
    caption: (o) => `5–${o.tvTo} MHz`,
  },
  (o) => [
    {
      port: "tv",
      label: "TV",
      from: "in",
      gain: series(flat(-o.lossDb), passing([{ fromMHz: TV_FROM_MHZ, toMHz: Number(o.tvTo) }], 30)),
      services: ["tv", "dab", "fm"],
      dc: o.dcPass ? "open" : "none",
      tone: true,
    },
  ],
);

/** Lower end of networks and plates [MHz]: 5, Spanish Royal Decree 346/2011. */
const TV_FROM_MHZ = 5;

export const OUTLETS: readonly PartKind[] = [
  outletSat,
  outletTwin,
  outletTv,
  ...SEPARATING_OUTLETS,
  ...RISER_OUTLETS,
];
