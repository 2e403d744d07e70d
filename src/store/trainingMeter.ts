/** The trainee's meter: readings of the installation as it is, and beside them what the plan says. */
import type { PortRef } from "../design/design.ts";
import { evaluate } from "../evaluate/evaluate.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import { measure } from "../remedies/faults/measure.ts";
import type { Quantity, Reading } from "../remedies/faults/reading.ts";
import { askedKey, askingFor, type RequestChoice } from "../remedies/faults/requestChoice.ts";
import type { OpenedCase } from "../remedies/training/case.ts";

export type MeterShows = {
  /** Null: no meter can be connected there, as in the beam of a dish. */
  readonly actual: Reading | null;
  readonly planned: Reading | null;
};

type Pair = { readonly actual: Evaluation; readonly planned: Evaluation };

const known = new WeakMap<OpenedCase, Map<string, Pair>>();

/** What the meter shows at a port while the receivers ask for this. */
export function meterShows(
  opened: OpenedCase,
  at: PortRef,
  quantity: Quantity,
  asked: RequestChoice | null,
): MeterShows {
  const { actual, planned } = pairOf(opened, asked);
  const { design } = opened;
  return { actual: measure(design, actual, at, quantity), planned: measure(design, planned, at, quantity) };
}

/** The installation as it is. For whoever has found the fault, or given up. */
export function actualEvaluation(opened: OpenedCase): Evaluation {
  return pairOf(opened, null).actual;
}

/** Both states are worked out once for each request. */
function pairOf(opened: OpenedCase, asked: RequestChoice | null): Pair {
  const pairs = known.get(opened) ?? new Map<string, Pair>();
  known.set(opened, pairs);
  const key = askedKey(asked);
  let pair = pairs.get(key);
  if (!pair) {
    const planned = evaluate(askingFor(opened.design, asked));
    pair = { planned, actual: evaluate(askingFor(opened.faulty, asked), planned) };
    pairs.set(key, pair);
  }
  return pair;
}
