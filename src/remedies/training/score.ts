/** What a solution is worth: evidence, few measurements, no guessing. */
import { type CaseProgress, isSolved } from "./progress.ts";

const FULL = 100;
const FOR_MEASUREMENT_OVER_PAR = 5;
/** A fault named that was still possible, and one that an own reading had excluded already. */
const FOR_WRONG = 10;
const FOR_EXCLUDED = 20;
/** The right part, another fault: between right and wrong. */
const FOR_PART = 5;
const FOR_HINT = 10;
/** Where the level of the case sets a price on it. */
export const FOR_PLAN_VALUE = 3;
/** Named without any reading that speaks for it; less where readings had excluded some of the others. */
const FOR_GUESS = 40;
const LEAST_IF_SOLVED = 10;
/** Given up, but the part was found. */
const MOST_FOR_PART = 40;

export type PointsLost = {
  readonly why: "guess" | "measurements" | "wrong" | "excluded" | "part" | "hints" | "plan values";
  readonly count: number;
  readonly points: number;
};

export type Score = {
  /** 0 to 100; 0 while nothing is found. */
  readonly points: number;
  readonly lost: readonly PointsLost[];
};

export function scoreOf(progress: CaseProgress): Score {
  const { measured, named, hints, par, evidence } = progress;
  const solved = isSolved(progress);
  const hasPart = named.some((n) => n.verdict === "part");
  if (!solved && !(progress.shown && hasPart)) return { points: 0, lost: [] };
  const wrong = named.filter((n) => n.verdict === "wrong");
  const excluded = wrong.filter((n) => n.against !== undefined).length;
  const loss = (why: PointsLost["why"], count: number, each: number): PointsLost => ({
    why,
    count,
    points: count * each,
  });
  const lost = [
    ...(solved ? [{ why: "guess" as const, count: evidence?.left ?? 0, points: guessPoints(progress) }] : []),
    loss(
      "measurements",
      par === undefined ? 0 : Math.max(0, measured.length - par),
      FOR_MEASUREMENT_OVER_PAR,
    ),
    loss("wrong", wrong.length - excluded, FOR_WRONG),
    loss("excluded", excluded, FOR_EXCLUDED),
    ...(solved ? [loss("part", named.filter((n) => n.verdict === "part").length, FOR_PART)] : []),
    loss("hints", hints, FOR_HINT),
    loss("plan values", measured.filter((m) => m.planValue).length, FOR_PLAN_VALUE),
  ].filter((each) => each.points > 0);
  const left = (solved ? FULL : MOST_FOR_PART) - lost.reduce((sum, each) => sum + each.points, 0);
  return { points: Math.max(solved ? LEAST_IF_SOLVED : 0, left), lost };
}

/** All of it without a reading; else in proportion to the bits that the readings left open (Shannon). */
function guessPoints({ measured, evidence }: CaseProgress): number {
  if (measured.length === 0) return FOR_GUESS;
  if (!evidence || evidence.suspects <= 1) return 0;
  return Math.round((FOR_GUESS * Math.log2(evidence.left)) / Math.log2(evidence.suspects));
}
