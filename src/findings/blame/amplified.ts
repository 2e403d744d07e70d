/** Whether a weak source is helped already. */
import type { Blamed } from "./culprit.ts";
import { isAmplifier, type Stage } from "./stages.ts";

/** So much loss before an amplifier hardly costs C/N: a short lead and a filter [dB]. A choice of this tool. */
const SHORT_WAY_DB = 3;

/** Marks a weak source that has an amplifier right behind it: another one there gives no better C/N. */
export function withAmplified(culprit: Blamed | undefined, stages: readonly Stage[]): Blamed | undefined {
  if (culprit?.does !== "weak source") return culprit;
  const from = stages.findIndex(({ step }) => step.part === culprit.part);
  let lossDb = 0;
  for (const stage of stages.slice(from + 1)) {
    if (isAmplifier(stage)) return { ...culprit, isAmplified: true };
    lossDb -= stage.step.gainDb ?? 0;
    if (lossDb > SHORT_WAY_DB) return culprit;
  }
  return culprit;
}
