/** The passive side of a design, by which receivers reach one another: the same object while none of it changed. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { SignalTreatment } from "../parts/contract.ts";
import { remembered } from "../signal/remember.ts";
import { isPassive } from "./decoupling.ts";

export type PassiveNetwork<T> = {
  /** Three entries a part: what it lets through, what it is connected to, what else counts of it. */
  readonly rests: readonly unknown[];
  /** Answers by frequency [MHz]. */
  readonly answers: Map<number, T>;
};

/** What is worked out from the passive side, kept for the last design that was asked for. `also`: what else it rests on. */
export function passiveNetworks<T>(
  also: (record: PartRecord) => unknown,
): (evaluation: Evaluation) => PassiveNetwork<T> {
  const ofEvaluation = new WeakMap<Evaluation, PassiveNetwork<T>>();
  let last: PassiveNetwork<T> = { rests: [], answers: new Map() };
  return (evaluation) =>
    remembered(ofEvaluation, evaluation, () => {
      const rests = evaluation.records.flatMap((r): unknown[] => [
        r.looped ? NOTHING : passiveOf(r.treatment),
        r.joined,
        also(r),
      ]);
      if (!isSame(rests, last.rests)) last = { rests, answers: new Map() };
      return last;
    });
}

const NOTHING = {};
const passive = new WeakMap<SignalTreatment, object>();

/** A treatment that lets something back or keeps outputs apart; all others are alike here. */
function passiveOf(treatment: SignalTreatment): object {
  return remembered(passive, treatment, () =>
    treatment.isolationDb !== undefined || treatment.paths?.some(isPassive) ? treatment : NOTHING,
  );
}

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, n) => value === b[n]);
}
