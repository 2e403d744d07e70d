/** How far a case has come, in a few words. */
import type { Level } from "../../../remedies/training/case.ts";
import { type CaseProgress, isClosed, isSolved } from "../../../remedies/training/progress.ts";
import { scoreOf } from "../../../remedies/training/score.ts";
import { counted } from "../../kit/format.ts";

export type ProgressWords = { readonly tone: "ok" | "note" | "warning" | null; readonly words: string };

export function progressWords(progress: CaseProgress): ProgressWords {
  if (isSolved(progress))
    return { tone: "ok", words: `Solved, ${counted(scoreOf(progress).points, "point")}` };
  if (isClosed(progress)) return { tone: "warning", words: "Shown" };
  const { measured, named, hints } = progress;
  if (measured.length + named.length + hints === 0) return { tone: null, words: "Not begun" };
  return { tone: "note", words: `Begun, ${counted(measured.length, "measurement")}` };
}

export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  1: "One look and one measurement",
  2: "The roof and its supply",
  3: "Supply and command decide",
  4: "The culprit is far from what fails",
  5: "Several parts could do the same",
};
