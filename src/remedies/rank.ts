/** Which of two proved cures is shown first. */
import type { Cost } from "./cost.ts";
import type { Proof } from "./proof.ts";

type Ranked = {
  readonly cost: Cost;
  readonly proof: Proof;
  readonly givesUp: readonly unknown[];
  readonly steps: readonly unknown[];
};

/** What is sought: an end of all errors, of all warnings, or of one finding. */
export type SearchAim = "errors" | "warnings" | "one finding";

/** What most weighs on the user: all in all, or his time, his money, or cables through finished walls alone. */
export type Effort = "all" | "work" | "money" | "cables";

type Order = (a: Ranked, b: Ranked) => number;

/**
 * For a whole design what cures most comes before what costs least: half a cure is no bargain.
 * What gives something up comes after what does not; then the least trouble counts, and each warning that comes with it or
 * stays for an error, and each receiver left with little to spare, is some.
 */
export function byRank(aim: SearchAim, effort: Effort = "all"): Order {
  return (a, b) =>
    (aim === "one finding" ? 0 : a.proof.errorsLeft - b.proof.errorsLeft) ||
    (aim === "warnings" ? a.proof.warningsLeft - b.proof.warningsLeft : 0) ||
    (effort === "all" ? a.givesUp.length - b.givesUp.length : drawbacks(a) - drawbacks(b)) ||
    (effort === "all" ? troubleInAll(a) - troubleInAll(b) : a.proof.edgesLeft - b.proof.edgesLeft) ||
    byEffort(effort)(a, b) ||
    a.proof.errorsLeft - b.proof.errorsLeft ||
    a.steps.length - b.steps.length;
}

/** What a receiver left with little to spare is worth: to be called again one day; our choice. */
const EDGE_TROUBLE = 30;

/** What a warning is worth that a cure brings, or leaves in an error's place; our choice. */
const WARNING_TROUBLE = 100;

/** Work, money, and what is left to be called for again; a receiver that failed before and stands on the edge counts twice. */
function troubleInAll({ cost, proof }: Ranked): number {
  const edges = proof.edgesLeft + proof.onEdge.length;
  return troubleOf(cost) + EDGE_TROUBLE * edges + WARNING_TROUBLE * warningsOf(proof);
}

/** What a cable through finished walls costs the people who live there, beside the work; our choice. */
const CABLE_TROUBLE = 30;

/** Work, parts and cables together: a minute counts as much as one of the money that prices are in; our choice. */
export function troubleOf(cost: Cost): number {
  return cost.workMinutes + cost.partsPrice + CABLE_TROUBLE * cost.newCables;
}

const MEASURES: Readonly<Record<Effort, (cost: Cost) => number>> = {
  all: troubleOf,
  work: (c) => c.workMinutes,
  money: (c) => c.partsPrice,
  cables: (c) => c.newCables,
};

/** What weighs most first, then the others. */
export function byEffort(effort: Effort): Order {
  const measures = [MEASURES[effort], MEASURES.work, MEASURES.money, MEASURES.cables];
  return (a, b) => {
    for (const measure of measures) {
      const more = measure(a.cost) - measure(b.cost);
      if (more !== 0) return more;
    }
    return 0;
  };
}

/** So many times the trouble is absurd, if there is another way; below so much of it nobody minds. Our choice. */
const FAR = { times: 10, trouble: 200 } as const;

/** Cures no more than another one, for very much more trouble: nobody would offer it beside that one. */
export function isFarDearer(p: Ranked, other: Ranked): boolean {
  const trouble = troubleOf(p.cost);
  return (
    trouble >= FAR.trouble &&
    trouble >= FAR.times * troubleOf(other.cost) &&
    other.proof.errorsLeft <= p.proof.errorsLeft &&
    other.proof.warningsLeft <= p.proof.warningsLeft &&
    drawbacks(other) <= drawbacks(p)
  );
}

/** Warnings that come with it, and errors of which one stays. */
function warningsOf({ caused, softened }: Proof): number {
  return caused.filter((f) => f.severity === "warning").length + softened.length;
}

function drawbacks({ proof, givesUp }: Ranked): number {
  return warningsOf(proof) + proof.onEdge.length + givesUp.length;
}
