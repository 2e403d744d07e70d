/** Too much current for a supply: the ways out are tried on the design. Sums of currents by hand beside each check. */
import { expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { PLACEHOLDER_PRICES } from "../../src/paperwork/prices.ts";
import type { Proposal } from "../../src/remedies/proposal.ts";
import { search } from "../../src/remedies/search.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { cureTitle } from "../../src/sentences/cures/title.ts";
import { draw } from "../draw.ts";

function cured(design: Design) {
  let proposals: readonly Proposal[] = [];
  for (const p of search(design, { prices: PLACEHOLDER_PRICES })) ({ proposals } = p);
  return {
    titles: proposals.map((p) => cureTitle(p, design)),
    rulesLeft: proposals.map((p) =>
      siteOf(p.design)
        .report.findings.filter((f) => f.severity !== "note")
        .map((f) => f.rule),
    ),
  };
}

const motor = (turningMa: number, limitMa: number) =>
  draw(
    {
      dish: ["dish"],
      lnb: ["lnb-universal"],
      motor: ["dish-motor", { turningMa }],
      rx: ["receiver-sat", { motor: true, limitMa }],
    },
    "dish.sky > lnb.sky, lnb.out > motor.in, motor.out > rx.sat",
  );

test("a receiver that cannot turn its motor gives way to a usual one, or the motor to one that draws less", () => {
  // The LNB draws 60 + 35 = 95 mA, the motor 250: 345 mA, of which a receiver of 300 mA leaves the motor 205.
  const { titles, rulesLeft } = cured(motor(250, 300));
  expect(titles).toEqual([
    "Replace “motor” with a motor that draws at most 200 mA while turning",
    "Replace “rx” with a receiver that delivers 400 mA",
  ]);
  expect(rulesLeft.flat()).toEqual([]);
});

test("no usual receiver gives what a great motor draws: only the motor is exchanged", () => {
  // 95 + 400 = 495 mA; a usual receiver has 400, which leaves 305.
  expect(cured(motor(400, 400)).titles).toEqual([
    "Replace “motor” with a motor that draws at most 300 mA while turning",
  ]);
});

test("a motor that its receiver turns with ease calls for nothing", () => {
  expect(siteOf(motor(250, 400)).report.findings.filter((f) => f.rule === "motor-line")).toEqual([]);
});

test("two LNBs at once are too much for inputs that share one limit, and not for inputs with one each", () => {
  // Two position switches of 15 mA, each with an LNB of 200 + 2 · 35 mA in use: more than 400 mA in all, less than that
  // at each input.
  const design = draw(
    {
      east: ["dish"],
      west: ["dish", { orbitalPositionDegE: 10 }],
      lnbE: ["lnb-universal", { outputs: "2", commonMa: 200 }],
      lnbW: ["lnb-universal", { outputs: "2", commonMa: 200 }],
      one: ["position-switch"],
      two: ["position-switch"],
      rx: ["receiver-sat-twin", { sharedLimit: true, position1: "1", position2: "2" }],
    },
    "east.sky > lnbE.sky, west.sky > lnbW.sky, lnbE.out1 > one.in1, lnbW.out1 > one.in2, lnbE.out2 > two.in1, lnbW.out2 > two.in2, one.out > rx.sat1, two.out > rx.sat2",
  );
  expect(siteOf(design).report.causes[0]?.root.rule).toBe("supply-overloaded");
  const { titles, rulesLeft } = cured(design);
  const own = titles.indexOf("Replace “rx” with a receiver that delivers 400 mA at each input");
  expect(own).toBeGreaterThanOrEqual(0);
  expect(rulesLeft[own]).toEqual([]);
});

test("a set without a DVB-C tuner on a cable network gets one", () => {
  const network = (cableTuner: boolean) =>
    draw(
      { entry: ["cable-entry"], plate: ["outlet-tv"], tv: ["receiver-tv", { cableTuner }] },
      "entry.out > plate.in, plate.tv > tv.in",
    );
  const { titles, rulesLeft } = cured(network(false));
  expect(titles[0]).toBe("Put a cable receiver (DVB-C) before “tv”, or replace it with a set that has one");
  expect(rulesLeft[0]).toEqual([]);
  expect(siteOf(network(true)).report.findings.filter((f) => f.severity === "error")).toEqual([]);
});
