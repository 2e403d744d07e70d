/** ST: searches for cures, levels and faults end, also where ways and settings multiply. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { balance } from "../../src/remedies/balance/balance.ts";
import { evaluated, symptomsOf } from "../../src/remedies/faults/symptoms.ts";
import { search } from "../../src/remedies/search.ts";
import { searchDiagnosis } from "../../src/store/searchDiagnosis.ts";
import { STRUCTURES } from "../structures.ts";

const SHAPES: readonly (readonly [string, Design])[] = Object.entries(STRUCTURES).map(([name, make]) => [
  name,
  make(6),
]);

/** Steps that a search takes, at most so many; then whether it came to its end. */
function drained<T>(run: Generator<T, T, void>, most: number): { steps: number; ended: boolean; last: T } {
  let step = run.next();
  let steps = 0;
  while (!step.done && steps < most) {
    steps++;
    step = run.next();
  }
  return { steps, ended: step.done === true, last: step.value };
}

describe("searches come to an end", () => {
  test.each(SHAPES)("ST1: cures for %s", (_, design) => {
    const { ended, last } = drained(search(design, { prices: PLACEHOLDER_PRICES, maxTrials: 20 }), 40);
    expect(ended).toBe(true);
    for (const { work } of last.proposals) expect(work.length).toBeGreaterThan(0);
  });

  test.each(SHAPES)("ST2: levels of %s", (_, design) => {
    const aim = { service: "tv", targetDbuv: 65, spreadDb: 6 } as const;
    expect(drained(balance(design, aim, { maxTrials: 20 }), 200).ended).toBe(true);
  });

  test.each(SHAPES)(
    "ST3: faults of %s",
    (_, design) => {
      const sound = evaluated(design);
      const [first] = symptomsOf(sound, sound);
      const observations = first ? [{ part: first.part, service: first.service, works: false }] : [];
      const task = { type: "diagnosis", design, observations, known: null, taken: [] } as const;
      // Every fault is tried once, and then some are weighed.
      expect(drained(searchDiagnosis(task), 3000).ended).toBe(true);
    },
    240_000,
  );
});
