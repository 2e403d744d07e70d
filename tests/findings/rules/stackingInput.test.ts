/** Inputs of units that make user bands: what their gain control can take. Pads lose what is written on them at all frequencies. */
import { expect, test } from "vitest";
import { draw } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const design = (lossDb: number) =>
  draw(
    {
      r: ["receiver-stacked"],
      unit: ["stacking-converter", { terrestrial: false, outputs: 1, feed: "wideband" }],
      pad: ["attenuator", { lossDb, dcPass: true }],
      lnb: ["lnb-wideband"],
      dish: ["dish", { diameterM: 0.8 }],
    },
    "dish.sky > lnb.sky, lnb.v > pad.in, pad.out > unit.v, lnb.h > unit.h, unit.out > r.sat",
  );

test("too little is found at the input that has it, dB for dB with what is lost before it", () => {
  const [weak, ...more] = foundBy("stacking-input", design(20));
  const [weaker] = foundBy("stacking-input", design(26));
  expect(more).toEqual([]);
  expect(weak).toMatchObject({
    severity: "warning",
    at: { part: "unit", port: "v", side: "too little" },
    unit: "dBµV",
    // Input window of one unit: 60 to 90 dBµV, a trade forum, from memory.
    limit: expect.closeTo(60, 9),
    facts: { culprit: { part: "pad" } },
  });
  // 26 − 20 = 6 dB.
  expect((weak?.value ?? 0) - (weaker?.value ?? 0)).toBeCloseTo(6, 6);
});

test("is silent at a pad that leaves enough", () => {
  expect(foundBy("stacking-input", design(3))).toEqual([]);
});
