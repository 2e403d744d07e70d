/** A record out of an evaluation, and speakers made by hand, for tests of single functions. */
import type { Evaluation, PartRecord } from "../../src/evaluate/evaluation.ts";
import type { Offer } from "../../src/signal/control.ts";

export function recordOf(evaluation: Evaluation, part: string): PartRecord {
  const record = evaluation.record(part);
  if (!record) throw new Error(`no part ${part}`);
  return record;
}

/** A receiver that speaks to whoever is upstream. */
export function speaker(part: string, more: Partial<Offer> = {}): Offer {
  return {
    part,
    port: "sat",
    kind: "commands",
    volts13: 13,
    volts18: 18,
    volts: 18,
    ohms: 0,
    dropVolts: 0,
    limitMa: 400,
    toneArrives: true,
    dormant: false,
    ...more,
  };
}
