/**
 * A part that lets through some of a signal. A channel is 7.61 MHz wide about 306 + 8·n MHz; a transponder of 27.5 MBd with
 * a roll-off of 0.35 37.125 MHz (EN 300 744, EN 300 421, as the plans say).
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const aerial = (...channels: readonly number[]): Sketch[string] => [
  "aerial-uhf",
  { levelDbuv: 60, formerOnAir: true, channels: channels.map((channel) => ({ channel })) },
];
const tv = (parts: Sketch, wires: string) =>
  foundBy("band-cut", draw({ z: ["receiver-tv"], ...parts }, wires));

describe("a filter for some of the channels", () => {
  const line = "a.out > f.in, f.out > z.in";

  // 35 and 36 at 586 and 594 MHz are one stretch, 582.195 to 597.805; 45 at 666 MHz another. 3 and 40 dB below 60.
  test("is told with what it takes, by stretches", () => {
    const [cut, ...more] = tv(
      { f: ["filter-channel", { channels: [{ channel: 22 }] }], a: aerial(22, 35, 36, 45) },
      line,
    );
    expect(more).toEqual([]);
    expect(cut).toMatchObject({
      severity: "warning",
      at: { part: "f", port: "out", service: "tv" },
      parts: ["f"],
      wires: ["f.out>z.in"],
      value: 3,
      limit: 0,
      unit: "TV channels",
    });
    const [facts, ...others] = cut?.facts.cuts ?? [];
    expect(others).toEqual([]);
    expect(facts).toMatchObject({ band: { service: "tv", part: "a" }, port: "out", lost: 3, of: 4 });
    expect(facts?.example.centreMHz).toBe(586);
    expect(facts?.example.levelDbuv).toBeCloseTo(17, 6);
    const [first, second, ...rest] = facts?.stretches ?? [];
    expect(rest).toEqual([]);
    expect(first?.fromMHz).toBeCloseTo(582.195, 3);
    expect(first?.toMHz).toBeCloseTo(597.805, 3);
    expect(second?.fromMHz).toBeCloseTo(662.195, 3);
    expect(second?.toMHz).toBeCloseTo(669.805, 3);
  });

  // 35 and 37 stand 8.39 MHz apart, more than half a channel.
  test("leaves a stretch for each of two that are not neighbours", () => {
    const [cut] = tv({ f: ["filter-channel", { channels: [{ channel: 22 }] }], a: aerial(22, 35, 37) }, line);
    expect(cut?.facts.cuts[0]?.stretches).toHaveLength(2);
  });

  test("is no cut where all pass, nor where none does", () => {
    const of = (...channels: readonly number[]) =>
      tv({ f: ["filter-channel", { channels: [{ channel: 22 }] }], a: aerial(...channels) }, line);
    expect(of(22)).toEqual([]);
    expect(of(35, 45)).toEqual([]);
    expect(of(22, 35)).toHaveLength(1);
  });

  test("is told of each source, and counted together", () => {
    const [cut] = tv(
      {
        f: ["filter-channel", { channels: [{ channel: 22 }, { channel: 30 }] }],
        j: ["combiner"],
        b: aerial(30, 50),
        a: aerial(22, 40, 45),
      },
      "a.out > j.in1, b.out > j.in2, j.out > f.in, f.out > z.in",
    );
    expect(cut).toMatchObject({ value: 3, wires: ["f.out>z.in"] });
    expect(cut?.facts.cuts.map((c) => [c.band.part, c.lost, c.of])).toEqual([
      ["a", 2, 3],
      ["b", 1, 2],
    ]);
  });

  test("is told where it is, and not of what comes behind", () => {
    const all = tv(
      { c: ["cable"], f: ["filter-channel", { channels: [{ channel: 22 }] }], a: aerial(22, 35) },
      "a.out > f.in, f.out > c.in, c.out > z.in",
    );
    expect(all.map((f) => f.at.part)).toEqual(["f"]);
  });
});

// Blocks 8B, 10D and 12A lie at 197.648, 215.072 and 223.936 MHz.
test("radio is counted in what it comes in", () => {
  const of = (source: Sketch[string], toMHz: number) =>
    foundBy(
      "band-cut",
      draw(
        { z: ["receiver-tv"], f: ["filter", { fromMHz: 80, toMHz }], a: source },
        "a.out > f.in, f.out > z.in",
      ),
    );
  expect(of(["aerial-dab"], 210)).toMatchObject([
    { severity: "warning", at: { service: "dab" }, value: 2, unit: "DAB blocks" },
  ]);
  const stations = [90, 95, 100].map((frequencyMHz) => ({ frequencyMHz }));
  expect(of(["aerial-fm", { stations }], 97)).toMatchObject([
    { severity: "warning", at: { service: "fm" }, value: 1, unit: "FM stations" },
  ]);
});

describe("a plate", () => {
  // TV to 600 MHz: channel 30 at 546 passes, 40 at 626 does not.
  test("is judged at the socket that the service is for", () => {
    expect(
      tv({ p: ["outlet-diplexed", { tvToMHz: 600 }], a: aerial(30, 40) }, "a.out > p.in, p.tv > z.in"),
    ).toMatchObject([
      {
        at: { part: "p", port: "tv" },
        wires: ["p.tv>z.in"],
        facts: { cuts: [{ port: "tv", lost: 1, of: 2 }] },
      },
    ]);
  });

  // From 600 MHz on TV goes to the satellite socket, where nobody looks for it.
  test("does not give by another socket what that one lacks", () => {
    const plate = ["outlet-diplexed", { tvToMHz: 600, satFromMHz: 600 }] as const;
    expect(tv({ p: plate, a: aerial(30, 40) }, "a.out > p.in, p.tv > z.in")).toMatchObject([
      { at: { port: "tv" }, value: 1 },
    ]);
  });
});

describe("of several outputs", () => {
  test("the one that passes most is judged: a diplexer is made to part bands", () => {
    const parts: Sketch = { d: ["diplexer-split"], a: aerial(30, 40) };
    expect(tv(parts, "a.out > d.in, d.tv > z.in")).toEqual([]);
  });

  // Made for TV up to 1000 MHz. Vertical low, 979 + 48·n MHz: the first (960.4 to 997.6) passes, 19 do not, from
  // 1027 − 18.56 to 1891 + 18.56 without a gap as wide as half of one. Of the other three quarters none passes.
  test("the first of equals, with a satellite service an error", () => {
    const design = draw(
      {
        b: ["receiver-sat"],
        a: ["receiver-sat"],
        s: ["splitter", { range: "tv" }],
        l: ["lnb-universal"],
        d: ["dish"],
      },
      "d.sky > l.sky, l.out > s.in, s.out1 > b.sat, s.out2 > a.sat",
    );
    const [cut, ...more] = foundBy("band-cut", design);
    expect(more).toEqual([]);
    expect(cut).toMatchObject({
      severity: "error",
      at: { part: "s", port: "out1", service: "satellite" },
      wires: ["s.out1>b.sat"],
      value: 19,
      unit: "satellite transponders",
    });
    const [facts, ...others] = cut?.facts.cuts ?? [];
    expect(others).toEqual([]);
    expect(facts).toMatchObject({
      band: { service: "satellite", part: "d", polarisation: "V", half: "low" },
      lost: 19,
      of: 20,
      example: { centreMHz: 1027 },
    });
    expect(facts?.stretches).toHaveLength(1);
    expect(facts?.stretches[0]?.fromMHz).toBeCloseTo(1008.44, 2);
    expect(facts?.stretches[0]?.toMHz).toBeCloseTo(1909.56, 2);
  });
});

describe("of user bands", () => {
  // Usual set of four: 1210, 1420, 1680, 2040 MHz. Only the first two pass.
  const line = (receiver: Sketch) =>
    foundBy(
      "band-cut",
      draw(
        {
          ...receiver,
          f: ["filter", { fromMHz: 900, toMHz: 1550, dcPass: true }],
          l: ["lnb-stacked"],
          d: ["dish"],
        },
        `d.sky > l.sky, l.out > f.in${Object.keys(receiver)
          .map((id) => `, f.out > ${id}.sat`)
          .join("")}`,
      ),
    );
  const set = (...numbers: readonly number[]): Sketch[string] => [
    "receiver-stacked",
    {
      tuners: numbers.length,
      userBands: numbers.map((number) => ({ number, centreMHz: [1210, 1420, 1680, 2040][number - 1] })),
    },
  ];

  test("while nobody is set to one it is a note of all", () => {
    expect(line({ r: ["receiver-sat"] })).toMatchObject([
      {
        severity: "note",
        at: { part: "f", port: "out", service: "satellite" },
        value: 2,
        unit: "user bands",
        facts: { cuts: [{ band: { sort: "user bands", part: "l" }, lost: 2, of: 4 }] },
      },
    ]);
  });

  test("of those that somebody uses it is an error", () => {
    expect(line({ r: set(1, 3) })).toMatchObject([
      { severity: "error", value: 1, facts: { cuts: [{ lost: 1, of: 2, example: { centreMHz: 1680 } }] } },
    ]);
    expect(line({ r: set(3) })).toMatchObject([{ severity: "error", facts: { cuts: [{ lost: 1, of: 1 }] } }]);
  });

  test("other people's do not count", () => {
    expect(line({ r: set(1, 2) })).toEqual([]);
  });
});
