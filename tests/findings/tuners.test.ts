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

/** All that is said of the tuners of a part. */
function told(design: Design, part: string) {
  const evaluation = evaluate(design);
  const record = evaluation.record(part);
  if (!record) throw new Error(`no part ${part}`);
  return tunersOf(
    record,
    evaluation.records.filter((r) => r.kind.family === "receive"),
  );
}

describe("the tuners of a receiver with two wideband inputs", () => {
  const hybrid = (wires: string) =>
    draw({ rx: ["receiver-hybrid", { tuners: 3 }], lnb: ["lnb-wideband"], dish: ["dish"] }, wires);

  // Each polarisation has 40 of the 80 transponders; every tuner turns to either input.
  test("each get both polarisations, by the two leads together", () => {
    const tuners = told(hybrid("dish.sky > lnb.sky, lnb.v > rx.v, lnb.h > rx.h"), "rx");
    expect(tuners.map((t) => [t.number, t.input, t.inputs.join(), t.alone.got, t.together.got])).toEqual([
      [1, "v", "v,h", 80, 80],
      [2, "v", "v,h", 80, 80],
      [3, "v", "v,h", 80, 80],
    ]);
    expect(tuners.every((t) => !t.follows && t.missing.length === 0 && t.userBand === undefined)).toBe(true);
  });

  test("get one polarisation where one lead is off", () => {
    const tuners = told(hybrid("dish.sky > lnb.sky, lnb.v > rx.v"), "rx");
    expect(tuners.map((t) => [t.together.got, t.together.of])).toEqual([
      [40, 80],
      [40, 80],
      [40, 80],
    ]);
    expect(tuners[0]?.missing.every((m) => m.reason.kind !== "no lead")).toBe(true);
  });

  test("have no lead where both are off", () => {
    const [first] = told(hybrid("dish.sky > lnb.sky"), "rx");
    // Four planes of 20 transponders.
    const noLead = { why: "absent", count: 20, reason: { kind: "no lead", port: "v" } };
    const culprit = { part: "rx", port: "v" };
    expect(first?.missing).toMatchObject([1, 2, 3, 4].map(() => ({ ...noLead, culprit })));
    expect(first?.missing).toHaveLength(4);
  });
});

describe("several tuners behind one switched input", () => {
  // One lead brings one quadrant at a time, 20 transponders: the first tuner chooses, the others take what is there.
  test("follow the first, and nothing more is said of them", () => {
    const design = draw(
      { rx: ["receiver-stacked", { mode: "universal", tuners: 3 }], lnb: ["lnb-universal"], dish: ["dish"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    );
    expect(told(design, "rx").map((t) => [t.follows, t.alone.got, t.together.got, t.missing.length])).toEqual(
      [
        [false, 80, 80, 0],
        [true, 80, 20, 0],
        [true, 80, 20, 0],
      ],
    );
  });
});

test("a tuner on a user band is told by its number, and a set without satellite has none", () => {
  const design = draw(
    {
      rx: ["receiver-stacked", { tuners: 1, userBands: [{ number: 2, centreMHz: 1420 }] }],
      tv: ["receiver-tv"],
      lnb: ["lnb-stacked"],
      dish: ["dish"],
    },
    "dish.sky > lnb.sky, lnb.out > rx.sat",
  );
  expect(told(design, "rx").map((t) => [t.userBand, t.input, t.service])).toEqual([[2, "sat", "satellite"]]);
  expect(told(design, "tv")).toEqual([]);
  expect(told(design, "lnb")).toEqual([]);
});
