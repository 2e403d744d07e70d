/** The faulty joint, which models what goes wrong with cables and their connectors. */

import { z } from "zod";
import { gapLossDb } from "../rf/gap.ts";
import { curve, flat, type Response } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { define } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { dB, INLINE, LINE_POWER, MEMORY, THROUGH_PORTS, throughPath } from "./passive.ts";
import { equipmentScreening, equipmentScreeningDb, ingress } from "./screening.ts";

/** Water between inner conductor and screen conducts direct current a little [Ω]. Order of magnitude, from memory. */
const WET_OHMS = 1000;

/** A short leaves next to nothing. Order of magnitude, from memory. */
const SHORTED: Response = flat(-60);

/** Where a gap is worked out, close enough for straight lines between [MHz]. */
const GAP_MHZ = [
  5, 7, 10, 15, 22, 33, 50, 75, 110, 160, 240, 350, 500, 700, 950, 1200, 1500, 1800, 2150, 2400,
];

/** What couples across a gap in a conductor: a small capacitor in series, so that little passes, the more the higher. */
function acrossGap(picofarad: number): Response {
  return curve(
    ...GAP_MHZ.map((frequencyMHz) => [frequencyMHz, -gapLossDb({ picofarad, frequencyMHz })] as const),
  );
}

/** Return loss by fault [dB]: a gap or a short sends nearly all back. From memory. */
const RETURN_LOSS_DB = { corroded: 8, open: 1, shorted: 1, screen: 3, wet: 6 } as const;

export const badJoint = define({
  kind: "bad-joint",
  family: "run",
  name: "Faulty joint",
  firstName: "Bad joint",
  summary: "A fault to try out: a corroded, wet, broken or shorted connection, or a screen that is off.",
  keywords: [
    "bad joint",
    "connector",
    "corroded",
    "water",
    "open circuit",
    "short circuit",
    "loose connector",
    "screen",
    "braid",
  ],
  prefix: "joint",
  trade: { job: "joint", price: 1, workMinutes: 10, inItsPlace: "sound joint", defect: true },
  options: z.object({
    fault: choice({
      label: "Fault",
      choices: [
        { value: "corroded", label: "Corroded: loss and resistance" },
        { value: "wet", label: "Wet: loss, most at the top" },
        { value: "open", label: "Inner conductor broken" },
        { value: "screen", label: "Screen not connected" },
        { value: "shorted", label: "Inner conductor touches the screen" },
      ],
      default: "corroded",
    }),
    lossDb: number({
      label: "Loss when corroded or wet, at 862 MHz",
      unit: "dB",
      help: `Corroded: half of it at the low end, half as much again at 2150 MHz. Wet: a tenth, and two and a half times.`,
      min: 0,
      max: 40,
      step: 1,
      default: 6,
      source: MEMORY,
      onlyWhen: { fault: ["corroded", "wet"] },
      spreadDb: 3,
    }),
    ohms: number({
      label: "Resistance when corroded",
      unit: "Ω",
      min: 0,
      max: 200,
      step: 0.5,
      default: 10,
      source: MEMORY,
      onlyWhen: { fault: "corroded" },
    }),
    gapPf: number({
      label: "Coupling across a broken inner conductor",
      unit: "pF",
      help: "A gap is a small capacitor: 6 dB less loss for each doubled frequency.",
      min: 0.01,
      max: 10,
      step: 0.01,
      default: 0.09,
      source: MEMORY,
      advanced: true,
      onlyWhen: { fault: "open" },
    }),
    screenPf: number({
      label: "Coupling of a screen that is off",
      unit: "pF",
      help: "Braid that lies near the plug without touching it: satellite may still pass, FM and the supply do not.",
      min: 0.01,
      max: 100,
      step: 0.01,
      default: 1,
      source: MEMORY,
      advanced: true,
      onlyWhen: { fault: "screen" },
    }),
    screening: equipmentScreening("none"),
  }),
  symbol: "bad-joint",
  caption: (o) => {
    switch (o.fault) {
      case "corroded":
        return `corroded: ${dB(o.lossDb)}, ${numeralAsSet(o.ohms)} Ω`;
      case "wet":
        return `wet: ${dB(o.lossDb)}`;
      case "open":
        return "inner broken";
      case "screen":
        return "screen off";
      case "shorted":
        return "shorted";
    }
  },
  onWire: (o) => (o.fault === "corroded" || o.fault === "wet" ? dB(o.lossDb) : o.fault),
  ports: () => THROUGH_PORTS,
  signal: (o, context) => ({
    paths: throughPath(faultResponse(o)),
    returnLossDb: RETURN_LOSS_DB[o.fault],
    ...ingress(context, (f) => equipmentScreeningDb(o.screening, f), [{ port: "out" }]),
  }),
  power: (o) => {
    // A current needs its way back as well: with the screen off nothing is fed.
    if (o.fault === "open" || o.fault === "screen") return {};
    if (o.fault === "shorted") return { shorts: ["in", "out"] };
    if (o.fault === "wet") return { paths: [LINE_POWER], resistors: [{ port: "out", ohms: WET_OHMS }] };
    return { paths: [{ ...LINE_POWER, ohms: o.ohms }] };
  },
  inline: INLINE,
});

type FaultOptions = {
  readonly fault: keyof typeof RETURN_LOSS_DB;
  readonly lossDb: number;
  readonly gapPf: number;
  readonly screenPf: number;
};

function faultResponse({ fault, lossDb, gapPf, screenPf }: FaultOptions): Response {
  switch (fault) {
    case "open":
      return acrossGap(gapPf);
    case "screen":
      return acrossGap(screenPf);
    case "shorted":
      return SHORTED;
    case "wet":
      // Water is a lossy dielectric of 80 times the permittivity: next to nothing at FM, much at the top.
      return curve([5, -lossDb / 10], [862, -lossDb], [2150, -2.5 * lossDb]);
    case "corroded":
      return curve([5, -lossDb / 2], [862, -lossDb], [2150, -1.5 * lossDb]);
  }
}
