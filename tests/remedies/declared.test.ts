/** Cures and costs follow from what is declared with kinds and options. Sources beside each check. */
import { describe, expect, test } from "vitest";
import { replaceKind } from "../../src/design/edits/replace.ts";
import { candidatesFor } from "../../src/remedies/candidates/index.ts";
import { costOf } from "../../src/remedies/cost.ts";
import { difference } from "../../src/remedies/difference.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { draw, withOptions } from "../draw.ts";

const crowded = draw(
  {
    dish: ["dish", { diameterM: 0.8 }],
    lnb: ["lnb-stacked"],
    rx: ["receiver-stacked", { tuners: 6 }],
  },
  "dish.sky > lnb.sky, lnb.out > rx.sat",
);

describe("a cure", () => {
  test("that has lost its converter to another step is not made, and does not crash", () => {
    const site = siteOf(crowded);
    const wider = candidatesFor(site, site.report.findings).find((c) => c.step.idea === "more-user-bands");
    const other = replaceKind(crowded, "lnb", "lnb-universal");
    expect(wider?.apply(crowded)).not.toBeNull();
    expect(other.ok && wider?.apply(other.design)).toBeNull();
  });
});

describe("the cost of another value", () => {
  const prices = { dish: { price: 50, workMinutes: 60 }, cable: { price: 0.5, workMinutes: 60 } };
  const line = draw(
    { dish: ["dish"], lnb: ["lnb-universal"], drop: ["cable", { lengthM: 20 }] },
    "dish.sky > lnb.sky",
  );
  const cost = (part: string, options: Record<string, unknown>) =>
    costOf(difference(line, withOptions(line, part, options)), prices);

  // Turning a dish takes a meter and no new dish; rain costs nothing but a look; another cable is 20 m at 0.5.
  test.each([
    ["turning the dish", "dish", { pointingLossDb: 0 }, { partsPrice: 0, workMinutes: 40, newCables: 0 }],
    [
      "another satellite",
      "dish",
      { orbitalPositionDegE: 5 },
      { partsPrice: 0, workMinutes: 40, newCables: 0 },
    ],
    ["rain", "dish", { rainLossDb: 3 }, { partsPrice: 0, workMinutes: 5, newCables: 0 }],
    ["a larger dish", "dish", { diameterM: 0.8 }, { partsPrice: 50, workMinutes: 60, newCables: 0 }],
    ["another cable", "drop", { grade: "copper-1.25" }, { partsPrice: 10, workMinutes: 60, newCables: 1 }],
    ["a cold day", "drop", { temperatureC: -10 }, { partsPrice: 0, workMinutes: 5, newCables: 0 }],
  ])("is that of %s", (_, part, options, expected) => {
    expect(cost(part, options)).toEqual(expected);
  });
});
