/** The question how a level came about, as it is asked and put away. */
import { closeLower, currentAsked, dropLower, showLower, useAsked } from "./lower.ts";
import type { Question } from "./question.ts";

/** The question about the open design; null when none is asked. */
export function useQuestion(): Question | null {
  return useAsked("origin")?.question ?? null;
}

export function currentQuestion(): Question | null {
  return currentAsked("origin")?.question ?? null;
}

/** Shows how a level came about, in the place of the spectrum. */
export function showOrigin(question: Question): void {
  showLower({ type: "origin", question });
}

/** Puts the question away and the panes back as they were. */
export function closeQuestion(): void {
  closeLower("origin");
}

/** Puts the question away because something else was chosen: the panes stay. */
export function clearQuestion(): void {
  dropLower("origin");
}
