/**
 * Tuners that something stronger blocks: at most 98.75 dBµV in all for TV (−10 dBm into 75 Ω), and a next channel up to
 * 30 dB stronger (ITU-R BT.1368 and BT.2033, from memory).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { report } from "../../../src/findings/report.ts";
import { draw, type Sketch } from "../../draw.ts";
import { messagesOf } from "../../messages.ts";
import { foundBy } from "./foundBy.ts";

const T = "dvbt-64qam-2/3";
type Row = readonly [channel: number, levelOffsetDb: number];
const aerial = (levelDbuv: number, ...rows: readonly Row[]): Sketch[string] => [
  "aerial-uhf",
  {
    levelDbuv,
    formerOnAir: true,
    channels: rows.map(([channel, levelOffsetDb]) => ({ channel, mode: T, levelOffsetDb })),
  },
];
const set = (o: Record<string, unknown> = {}): Sketch[string] => ["receiver-tv", o];

const causesIn = (parts: Sketch, wires: string) =>
  report(evaluate(draw(parts, wires))).causes.map(({ root }) => [root.rule, root.parts[0]]);

describe("all signals together", () => {
  // Two of 96 dBµV: 99.01 dBµV; of 95.7 they are 98.71.
  test("block a tuner above the power that it takes, and not below", () => {
    const line = (levelDbuv: number) =>
      draw({ z: set(), a: aerial(levelDbuv, [30, 0], [40, 0]) }, "a.out > z.in");
    const [blocked, ...more] = foundBy("tuner-blocked", line(96));
    expect(more).toEqual([]);
    expect(blocked).toMatchObject({
      severity: "error",
      at: { part: "z", port: "in", service: "tv", side: "too much", band: "total" },
      parts: ["a", "z"],
      wires: ["a.out>z.in"],
      value: expect.closeTo(99.01, 2),
      limit: 98.75,
      unit: "dBµV",
      facts: { kind: "total", failing: 2, of: 2, culprit: { part: "a", does: "strong source" } },
    });
    expect(foundBy("tuner-blocked", line(95.7))).toEqual([]);
  });

  test("are what is told, not that they come out too strong as well", () => {
    const parts = { z: set(), a: aerial(96, [30, 0], [40, 0]) };
    expect(causesIn(parts, "a.out > z.in")).toEqual([["tuner-blocked", "a"]]);
    const [verdict] = report(evaluate(draw(parts, "a.out > z.in"))).verdicts;
    expect(verdict).toMatchObject({ state: "fails", services: [{ got: 0, wanted: 2 }] });
  });

  // 80 dBµV and 35 dB of gain: six of 115 dBµV, 122.8 in all, 24 dB too much; rated at 122 dBµV, less 7.5·log10(5), the
  // amplifier may give 116.8 dBµV each and is sound; rated at 118 it gives 2.2 dB too much.
  test.each([122, 118])(
    "are named before an amplifier that is driven a little too far: rated %i dBµV",
    (rated) => {
      const parts: Sketch = {
        z: set(),
        b: ["amp-distribution", { gainDb: 35, outputDbuv: rated }],
        a: ["aerial-uhf", { levelDbuv: 80 }],
      };
      expect(causesIn(parts, "a.out > b.in, b.out > z.in")).toEqual([["tuner-blocked", "b"]]);
    },
  );

  test("of a satellite receiver are those of one quadrant", () => {
    // 40 transponders of 84 dBµV come to 100 dBµV: what a satellite tuner takes. An amplifier of 30 dB behind an LNB gives more.
    const parts: Sketch = {
      z: ["receiver-sat"],
      b: ["amp-if", { gainDb: 30 }],
      lnb: ["lnb-universal"],
      d: ["dish"],
    };
    const [blocked, ...more] = foundBy(
      "tuner-blocked",
      draw(parts, "d.sky > lnb.sky, lnb.out > b.in, b.out > z.sat"),
    );
    expect(more).toEqual([]);
    expect(blocked).toMatchObject({ at: { part: "z", band: "total" }, limit: 100, parts: ["b", "z"] });
    expect(
      foundBy(
        "tuner-blocked",
        draw(
          { z: ["receiver-sat"], lnb: ["lnb-universal"], d: ["dish"] },
          "d.sky > lnb.sky, lnb.out > z.sat",
        ),
      ),
    ).toEqual([]);
  });
});

describe("a neighbour", () => {
  test("33 dB stronger blocks the next channel, and the aerial is named that receives it so", () => {
    const parts: Sketch = { z: set(), a: aerial(50, [30, 0], [33, -4], [34, 29]) };
    const design = draw(parts, "a.out > z.in");
    const [blocked, ...more] = foundBy("tuner-blocked", design);
    expect(more).toEqual([]);
    expect(blocked).toMatchObject({
      at: { band: "beside" },
      parts: ["a", "z"],
      value: expect.closeTo(33, 9),
      limit: 30,
      unit: "dB",
      facts: { failing: 1, of: 3, wanted: { name: "C33" }, by: { name: "C34" } },
    });
    expect(messagesOf(evaluate(design), "tuner-blocked")).toEqual(
      [
        "At the input of “TV set”, C34 is 33 dB above C33, and 30 dB block it. “UHF aerial” itself receives them 33 dB apart.",
      ].map((text) =>
        text.replace("TV set", labelOf(design, "z")).replace("UHF aerial", labelOf(design, "a")),
      ),
    );
  });

  test("takes nothing from a channel that is too weak by itself", () => {
    // 20 dBµV: less 3.6 dBµV of noise and the 8 dB of the tuner, 8.4 dB of C/N where 18.7 are needed.
    const design = draw({ z: set(), a: aerial(49, [33, -29], [34, 0]) }, "a.out > z.in");
    expect(foundBy("tuner-blocked", design)).toHaveLength(0);
    expect(foundBy("receiver-misses", design)).toMatchObject([{ facts: { missing: { why: "noisy" } } }]);
  });

  test("that is a phone mast is kept out before the set", () => {
    // C60 ends 1.7 MHz below the first mast carrier: 33 dB allowed; 40 dBµV beside 80.
    const parts: Sketch = {
      z: set(),
      p: ["pick-up", { mast700: false, mastDbuv: 80 }],
      a: aerial(40, [60, 0]),
    };
    expect(foundBy("tuner-blocked", draw(parts, "a.out > p.in, p.out > z.in"))).toMatchObject([
      {
        at: { band: "beside" },
        parts: ["p", "z"],
        value: 40,
        limit: 33,
        facts: { by: { service: "mobile" }, culprit: { part: "p", does: "lets in" } },
      },
    ]);
  });
});

function labelOf(design: ReturnType<typeof draw>, id: string): string {
  return design.parts.find((p) => p.id === id)?.label ?? id;
}
