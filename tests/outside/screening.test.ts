/**
 * A cordless phone in the room: DECT lies at 1880 to 1897 MHz, inside the satellite IF (EN 300 175-2, from memory), and gets in
 * where the screen is poor. That well-screened parts keep it out is why classes exist (EN 50083-2; common practice).
 */
import { describe, expect, test } from "vitest";
import { USUAL_SETTINGS } from "../../src/design/settings.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";
import { messagesOf } from "../messages.ts";

function house(o: { readonly plate: Sketch[string]; readonly lead?: string; readonly phoneM?: number }) {
  const design = draw(
    {
      dish: ["dish", { diameterM: 0.8 }],
      lnb: ["lnb-universal", { outputs: "1" }],
      down: ["cable", { lengthM: 25, screening: "A+" }],
      plate: o.plate,
      lead: ["cable", { lengthM: 2, screening: o.lead ?? "A" }],
      box: ["receiver-sat", { half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out > down.in, down.out > plate.in, plate.sat > lead.in, lead.out > box.sat",
  );
  return { ...design, settings: { ...USUAL_SETTINGS, cordlessDistanceM: o.phoneM ?? 2 } };
}

const collisions = (design: ReturnType<typeof house>) =>
  report(evaluate(design)).findings.filter((f) => f.rule === "shared-frequencies" && f.severity !== "note");

describe("a cordless phone two metres away", () => {
  test("comes in by an outlet without a class, which is named with what is to be done", () => {
    const design = house({ plate: ["outlet-sat", { screening: "none" }] });
    const [found] = collisions(design);
    expect(found).toMatchObject({ at: { part: "plate" }, facts: { intruder: "plate" } });
    expect(found?.parts[0]).toBe("plate");
    expect(messagesOf(evaluate(design), "shared-frequencies").join(" ")).toMatch(
      /, without a screening class\./,
    );
  });

  test("comes in by a lead without a class, and not by the outlet before it", () => {
    const found = collisions(house({ plate: ["outlet-sat"], lead: "none" }));
    expect(found.map((f) => f.at.part)).toEqual(["lead"]);
  });

  test("costs nobody anything where all is of class A", () => {
    expect(collisions(house({ plate: ["outlet-sat"] }))).toEqual([]);
  });

  test("nor where there is no phone", () => {
    expect(
      collisions(house({ plate: ["outlet-sat", { screening: "none" }], lead: "none", phoneM: 0 })),
    ).toEqual([]);
  });
});

test("another field touches every part, and is evaluated anew as from scratch", () => {
  const plate: Sketch[string] = ["outlet-sat", { screening: "none" }];
  const before = evaluate(house({ plate, phoneM: 0 }));
  const after = house({ plate });
  expect(evaluate(after, before).record("plate")?.outputs).toEqual(evaluate(after).record("plate")?.outputs);
  expect(evaluate(after, before).record("plate")?.sources).toEqual(["dish"]);
});
