/** How well a part is screened, in words, where a field outside gets in. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { optionMeaning } from "../parts/meanings.ts";
import { partName } from "./phrases.ts";

/** "of screening class B", "without a screening class"; undefined for a part that nothing gets in through. */
export function screenWords(evaluation: Evaluation, part: string): string | undefined {
  const of = screeningClass(evaluation, part);
  if (of === undefined) return undefined;
  return of === "none" ? "without a screening class" : `of screening class ${of}`;
}

/** What to put in its place; undefined for a part that nothing gets in through. */
export function screenCure(evaluation: Evaluation, part: string): string | undefined {
  const of = screeningClass(evaluation, part);
  if (of === undefined) return undefined;
  return of === "none" || of === "B"
    ? `Replace ${partName(part)} with a better screened one, of class A`
    : `Replace ${partName(part)} with a better screened one, or move the phone away`;
}

function screeningClass(evaluation: Evaluation, part: string): string | undefined {
  const record = evaluation.record(part);
  if (!record?.treatment.ingress) return undefined;
  const key = optionMeaning(record.kind, "screening");
  const value = key === undefined ? undefined : record.options[key];
  return typeof value === "string" ? value : undefined;
}
