/** The steps of a cure in words. */
import type { CureStep, FactsByIdea, IdeaId } from "../../remedies/cureStep.ts";
import type { StepNames, StepWords, WordsOf } from "./told.ts";
import { CONVERTER_WORDS } from "./words/converters.ts";
import { FILTER_WORDS } from "./words/filters.ts";
import { LEAD_WORDS } from "./words/leads.ts";
import { LEVEL_STEP_WORDS } from "./words/levels.ts";
import { SETTING_WORDS } from "./words/settings.ts";
import { SUPPLY_WORDS } from "./words/supply.ts";

const WORDS: WordsOf<IdeaId> = {
  ...LEAD_WORDS,
  ...SETTING_WORDS,
  ...LEVEL_STEP_WORDS,
  ...FILTER_WORDS,
  ...SUPPLY_WORDS,
  ...CONVERTER_WORDS,
};

/** Ideas that there are words for: all of them. */
export const IDEA_IDS = Object.keys(WORDS) as readonly IdeaId[];

/** What is to be done: "Replace “Splitter” with a 2-way splitter". */
export function stepTitle(step: CureStep, names: StepNames): string {
  return wordsOf(step).title({ ...names, place: step.place, facts: step.facts });
}

/** Why it should help, in a sentence. */
export function stepReason(step: CureStep, names: StepNames): string {
  return wordsOf(step).reason({ ...names, place: step.place, facts: step.facts });
}

/** Words without their type of facts: they are only ever given the facts of their own idea. */
function wordsOf({ idea }: CureStep): StepWords<IdeaId> & {
  readonly title: (told: StepNames & { place: string; facts: FactsByIdea[IdeaId] }) => string;
} {
  // Idea and facts of a step belong together (`candidate`), which the compiler cannot follow through the table.
  return WORDS[idea] as unknown as StepWords<IdeaId>;
}
