/** Undo and redo that say what they take back or do again. */
import { useStore } from "zustand";
import type { Design } from "../design/design.ts";
import { stepWords } from "../sentences/stepWords.ts";
import { useApp } from "./app.ts";

/** What the next undo would take back; undefined where there is nothing. */
export function undoWords(): string | undefined {
  const past = useApp.temporal.getState().pastStates.at(-1)?.design;
  return past && stepWords(past, useApp.getState().design);
}

/** What the next redo would do again; undefined where there is nothing. */
export function redoWords(): string | undefined {
  const future = useApp.temporal.getState().futureStates.at(-1)?.design;
  return future && stepWords(useApp.getState().design, future);
}

/** The same for a page to show. */
export function useStepWords(): { readonly undo: string | undefined; readonly redo: string | undefined } {
  // The words follow from the history, which changes with every step.
  const design = useApp((s) => s.design);
  const past = useStore(useApp.temporal, (s) => s.pastStates.at(-1)?.design);
  const future = useStore(useApp.temporal, (s) => s.futureStates.at(-1)?.design);
  return {
    undo: past && wordsBetween(past, design),
    redo: future && wordsBetween(design, future),
  };
}

let last: { before: Design; after: Design; words: string } | null = null;

function wordsBetween(before: Design, after: Design): string {
  if (last?.before !== before || last.after !== after)
    last = { before, after, words: stepWords(before, after) };
  return last.words;
}

/** Takes the last step back and says which one it was; closes a preview without a word. */
export function undoStep(): void {
  say(undoWords(), "Undone", () => useApp.getState().undo());
}

export function redoStep(): void {
  say(redoWords(), "Done again", () => useApp.getState().redo());
}

function say(words: string | undefined, verb: string, run: () => void): void {
  const before = useApp.getState().design;
  run();
  if (words !== undefined && useApp.getState().design !== before)
    useApp.getState().notify(`${verb}: ${words}.`);
}
