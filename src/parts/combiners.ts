/** What brings several lines onto one: broadband combiners, and (from their own file) diplexers and triplexers. */
import { z } from "zod";
import { define, type PartKind } from "./contract.ts";
import { DIPLEXERS } from "./diplexers.ts";
import { choice, wholeNumber } from "./fields.ts";
import { coaxIn, coaxOut, MEMORY, returnLoss, tonePass } from "./passive.ts";
import { SOLD_WAYS, SPLIT_FIELDS, splitResponse } from "./splitLoss.ts";

const inputs = (count: number) => Array.from({ length: count }, (_, i) => `in${i + 1}`);

const combiner = define({
  kind: "combiner",
  family: "join",
  name: "Combiner",
  summary: "Brings any signals onto one line, at a splitter’s loss; it filters nothing.",
  keywords: ["broadband", "mixer", "coupler", "combine aerials"],
  prefix: "combine",
  trade: {
    job: "combiner",
    price: 8,
    workMinutes: 10,
    widerTypes: [{ name: "a type for satellite, up to 2400 MHz", options: { range: "sat" } }],
  },
  options: z.object({
    ways: wholeNumber({ label: "Inputs", min: 2, max: 8, default: 2, means: "ways", sold: SOLD_WAYS }),
    ...SPLIT_FIELDS,
    returnLossDb: returnLoss(16),
    dc: choice({
      label: "DC and 22 kHz pass",
      choices: [
        { value: "none", label: "Nowhere" },
        { value: "one", label: "To input 1 only" },
        { value: "all", label: "To every input" },
      ],
      default: "one",
      source: MEMORY,
      means: "supply pass",
      passes: ["one", "all"],
    }),
    tone: tonePass({ dc: ["one", "all"] }),
  }),
  symbol: "combiner",
  caption: (o) => `${o.ways} inputs, no filters`,
  ports: (o) => [...inputs(o.ways).map((id, i) => coaxIn(id, `in ${i + 1}`)), coaxOut("out")],
  signal: (o) => {
    const response = splitResponse(o);
    return {
      paths: inputs(o.ways).map((from) => ({ from, to: "out", response })),
      returnLossDb: o.returnLossDb,
    };
  },
  power: (o) => {
    if (o.dc === "none") return {};
    const fed = o.dc === "one" ? inputs(1) : inputs(o.ways);
    return { paths: fed.map((to) => ({ from: "out", to, tone: o.tone })) };
  },
});

export const COMBINERS: readonly PartKind[] = [combiner, ...DIPLEXERS];
