/** What is said first of supply: place, fact, number, limit, and the part to take in hand. By the style of the trade. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { cureOf, messageOf } from "../../src/sentences/finding.ts";
import { draw, type Sketch } from "../draw.ts";
import { TRADE_CASES } from "../trade/cases.ts";

/** The first finding of a rule in words, and its cure. */
function told(rule: string, parts: Sketch, wires: string) {
  const evaluation = evaluate(draw(parts, wires));
  const finding = report(evaluation).findings.find((f) => f.rule === rule);
  return finding ? [messageOf(finding, evaluation), cureOf(finding, evaluation)] : [];
}

const MAST = { mast: ["amp-masthead"], uhf: ["aerial-uhf"], tv: ["receiver-tv"] } as const satisfies Sketch;
const SAT = { lnb: ["lnb-universal"], dish: ["dish"] } as const satisfies Sketch;

describe("the first line", () => {
  test("of a splitter that stops the supply", () => {
    expect(
      told(
        "no-supply",
        { ...MAST, "Splitter 2": ["splitter", { dc: "none" }], Supply: ["power-inserter", { volts: 12 }] },
        "uhf.out > mast.in, mast.out > Splitter 2.in, Splitter 2.out1 > Supply.in, Supply.out > tv.in",
      )[0],
    ).toBe(
      "12 V from “Supply” stop at “Splitter 2”: it passes no DC from output 1, so “mast” is dead. Without supply “mast” loses 25 dB.",
    );
  });

  test("of an inserter without mains", () => {
    expect(
      told(
        "no-supply",
        { ...MAST, Inserter: ["power-inserter", { switchedOn: false }] },
        "uhf.out > mast.in, mast.out > Inserter.in, Inserter.out > tv.in",
      ),
    ).toEqual([
      "The mains of “Inserter” is off, so “mast” gets no supply. Without supply “mast” loses 25 dB.",
      "Switch the mains of “Inserter” on.",
    ]);
  });

  test("of volts that fall just short: the difference stays one", () => {
    // 11.46 V of the 11.5 V that an LNB needs; nothing lies between.
    expect(
      told(
        "no-supply",
        { ...SAT, rx: ["receiver-sat", { volts13: 11.46 }] },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      )[0],
    ).toBe("“rx” gives only 11.46 V; “lnb” needs 11.5 V.");
  });

  test("of a diode that takes volts: no resistance is blamed", () => {
    const said = told(
      "no-supply",
      {
        mast: ["amp-masthead", { minVolts: 11.8 }],
        uhf: ["aerial-uhf"],
        tv: ["receiver-tv"],
        s: ["splitter"],
        psu: ["power-inserter"],
      },
      "uhf.out > mast.in, mast.out > s.in, s.out1 > psu.in, psu.out > tv.in",
    )[0];
    expect(said).toBe("“mast” gets 11.5 V and needs 11.8 V: the diode in “s” takes 0.5 V of 12 V.");
  });

  test("of ends that are still open", () => {
    expect(told("not-connected", { c: ["cable"], tv: ["receiver-tv"] }, "")[0]).toBe(
      // Both ends of the cable, of which the open output leads nowhere, and the input of the set.
      "3 ends are still open: “c” and “tv”.",
    );
  });
});

const OWN = new Set([
  "no-supply",
  "supply-overloaded",
  "command-lost",
  "switched-output-shared",
  "user-band-conflict",
  "wrong-quadrant",
  "too-many-tuners",
  "not-connected",
]);

test.each(TRADE_CASES)("no sentence is longer than 25 words: $fault", ({ design }) => {
  const evaluation = evaluate(design);
  for (const finding of report(evaluation).findings.filter((f) => OWN.has(f.rule)))
    for (const text of [messageOf(finding, evaluation), cureOf(finding, evaluation) ?? ""])
      for (const sentence of text.split(/(?<=\.) (?=[A-Z“])/))
        expect(sentence.split(" ").length, sentence).toBeLessThanOrEqual(25);
});
