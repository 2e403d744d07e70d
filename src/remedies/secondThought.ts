/** Steps that nobody takes after another: what was chosen at a place is chosen once in a cure. */
import type { Candidate } from "./candidate.ts";
import type { CureStep, IdeaId } from "./cureStep.ts";

/** Ideas that choose the same thing at one place: the LNB, the cable, or a value. */
const CHOICES: readonly (readonly IdeaId[])[] = [
  ["universal-converter", "band-converter", "stacked-converter", "wideband-converter", "quattro-converter"],
  ["cable-grade", "new-cable"],
  ["amplifier-slope"],
  ["pad"],
  ["pad-value"],
  ["source-pad"],
  ["equaliser"],
  ["tap-value"],
  ["line-amplifier"],
  ["trunk-amplifiers", "trunk-amplifier", "unit-up"],
  ["trunk-pads"],
  ["masthead"],
  ["larger-dish"],
];

/** Whether a step chooses anew what a former one has chosen at the same place. */
export function isSecondThought(former: CureStep, step: CureStep): boolean {
  if (former.place !== step.place) return false;
  return CHOICES.some((ideas) => ideas.includes(former.idea) && ideas.includes(step.idea));
}

/** Steps with one more: a gain that was turned already is turned once, by as much as both. */
export function stepsWith(steps: readonly Candidate[], next: Candidate): readonly Candidate[] {
  const { step } = next;
  if (step.idea !== "gain") return [...steps, next];
  const { facts } = step;
  let { byDb } = facts;
  const others = steps.filter(({ step: former }) => {
    const isSame =
      former.idea === "gain" && former.place === step.place && former.facts.option === facts.option;
    if (isSame) byDb += former.facts.byDb;
    return !isSame;
  });
  return [...others, { ...next, step: { ...step, facts: { ...facts, byDb } } }];
}
