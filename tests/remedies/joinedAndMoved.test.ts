/** Cures of a joint with a dead end, of a line on an output of another sort, and of a motor that nobody commands. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { draw, type Sketch } from "../draw.ts";

function proposalsFor(design: Design): readonly Proposal[] {
  let found: readonly Proposal[] = [];
  for (const { proposals } of search(design, { prices: PLACEHOLDER_PRICES })) found = proposals;
  return found;
}

function bestOf(design: Design): Proposal {
  return proposalsFor(design)[0] ?? expect.fail("nothing is proposed");
}

const rulesOf = (design: Design) => siteOf(design).report.findings.map((f) => f.rule);
const wiresOf = ({ wires }: Design) => wires.map(({ from, to }) => `${from.join(".")}>${to.join(".")}`);
const partOf = ({ parts }: Design, id: string) => parts.find((p) => p.id === id);

const deadLeg = () =>
  draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 66 }],
      tee: ["t-joint"],
      dead: ["cable", { lengthM: 3 }],
      drop: ["cable", { lengthM: 10 }],
      tv: ["receiver-tv"],
    },
    "uhf.out > tee.in, tee.out1 > drop.in, drop.out > tv.in, tee.out2 > dead.in",
  );

test("a dead cable is taken off its T joint, and the line connected straight", () => {
  const design = deadLeg();
  // 3 m of foam cable, VF 0.82: a notch at 25 · 299.792 · 0.82/(4 · 3) = 512.1 MHz, inside C26 (510 to 518 MHz).
  expect(rulesOf(design)).toContain("dead-stub");
  const proposal = proposalsFor(design).find(({ steps }) => steps[0]?.idea === "dead-cable-off");
  const { steps, cost, design: after } = proposal ?? expect.fail("the cable stays");
  expect(steps).toMatchObject([{ idea: "dead-cable-off", place: "tee", facts: { cables: ["dead"] } }]);
  expect(cost.partsPrice).toBe(0);
  expect(after.parts.map((p) => p.id).sort()).toEqual(["drop", "tv", "uhf"]);
  expect(wiresOf(after).sort()).toEqual(["drop.out>tv.in", "uhf.out>drop.in"]);
  expect(rulesOf(after)).toEqual([]);
});

test("or the joint becomes a splitter with as many legs, on the same wires", () => {
  const design = deadLeg();
  const proposal = proposalsFor(design).find(({ steps }) => steps[0]?.idea === "splitter-for-joint");
  const { design: after } = proposal ?? expect.fail("the joint stays");
  expect(partOf(after, "tee")).toMatchObject({ kind: "splitter", options: { ways: 2 } });
  expect(wiresOf(after).sort()).toEqual(wiresOf(design).sort());
  expect(rulesOf(after)).not.toContain("dead-stub");
});

describe("an old receiver on the user-band output of a channel-stacking LNB", () => {
  const parts: Sketch = {
    r: ["receiver-sat"],
    k: ["cable", { lengthM: 12 }],
    lnb: ["lnb-stacked", { legacy: true }],
    dish: ["dish", { diameterM: 0.8 }],
  };

  test("is led to the free switched output", () => {
    const { steps, cost, design } = bestOf(draw(parts, "dish.sky > lnb.sky, lnb.out > k.in, k.out > r.sat"));
    expect(steps).toMatchObject([
      { idea: "other-output", place: "lnb", facts: { from: "out", to: "legacy" } },
    ]);
    expect(cost.partsPrice).toBe(0);
    expect(wiresOf(design)).toContain("lnb.legacy>k.in");
    expect(wiresOf(design)).not.toContain("lnb.out>k.in");
    expect(siteOf(design).report.verdicts.map((v) => [v.part, v.state])).toEqual([["r", "works"]]);
  });

  test("stays where another receiver has that output, and something else is proposed", () => {
    const design = draw(
      { ...parts, other: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > k.in, k.out > r.sat, lnb.legacy > other.sat",
    );
    expect(bestOf(design).steps.map((s) => s.idea)).not.toContain("other-output");
  });
});

test("a motor's receiver is told of it in its menu, and asked nothing else", () => {
  const design = draw(
    {
      r: ["receiver-sat"],
      motor: ["dish-motor"],
      lnb: ["lnb-universal"],
      dish: ["dish", { diameterM: 0.8 }],
    },
    "dish.sky > lnb.sky, lnb.out > motor.in, motor.out > r.sat",
  );
  const { steps, cost, design: after } = bestOf(design);
  expect(steps).toMatchObject([{ idea: "mend", place: "r", facts: { option: "motor", to: true } }]);
  expect([cost.partsPrice, cost.newCables]).toEqual([0, 0]);
  expect(partOf(after, "r")?.options).toEqual({ ...partOf(design, "r")?.options, motor: true });
  expect(rulesOf(after)).not.toContain("motor-line");
});
