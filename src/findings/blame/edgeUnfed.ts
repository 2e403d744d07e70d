/** An amplifier without supply on the way of a carrier that is received all the same, with too little to spare. */
import type { Evaluation } from "../../evaluate/evaluation.ts";
import { extreme } from "../extreme.ts";
import { asCulprit } from "./choose.ts";
import type { Blamed } from "./culprit.ts";
import { levelled } from "./level.ts";
import { lacking } from "./shortcomings.ts";
import { type Arriving, type OutputSpot, stagesTo } from "./stages.ts";

/** The part that loses most because nobody feeds it, or because its mains is off; undefined where there is none. */
export function unfedBehind(evaluation: Evaluation, end: OutputSpot, arriving: Arriving): Blamed | undefined {
  const suspects = levelled(stagesTo(evaluation, end, arriving)).flatMap((stage) => {
    const shortcoming = lacking(stage);
    return shortcoming && ["unfed", "switched off"].includes(shortcoming.does)
      ? [{ stage, shortcoming }]
      : [];
  });
  const worst = extreme(suspects, ({ shortcoming }) => shortcoming.excessDb);
  return worst && asCulprit(worst);
}
