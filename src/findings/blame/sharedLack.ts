/** Where no part is wrong, and several places get too little: the point before which all of them lack level. */
import type { Blamed } from "./culprit.ts";
import type { ServedByOutput } from "./served.ts";
import { isAmplifier, type Stage } from "./stages.ts";

/**
 * The first part on a way at which those part that miss the limit: what comes to it is too little for all of them, and
 * an amplifier before it serves them all. Undefined for one place alone, and where an amplifier divides.
 */
export function sharedLack(stages: readonly Stage[], served: ServedByOutput): Blamed | undefined {
  const failing = ({ step }: Stage) => served(`${step.part}.${step.to}`).failing;
  const [source] = stages;
  const all = source ? failing(source) : 0;
  const stage = all < 2 ? undefined : stages.find((s) => failing(s) < all);
  if (!stage || isAmplifier(stage)) return undefined;
  const { part, to, gainDb } = stage.step;
  return { part, port: to, does: "gets too little", excessDb: 0, amount: gainDb ?? 0 };
}
