/** How a case ended: verdicts on named faults, and why points were lost. */
import type { Design } from "../../design/design.ts";
import type { Reading } from "../../remedies/faults/reading.ts";
import type { CaseProgress, NamedVerdict } from "../../remedies/training/progress.ts";
import type { PointsLost } from "../../remedies/training/score.ts";
import { plural } from "../../words/plural.ts";
import { measurementSentence, readingWords } from "../faults/readingWords.ts";

export const VERDICT_WORDS: Readonly<Record<NamedVerdict, string>> = {
  right: "Right",
  alike: "It would measure the same, but it is elsewhere",
  part: "Right part, other fault",
  wrong: "Not it",
};

/** "Your reading excludes it. Measure the voltage at …: 0 V." */
export function againstSentence(
  design: Design,
  measuring: Parameters<typeof measurementSentence>[1],
  actual: Reading,
): string {
  const where = measurementSentence(design, measuring);
  return `Your own reading excludes it. ${where} It shows: ${readingWords(actual)}.`;
}

/** "5 points for 1 hint." */
export function lossSentence(loss: PointsLost, { measured, evidence, par = 0 }: CaseProgress): string {
  const points = plural(loss.points, { one: (n) => `${n} point`, other: (n) => `${n} points` });
  return `${points} for ${lossWords(loss, measured.length, evidence?.suspects ?? 0, par)}.`;
}

function lossWords({ why, count }: PointsLost, measured: number, suspects: number, par: number): string {
  switch (why) {
    case "guess":
      return measured === 0
        ? "a guess without any reading"
        : `readings that left ${count} of ${suspects} faults possible`;
    case "measurements":
      return plural(count, {
        one: (n) => `${n} measurement more than the best way (${par})`,
        other: (n) => `${n} measurements more than the best way (${par})`,
      });
    case "wrong":
      return plural(count, { one: (n) => `${n} wrong guess`, other: (n) => `${n} wrong guesses` });
    case "excluded":
      return plural(count, {
        one: (n) => `${n} guess that your own reading had excluded`,
        other: (n) => `${n} guesses that your own readings had excluded`,
      });
    case "part":
      return plural(count, {
        one: (n) => `${n} wrong fault at the right part`,
        other: (n) => `${n} wrong faults at the right part`,
      });
    case "hints":
      return plural(count, { one: (n) => `${n} hint`, other: (n) => `${n} hints` });
    case "plan values":
      return plural(count, { one: (n) => `${n} plan value`, other: (n) => `${n} plan values` });
  }
}

/** More than so many are counted. */
const MOST_NAMED = 3;

/** What a reading excluded: a few by name, and how many more. */
export function exclusionWords(sentences: readonly string[]): string {
  if (sentences.length === 0) return "This excludes nothing.";
  const rest = sentences.length - MOST_NAMED;
  const more = plural(Math.max(0, rest), {
    zero: "",
    one: (n) => ` And ${n} more.`,
    other: (n) => ` And ${n} more.`,
  });
  return `No longer possible: ${sentences.slice(0, MOST_NAMED).join(" ")}${more}`;
}
