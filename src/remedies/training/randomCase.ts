/** A case made from any design: the same seed hides the same fault. */
import type { Design } from "../../design/design.ts";
import { partById, quoted } from "../../design/lookup.ts";
import { list } from "../../sentences/phrases.ts";
import { SERVICE_NAMES } from "../../signal/carrier.ts";
import { plural } from "../../words/plural.ts";
import { FAULT_TYPES, type Fault, likelihoodOf } from "../faults/fault.ts";
import { faults } from "../faults/list.ts";
import { lookAt, type State } from "../faults/symptoms.ts";
import { type Consequence, isNoticed, whatFails } from "../faults/whatFails.ts";
import type { Level, OpenedCase } from "./case.ts";
import { drawn, seededNumbers } from "./seededNumbers.ts";

export const HIGHEST_SEED = 0xffffffff;

export type RandomCase =
  | { readonly ok: true; readonly opened: OpenedCase }
  | { readonly ok: false; readonly reason: string };

/** Faults that nobody notices are drawn again, but not for ever. */
const MOST_DRAWS = 60;

/**
 * Hides a fault in a design that works. The design must be the same to the letter for a seed to mean the same:
 * a trainer hands out the design's link with the seed beside it.
 */
export function randomCase(design: Design, seed: number): RandomCase {
  const sound = lookAt(design);
  const receivers = sound.report.verdicts.filter((v) => v.role === "receiver");
  if (receivers.length === 0)
    return { ok: false, reason: "The design has no receiver: nobody would notice a fault." };
  const failing = receivers.filter((v) => v.state === "fails").map((v) => quoted(partById(design, v.part)));
  if (failing.length > 0)
    return {
      ok: false,
      reason: plural(failing.length, {
        one: `A case needs a design that works, and ${list(failing)} does not.`,
        other: `A case needs a design that works, and ${list(failing)} do not.`,
      }),
    };
  const next = seededNumbers(seed);
  let left = faults(design);
  for (let draws = 0; draws < MOST_DRAWS; draws++) {
    const fault = drawn(left, likelihoodOf, next);
    if (!fault) break;
    const consequence = whatFails(design, fault, sound);
    if (isNoticed(consequence)) return { ok: true, opened: opened(design, seed, consequence) };
    left = left.filter((other) => other !== fault);
  }
  return { ok: false, reason: "No fault was found that anybody would notice." };
}

function opened(design: Design, seed: number, { fault, lost, look }: Consequence): OpenedCase {
  const noticed = lost.filter((s) => s.role === "receiver");
  const [first] = noticed;
  const story = storyOf(design, noticed, look.report.verdicts.filter((v) => v.role === "receiver").length);
  return {
    design,
    fault,
    faulty: fault.apply(design),
    case: {
      id: `random-${seed}`,
      title: `Random case ${seed}`,
      level: levelOf(fault),
      story,
      design: "",
      fault: fault.id,
      hints: hintsFor(design, fault),
      lesson: FAULT_TYPES[fault.type].lesson,
      walk: { part: first?.part ?? fault.part, service: first?.service ?? "tv" },
    },
  };
}

type Noticed = Consequence["lost"];

const SEEN: Readonly<Record<State, string>> = {
  fails: "gets nothing of",
  partial: "misses part of",
  works: "gets",
};

/** "“TV kitchen” gets nothing of Terrestrial TV. The other 3 receivers work." */
function storyOf(design: Design, noticed: Noticed, receivers: number): string {
  const affected = new Set(noticed.map((s) => s.part));
  const sentences = noticed.map(
    (s) => `${quoted(partById(design, s.part))} ${SEEN[s.state]} ${SERVICE_NAMES[s.service]}.`,
  );
  const rest = receivers - affected.size;
  if (rest > 0)
    sentences.push(
      plural(rest, { one: "The other receiver works.", other: (n) => `The other ${n} receivers work.` }),
    );
  return sentences.join(" ");
}

function hintsFor(design: Design, fault: Fault): readonly [string, string, string] {
  return [
    "List what works beside what does not: what the working ones use is in order.",
    LOOK_FOR[fault.type] ?? "Compare level and quality with the plan, step by step from the roof.",
    `Look at ${list(fault.parts.map((id) => quoted(partById(design, id))))}.`,
  ];
}

/** Second hint where it is not level that decides. */
const LOOK_FOR: Partial<Record<Fault["type"], string>> = {
  "mains-off": "Measure volts, not only level.",
  "receiver-off": "Measure volts, not only level.",
  "weak-supply": "Measure volts, not only level.",
  "wrong-leg": "Follow the supply upwards until it stops.",
  "supply-blocked": "Follow the supply upwards until it stops.",
  "short-joint": "Measure volts as well as level.",
  "open-joint": "Measure volts as well as level.",
  swapped: "Look at which carriers are there, not only at whether there is level.",
  "wrong-converter": "Look at which carriers are there, not only at whether there is level.",
  "wrong-plate": "Compare the band before and behind each plate.",
  "wrong-user-band": "Level is not the trouble: look at who asks for what.",
  "wrong-mode": "Level is not the trouble: look at who asks for what.",
};

/** A rough guess, from the cases made by hand. */
function levelOf(fault: Fault): Level {
  if (fault.type === "plug-off" || fault.type === "mains-off" || fault.type === "receiver-off") return 1;
  if (fault.type === "aerial-off" || fault.type === "dish-off" || fault.type === "swapped") return 2;
  if (fault.type === "corroded-joint" || fault.type === "wet-cable" || fault.type === "gain-high") return 4;
  return 3;
}
