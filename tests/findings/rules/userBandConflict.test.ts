/**
 * User bands used twice, missing or elsewhere, and receivers that do not speak single-cable messages. Centres of the
 * usual set of four, as quoted in public tables: 1210, 1420, 1680, 2040 MHz. Who is named is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

const set = (...bands: readonly (readonly [number, number])[]): Sketch[string] => [
  "receiver-stacked",
  { tuners: bands.length, userBands: bands.map(([number, centreMHz]) => ({ number, centreMHz })) },
];
const UNIVERSAL: Sketch[string] = ["receiver-stacked", { mode: "universal" }];

/** Receivers on the legs of a splitter in this order, behind a single-cable LNB. */
function line(receivers: Sketch, lnb: Sketch[string] = ["lnb-stacked"]) {
  const ids = Object.keys(receivers);
  const legs = ids.map((id, n) => `s.out${n + 1} > ${id}.sat`);
  return draw(
    { ...receivers, s: ["splitter", { ways: 4 }], l: lnb, k: ["dish"] },
    `k.sky > l.sky, l.out > s.in, ${legs.join(", ")}`,
  );
}

const found = (...of: Parameters<typeof line>) => foundBy("user-band-conflict", line(...of));

describe("a user band that two tuners use", () => {
  test("is told at the LNB's output with all of them", () => {
    const design = line({ b: set([2, 1420], [4, 2040]), a: set([1, 1210], [2, 1420]) });
    for (const drawn of [design, backwards(design)])
      expect(foundBy("user-band-conflict", drawn)).toMatchObject([
        {
          severity: "error",
          at: { part: "l", port: "out", band: "2" },
          parts: ["b", "a", "l"],
          wires: ["l.out>s.in"],
          value: 2,
          limit: 1,
          unit: "tuners",
          facts: {
            kind: "twice",
            converter: "l",
            userBand: 2,
            centreMHz: 1420,
            tuners: [
              { part: "b", port: "sat", tuner: 1 },
              { part: "a", port: "sat", tuner: 2 },
            ],
          },
        },
      ]);
  });

  test("counts three where there are three, in the order of their legs", () => {
    const [conflict, ...more] = found({ c: set([3, 1680]), a: set([3, 1680]), b: set([3, 1680]) });
    expect(more).toEqual([]);
    expect(conflict).toMatchObject({ value: 3, limit: 1, parts: ["c", "a", "b", "l"] });
  });

  test("counts twice in one receiver, which is named once", () => {
    const [conflict] = found({ a: set([1, 1210], [1, 1210]), b: set([2, 1420]) });
    expect(conflict).toMatchObject({
      value: 2,
      parts: ["a", "l"],
      facts: {
        tuners: [
          { part: "a", tuner: 1 },
          { part: "a", tuner: 2 },
        ],
      },
    });
  });

  test("has no centre where the LNB does not have it", () => {
    const twice = found({ a: set([7, 1500]), b: set([7, 1500]) }).filter((f) => f.facts.kind === "twice");
    expect(twice).toHaveLength(1);
    expect(twice[0]).toMatchObject({ at: { band: "7" }, facts: { userBand: 7 } });
    expect(twice[0]?.facts).not.toHaveProperty("centreMHz");
  });

  test("is no conflict on two outputs of one LNB", () => {
    const design = draw(
      { b: set([1, 1210]), a: set([1, 1210]), l: ["lnb-stacked", { outputs: "2" }], k: ["dish"] },
      "k.sky > l.sky, l.out1 > a.sat, l.out2 > b.sat",
    );
    expect(foundBy("user-band-conflict", design)).toEqual([]);
  });
});

describe("a receiver that does not speak single-cable messages", () => {
  test("alone on the line could be set to", () => {
    expect(found({ a: UNIVERSAL })).toMatchObject([
      {
        severity: "error",
        at: { part: "a", port: "sat" },
        parts: ["a", "l"],
        wires: ["l.out>s.in"],
        facts: {
          kind: "wrong mode",
          converter: "l",
          isAlone: true,
          isNobody: true,
          setting: { option: "mode", value: "single-cable" },
        },
      },
    ]);
  });

  test("beside one that does is not alone, and the others are told nothing", () => {
    expect(found({ b: set([1, 1210]), a: UNIVERSAL })).toMatchObject([
      { at: { part: "a" }, parts: ["a", "l"], facts: { isAlone: false, isNobody: false } },
    ]);
  });

  test("that knows no such mode is itself wrong beside one that does", () => {
    const [wrong, ...more] = found({ b: set([1, 1210]), a: ["receiver-sat"] });
    expect(more).toEqual([]);
    expect(wrong).toMatchObject({ parts: ["a", "l"], facts: { isAlone: false, isNobody: false } });
    expect(wrong?.facts).not.toHaveProperty("setting");
  });

  // Somebody chose the LNB for such receivers.
  test("makes the LNB the wrong one where nobody knows such a mode", () => {
    const all = found({ b: ["receiver-sat"], a: ["receiver-sat"] });
    expect(all.map((f) => [f.at.part, f.parts])).toEqual([
      ["b", ["l", "b"]],
      ["a", ["l", "a"]],
    ]);
    expect(all[0]?.facts).toMatchObject({ kind: "wrong mode", isAlone: false, isNobody: true });
  });
});

describe("a tuner set to a user band", () => {
  test("that the LNB does not have is told with those that it has", () => {
    const [missing, ...more] = found({ a: set([1, 1210], [5, 1500]) });
    expect(more).toEqual([]);
    expect(missing).toMatchObject({
      severity: "error",
      at: { part: "a", port: "sat", tuner: 2 },
      parts: ["a", "l"],
      wires: ["s.out1>a.sat"],
      facts: { kind: "no such user band", converter: "l", userBand: 5, has: [1, 2, 3, 4] },
    });
    expect(missing).not.toHaveProperty("value");
    expect(missing).not.toHaveProperty("unit");
  });

  test("that lies elsewhere is told with both centres", () => {
    expect(found({ a: set([2, 1410]) })).toMatchObject([
      {
        severity: "error",
        at: { part: "a", port: "sat", tuner: 1 },
        parts: ["a", "l"],
        wires: ["s.out1>a.sat"],
        value: 1410,
        limit: 1420,
        unit: "MHz",
        facts: { kind: "other centre", converter: "l", userBand: 2, hereMHz: 1410, thereMHz: 1420 },
      },
    ]);
  });

  // Up to 2 MHz apart they mean the same one.
  test("a little beside is well, on either side", () => {
    for (const centreMHz of [1418, 1422]) expect(found({ a: set([2, centreMHz]) })).toEqual([]);
    for (const centreMHz of [1417, 1423]) expect(found({ a: set([2, centreMHz]) })).toHaveLength(1);
  });

  test("that it has no tuner for is no matter", () => {
    const userBands = [
      { number: 1, centreMHz: 1210 },
      { number: 9, centreMHz: 1500 },
    ];
    expect(found({ a: ["receiver-stacked", { tuners: 1, userBands }] })).toEqual([]);
  });

  test("is not judged at a receiver that gets another feed", () => {
    expect(found({ a: set([1, 1210]) }, ["lnb-universal"])).toEqual([]);
  });
});
