/** The ripple of the one carrier that a receiver gets, and the cable that such sums are worked out for. */
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { traceCarrier } from "../../src/evaluate/trace.ts";
import { carriersGot } from "../../src/findings/reception.ts";
import { rippleAlong } from "../../src/findings/ripple.ts";
import type { Sketch } from "../draw.ts";

/** Ripple of the first TV channel at the input of a set. */
export function rippleAt(design: Design, set: string) {
  const evaluation = evaluate(design);
  const record = evaluation.record(set);
  const [carrier] = record ? carriersGot(record, "tv") : [];
  if (!record || !carrier) throw new Error("nothing is received");
  const [part, port] = record.joined[carrier.port] ?? ["", ""];
  const last = rippleAlong(evaluation, traceCarrier(evaluation, { part, port }, carrier)).at(-1);
  if (!last) throw new Error("no way");
  return last;
}

/** Nothing comes back from these to speak of: 80 dB are a ten-thousandth. */
export const IDEAL = { returnLossDb: 80 };

/** A cable without reflections of its own, VF 0.83; k2 makes 1 dB per 10 m at 600 MHz, and about that in all of UHF. */
export const decibelPer10M = (lengthM: number): Sketch[string] => [
  "cable",
  { ...IDEAL, grade: "own", k1: 0, k2: 10 / 600, velocityFactor: 0.83, lengthM },
];
