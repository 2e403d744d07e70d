/**
 * A part driven past its rated output. A rating holds for two carriers; for n of them 7.5·log10(n − 1) less, and products
 * lie 60 dB below, 2 dB more for each decibel beyond (EN 60728-3 and trade appendices, as the amplifiers say).
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const aerial = (levelDbuv: number, channels: readonly number[] = [30, 40]): Sketch[string] => [
  "aerial-uhf",
  { levelDbuv, channels: channels.map((channel) => ({ channel, mode: "dvbt-64qam-2/3" })) },
];
const amplifier = (gainDb: number, outputDbuv = 80): Sketch[string] => [
  "amp-distribution",
  { gainDb, outputDbuv, uhfTo: "862" },
];
const found = (parts: Sketch, wires = "a.out > x.in") =>
  foundBy("overload", draw({ z: ["receiver-tv"], ...parts }, `${wires}, x.out > z.in`));

describe("an amplifier driven too hard", () => {
  // 76 + 5 = 81 for each of two, together 3.01 more.
  test("by its own gain", () => {
    const [one, ...more] = found({ x: amplifier(5), a: aerial(76) });
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      severity: "warning",
      at: { part: "x", port: "#sum" },
      parts: ["x"],
      wires: [],
      limit: 80,
      unit: "dBµV",
      facts: { rule: "beats", drowned: [], because: "gain" },
    });
    expect(one?.value).toBeCloseTo(81, 3);
    expect(one?.facts.carriers).toBeCloseTo(2, 3);
    expect(one?.facts.totalDbuv).toBeCloseTo(84.01, 2);
    expect(one?.facts.ratioDb).toBeCloseTo(58, 3);
    expect(one?.facts.gainDb).toBeCloseTo(5, 3);
    expect(one?.facts.load).toMatchObject([{ service: "tv", part: "a" }]);
    expect(one?.facts.load[0]?.share).toBeCloseTo(1, 6);
  });

  // 88.6 dBµV in, 90 allowed: turned down far enough it would do. What comes out is held down where it saturates.
  test("far too hard, by the gain that it would have", () => {
    const [one] = found({ x: amplifier(22, 90), a: aerial(88.6) });
    expect(one?.facts.gainDb).toBeCloseTo(22, 6);
    expect(one).toMatchObject({ parts: ["x"], facts: { because: "gain" } });
  });

  // Five carriers: 7.5·log10 4 = 4.515 dB less than the rating.
  test("by many carriers, for which less is allowed", () => {
    const [one] = found({ x: amplifier(5), a: aerial(71, [30, 33, 36, 40, 44]) });
    expect(one?.value).toBeCloseTo(76, 3);
    expect(one?.limit).toBeCloseTo(75.485, 2);
    expect(found({ x: amplifier(5), a: aerial(70, [30, 33, 36, 40, 44]) })).toEqual([]);
  });

  test("by no less than its rating, nor by a single carrier", () => {
    expect(found({ x: amplifier(5), a: aerial(74.5) })).toEqual([]);
    expect(found({ x: amplifier(5), a: aerial(75.5) })).toHaveLength(1);
    expect(found({ x: amplifier(5), a: aerial(90, [30]) })).toEqual([]);
  });

  // 86.5 are 6.5 dB over, 86 are 6.
  test("by what comes in: even without any gain it would be too much", () => {
    // Its 5 dB are less than four fifths of 6.5 dB, and more than that of 6 dB: the share is our choice.
    const [input] = found({ x: amplifier(5), a: aerial(81.5) });
    expect(input).toMatchObject({ parts: ["x", "a"], facts: { because: "input" } });
    expect(found({ x: amplifier(5), a: aerial(81) })).toMatchObject([
      { parts: ["x"], facts: { because: "gain" } },
    ]);
  });

  // 62 + 25 + 5 = 92: 12 dB over.
  test("by an amplifier before it, which is named first", () => {
    const parts: Sketch = { x: amplifier(5), m: amplifier(25, 125), a: aerial(62) };
    expect(found(parts, "a.out > m.in, m.out > x.in")).toMatchObject([
      { at: { part: "x" }, parts: ["m", "x"], facts: { because: "input" } },
    ]);
  });

  test("is told with the wire where its output is overloaded itself", () => {
    const mast: Sketch = {
      i: ["power-inserter"],
      x: ["amp-masthead", { gainDb: 16, outputDbuv: 80 }],
      a: aerial(70),
    };
    const design = draw({ z: ["receiver-tv"], ...mast }, "a.out > x.in, x.out > i.in, i.out > z.in");
    const [one] = foundBy("overload", design);
    expect(one).toMatchObject({ at: { part: "x", port: "out" }, wires: ["x.out>i.in"] });
    expect(one?.facts.gainDb).toBeCloseTo(16, 3);
    expect(one?.value).toBeCloseTo(86, 3);
  });
});

// 97 + 5 = 102, 22 dB over: beyond 20 nothing lives. 20 dB over leave 60 − 40 = 20 dB, where 64 QAM 2/3 needs 18.7
// (NorDig Unified 2.2, as quoted in a public table).
test("carriers that are lost in the products make it an error", () => {
  const [lost] = found({ x: amplifier(5), a: aerial(97) });
  expect(lost).toMatchObject({ severity: "error", facts: { drowned: [{ service: "tv", count: 2 }] } });
  expect(lost?.facts.ratioDb).toBeLessThan(0);
  const [still] = found({ x: amplifier(5), a: aerial(95) });
  expect(still).toMatchObject({ severity: "warning", facts: { drowned: [] } });
});

// Two carriers at 21 dB over would keep 60 − 42 = 18 dB by the cubic law, and DAB needs less (about 11 dB, from memory).
test("beyond 20 dB over what is allowed even one carrier alone is lost", () => {
  const alone = (level: number) =>
    draw(
      {
        z: ["receiver-dab"],
        x: ["amp-distribution", { gainDb: 5, outputDbuv: 80, inputs: "one" }],
        a: ["aerial-dab", { levelDbuv: level, blocks: [{ block: "12B" }] }],
      },
      "a.out > x.in, x.out > z.in",
    );
  expect(foundBy("overload", alone(95))).toEqual([]);
  const [lost] = foundBy("overload", alone(96));
  expect(lost).toMatchObject({ severity: "error", facts: { drowned: [{ service: "dab", count: 1 }] } });
});

test("each is counted once, by whichever outputs it leaves", () => {
  const two: Sketch[string] = ["amp-distribution", { gainDb: 5, outputDbuv: 80, outputs: 2 }];
  const [lost] = foundBy(
    "overload",
    draw(
      { y: ["receiver-tv"], z: ["receiver-tv"], x: two, a: aerial(97) },
      "a.out > x.in, x.out > z.in, x.out2 > y.in",
    ),
  );
  expect(lost?.facts.drowned).toEqual([{ service: "tv", count: 2 }]);
});

test("the load is told also where only the second output is joined", () => {
  const two: Sketch[string] = ["amp-distribution", { gainDb: 5, outputDbuv: 80, outputs: 2 }];
  const [one] = foundBy(
    "overload",
    draw({ z: ["receiver-tv"], x: two, a: aerial(76) }, "a.out > x.in, x.out2 > z.in"),
  );
  expect(one?.facts).toMatchObject({ because: "gain", load: [{ service: "tv", part: "a" }] });
  expect(one?.facts.gainDb).toBeCloseTo(5, 3);
});

// Four transponders of about equal level at satellite IF: 10·log10(4/2) = 3.01 dB less than the rating.
test("at satellite IF the powers count", () => {
  const transponders = [0, 1, 2, 3].map((n) => ({
    frequencyMHz: 10_729 + 48 * n,
    polarisation: "V",
    mode: "dvbs2-qpsk-1/2",
  }));
  const design = draw(
    {
      r: ["receiver-sat"],
      x: ["amp-if", { gainDb: 12, slopeDb: 0, outputDbuv: 85 }],
      l: ["lnb-universal"],
      d: ["dish", { transponders }],
    },
    "d.sky > l.sky, l.out > x.in, x.out > r.sat",
  );
  const [one, ...more] = foundBy("overload", design);
  expect(more).toEqual([]);
  expect(one).toMatchObject({
    at: { part: "x", port: "out" },
    wires: ["x.out>r.sat"],
    facts: { rule: "power", load: [{ service: "satellite", part: "d" }] },
  });
  expect(one?.limit).toBeCloseTo(81.99, 1);
  expect(one?.facts.gainDb).toBeCloseTo(12, 1);
});

describe("what the load is made of", () => {
  const joined = (a: Sketch[string], b: Sketch[string]) =>
    found({ x: amplifier(20), j: ["combiner"], b, a }, "a.out > j.in1, b.out > j.in2, j.out > x.in")[0];

  // Two and one of equal level.
  test("is told by source, the greatest share first", () => {
    for (const one of [
      joined(aerial(70), aerial(70, [50])),
      joined(aerial(70, [22, 25]), aerial(70, [50])),
    ]) {
      expect(one?.facts.load).toMatchObject([
        { service: "tv", part: "a" },
        { service: "tv", part: "b" },
      ]);
      expect(one?.facts.load[0]?.share).toBeCloseTo(0.667, 2);
      expect(one?.facts.load[1]?.share).toBeCloseTo(0.333, 2);
    }
    expect(joined(aerial(70, [50]), aerial(70))?.facts.load.map((l) => l.part)).toEqual(["b", "a"]);
  });

  // Three carriers of a mast of the level of the TV channels: beside two of these 60 % of the power, beside four 43 %.
  test("of signals that nobody wants more than half is their fault", () => {
    const mast: Sketch[string] = ["pick-up", { mast700: false, mastDbuv: 75 }];
    const most = joined(aerial(75), mast);
    expect(most).toMatchObject({
      parts: ["x", "b"],
      facts: {
        because: "foreign",
        load: [
          { service: "mobile", part: "b" },
          { service: "tv", part: "a" },
        ],
      },
    });
    expect(most?.facts.load[0]?.share).toBeCloseTo(0.6, 1);
    const less = joined(aerial(75, [22, 25, 30, 40]), mast);
    expect(less).toMatchObject({ parts: ["x"], facts: { because: "gain" } });
    expect(less?.facts.load[1]?.share).toBeCloseTo(0.43, 1);
  });
});
