/** The list of work for a change, hand-counted on small lines: what goes where, where one stands, how long it takes. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { costOf } from "../../src/remedies/cost.ts";
import { difference } from "../../src/remedies/difference.ts";
import { workOf } from "../../src/remedies/work.ts";
import { namesIn } from "../../src/sentences/cures/told.ts";
import { workEffort, workWords } from "../../src/sentences/cures/work.ts";
import { draw, type Sketch } from "../draw.ts";

const PARTS: Sketch = {
  lnb: ["lnb-universal", { outputs: "2" }],
  split: ["splitter"],
  drop: ["cable", { lengthM: 10 }],
  sat1: ["receiver-sat"],
  sat2: ["receiver-sat"],
};
const SHARED = draw(
  PARTS,
  "lnb.out1 > split.in, split.out1 > drop.in, drop.out > sat1.sat, split.out2 > sat2.sat",
);

const prices = {
  cable: { price: 1, workMinutes: 60 },
  splitter: { price: 2, workMinutes: 10 },
  "lnb-universal": { price: 20, workMinutes: 40 },
};

function told(before: Design, after: Design): readonly string[] {
  const names = namesIn(before, after);
  return workOf(difference(before, after), prices).map(
    (task) => `${workWords(task, names)} (${workEffort(task)})`,
  );
}

function withoutPart(sketch: Sketch, id: string): Sketch {
  return Object.fromEntries(Object.entries(sketch).filter(([key]) => key !== id));
}

describe("The list of work", () => {
  test("of a cable of its own in place of a splitter names both ends of the cable, and what is joined up again", () => {
    const own = draw(
      { ...withoutPart(PARTS, "split"), extra: ["cable", { lengthM: 15 }] },
      "lnb.out1 > drop.in, drop.out > sat1.sat, lnb.out2 > extra.in, extra.out > sat2.sat",
    );
    const extra = "“extra” (15 m · 1.0 mm copper)";
    expect(told(SHARED, own)).toEqual([
      `Fit ${extra} between “lnb” (out 2) and “sat2” (under the roof or in the cupboard, 60 minutes)`,
      "Remove “split” (under the roof or in the cupboard, 3 minutes)",
    ]);
  });

  test("of a part put into a wire takes no lead besides", () => {
    const padded = draw(
      { ...PARTS, more: ["cable", { lengthM: 5 }] },
      "lnb.out1 > split.in, split.out1 > drop.in, drop.out > more.in, more.out > sat1.sat, split.out2 > sat2.sat",
    );
    expect(workOf(difference(SHARED, padded), prices)).toMatchObject([
      {
        kind: "fit",
        between: [
          ["drop", "out"],
          ["sat1", "sat"],
        ],
        minutes: 60,
      },
    ]);
  });

  test("of a splitter put in names each of its leads, which take no time of their own", () => {
    const alone = draw(withoutPart(PARTS, "split"), "lnb.out1 > drop.in, drop.out > sat1.sat");
    expect(told(alone, SHARED)).toEqual([
      "Fit “split” (2 ways · DC from all) (under the roof or in the cupboard, 10 minutes)",
      "Move the lead of “lnb” (out 1) from “drop” to “split” (under the roof or in the cupboard)",
      "Connect “split” (out 1) to “drop” (under the roof or in the cupboard)",
      "Connect “split” (out 2) to “sat2” (in the room)",
    ]);
  });

  test("of leads alone is done where the lead goes to: five minutes each", () => {
    const swapped = draw(
      PARTS,
      "lnb.out2 > split.in, split.out2 > drop.in, drop.out > sat1.sat, split.out1 > sat2.sat",
    );
    expect(told(SHARED, swapped)).toEqual([
      "Move the lead of “split” from “lnb” (out 1) to “lnb” (out 2) (on the roof, 5 minutes)",
      "Move the lead of “drop” from “split” (out 1) to “split” (out 2) (under the roof or in the cupboard, 5 minutes)",
      "Move the lead of “sat2” from “split” (out 2) to “split” (out 1) (under the roof or in the cupboard, 5 minutes)",
    ]);
  });

  test("names a socket that only the new part has", () => {
    const single = draw(
      { ...withoutPart(PARTS, "split"), lnb: ["lnb-universal", { outputs: "1" }] },
      "lnb.out1 > drop.in, drop.out > sat1.sat",
    );
    const twin = draw(
      { ...withoutPart(PARTS, "split"), extra: ["cable", { lengthM: 15 }] },
      "lnb.out1 > drop.in, drop.out > sat1.sat, lnb.out2 > extra.in, extra.out > sat2.sat",
    );
    expect(told(single, twin)).toEqual([
      "Fit “extra” (15 m · 1.0 mm copper) between “lnb” (out 2) and “sat2” (under the roof or in the cupboard, 60 minutes)",
      "Replace “lnb” with: Universal LNB (2 outputs) (on the roof, 40 minutes)",
    ]);
  });

  test("adds up to the minutes of the cost", () => {
    const alone = draw(withoutPart(PARTS, "split"), "lnb.out1 > drop.in, drop.out > sat1.sat");
    // A splitter off is a quarter of a splitter on, 2.5, in whole minutes; nothing else is to be done.
    expect(costOf(difference(SHARED, alone), prices)).toEqual({
      partsPrice: 0,
      workMinutes: 3,
      newCables: 0,
    });
    const turned = draw(
      PARTS,
      "lnb.out2 > split.in, split.out1 > drop.in, drop.out > sat1.sat, split.out2 > sat2.sat",
    );
    expect(costOf(difference(SHARED, turned), prices).workMinutes).toBe(5);
  });
});
