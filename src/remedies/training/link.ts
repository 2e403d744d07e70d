/** Training in the address: "t1." and a case, or a seed beside a design's own link. */
import { HIGHEST_SEED } from "./randomCase.ts";

export type TrainingRef =
  | { readonly type: "case"; readonly id: string }
  /** A random case from whatever design the address holds beside it. */
  | { readonly type: "seed"; readonly seed: number };

const MARK = "t1.";
const CASE_ID = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;
const MOST_LENGTH = 60;

/** "t1.lounge-dark", "t1.20260" */
export function formatTraining(ref: TrainingRef): string {
  return `${MARK}${ref.type === "case" ? ref.id : String(ref.seed)}`;
}

/** Reads it back; null for anything else, so that a damaged link does nothing worse than open no case. */
export function parseTraining(text: string): TrainingRef | null {
  if (!text.startsWith(MARK) || text.length > MOST_LENGTH) return null;
  const rest = text.slice(MARK.length);
  if (/^(0|[1-9]\d{0,9})$/.test(rest)) {
    const seed = Number(rest);
    return seed <= HIGHEST_SEED ? { type: "seed", seed } : null;
  }
  return CASE_ID.test(rest) ? { type: "case", id: rest } : null;
}
