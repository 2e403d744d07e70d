/** Steps that nobody takes after another: what was chosen at a place is chosen once in a cure. */
import type { Design } from "../design/design.ts";
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
  ["house-amplifier"],
  ["larger-dish"],
];

/** Whether a step chooses anew what a former one has chosen at the same place. */
export function isSecondThought(former: CureStep, step: CureStep): boolean {
  if (isBackAndForth(former, step)) return true;
  if (former.place !== step.place) return false;
  return CHOICES.some((ideas) => ideas.includes(former.idea) && ideas.includes(step.idea));
}

/** Ideas that set, move or take away one part: none of them comes after the step that has put the part there. */
const OF_ONE_PART: readonly IdeaId[] = [
  "gain",
  "amplifier-slope",
  "input-pad",
  "pad-value",
  "tap-value",
  "pad-away",
  "amplifier-away",
  "filter-away",
  "inserter-moved",
  "supply-on",
  "higher-supply",
  "stronger-supply",
];

/** Whether a step turns at a part that is not there yet: what a step puts in, it puts in as it is to be. */
export function isOfNewPart({ parts }: Design, { idea, place }: CureStep): boolean {
  return OF_ONE_PART.includes(idea) && parts.every(({ id }) => id !== place);
}

/** Ideas that put something in, which others take out. */
const PUT_IN: Readonly<Partial<Record<IdeaId, readonly IdeaId[]>>> = {
  "amplifier-away": ["masthead", "house-amplifier", "line-amplifier", "tv-amplifier"],
  "pad-away": ["pad", "source-pad"],
};

/** Whether one step puts in what another takes out. */
function isBackAndForth(former: CureStep, step: CureStep): boolean {
  const isPutIn = (out: CureStep, put: CureStep) => PUT_IN[out.idea]?.includes(put.idea) ?? false;
  return isPutIn(former, step) || isPutIn(step, former);
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
