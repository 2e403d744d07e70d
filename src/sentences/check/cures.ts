/** Proved cures of a design, for `check --cures`: as objects for other programs, and as plain text. */
import type { Design } from "../../design/design.ts";
import type { Report } from "../../findings/finding.ts";
import { difference } from "../../remedies/difference.ts";
import type { Proposal } from "../../remedies/proposal.ts";
import { plural } from "../../words/plural.ts";
import { cureTitle } from "../cures/title.ts";
import { namesIn } from "../cures/told.ts";
import { workEffort, workWords } from "../cures/work.ts";

/** One proposal. `cures` and `leaves` name causes by their ids; the cost is in whatever the prices are in. */
export type CureRecord = {
  readonly title: string;
  readonly steps: readonly string[];
  readonly parts: readonly string[];
  readonly cures: readonly string[];
  readonly leaves: readonly string[];
  readonly minutes: number;
  readonly cost: number;
  readonly newCables: number;
};

/** The one place where a proposal of the search becomes a record. `start`: the design as it is. */
export function cureRecord(proposal: Proposal, start: Design): CureRecord {
  const { design, cost, proof, work } = proposal;
  const names = namesIn(start, design);
  const { added, removed, changed } = difference(start, design);
  return {
    title: cureTitle(proposal, start),
    steps: work.map((task) => `${workWords(task, names)} (${workEffort(task)})`),
    parts: [...added, ...removed, ...changed.map(({ after }) => after)].map(({ id }) => id),
    cures: proof.causesCured,
    leaves: proof.causesLeft,
    minutes: Math.round(cost.workMinutes),
    cost: cost.partsPrice,
    newCables: cost.newCables,
  };
}

/** Cures, best first, each with its steps. */
export function curesText(cures: readonly CureRecord[], { causes }: Report): string {
  if (causes.every(({ severity }) => severity === "note"))
    return "Nothing is wrong: there is nothing to cure.\n";
  if (cures.length === 0) return "No cure found.\n";
  const lines = cures.flatMap(({ title, steps, minutes, newCables }, n) => [
    `Cure ${n + 1}: ${title} (${minutes} min, ${plural(newCables, NEW_CABLES)})`,
    ...steps.map((step) => `  ${step}`),
  ]);
  return `${lines.join("\n")}\n`;
}

const NEW_CABLES = {
  zero: "no new cable",
  one: (n: string) => `${n} new cable`,
  other: (n: string) => `${n} new cables`,
};
