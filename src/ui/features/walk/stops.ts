/** A walk as stops on the canvas: which parts and wires it passes, and where it is lost. */

import { wireId } from "../../../design/design.ts";
import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { SupplyStep } from "../../../findings/walk/supply.ts";
import { plainLabelOf } from "../../../sentences/phrases.ts";
import { LOST_HERE } from "../../../sentences/placeWords.ts";
import type { ToldWay } from "../../../sentences/walk/signal.ts";
import type { ToldSupplyStep } from "../../../sentences/walk/supply.ts";
import { decimal } from "../../kit/format.ts";

export type WalkStop = {
  readonly part: string;
  readonly label: string;
  /** What happens there, as a sentence. */
  readonly words: string;
};

/** "lost": not to be had from here on. "doubtful": had, but outside what is asked for. */
export type WalkTrouble = {
  readonly at: number;
  readonly kind: "lost" | "doubtful";
  /** For a mark: "lost here". */
  readonly mark: string;
  readonly words: string;
};

export type WalkRoute = {
  readonly stops: readonly WalkStop[];
  /** Ids of the wires between them. */
  readonly wires: readonly string[];
  readonly trouble: WalkTrouble | null;
};

const NOWHERE: WalkRoute = { stops: [], wires: [], trouble: null };

/** From the roof downwards. The receiver, or the part that hands nothing on, is the last stop. */
export function signalRoute(evaluation: Evaluation, way: ToldWay | undefined, receiver: string): WalkRoute {
  if (!way) return NOWHERE;
  const label = (part: string) => plainLabelOf(evaluation, part);
  const { steps, loss, end } = way;
  const stops: WalkStop[] = steps.map(({ part, words }) => ({ part, label: label(part), words }));
  const isReceiver = evaluation.record(receiver)?.kind.reception !== undefined;
  if (isReceiver && end)
    stops.push({ part: receiver, label: label(receiver), words: arrivalWords(label(receiver), end, way) });
  else if (loss && loss.step >= stops.length)
    stops.push({ part: loss.part, label: label(loss.part), words: loss.words });
  const wires = stops.flatMap(({ part }, n) => {
    const out = steps[n]?.to;
    const far = out === undefined ? undefined : evaluation.record(part)?.joined[out];
    return out !== undefined && far && far[0] === stops[n + 1]?.part
      ? [wireId({ from: [part, out], to: far })]
      : [];
  });
  const trouble: WalkTrouble | null = loss
    ? {
        at: Math.min(loss.step, stops.length - 1),
        kind: way.got ? "doubtful" : "lost",
        mark: way.got ? "off limits" : LOST_HERE,
        words: loss.words,
      }
    : null;
  return { stops, wires, trouble };
}

function arrivalWords(
  label: string,
  { levelDbuv, cniDb }: NonNullable<ToldWay["end"]>,
  { requiredDb }: ToldWay,
): string {
  return `“${label}”: ${decimal(levelDbuv)} dBµV arrive; behind its tuner C/(N+I) is ${decimal(cniDb)} dB, and ${decimal(requiredDb)} dB are needed.`;
}

/** The steps of one branch of a supply, from the input that gives it up to the part at its end. */
export function branchTo(steps: readonly ToldSupplyStep[], last: number): readonly ToldSupplyStep[] {
  const branch: ToldSupplyStep[] = [];
  for (let at: number | null = last; at !== null; ) {
    const step: ToldSupplyStep | undefined = steps[at];
    if (!step) break;
    branch.unshift(step);
    // Each step's forerunner stands before it in the list, so this comes to an end.
    at = step.before;
  }
  return branch;
}

/** Places of the ends of all branches, those in trouble first. */
export function branchEnds(steps: readonly SupplyStep[]): readonly number[] {
  const inner = new Set(steps.map((s) => s.before));
  const ends = [...steps.keys()].filter((n) => !inner.has(n));
  const isBad = (n: number) => Number(isTrouble(steps[n]));
  return ends.sort((a, b) => isBad(b) - isBad(a) || a - b);
}

/** The first switch that would take 18 V for 13 V. */
function tooLowForHorizontal(
  evaluation: Evaluation,
  branch: readonly SupplyStep[],
  stops: readonly WalkStop[],
): WalkTrouble | null {
  const at = branch.findIndex((step) => {
    const threshold = thresholdAt(evaluation, step);
    return threshold !== null && step.volts13 !== step.volts18 && step.volts18 <= threshold;
  });
  const step = branch[at];
  const threshold = step && thresholdAt(evaluation, step);
  if (!step || threshold === null || threshold === undefined) return null;
  return {
    at,
    kind: "lost",
    mark: "too low for H",
    words: `“${stops[at]?.label}” gets ${decimal(step.volts18)} V when horizontal is asked for, and takes it as vertical up to ${decimal(threshold)} V.`,
  };
}

function isTrouble(step: SupplyStep | undefined): boolean {
  return (
    step?.end === "too low" || step?.end === "blocked" || step?.end === "shorted" || step?.end === "loop"
  );
}

/** Above this voltage the switch at a step takes a request as horizontal [V]; null where there is none. */
export function thresholdAt(evaluation: Evaluation, { part, port }: SupplyStep): number | null {
  const state = evaluation.record(part)?.switches[port];
  return state && state.setting !== "stack" && state.thresholdVolts > 0 ? state.thresholdVolts : null;
}

/** From the receiver upwards. */
export function supplyRoute(evaluation: Evaluation, branch: readonly ToldSupplyStep[]): WalkRoute {
  const label = (part: string) => plainLabelOf(evaluation, part);
  const stops = branch.map(({ part, words }) => ({ part, label: label(part), words }));
  const wires = branch.slice(1).flatMap(({ part, port }) => {
    const far = evaluation.record(part)?.joined[port];
    return far ? [wireId({ from: [part, port], to: far })] : [];
  });
  const last = branch.at(-1);
  const trouble: WalkTrouble | null =
    last && isTrouble(last)
      ? { at: stops.length - 1, kind: "lost", mark: "ends here", words: last.words }
      : tooLowForHorizontal(evaluation, branch, stops);
  return { stops, wires, trouble };
}
