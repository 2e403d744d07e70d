/**
 * Circular waves by their own names. 13 V stands for right-hand, 18 V for left-hand circular: the way circular LNBs are
 * labelled (common practice, no source). The transponders are invented.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { circularMeta } from "../../src/parts/fields.ts";
import { describedOptions } from "../../src/parts/meanings.ts";
import { explainFinding } from "../../src/sentences/finding.ts";
import { bandName, labelled } from "../../src/sentences/phrases.ts";
import { captionOf, takesCircular } from "../../src/sentences/planes.ts";
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

describe("a receiver of circular waves", () => {
  const line = (feedType: string, asks: string, ...waves: readonly string[]) =>
    evaluate(
      draw(
        {
          k: dish(...waves),
          m: ["lnb-universal", { feedType }],
          z: ["receiver-sat", { polarisation: asks, half: "low" }],
        },
        "k.sky > m.sky, m.out > z.sat",
      ),
    );
  const receiverOf = (evaluation: ReturnType<typeof evaluate>) => {
    const record = evaluation.record("z");
    if (!record) throw new Error("no receiver");
    return record;
  };

  // 13 V is right-hand, 18 V left-hand (common practice, no source).
  test.each([
    {
      feedType: "circular",
      waves: ["R", "L"],
      asks: "V",
      caption: "asks for R low",
      label: "Right-hand (13 V)",
    },
    {
      feedType: "circular",
      waves: ["R", "L"],
      asks: "H",
      caption: "asks for L low",
      label: "Left-hand (18 V)",
    },
    { feedType: "linear", waves: ["V", "H"], asks: "V", caption: "asks for V low", label: "Vertical (13 V)" },
    {
      feedType: "linear",
      waves: ["V", "H"],
      asks: "H",
      caption: "asks for H low",
      label: "Horizontal (18 V)",
    },
  ])("says “$caption” on its card and “$label” in its menu", ({ feedType, waves, asks, caption, label }) => {
    const record = receiverOf(line(feedType, asks, ...waves));
    expect(captionOf(record)).toBe(caption);
    const meta = describedOptions(record.kind).get("polarisation");
    const shown = meta && (takesCircular(record) ? circularMeta(meta) : meta);
    expect(shown?.choices?.find(({ value }) => value === asks)?.label).toBe(label);
  });

  test("is told of right-hand and left-hand where a second one is on its line", () => {
    const evaluation = evaluate(
      draw(
        {
          k: dish("R", "L"),
          m: ["lnb-universal", { feedType: "circular" }],
          s: ["splitter", { dc: "all" }],
          z: ["receiver-sat", { polarisation: "V" }],
          y: ["receiver-sat", { polarisation: "H" }],
        },
        "k.sky > m.sky, m.out > s.in, s.out1 > z.sat, s.out2 > y.sat",
      ),
    );
    const [finding] = report(evaluation).findings.filter((f) => f.rule === "switched-output-shared");
    const told = finding && labelled(explainFinding(finding, evaluation).trade, evaluation);
    expect(told).toMatch(/“z” asks for R low/);
    expect(told).toMatch(/“y” asks for L low/);
    expect(told).toMatch(/is left-hand circular\)/);
    expect(told).not.toMatch(/horizontal/);
  });
});
