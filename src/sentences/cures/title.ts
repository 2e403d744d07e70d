/** A whole cure in one line. */
import type { Design } from "../../design/design.ts";
import type { CureStep } from "../../remedies/cureStep.ts";
import type { Proof } from "../../remedies/proof.ts";
import { plural } from "../../words/plural.ts";
import { uncapital } from "../explain/plainWords.ts";
import { stepTitle } from "./step.ts";
import { namesIn } from "./told.ts";

type Cure = {
  readonly steps: readonly CureStep[];
  /** The design with the cure done. */
  readonly design: Design;
  readonly proof: Pick<Proof, "errorsLeft" | "softened">;
};

/** What is to be done; where something is still wrong afterwards, it says so. `before`: the design as it is. */
export function cureTitle({ steps, design, proof }: Cure, before: Design): string {
  const names = namesIn(before, design);
  const [first = "", ...further] = steps.map((s) => stepTitle(s, names));
  const title = [first, ...further.map(uncapital)].join("; then ");
  return plural(proof.errorsLeft, {
    zero: proof.softened.length > 0 ? `${title} (leaves a warning of the same)` : title,
    one: (n) => `${title} (leaves ${n} error)`,
    other: (n) => `${title} (leaves ${n} errors)`,
  });
}
