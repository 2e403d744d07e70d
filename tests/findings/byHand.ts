/** A record out of an evaluation, and what is made by hand beside it, for tests of single functions. */
import type { Evaluation, PartRecord } from "../../src/evaluate/evaluation.ts";
import type { Band, Stack } from "../../src/signal/band.ts";
import type { Offer } from "../../src/signal/control.ts";
import { IDEAL_STAGE, switchAt } from "../signal/bands.ts";

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

/** A stage that makes these user bands of what it holds; its worst carrier has this share of noise. */
export function stackOf(numbers: readonly number[], holds: readonly Band[] = [], entryNoiseRatio = 0): Stack {
  return {
    standard: "EN 50494",
    standards: numbers.map(() => "EN 50494"),
    part: "lnb",
    port: "out",
    numbers,
    holds,
    strays: new Set(),
    control: switchAt("lnb", null),
    stage: IDEAL_STAGE,
    entryLevelDbuv: 80,
    entryNoiseRatio,
    entryInterferenceRatio: 0,
  };
}
