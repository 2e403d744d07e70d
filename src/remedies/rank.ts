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
 * A cure that brings a new warning, makes one of an error or gives something up comes after one that does none of it; then
 * the least trouble counts, and each receiver left with little to spare is some.
 */
export function byRank(aim: SearchAim, effort: Effort = "all"): Order {
  return (a, b) =>
    (aim === "one finding" ? 0 : a.proof.errorsLeft - b.proof.errorsLeft) ||
    (aim === "warnings" ? a.proof.warningsLeft - b.proof.warningsLeft : 0) ||
    (effort === "all" ? lasting(a) - lasting(b) : drawbacks(a) - drawbacks(b)) ||
    (effort === "all" ? troubleInAll(a) - troubleInAll(b) : a.proof.edgesLeft - b.proof.edgesLeft) ||
    byEffort(effort)(a, b) ||
    a.proof.errorsLeft - b.proof.errorsLeft ||
    a.steps.length - b.steps.length;
}

/** What a receiver left with little to spare is worth: to be called again one day; our choice. */
const EDGE_TROUBLE = 30;

/** One that failed before counts twice: it is what somebody was called for. */
function troubleInAll({ cost, proof }: Ranked): number {
  return troubleOf(cost) + EDGE_TROUBLE * (proof.edgesLeft + proof.onEdge.length);
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

/** New warnings, errors of which one stays, and tuners given up. */
function lasting({ proof, givesUp }: Ranked): number {
  const warnings = proof.caused.filter((f) => f.severity === "warning").length;
  return warnings + proof.softened.length + givesUp.length;
}

function drawbacks(p: Ranked): number {
  return lasting(p) + p.proof.onEdge.length;
}
