/** What is said of a level beyond a limit, at a receiver as at the input of a unit for user bands. */
import type { FindingOf } from "../findings/finding.ts";
import { numeralAsSet } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { culpritWords } from "./culpritWords.ts";
import type { PlaceLook } from "./explain/place.ts";
import { beside, countedCarriers, share } from "./phrases.ts";

type LevelFinding = FindingOf<"level-limits"> | FindingOf<"stacking-input">;

/** Whether it is too much that comes, and not too little. */
export function isTooStrong({ at }: LevelFinding): boolean {
  return at.side === "too much";
}

/** "⟦cable⟧ is 60 m long and loses 14 dB. At ⟦set⟧, 2 of 6 TV channels are too weak. The worst has …" */
export function levelMessage(finding: LevelFinding, where: string): string {
  const { facts, at, value = 0, limit = 0 } = finding;
  const high = isTooStrong(finding);
  const which = share(facts.failing, facts.of, countedCarriers(facts.worst, at.service));
  const figures = `${beside(value, limit)} dBµV and ${high ? "may" : "should"} have ${numeralAsSet(limit)} dBµV at ${high ? "most" : "least"}`;
  const degree = high ? "strong" : "weak";
  const place = `At ${where}, ${which}`;
  const seen = plural(facts.failing, {
    one: `${place} is too ${degree}: it has ${figures}.`,
    other: `${place} are too ${degree}. The worst has ${figures}.`,
  });
  return facts.culprit ? `${culpritWords(facts.culprit)} ${seen}` : seen;
}

/** The mark at the carriers beyond the limit. */
export function levelMark(finding: LevelFinding): PlaceLook {
  const high = isTooStrong(finding);
  return {
    kind: high ? "strong" : "weak",
    label: `${numeralAsSet(finding.limit ?? 0)} dBµV ${high ? "at most" : "at least"}`,
    withLimit: true,
  };
}
