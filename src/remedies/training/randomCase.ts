/** A case made from any design: the same seed hides the same fault. */
import type { Design, PartId } from "../../design/design.ts";
import { televisionIn } from "../../findings/television.ts";
import { type Fault, likelihoodOf } from "../faults/fault.ts";
import { faults } from "../faults/list.ts";
import { evaluated } from "../faults/symptoms.ts";
import { type Consequence, isNoticed, whatFails } from "../faults/whatFails.ts";
import type { Level, OpenedCase, RandomStory } from "./case.ts";
import { drawn, seededNumbers } from "./seededNumbers.ts";

export const HIGHEST_SEED = 0xffffffff;

export type RandomCaseProblem =
  | { readonly why: "no receiver" }
  | { readonly why: "fails already"; readonly failing: readonly PartId[] }
  | { readonly why: "nothing noticed" };

export type RandomCase =
  | { readonly ok: true; readonly opened: OpenedCase }
  | { readonly ok: false; readonly problem: RandomCaseProblem };

/** Faults that nobody notices are drawn again, but not for ever. */
const MOST_DRAWS = 60;

/**
 * Hides a fault in a design that works. The design must be the same to the letter for a seed to mean the same:
 * a trainer hands out the design's link with the seed beside it.
 */
export function randomCase(design: Design, seed: number): RandomCase {
  const sound = evaluated(design);
  const receivers = sound.report.verdicts.filter((v) => v.role === "receiver");
  if (receivers.length === 0) return { ok: false, problem: { why: "no receiver" } };
  const failing = receivers.filter((v) => v.state === "fails").map((v) => v.part);
  if (failing.length > 0) return { ok: false, problem: { why: "fails already", failing } };
  const next = seededNumbers(seed);
  let left = faults(design);
  for (let draws = 0; draws < MOST_DRAWS; draws++) {
    const fault = drawn(left, likelihoodOf, next);
    if (!fault) break;
    const consequence = whatFails(design, fault, sound);
    if (isNoticed(consequence))
      return {
        ok: true,
        opened: opened(
          design,
          { seed, receivers: receivers.length, ...televisionIn(sound.evaluation) },
          consequence,
        ),
      };
    left = left.filter((other) => other !== fault);
  }
  return { ok: false, problem: { why: "nothing noticed" } };
}

function opened(
  design: Design,
  story: Omit<RandomStory, "noticed">,
  { fault, lost }: Consequence,
): OpenedCase {
  const noticed = lost.filter((s) => s.role === "receiver");
  const [first] = noticed;
  return {
    design,
    fault,
    faulty: fault.apply(design),
    random: { ...story, noticed },
    case: {
      id: `random-${story.seed}`,
      level: levelOf(fault),
      design: "",
      fault: fault.id,
      walk: { part: first?.part ?? fault.part, service: first?.service ?? "tv" },
    },
  };
}

/** A rough guess, from the cases made by hand. */
function levelOf(fault: Fault): Level {
  if (fault.type === "plug-off" || fault.type === "mains-off" || fault.type === "receiver-off") return 1;
  if (fault.type === "aerial-off" || fault.type === "dish-off" || fault.type === "swapped") return 2;
  if (
    fault.type === "corroded-joint" ||
    fault.type === "wet-joint" ||
    fault.type === "wet-cable" ||
    fault.type === "gain-high"
  )
    return 4;
  return 3;
}
