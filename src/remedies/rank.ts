/** Which of two proved cures is shown first. */
import type { Cost } from "./cost.ts";
import type { Proof } from "./proof.ts";

type Ranked = {
  readonly cost: Cost;
  readonly proof: Proof;
  readonly givesUp: readonly string[];
  readonly steps: readonly unknown[];
};

/**
 * For one finding: least work on site, then parts, then cables to pull.
 * For a whole design what cures most comes before what costs least: half a cure is no bargain.
 * A cure that brings a new warning, or gives something up, comes after one that does neither.
 */
export function byRank(aim: "whole" | "one finding"): (a: Ranked, b: Ranked) => number {
  return (a, b) =>
    (aim === "whole" ? a.proof.errorsLeft - b.proof.errorsLeft : 0) ||
    drawbacks(a) - drawbacks(b) ||
    a.cost.workMinutes - b.cost.workMinutes ||
    a.cost.partsPrice - b.cost.partsPrice ||
    a.cost.newCables - b.cost.newCables ||
    a.proof.errorsLeft - b.proof.errorsLeft ||
    a.steps.length - b.steps.length;
}

function drawbacks({ proof, givesUp }: Ranked): number {
  return proof.caused.filter((f) => f.severity === "warning").length + givesUp.length;
}
