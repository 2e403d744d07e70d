/** Which of several parts that are wrong is the culprit. */
import { isBroken } from "../../parts/meanings.ts";
import { type Blamed, dishField } from "./culprit.ts";
import type { Served, ServedByOutput } from "./served.ts";
import type { Shortcoming } from "./shortcomings.ts";
import type { Stage } from "./stages.ts";

/** Figures closer than this count as equal: then the part nearest to the source is meant, whom most depend on [dB]. */
const ALIKE_DB = 0.3;

/**
 * What a source should give is a guess where what a part should lose is known: so much of its lack counts. A choice of
 * this tool.
 */
const SOURCE_WEIGHT = 0.4;

export type Suspect = { readonly stage: Stage; readonly shortcoming: Shortcoming };

/** What is known of the places that depend on suspects. */
export type About = {
  readonly missingDb: number;
  readonly served: ServedByOutput;
};

/**
 * The suspect that is worst by itself. What is known to be broken counts in full. Any other that also serves places
 * that are in order explains what is missing only in part: of its excess no more counts than is missing, and of that a
 * half. But one that puts right several places at once, and harms none of the others, comes before a part for each of
 * them.
 */
export function worstOf(suspects: readonly Suspect[], about: About): Blamed | undefined {
  let worst: { readonly suspect: Suspect; readonly weight: number } | undefined;
  for (const suspect of suspects) {
    const weight = weightOf(suspect, about);
    if (!worst || weight > worst.weight + ALIKE_DB) worst = { suspect, weight };
  }
  if (!worst) return undefined;
  return asCulprit(mendsAll(suspects, worst.suspect, about) ?? worst.suspect);
}

function weightOf(suspect: Suspect, about: About): number {
  const { does, excessDb } = suspect.shortcoming;
  if (isDefect(suspect)) return excessDb;
  const counted = excessDb * (does === "weak source" ? SOURCE_WEIGHT : 1);
  return servedBy(suspect, about).inOrder > 0 ? Math.min(counted, about.missingDb) / 2 : counted;
}

function isDefect({ stage: { record }, shortcoming }: Suspect): boolean {
  const { does } = shortcoming;
  // A part that nobody feeds is as good as broken, whoever still gets enough behind it.
  return does === "dead cable" || does === "unfed" || isBroken(record.kind, record.options);
}

function servedBy({ stage: { step } }: Suspect, { served }: About): Served {
  return served(`${step.part}.${step.to}`);
}

/** An amplifier by which all places would be right that the worst suspect serves, and others besides. */
function mendsAll(suspects: readonly Suspect[], worst: Suspect, about: About): Suspect | undefined {
  const { failing } = servedBy(worst, about);
  if (isDefect(worst) || worst.shortcoming.does === "legs swapped") return undefined;
  return suspects.find((suspect) => {
    const { does, excessDb } = suspect.shortcoming;
    const behind = servedBy(suspect, about);
    return (
      (does === "low gain" || does === "high gain") &&
      behind.failing > failing &&
      excessDb >= behind.missingDb &&
      behind.spareDb >= behind.missingDb &&
      (does === "high gain" || canGive(suspect.stage, behind.missingDb))
    );
  });
}

/** Whether an amplifier can be turned up so far within its rated output. */
export function canGive({ record }: Stage, moreDb: number): boolean {
  return record.drives.every((d) => d.levelDbuv + moreDb <= d.allowedDbuv);
}

export function asCulprit({ stage, shortcoming }: Suspect): Blamed {
  return { part: stage.step.part, port: stage.step.to, ...shortcoming, ...dishField(stage.record) };
}

/**
 * So much of the excess [share of the decibels] must be a part's own gain, to be called its doing: a rest of few decibels goes
 * with the attenuator that is fitted in its place. A choice of this tool.
 */
const OWN_SHARE = 0.8;

/** Whether the gain of a part makes up what it is driven too far [dB]. */
export function isByGain(gainDb: number, overDb: number): boolean {
  return gainDb > 0 && gainDb >= overDb * OWN_SHARE;
}
