/** What a solution is worth: few measurements, no guessing. */

import { plural } from "../../words/plural.ts";
import type { Level } from "./case.ts";
import { type CaseProgress, isSolved } from "./progress.ts";

/** Measurements within which a case of each level can be solved without luck. */
const PAR: Readonly<Record<Level, number>> = { 1: 4, 2: 5, 3: 6, 4: 8, 5: 10 };
const FULL = 100;
const FOR_MEASUREMENT_OVER_PAR = 5;
const FOR_WRONG_SUSPICION = 15;
const FOR_HINT = 10;
const LEAST_IF_SOLVED = 10;

export type Score = {
  /** 0 to 100; 0 while unsolved. */
  readonly points: number;
  readonly par: number;
  /** Why not all, one phrase each. */
  readonly lost: readonly { readonly why: string; readonly points: number }[];
};

export function scoreOf(progress: CaseProgress, level: Level): Score {
  const par = PAR[level];
  if (!isSolved(progress)) return { points: 0, par, lost: [] };
  const over = Math.max(0, progress.measured.length - par);
  const wrong = progress.named.filter((n) => n.verdict !== "right").length;
  const lost = [
    {
      why: plural(par, {
        one: `${over} more than 1 measurement`,
        other: (n) => `${over} more than ${n} measurements`,
      }),
      points: over * FOR_MEASUREMENT_OVER_PAR,
    },
    {
      why: plural(wrong, {
        one: (n) => `${n} suspicion that was wrong`,
        other: (n) => `${n} suspicions that were wrong`,
      }),
      points: wrong * FOR_WRONG_SUSPICION,
    },
    {
      why: plural(progress.hints, { one: (n) => `${n} hint`, other: (n) => `${n} hints` }),
      points: progress.hints * FOR_HINT,
    },
  ].filter((each) => each.points > 0);
  const left = FULL - lost.reduce((sum, each) => sum + each.points, 0);
  return { points: Math.max(LEAST_IF_SOLVED, left), par, lost };
}
