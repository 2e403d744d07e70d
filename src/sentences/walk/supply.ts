/** The walk of a supply in sentences. */

import type { Evaluation } from "../../evaluate/evaluation.ts";
import { type SupplyEnd, type SupplyStep, walkSupply } from "../../findings/walk/supply.ts";
import { numeral } from "../../words/numbers.ts";
import { capital } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { labelled, partName } from "../phrases.ts";

/** A step with what is said of it. */
export type ToldSupplyStep = SupplyStep & { readonly words: string };

export type ToldSupply = {
  /** Empty where the input puts no supply on its cable. */
  readonly steps: readonly ToldSupplyStep[];
  /** One line for each step; or why there is nothing to walk. */
  readonly lines: readonly string[];
};

/** Walks the supply of an input, and tells every step. */
export function tellSupply(
  evaluation: Evaluation,
  source: { readonly part: string; readonly port: string },
): ToldSupply {
  const label = (text: string) => labelled(text, evaluation);
  const steps = walkSupply(evaluation, source).map((step) => ({ ...step, words: label(wordsOf(step)) }));
  const silent = label(`${partName(source.part)} puts no supply on this cable.`);
  return { steps, lines: steps.length > 0 ? steps.map((step) => step.words) : [silent] };
}

const END_WORDS: Readonly<Record<SupplyEnd, string>> = {
  feeds: "here it is used",
  "too low": "here it is needed",
  heard: "here its commands are heard, and this part has a supply of its own",
  blocked: "here it ends, since this part passes no DC",
  shorted: "here it is shorted to earth",
  "nothing above": "nothing is connected above",
  "met before": "from here on it goes by a way that is listed already",
  loop: "here it ends, since this part lies on a loop",
};

/** "11.46 V for vertical, 16.5 V for horizontal": with so many decimals that a lack is seen as one. */
function voltsWords(step: SupplyStep): string {
  const print = (volts: number) =>
    step.needsVolts === undefined ? numeral(volts) : besideLimit(volts, step.needsVolts)[0];
  if (step.volts13 === step.volts18) return `${print(step.volts)} V`;
  return `${print(step.volts13)} V for vertical, ${print(step.volts18)} V for horizontal`;
}

function enough({ volts13, volts18 }: SupplyStep, needsVolts: number): string {
  if (Math.min(volts13, volts18) >= needsVolts) return "enough";
  return Math.max(volts13, volts18) < needsVolts
    ? "not enough"
    : "reached only while horizontal is asked for";
}

/** "0.6 Ω of its own take 0.1 V"; a steering diode takes volts without being a resistance. */
function ownDrop({ ohms, dropVolts, diodeVolts }: SupplyStep): readonly string[] {
  const volts = dropVolts < 0.05 ? `less than ${numeral(0.1)} V` : `${numeral(dropVolts)} V`;
  if (ohms > 0) return [`${numeral(ohms)} Ω of its own take ${volts}`];
  return dropVolts > 0 ? [`${diodeVolts > 0 ? "its diode" : "it"} takes ${volts}`] : [];
}

function wordsOf(step: SupplyStep): string {
  const gives = step.before === null;
  const facts = [
    `${voltsWords(step)} ${gives ? "put on the cable" : "arrive"}`,
    `${numeral(step.milliamps, 0)} mA`,
    ...ownDrop(step),
    ...(gives ? [] : [step.toneArrives ? "tone arrives" : "no tone arrives"]),
    ...(step.dormant ? ["behind a switch that is in another position now"] : []),
    ...(step.needsVolts === undefined
      ? []
      : [`${numeral(step.needsVolts)} V are needed: ${enough(step, step.needsVolts)}`]),
    ...(step.end ? [END_WORDS[step.end]] : []),
  ];
  const [first = "", ...others] = facts;
  return [`${partName(step.part)}: ${first}.`, ...others.map((fact) => `${capital(fact)}.`)].join(" ");
}
