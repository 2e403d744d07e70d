/** What is said of satellites of C band and Ka band: the first cause in words. All of it common practice, no source. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { wantedCarriers } from "../../src/findings/wanted.ts";
import { planeTests } from "../../src/remedies/faults/planeTests.ts";
import { messageOf } from "../../src/sentences/finding.ts";
import { planesWords } from "../../src/sentences/planes.ts";
import { draw, type Sketch } from "../draw.ts";

const LINE = "dish.sky > lnb.sky, lnb.out > rx.sat";

function first(parts: Sketch, wires = LINE) {
  const evaluation = evaluate(draw(parts, wires));
  const [cause] = report(evaluation).causes;
  return cause ? messageOf(cause.root, evaluation) : "nothing";
}

const dish: Sketch[string] = ["dish-c-band"];
const lnb: Sketch[string] = ["lnb-c-band"];
const rx: Sketch[string] = ["receiver-sat"];

describe("of an LNB for another band", () => {
  test("the band is told, and that of the satellite", () => {
    expect(first({ dish, lnb: ["lnb-universal"], rx })).toMatch(
      /converts Ku band only \(10.700 to 12.750 MHz\), and the satellite sends in C band: “.*” gets none of 24/,
    );
  });

  test("that takes only a part of the band, the range is told", () => {
    expect(first({ dish, lnb: ["lnb-c-band", { fromMHz: 3_800 }], rx })).toMatch(
      /converts 3800 to 4200 MHz only, not 4 satellite transponders/,
    );
  });
});

describe("of a menu with another oscillator", () => {
  // The receiver looks at 5750 − f, the LNB puts it to 5150 − f: 600 MHz below.
  test("above the band as well, all lies below where it looks if the menu is higher", () => {
    expect(first({ dish, lnb, rx: ["receiver-sat", { menuCBandMHz: 5_750 }] })).toMatch(
      /says 5750 MHz, and the LNB has 5150 MHz\. So all appears 600 MHz below where the receiver looks/,
    );
  });

  // 9750 − 3800 = 5950 MHz: no tuner goes there.
  test("of a universal LNB, nothing is where it looks", () => {
    expect(first({ dish, lnb, rx: ["receiver-sat", { menuCBandMHz: 9_750 }] })).toMatch(
      /says 9750 MHz, and the LNB has 5150 MHz\. So it looks where nothing is/,
    );
  });

  // f − 18 250 and 21 200 − f: the order is turned round, so no one shift tells it.
  test("on the other side of the band, no shift is told", () => {
    const parts: Sketch = { dish: ["dish-ka-band"], lnb: ["lnb-ka-band", { loMHz: 21_200 }], rx };
    expect(first(parts)).toMatch(
      /says 18.250 MHz, and the LNB has 21.200 MHz\. So it looks where nothing is/,
    );
  });

  test("nothing is told where the menu of Ku band is changed and the satellite is one of C band", () => {
    expect(first({ dish, lnb, rx: ["receiver-sat", { menuLowMHz: 10_000, menuHighMHz: 10_000 }] })).toBe(
      "nothing",
    );
  });
});

describe("without halves", () => {
  const evaluation = evaluate(draw({ dish, lnb, rx }, LINE));
  const [source] = evaluation.records.filter((r) => r.kind.trade.job === "dish");
  const planes = source ? planeTests(evaluation).map((each) => each.plane) : [];

  test("a satellite has two planes, named by their polarisation alone", () => {
    expect(planes.map((plane) => planesWords([plane], evaluation))).toEqual([
      "all vertical",
      "all horizontal",
    ]);
    expect(planesWords(planes, evaluation)).toBe("the whole satellite");
  });

  // 22 kHz changes nothing at such an LNB: a line that stops the tone is none the worse.
  test("no tone is missed", () => {
    const parts: Sketch = { dish, lnb, ins: ["power-inserter"], rx };
    expect(first(parts, "dish.sky > lnb.sky, lnb.out > ins.in, ins.out > rx.sat")).not.toMatch(
      /tone|high band/,
    );
  });

  test("two receivers on one output are not sent to a single-cable LNB", () => {
    const design = draw(
      { dish, lnb, split: ["splitter"], rx, b: ["receiver-sat", { polarisation: "H" }] },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > rx.sat, split.out2 > b.sat",
    );
    const evaluated = evaluate(design);
    const [cause] = report(evaluated).causes;
    expect(cause?.root.rule).toBe("switched-output-shared");
    expect(cause && messageOf(cause.root, evaluated)).toMatch(
      /share the output of “.*” through “.*”: both see only/,
    );
  });

  test("the high inputs of a multiswitch stay open without a word", () => {
    const ms = draw(
      { dish, lnb: ["lnb-c-band", { outputs: "2" }], ms: ["multiswitch"], rx },
      "dish.sky > lnb.sky, lnb.out1 > ms.vl, lnb.out2 > ms.hl, ms.out1 > rx.sat",
    );
    expect(report(evaluate(ms)).causes.filter(({ severity }) => severity !== "note")).toEqual([]);
  });
});

describe("of a twin LNB on a unit that feeds it 13 V at VL and 18 V at HL", () => {
  const twin: Sketch[string] = ["lnb-c-band", { outputs: "2", gainDb: 55 }];

  test("one lead only leaves the other input open, and none is on a wrong one", () => {
    const wires = "dish.sky > lnb.sky, lnb.out1 > ms.vl, ms.out1 > rx.sat";
    expect(first({ dish, lnb: twin, ms: ["multiswitch"], rx }, wires)).toMatch(/Input HL of “.*” is open/);
    const evaluation = evaluate(draw({ dish, lnb: twin, ms: ["multiswitch"], rx }, wires));
    const said = report(evaluation).findings.map((finding) => messageOf(finding, evaluation));
    expect(said.join(" ")).not.toMatch(/wrong input/);
    expect(said.join(" ")).toMatch(/gets 12 of 24/);
  });

  test("a single-cable receiver has them all, if its menu has the LNB’s oscillator", () => {
    const wires =
      "dish.sky > lnb.sky, lnb.out1 > ms.vl, lnb.out2 > ms.hl, ms.out1 > run.in, run.out > rx.sat";
    const parts = (menuCBandMHz: number): Sketch => ({
      dish,
      lnb: twin,
      ms: ["stacking-converter"],
      run: ["cable", { lengthM: 20 }],
      rx: ["receiver-stacked", { menuCBandMHz }],
    });
    const causes = (o: Sketch) =>
      report(evaluate(draw(o, wires))).causes.filter((c) => c.severity === "error");
    expect(causes(parts(5_150))).toEqual([]);
    expect(first(parts(9_750), wires)).toMatch(/says 9750 MHz, and the LNB has 5150 MHz/);
  });
});

test("a circular satellite has its planes too: right-hand, then left-hand", () => {
  const evaluation = evaluate(draw({ dish: ["dish-ka-band"], lnb: ["lnb-ka-band"], rx }, LINE));
  expect(planeTests(evaluation).map(({ plane }) => planesWords([plane], evaluation))).toEqual([
    "all right-hand circular",
    "all left-hand circular",
  ]);
  const record = evaluation.record("dish");
  expect(record && wantedCarriers(record, [record], "satellite")).toHaveLength(24);
});
