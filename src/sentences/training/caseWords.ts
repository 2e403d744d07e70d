/** What is told of a case: its name, the customer's words, hints, and what to take home. */
import type { Design } from "../../design/design.ts";
import { partById, quoted } from "../../design/lookup.ts";
import type { Fault, FaultType } from "../../remedies/faults/fault.ts";
import type { State } from "../../remedies/faults/symptoms.ts";
import type { OpenedCase, RandomStory, TrainingCase } from "../../remedies/training/case.ts";
import type { RandomCaseProblem } from "../../remedies/training/randomCase.ts";
import { serviceName } from "../../signal/carrier.ts";
import { plural } from "../../words/plural.ts";
import { FAULT_WORDS } from "../faults/faultWords.ts";
import { list } from "../phrases.ts";
import { EASY_WORDS } from "./cases/easy.ts";
import { HARD_WORDS } from "./cases/hard.ts";
import { MIDDLE_WORDS } from "./cases/middle.ts";

export type CaseWords = {
  readonly title: string;
  /** In the customer's words. */
  readonly story: string;
  /** From a nudge to nearly the answer; the first names neither the part nor the fault. */
  readonly hints: readonly [string, string, string];
  /** What to take home. */
  readonly lesson: string;
};

const GUIDED: Readonly<Record<string, CaseWords>> = { ...EASY_WORDS, ...MIDDLE_WORDS, ...HARD_WORDS };

/** Of a guided case, by its id. */
export function guidedWords({ id }: Pick<TrainingCase, "id">): CaseWords {
  const words = GUIDED[id];
  // The cases are part of the program: one without words is a fault of the program.
  if (!words) throw new Error(`Training case ${id}: no words`);
  return words;
}

export function caseWords({ case: chosen, design, fault, random }: OpenedCase): CaseWords {
  if (!random) return guidedWords(chosen);
  return {
    title: `Random case ${random.seed}`,
    story: storyOf(design, random),
    hints: hintsFor(design, fault),
    lesson: FAULT_WORDS[fault.type].lesson,
  };
}

const SEEN: Readonly<Record<State, string>> = {
  fails: "gets nothing of",
  partial: "misses part of",
  works: "gets",
};

/** "“TV kitchen” gets nothing of Terrestrial TV. The other 3 receivers work." */
function storyOf(design: Design, { noticed, receivers, television }: RandomStory): string {
  const affected = new Set(noticed.map((s) => s.part));
  const sentences = noticed.map(
    ({ part, state, service }) =>
      `${quoted(partById(design, part))} ${SEEN[state]} ${serviceName({ service, ...(television && service === "tv" ? { television } : {}) })}.`,
  );
  const rest = receivers - affected.size;
  if (rest > 0)
    sentences.push(
      plural(rest, { one: "The other receiver works.", other: (n) => `The other ${n} receivers work.` }),
    );
  return sentences.join(" ");
}

function hintsFor(design: Design, fault: Fault): CaseWords["hints"] {
  return [
    "List what works beside what does not: what the working ones use is in order.",
    LOOK_FOR[fault.type] ?? "Compare level and quality with the plan, step by step from the roof.",
    `Look at ${list(fault.parts.map((id) => quoted(partById(design, id))))}.`,
  ];
}

/** Second hint where it is not level that decides. */
const LOOK_FOR: Partial<Record<FaultType, string>> = {
  "mains-off": "Measure volts, not only level.",
  "receiver-off": "Measure volts, not only level.",
  "weak-supply": "Measure volts, not only level.",
  "aerial-supply-off": "Measure volts, not only level.",
  "motor-jammed": "Measure volts, not only level.",
  "wrong-leg": "Follow the supply upwards until it stops.",
  "supply-blocked": "Follow the supply upwards until it stops.",
  "short-joint": "Measure volts as well as level.",
  "open-joint": "Measure volts as well as level.",
  "screen-off": "Measure volts as well as level.",
  swapped: "Look at which carriers are there, not only at whether there is level.",
  "wrong-converter": "Look at which carriers are there, not only at whether there is level.",
  "wrong-plate": "Compare the band before and behind each outlet.",
  "wrong-user-band": "Level is not the trouble: look at who asks for what.",
  "wrong-mode": "Level is not the trouble: look at who asks for what.",
};

/** Why no case can be made of a design. */
export function randomCaseProblem(design: Design, problem: RandomCaseProblem): string {
  if (problem.why === "no receiver") return "The design has no receiver: nobody would notice a fault.";
  if (problem.why === "nothing noticed") return "No fault was found that anybody would notice.";
  const failing = list(problem.failing.map((id) => quoted(partById(design, id))));
  return plural(problem.failing.length, {
    one: `A case needs a design that works, and ${failing} does not.`,
    other: `A case needs a design that works, and ${failing} do not.`,
  });
}
