/**
 * Circular waves by their own names. 13 V stands for right-hand, 18 V for left-hand circular: the way circular LNBs are
 * labelled (common practice, no source). The transponders are invented.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { bandName } from "../../src/sentences/phrases.ts";
import { verdictSentence } from "../../src/sentences/verdict.ts";
import { draw, type Sketch } from "../draw.ts";
import { messagesOf } from "../messages.ts";

const sent = (polarisation: string) =>
  [10_720, 10_900, 11_780, 12_100].map((frequencyMHz) => ({
    frequencyMHz,
    polarisation,
    symbolRateMBd: 27.5,
    mode: "dvbs2-qpsk-3/4",
    levelOffsetDb: 0,
  }));

const dish = (...waves: readonly string[]) =>
  ["dish", { diameterM: 0.8, transponders: waves.flatMap(sent) }] as const;

const WIDE: Sketch = {
  k: dish("R", "L"),
  m: ["lnb-wideband", { feedType: "circular" }],
  z: ["receiver-hybrid"],
};

describe("a satellite with circular waves", () => {
  test("is named R and L on its wires", () => {
    const { records } = evaluate(draw({ k: dish("R", "L") }, ""));
    const names = Object.values(records[0]?.outputs ?? {}).flatMap(({ bands }) => bands.map(bandName));
    expect(names.map((name) => /Satellite (.)/.exec(name)?.[1]).sort()).toEqual(["L", "R"]);
  });

  test("lacks left-hand circular where its lead is missing", () => {
    const messages = messagesOf(evaluate(draw(WIDE, "k.sky > m.sky, m.v > z.v")));
    expect(messages.join(" ")).toMatch(/gets 4 of 8 .*left-hand circular/);
    expect(messages.join(" ")).not.toMatch(/horizontal/);
  });

  test("comes polarised R on the input for H where the leads are changed", () => {
    const evaluation = evaluate(draw(WIDE, "k.sky > m.sky, m.v > z.h, m.h > z.v"));
    const [verdict] = report(evaluation).verdicts;
    expect(verdict && verdictSentence(verdict, evaluation)).toMatch(
      /on the input for (H, but polarised R|V, but polarised L)/,
    );
  });

  test("is asked for by 18 V: too few of them cost left-hand circular", () => {
    const design = (feedType: string, ...waves: readonly string[]) =>
      draw(
        { k: dish(...waves), m: ["lnb-universal", { feedType }], z: ["receiver-sat", { volts18: 15 }] },
        "k.sky > m.sky, m.out > z.sat",
      );
    expect(messagesOf(evaluate(design("circular", "R", "L")), "command-lost").join()).toMatch(
      /may fail to select left-hand circular for “z”/,
    );
    expect(messagesOf(evaluate(design("linear", "V", "H")), "command-lost").join()).toMatch(
      /may fail to select horizontal for “z”/,
    );
  });
});
