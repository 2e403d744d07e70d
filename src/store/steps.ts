/** Undo and redo that say what they take back or do again. */
import { useStore } from "zustand";
import type { Design } from "../design/design.ts";
import { editFacts } from "../remedies/editFacts.ts";
import { editSentence, stepSentence } from "../sentences/announcement.ts";
import { useApp } from "./app.ts";

/** What the next undo takes back and the next redo does again, each as a sentence; undefined where there is nothing. */
export function useStepWords(): { readonly undo: string | undefined; readonly redo: string | undefined } {
  const design = useApp((s) => s.design);
  const past = useStore(useApp.temporal, (s) => s.pastStates.at(-1)?.design);
  const future = useStore(useApp.temporal, (s) => s.futureStates.at(-1)?.design);
  return { undo: past && wordsBetween(past, design), redo: future && wordsBetween(design, future) };
}

/** Takes the last step back and shows which one it was; closes a preview without a word. */
export function undoStep(): void {
  const past = useApp.temporal.getState().pastStates.at(-1)?.design;
  run("undone", past && wordsBetween(past, useApp.getState().design));
}

export function redoStep(): void {
  const future = useApp.temporal.getState().futureStates.at(-1)?.design;
  run("redone", future && wordsBetween(useApp.getState().design, future));
}

function run(way: "undone" | "redone", words: string | undefined): void {
  const { design, undo, redo, notify } = useApp.getState();
  if (way === "undone") undo();
  else redo();
  if (words && useApp.getState().design !== design) notify(stepSentence(way, words));
}

const known = new WeakMap<Design, { readonly after: Design; readonly words: string | undefined }>();

function wordsBetween(before: Design, after: Design): string | undefined {
  const last = known.get(before);
  if (last?.after === after) return last.words;
  const facts = editFacts(before, after);
  const words = facts ? editSentence(facts) : undefined;
  known.set(before, { after, words });
  return words;
}
