/** The guided cases, from easy to hard. */
import type { TrainingCase } from "./case.ts";
import { EASY } from "./cases/easy.ts";
import { HARD } from "./cases/hard.ts";
import { MIDDLE } from "./cases/middle.ts";

export const CASES: readonly TrainingCase[] = [...EASY, ...MIDDLE, ...HARD];

export function caseOf(id: string): TrainingCase | undefined {
  return CASES.find((each) => each.id === id);
}
