/** What is done about the trunks of a unit that all bring too little, or too much. Sums by hand beside each check. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { CureStepOf, IdeaId } from "../../src/remedies/cureStep.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureTitle } from "../../src/sentences/cures/title.ts";
import { draw, type Sketch } from "../draw.ts";

function proposalsFor(design: Design): readonly Proposal[] {
  let found: readonly Proposal[] = [];
  for (const { proposals } of search(design, { prices: PLACEHOLDER_PRICES })) found = proposals;
  return found;
}

/** The proposal of one step with this idea, its step and its title. */
function proposed<I extends IdeaId>(design: Design, proposals: readonly Proposal[], idea: I) {
  const proposal = proposals.find((p) => p.steps.length === 1 && p.steps[0]?.idea === idea);
  if (!proposal) throw new Error(`not proposed: ${idea}, but ${proposals.map((p) => p.id)}`);
  // Found by its idea.
  return { proposal, step: proposal.steps[0] as CureStepOf<I>, title: cureTitle(proposal, design) };
}

const wrongIn = ({ design }: Proposal) => siteOf(design).report.findings.filter((f) => f.severity !== "note");

const QUADRANTS = ["vl", "vh", "hl", "hh"] as const;

/** A quattro LNB, four trunks of copper-clad steel, a unit for one line, and one receiver in the flat. */
function trunks(lengthM: number): Design {
  const parts: Record<string, Sketch[string]> = {
    dish: ["dish", { diameterM: 0.8 }],
    lnb: ["lnb-quattro"],
    unit: ["stacking-converter", { outputs: 1, terrestrial: false }],
    drop: ["cable", { lengthM: 20 }],
    plate: ["outlet-sat"],
    rx: ["receiver-stacked"],
  };
  const wires = ["dish.sky > lnb.sky, unit.out > drop.in, drop.out > plate.in, plate.sat > rx.sat"];
  for (const q of QUADRANTS) {
    parts[`trunk-${q}`] = ["cable", { lengthM, grade: "clad-0.8" }];
    wires.push(`lnb.${q} > trunk-${q}.in, trunk-${q}.out > unit.${q}`);
  }
  return draw(parts, wires.join(", "));
}

describe("four long trunks of copper-clad steel before a unit for user bands", () => {
  // The LNB gives 76 to 77 dBµV (the usual 51 dBW on a 0.8 m dish); 60 m lose 22 dB at 2150 MHz, so that 54 dBµV
  // arrive where the stage needs 60.
  const design = trunks(60);
  const proposals = proposalsFor(design);

  test("first the unit is moved up: one of the old cables then carries the user bands", () => {
    const { proposal, step, title } = proposed(design, proposals, "unit-up");
    expect(proposals[0]).toBe(proposal);
    expect(step.facts.lines).toBe(1);
    expect(title).toBe("Move “unit” to the LNB’s end of its cables");
    expect(wrongIn(proposal)).toEqual([]);
    // Nothing is bought and no cable pulled; three of the four trunks lie idle.
    expect(proposal.cost).toMatchObject({ partsPrice: 0, newCables: 0 });
    expect(proposal.design.parts.filter((p) => p.id.startsWith("trunk-"))).toHaveLength(1);
  });

  test("or each trunk is amplified before its cable, by what is missing and a little more", () => {
    const { proposal, step } = proposed(design, proposals, "trunk-amplifiers");
    // 60 − 54 = 6 dB are missing at the worst of them, 2 dB to spare and one for the rounding.
    expect(step.facts).toEqual({ db: 9, count: 4 });
    expect(wrongIn(proposal)).toEqual([]);
    // 200 mA for the LNB and 60 mA for each amplifier: 440 mA of the unit’s 500 mA.
    const unit = siteOf(proposal.design).evaluation.record("unit");
    const drawn = QUADRANTS.flatMap((q) => unit?.demands[q]?.draws ?? []);
    expect(new Set(drawn.map(({ part }) => part))).toHaveProperty("size", 5);
  });

  test("or one amplifier made for trunks lifts all four", () => {
    const { proposal, step } = proposed(design, proposals, "trunk-amplifier");
    expect(step.facts.db).toBe(9);
    expect(wrongIn(proposal)).toEqual([]);
  });

  test("or all four are exchanged for better cable", () => {
    const { proposal, step } = proposed(design, proposals, "cable-grade");
    // 60 m of 1.25 mm copper lose 0.6 · (0.488 · √2150 + 0.00165 · 2150) = 15.7 dB: 77 − 16 = 61 dBµV arrive.
    // 1.0 mm lose 0.6 · (0.585 · √2150 + 0.00167 · 2150) = 18.4 dB, which leaves less than 60.
    expect(step.facts.grade).toBe("copper-1.25");
    expect(step.facts.cables).toHaveLength(4);
    expect(wrongIn(proposal)).toEqual([]);
  });

  test("short trunks of the same cable need none of it", () => {
    expect(siteOf(trunks(20)).report.findings.filter((f) => f.rule === "stacking-input")).toEqual([]);
  });

  test("and no cure begins with one of the four alone", () => {
    const alone = ["line-amplifier", "new-cable", "pad"];
    expect(proposals.flatMap((p) => p.steps).filter((s) => alone.includes(s.idea))).toEqual([]);
  });
});

describe("a unit that gets too much from its LNB", () => {
  // 93 dBµV on each of 20 transponders, where 90 are allowed: 3 dB too much.
  const design = draw(
    {
      dish: ["dish", { diameterM: 1.2, eirpDbw: 54 }],
      lnb: ["lnb-quattro", { gainDb: 65, ratedDbuv: 110 }],
      unit: ["stacking-converter", { outputs: 1, terrestrial: false }],
      drop: ["cable", { lengthM: 25 }],
      plate: ["outlet-sat"],
      rx: ["receiver-stacked"],
    },
    `dish.sky > lnb.sky, ${QUADRANTS.map((q) => `lnb.${q} > unit.${q}`).join(", ")}, unit.out > drop.in, drop.out > plate.in, plate.sat > rx.sat`,
  );
  const proposals = proposalsFor(design);

  test("gets attenuators at all inputs, which pass the LNB's supply", () => {
    const { proposal, step, title } = proposed(design, proposals, "trunk-pads");
    // The smallest that is sold and takes 4 dB.
    expect(step.facts).toEqual({ db: 6, count: 4 });
    expect(title).toBe("Put attenuators of 6 dB before 4 satellite inputs of “unit”");
    expect(wrongIn(proposal)).toEqual([]);
    expect(siteOf(proposal.design).report.verdicts.map((v) => v.state)).toEqual(["works", "works"]);
  });

  test("or an LNB of less gain", () => {
    const { proposal, step } = proposed(design, proposals, "lesser-lnb");
    // 65 − 3 − 1 dB.
    expect(step.facts.db).toBe(61);
    expect(wrongIn(proposal)).toEqual([]);
  });

  test("an LNB of the usual gain on short cables needs neither", () => {
    const usual = {
      ...design,
      parts: design.parts.map((p) => (p.id === "lnb" ? { ...p, options: { ...p.options, gainDb: 55 } } : p)),
    };
    expect(siteOf(usual).report.findings.filter((f) => f.rule === "stacking-input")).toEqual([]);
  });
});
