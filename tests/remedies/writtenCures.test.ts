/**
 * WC: what a finding says under "cure" is no empty word: in the rule's own example an idea that the sentence names
 * is proved by the search. Which ideas a sentence names is read from the sentence by hand.
 */
import { expect, test } from "vitest";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { IdeaId } from "../../src/remedies/cureStep.ts";
import { type Proposal, search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { cureOf } from "../../src/sentences/finding.ts";

const NAMED: readonly (readonly [rule: string, ...ideas: IdeaId[]])[] = [
  ["loop", "wire-off"],
  ["open-end", "load"],
  ["supply-overloaded", "sound-joint", "dc-block"],
  ["no-supply", "block-away"],
  ["command-lost", "new-cable", "cable-grade"],
  ["switched-output-shared", "own-outputs", "stacked-converter"],
  ["user-band-conflict", "own-user-bands"],
  ["too-many-tuners", "own-user-bands"],
  ["wrong-quadrant", "swap-leads"],
  ["wideband-shared", "stacked-converter"],
  ["band-cut", "other-plate", "wider-type"],
  ["wrong-feed", "universal-converter", "other-receiver"],
  ["plane-missing", "plug-in"],
  ["receiver-misses", "wider-type", "filter-away"],
  ["same-signal-twice", "wire-off"],
  ["overload", "gain", "pad"],
  ["level-limits", "pad"],
  ["slope", "equaliser", "amplifier-slope", "cable-grade"],
  ["dwelling-isolation", "better-decoupling", "tap-value"],
];

test.each(NAMED)(
  "WC1: the written cure of %s is proved in its example",
  { timeout: 30_000 },
  (rule, ...ideas) => {
    const design = RULE_EXAMPLES.find((e) => e.rule === rule)?.speaks.load();
    if (!design) throw new Error(`no example of ${rule}`);
    const { evaluation, report } = siteOf(design);
    const target = report.findings.find((f) => f.rule === rule);
    if (!target) throw new Error(`${rule} is silent in its example`);
    expect(cureOf(target, evaluation)).toBeDefined();
    let proposals: readonly Proposal[] = [];
    for (const p of search(design, { prices: PLACEHOLDER_PRICES, target, maxTrials: 60 }))
      ({ proposals } = p);
    expect(proposals.flatMap((p) => p.steps.map((s) => s.idea)).filter((i) => ideas.includes(i))).not.toEqual(
      [],
    );
  },
);
