/** What a master of the trade would offer for common jobs, and what he would laugh at. Common practice, no source. */
import { expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureTitle } from "../../src/sentences/cures/title.ts";
import { cureOf } from "../../src/sentences/finding.ts";
import { draw, type Sketch } from "../draw.ts";

function proposalsFor(design: Design): readonly Proposal[] {
  let found: readonly Proposal[] = [];
  for (const { proposals } of search(design, { prices: PLACEHOLDER_PRICES })) found = proposals;
  return found;
}

const ideasOf = (found: readonly Proposal[]) => found.map((p) => p.steps.map((s) => s.idea).join(" + "));

const line = (more: Sketch, wires: string) =>
  draw(
    { d: ["dish"], l: ["lnb-universal"], c: ["cable", { lengthM: 20 }], ...more },
    `d.sky > l.sky, ${wires}`,
  );

test("a motor that something holds is freed or replaced, and named as what is wrong", () => {
  // 600 mA and the LNB's 60 + 35 are more than the 400 mA of a usual receiver; a motor of 250 mA leaves 55 to spare.
  const design = line(
    { m: ["dish-motor", { state: "turning", turningMa: 600 }], rx: ["receiver-sat", { motor: true }] },
    "l.out > m.in, m.out > c.in, c.out > rx.sat",
  );
  const { report, evaluation } = siteOf(design);
  const [cause] = report.causes;
  expect(cause?.root.parts[0]).toBe("m");
  expect(cause && cureOf(cause.root, evaluation)).toBe("Free “m”, or replace it.");
  const found = proposalsFor(design);
  expect(ideasOf(found)).toEqual(["free-motor"]);
  expect(found[0]?.proof.errorsLeft).toBe(0);
});

test("a motor that turns with 300 mA is not said to be held, where its receiver is the weak one", () => {
  const design = line(
    {
      m: ["dish-motor", { state: "turning", turningMa: 300 }],
      rx: ["receiver-sat", { motor: true, limitMa: 300 }],
    },
    "l.out > m.in, m.out > c.in, c.out > rx.sat",
  );
  expect(ideasOf(proposalsFor(design))).not.toContain("free-motor");
});

test("too much of everything calls for no equaliser", () => {
  // 85 dBµV at a set that may have 74: eleven too many on every channel, and nothing on the way leans.
  const design = draw(
    { u: ["aerial-uhf", { levelDbuv: 85 }], c: ["cable", { lengthM: 5 }], t: ["receiver-tv"] },
    "u.out > c.in, c.out > t.in",
  );
  const ideas = ideasOf(proposalsFor(design));
  expect(ideas.some((idea) => idea === "pad" || idea === "source-pad")).toBe(true);
  expect(ideas.join()).not.toContain("equaliser");
});

test("a dish off its aim is aimed, not exchanged for a larger one that is off as well", () => {
  const design = draw(
    {
      d: ["dish", { pointingLossDb: 12 }],
      l: ["lnb-universal"],
      c: ["cable", { lengthM: 20 }],
      rx: ["receiver-sat"],
    },
    "d.sky > l.sky, l.out > c.in, c.out > rx.sat",
  );
  expect(ideasOf(proposalsFor(design))).toEqual(["aim-dish"]);
});

test("two warnings of different causes are cured by two steps, of which none is left out", () => {
  const plate = { tapLossDb: 10 };
  const design = draw(
    {
      e: ["cable-entry", { levelDbuv: 75 }],
      a: ["amp-distribution", { gainDb: 20 }],
      o1: ["outlet-through", plate],
      k: ["cable", { lengthM: 4 }],
      o2: ["outlet-through", plate],
      t1: ["receiver-tv", { cableTuner: true }],
      t2: ["receiver-tv", { cableTuner: true }],
    },
    "e.out > a.in, a.out > o1.in, o1.out > k.in, k.out > o2.in, o1.tv > t1.in, o2.tv > t2.in",
  );
  const [first] = proposalsFor(design);
  expect(first?.steps.map((s) => s.idea)).toEqual(["gain", "load"]);
  expect(first?.proof.warningsLeft).toBe(0);
});

test("a hand-over point that gives too little for a star of rooms gets an amplifier before the splitter", () => {
  const design = draw(
    {
      e: ["cable-entry", { levelDbuv: 62 }],
      s: ["splitter", { ways: 4 }],
      k: ["cable", { lengthM: 30 }],
      p: ["outlet-tv"],
      t: ["receiver-tv", { cableTuner: true }],
      k2: ["cable", { lengthM: 40 }],
      p2: ["outlet-tv"],
      t2: ["receiver-tv", { cableTuner: true }],
      k3: ["cable", { lengthM: 40 }],
      p3: ["outlet-tv"],
      t3: ["receiver-tv", { cableTuner: true }],
    },
    "e.out > s.in, s.out1 > k.in, k.out > p.in, p.tv > t.in, s.out2 > k2.in, k2.out > p2.in, p2.tv > t2.in, s.out3 > k3.in, k3.out > p3.in, p3.tv > t3.in",
  );
  const [first] = proposalsFor(design);
  expect(first?.steps.map((s) => s.idea)).toEqual(["house-amplifier"]);
  expect(first && cureTitle(first, design)).toMatch(/^Put a distribution amplifier of \d+ dB before “s”$/);
  expect(first?.proof.warningsLeft).toBe(0);
});

test("the trunk that goes on from a tap's branch is put right by the two leads", () => {
  const design = draw(
    {
      u: ["aerial-uhf", { levelDbuv: 62 }],
      a: ["amp-distribution", { gainDb: 18 }],
      t1: ["tap", { tapLossDb: 20 }],
      t2: ["tap", { tapLossDb: 10 }],
      end: ["load"],
      x: ["receiver-tv"],
      y: ["receiver-tv"],
    },
    "u.out > a.in, a.out > t1.in, t1.out > x.in, t1.tap1 > t2.in, t2.tap1 > y.in, t2.out > end.in",
  );
  expect(ideasOf(proposalsFor(design))).toContain("swap-leads");
});

test("a mast that gets into a lead stays where it is: the work is the lead, and takes its time", () => {
  const design = draw(
    {
      u: ["aerial-uhf", { levelDbuv: 65 }],
      in: ["pick-up", { mastDbuv: 108 }],
      c: ["cable", { lengthM: 10 }],
      t: ["receiver-tv"],
    },
    "u.out > in.in, in.out > c.in, c.out > t.in",
  );
  const found = proposalsFor(design);
  const lead = found.find((p) => p.steps[0]?.idea === "screen-cable");
  expect(lead?.cost.workMinutes).toBe(15);
  expect(lead?.work.map((w) => w.place)).toEqual(["building"]);
  // One filter where it gets in guards whatever is behind it.
  expect(ideasOf(found)).toContain("phone-filter");
});
