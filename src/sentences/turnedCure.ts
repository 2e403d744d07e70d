/** What is to be done where an aerial hears another transmitter on a channel that is wanted. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { optionMeaning } from "../parts/meanings.ts";
import { AS_LISTED } from "../parts/transmitters.ts";
import { partName } from "./phrases.ts";

/** Where bearings are known the aerial is turned; else they are asked for, because nothing can be calculated. */
export function turnedCure(evaluation: Evaluation, aerial: string): string {
  const record = evaluation.record(aerial);
  const aim = record && optionMeaning(record.kind, "aim");
  return aim !== undefined && record?.options[aim] !== AS_LISTED
    ? `Turn ${partName(aerial)} so that it hears less of the other transmitter, or fit an aerial of narrower beam.`
    : `The bearings of ${partName(aerial)} and of its transmitters would show whether turning it helps.`;
}
