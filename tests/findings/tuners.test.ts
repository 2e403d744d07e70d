/** TU: what each tuner can get, alone and together with the others. Sharing: common practice, no source. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { tunersOf } from "../../src/findings/tuners.ts";
import { draw } from "../draw.ts";

function tuners(design: Design, part: string) {
  const evaluation = evaluate(design);
  const record = evaluation.record(part);
  if (!record) throw new Error(`no part ${part}`);
  return tunersOf(
    record,
    evaluation.records.filter((r) => r.kind.family === "receive"),
  ).map((t) => [t.alone.got, t.together.got]);
}

describe("tuners", () => {
  test("TU1: two receivers behind a splitter: everything alone, a quarter together", () => {
    const design = draw(
      {
        dish: ["dish"],
        lnb: ["lnb-universal"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-sat"],
        r2: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    );
    expect(tuners(design, "r1")).toEqual([[80, 20]]);
  });

  test("TU2: a twin receiver on two outputs: both tuners get all, always", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-universal", { outputs: "2" }], rx: ["receiver-sat-twin"] },
      "dish.sky > lnb.sky, lnb.out1 > rx.sat1, lnb.out2 > rx.sat2",
    );
    expect(tuners(design, "rx")).toEqual([
      [80, 80],
      [80, 80],
    ]);
  });

  test("TU3: a twin receiver with one cable: its second tuner gets nothing", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-universal"], rx: ["receiver-sat-twin"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat1",
    );
    expect(tuners(design, "rx")).toEqual([
      [80, 80],
      [0, 0],
    ]);
  });

  test("TU4: on user bands every tuner gets all, each through its own band", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-stacked"], rx: ["receiver-stacked", { tuners: 3 }] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    );
    // Two user bands are set by default; the third tuner has none.
    expect(tuners(design, "rx")).toEqual([
      [80, 80],
      [80, 80],
      [0, 0],
    ]);
  });

  test("TU5: a user band used twice serves neither, and a receiver in universal mode blocks the line", () => {
    const line = (second: Record<string, unknown>) =>
      draw(
        {
          dish: ["dish"],
          lnb: ["lnb-stacked"],
          split: ["splitter", { dc: "all" }],
          r1: ["receiver-stacked", { tuners: 1, userBands: [{ number: 1, centreMHz: 1210 }] }],
          r2: ["receiver-stacked", { tuners: 1, ...second }],
        },
        "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
      );
    expect(tuners(line({ userBands: [{ number: 1, centreMHz: 1210 }] }), "r1")).toEqual([[80, 0]]);
    expect(tuners(line({ mode: "universal" }), "r1")).toEqual([[80, 0]]);
    expect(tuners(line({ userBands: [{ number: 2, centreMHz: 1420 }] }), "r1")).toEqual([[80, 80]]);
    const verdict = report(evaluate(line({ mode: "universal" }))).verdicts.find((v) => v.part === "r1");
    expect(verdict?.state).toBe("fails");
    expect(verdict?.services[0]?.missing[0]).toMatchObject({ reason: { kind: "line held", by: "r2" } });
  });

  test("TU6: a receiver whose messages cannot pass the splitter gets nothing", () => {
    const design = draw(
      {
        dish: ["dish"],
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "one" }],
        r1: ["receiver-stacked", { tuners: 1, userBands: [{ number: 1, centreMHz: 1210 }] }],
        r2: ["receiver-stacked", { tuners: 1, userBands: [{ number: 2, centreMHz: 1420 }] }],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    );
    expect(tuners(design, "r1")).toEqual([[80, 80]]);
    expect(tuners(design, "r2")).toEqual([[0, 0]]);
  });

  test("TU7: trunks swapped at a multiswitch lose the two quadrants that changed places", () => {
    const design = draw(
      { dish: ["dish"], lnb: ["lnb-quattro"], ms: ["multiswitch"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > ms.vh, lnb.vh > ms.vl, lnb.hl > ms.hl, lnb.hh > ms.hh, ms.out1 > rx.sat",
    );
    expect(tuners(design, "rx")).toEqual([[40, 40]]);
  });
});
