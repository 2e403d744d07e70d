/** Which of several parts that are wrong is the culprit. */
import type { Blamed } from "./culprit.ts";
import type { InOrder } from "./others.ts";
import type { Shortcoming } from "./shortcomings.ts";
import type { Stage } from "./stages.ts";

/** Figures closer than this count as equal: then the part nearest to the source is meant, whom most depend on [dB]. */
const ALIKE_DB = 0.3;

/**
 * What a source should give is a guess where what a part should lose is known: so much of its lack counts. A choice of
 * this tool.
 */
const SOURCE_WEIGHT = 0.6;

export type Suspect = { readonly stage: Stage; readonly shortcoming: Shortcoming };

/**
 * The suspect that is worst by itself. One that also serves places that are in order explains what is missing only in
 * part: of its excess no more counts than is missing, and of that a half.
 */
export function worstOf(
  suspects: readonly Suspect[],
  o: { readonly missingDb: number; readonly inOrder: InOrder },
): Blamed | undefined {
  let worst: { readonly suspect: Suspect; readonly weight: number } | undefined;
  for (const suspect of suspects) {
    const { does } = suspect.shortcoming;
    const excessDb = suspect.shortcoming.excessDb * (does === "weak source" ? SOURCE_WEIGHT : 1);
    const { part, to } = suspect.stage.step;
    const servesOthers = o.inOrder(`${part}.${to}`);
    const weight = servesOthers ? Math.min(excessDb, o.missingDb) / 2 : excessDb;
    if (!worst || weight > worst.weight + ALIKE_DB) worst = { suspect, weight };
  }
  return worst && asCulprit(worst.suspect);
}

export function asCulprit({ stage, shortcoming }: Suspect): Blamed {
  return { part: stage.step.part, port: stage.step.to, ...shortcoming };
}
