/**
 * How soon the search for cures proposes something, as a ratio measured in one run: the time to the first proved
 * proposal against a full evaluation of the same house, both with nothing remembered from before.
 * Exits with 1 where a ratio is over its limit.
 */
import type { Design } from "../../src/design/design.ts";
import { exampleOf } from "../../src/design/examples.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { milliseconds, printRatios, type Ratio } from "./ratios.ts";

const WARM_UP = 5;
const ROUNDS = 31;
const HOUSES = ["house-wideband-fails", "split-switched-output", "long-steel-drop"] as const;

function firstProposal(design: Design): void {
  for (const { proposals } of search(design, { prices: PLACEHOLDER_PRICES }))
    if (proposals.length > 0) return;
  throw new Error("Nothing was proposed: nothing was measured.");
}

const ratios = HOUSES.map((key): Ratio => {
  const design = exampleOf(key)?.load();
  if (!design) throw new Error(`no example ${key}`);
  const full: number[] = [];
  const cure: number[] = [];
  for (let round = 0; round < WARM_UP + ROUNDS; round++) {
    const [fresh, again] = [structuredClone(design), structuredClone(design)];
    const evaluated = milliseconds(() => siteOf(fresh));
    const proposed = milliseconds(() => firstProposal(again));
    if (round < WARM_UP) continue;
    full.push(evaluated);
    cure.push(proposed);
  }
  return { name: `first proposal / full evaluation, ${key}`, value: least(cure) / least(full), atMost: 10 };
});

/** Of times this short the least is the truest: whatever else the machine does only adds to them. */
function least(times: readonly number[]): number {
  return Math.min(...times);
}

process.stdout.write(`Cures: least of ${ROUNDS} rounds.\n`);
process.exitCode = printRatios(ratios) ? 0 : 1;
