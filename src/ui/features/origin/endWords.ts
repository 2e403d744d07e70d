/** The end of the way in sentences: what arrives, and whether it is enough. */
import type { MerShown } from "../../../sentences/merWords.ts";
import { numeralAsSet } from "../../../words/numbers.ts";
import { decimal } from "../../kit/format.ts";
import type { LevelOrigin } from "./levelOrigin.ts";

export function endWords(answer: LevelOrigin): readonly string[] {
  const last = answer.steps.at(-1);
  if (!last) return [];
  if (answer.gone !== undefined)
    return [`Removed: “${answer.gone}” takes it away, and what is left of it is of no use.`];
  return [
    levelWords(last.levelDbuv, answer),
    qualityWords(answer.tuner?.cniDb ?? last.cniDb, answer),
    ...lossWords(answer),
  ];
}

function levelWords(levelDbuv: number, { limits, profileName }: LevelOrigin): string {
  const level = `${decimal(levelDbuv)} dBµV arrive`;
  if (!limits) return `${level}.`;
  const range = `${numeralAsSet(limits.minDbuv)} to ${numeralAsSet(limits.maxDbuv)} dBµV (${profileName})`;
  const lack = limits.minDbuv - levelDbuv;
  const excess = levelDbuv - limits.maxDbuv;
  if (lack > 0) return `${level}, ${decimal(lack)} dB too little for ${range}.`;
  if (excess > 0) return `${level}, ${decimal(excess)} dB too much for ${range}.`;
  return `${level}, within ${range}.`;
}

function qualityWords(cniDb: number, { requiredDb, tuner, mer }: LevelOrigin): string {
  const where = tuner === undefined ? "" : " behind the tuner";
  const margin = cniDb - requiredDb;
  const spare = margin >= 0 ? `${decimal(margin)} dB to spare` : `${decimal(-margin)} dB short`;
  return `C/(N+I)${where} is ${decimal(cniDb)} dB${SHOWN[mer]}; ${decimal(requiredDb)} dB are needed: ${spare}.`;
}

const SHOWN: Readonly<Record<MerShown, string>> = {
  about: ", about the MER a meter shows",
  lower: ", and a meter shows a lower MER, as on air",
  beyond: ", more than a meter shows as MER",
  none: "",
};

function lossWords({ loss }: LevelOrigin): readonly string[] {
  return loss ? [`Most C/(N+I) is lost in “${loss.label}”: ${decimal(loss.db)} dB.`] : [];
}
