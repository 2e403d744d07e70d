/** A dish behind an obstacle: raised above it, or moved. Angles by hand: the satellite has azimuth 167°, elevation 32°. */
import { expect, test } from "vitest";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { stepReason } from "../../src/sentences/cures/step.ts";
import { cureTitle } from "../../src/sentences/cures/title.ts";
import { namesIn } from "../../src/sentences/cures/told.ts";
import { workWords } from "../../src/sentences/cures/work.ts";
import { draw } from "../draw.ts";

const house = (elevationDeg: number, distanceM: number) =>
  draw(
    {
      dish: ["dish", { obstacles: [{ fromDeg: 150, toDeg: 180, elevationDeg, distanceM }] }],
      lnb: ["lnb-universal"],
      down: ["cable", { lengthM: 20 }],
      rx: ["receiver-sat"],
    },
    "dish.sky > lnb.sky, lnb.out > down.in, down.out > rx.sat",
  );

function cured(elevationDeg: number, distanceM: number) {
  const design = house(elevationDeg, distanceM);
  let proposals: readonly Proposal[] = [];
  for (const p of search(design, { prices: PLACEHOLDER_PRICES })) ({ proposals } = p);
  const [first] = proposals;
  const step = first?.steps[0];
  if (!first || !step) throw new Error("nothing is proposed");
  const names = namesIn(design, first.design);
  return {
    design,
    proposals,
    first,
    title: cureTitle(first, design),
    reason: stepReason(step, names),
    names,
  };
}

test("a dish is raised as far as it takes to see over the edge, and no further", () => {
  // tan 34° = 0.675; 20 m away, 1 m higher: 0.675 − 0.05 = tan 32°, and the ray still touches the edge (6 dB);
  // 2 m higher: 0.675 − 0.1 = tan 29.9°, and it passes 2° above it.
  const { first, title, proposals } = cured(34, 20);
  expect(title).toBe("Raise “dish” by 2 m and realign it");
  expect(siteOf(first.design).report.verdicts.map((v) => v.state)).toEqual(["works"]);
  expect(siteOf(first.design).report.findings.filter((f) => f.severity !== "note")).toEqual([]);
  // What a wall hides no larger dish sees.
  expect(proposals.flatMap((p) => p.steps.map((s) => s.idea))).not.toContain("larger-dish");
});

test("one that no usual mast lifts above it is moved", () => {
  // 80 m away, 3 m higher: 0.675 − 0.0375 = tan 32.5°, still above the satellite.
  const { first, title } = cured(34, 80);
  expect(title).toBe("Move “dish” to a place with a free view");
  expect(siteOf(first.design).report.verdicts.map((v) => v.state)).toEqual(["works"]);
});

test("whoever climbs for it is told to take care, and the time is that of a dish, not of a setting", () => {
  const { first, reason, names } = cured(34, 20);
  expect(reason).toContain("Roofs and ladders are for trained people with fall protection");
  expect(first.cost.workMinutes).toBeGreaterThanOrEqual(60);
  expect(first.work.map((w) => workWords(w, names))).toEqual(["Put “dish” where its view is free"]);
});

test("what stands below the ray is left alone", () => {
  expect(siteOf(house(25, 20)).report.findings.filter((f) => f.rule === "blocked-view")).toEqual([]);
});
