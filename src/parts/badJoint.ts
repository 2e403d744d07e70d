/** The faulty joint, which models what goes wrong with cables and their connectors. */

import { z } from "zod";
import { curve, flat, type Response } from "../signal/response.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { define } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { dB, INLINE, LINE_POWER, MEMORY, THROUGH_PORTS, throughPath } from "./passive.ts";
import { equipmentScreening, equipmentScreeningDb, ingress } from "./screening.ts";

/** A broken inner conductor still couples a little, the more the higher. Order of magnitude, from memory. */
const OPEN_INNER: Response = curve([5, -60], [50, -45], [470, -28], [950, -22], [2150, -15]);
/** A short leaves next to nothing. Order of magnitude, from memory. */
const SHORTED: Response = flat(-60);

export const badJoint = define({
  kind: "bad-joint",
  family: "run",
  name: "Faulty joint",
  firstName: "Bad joint",
  summary: "A fault to try out: a corroded, broken or shorted connection.",
  keywords: [
    "bad joint",
    "connector",
    "corroded",
    "water",
    "open circuit",
    "short circuit",
    "loose connector",
  ],
  prefix: "joint",
  trade: { job: "joint", price: 1, workMinutes: 10, inItsPlace: "sound joint", defect: true },
  options: z.object({
    fault: choice({
      label: "Fault",
      choices: [
        { value: "corroded", label: "Corroded: loss and resistance" },
        { value: "open", label: "Inner conductor broken" },
        { value: "shorted", label: "Inner conductor touches the screen" },
      ],
      default: "corroded",
    }),
    lossDb: number({
      label: "Loss when corroded, at 862 MHz",
      unit: "dB",
      help: "Half of it at the low end, half as much again at 2150 MHz.",
      min: 0,
      max: 40,
      step: 1,
      default: 6,
      source: MEMORY,
      onlyWhen: { fault: "corroded" },
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
    screening: equipmentScreening("none"),
  }),
  symbol: "bad-joint",
  caption: (o) =>
    o.fault === "corroded"
      ? `corroded: ${dB(o.lossDb)}, ${numeralAsSet(o.ohms)} Ω`
      : o.fault === "open"
        ? "inner broken"
        : "shorted",
  onWire: (o) => (o.fault === "corroded" ? dB(o.lossDb) : o.fault),
  ports: () => THROUGH_PORTS,
  signal: (o, context) => ({
    paths: throughPath(faultResponse(o)),
    ...ingress(context, (f) => equipmentScreeningDb(o.screening, f), [{ port: "out" }]),
  }),
  power: (o) => {
    if (o.fault === "open") return {};
    if (o.fault === "shorted") return { shorts: ["out"] };
    return { paths: [{ ...LINE_POWER, ohms: o.ohms }] };
  },
  inline: INLINE,
});

function faultResponse({ fault, lossDb }: { readonly fault: string; readonly lossDb: number }): Response {
  if (fault === "open") return OPEN_INNER;
  if (fault === "shorted") return SHORTED;
  return curve([5, -lossDb / 2], [862, -lossDb], [2150, -1.5 * lossDb]);
}
