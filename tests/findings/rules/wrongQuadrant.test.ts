/**
 * Leads on wrong inputs of a multiswitch: what is said of each case in all its figures. Which input is whose follows
 * from its label; who is to be named is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";
import { quattroBlock, twoSatellites } from "./quattroBlock.ts";

const found = (wires: string, more: Sketch = {}) => foundBy("wrong-quadrant", quattroBlock(wires, more));

test("a swap names both inputs in the order of the unit, and both leads", () => {
  expect(found("l.vl > u.vl, l.hh > u.vh, l.hl > u.hl, l.vh > u.hh")).toMatchObject([
    {
      severity: "error",
      at: { part: "u", port: "vh", service: "satellite" },
      parts: ["u"],
      wires: ["l.hh>u.vh", "l.vh>u.hh"],
      facts: { kind: "swapped", ports: ["vh", "hh"] },
    },
  ]);
});

test("two swaps are two findings", () => {
  const all = found("l.hl > u.vl, l.hh > u.vh, l.vl > u.hl, l.vh > u.hh");
  expect(all.map((f) => f.facts)).toEqual([
    { kind: "swapped", ports: ["vl", "hl"] },
    { kind: "swapped", ports: ["vh", "hh"] },
  ]);
});

test("a lead on another input while its own is open is misplaced, and its own input open", () => {
  expect(found("l.vl > u.vh, l.hl > u.hl, l.hh > u.hh")).toMatchObject([
    {
      severity: "error",
      at: { part: "u", port: "vl", band: "VL" },
      parts: ["u"],
      wires: [],
      facts: { kind: "open", expects: "VL" },
    },
    {
      severity: "error",
      at: { part: "u", port: "vh", service: "satellite" },
      parts: ["u"],
      wires: ["l.vl>u.vh"],
      facts: { kind: "misplaced", expects: "VH", gets: "VL" },
    },
  ]);
  const [, misplaced] = found("l.vl > u.vh, l.hl > u.hl, l.hh > u.hh");
  expect(misplaced?.facts).not.toHaveProperty("dish");
});

// VH comes to two inputs; HL sits where VH belongs: of VL's input it is said that VH is there, of the others that they
// are swapped.
test("a lead beside a ring is told by itself", () => {
  const wires = "l.vh > s.in, s.out1 > u.vl, s.out2 > u.hl, l.hl > u.vh, l.hh > u.hh";
  const all = found(wires, { s: ["splitter"] });
  expect(all.map((f) => f.facts)).toEqual([
    { kind: "misplaced", expects: "VL", gets: "VH" },
    { kind: "swapped", ports: ["vh", "hl"] },
  ]);
});

describe("an LNB whose outputs do not hold one quadrant each", () => {
  test("is named from behind cables, with its leads, at the first of its inputs", () => {
    const wires = "l.out1 > c.in, c.out > u.vl, l.out2 > u.vh, l.out3 > u.hl, l.out4 > u.hh";
    const more: Sketch = { l: ["lnb-universal", { outputs: "4" }], c: ["cable"] };
    expect(found(wires, more)).toMatchObject([
      {
        severity: "error",
        at: { part: "u", port: "vl", service: "satellite", band: "switched" },
        parts: ["l", "u"],
        wires: ["c.out>u.vl", "l.out2>u.vh", "l.out3>u.hl", "l.out4>u.hh"],
        facts: { kind: "no quattro", feed: "switched", ports: ["vl", "vh", "hl", "hh"], converter: "l" },
      },
    ]);
  });

  test("is named where it is a single-cable one, through a cable as well", () => {
    expect(found("l.out > c.in, c.out > u.vl", { l: ["lnb-stacked"], c: ["cable"] })).toMatchObject([
      {
        at: { part: "u", port: "vl", band: "single-cable" },
        parts: ["l", "u"],
        facts: { kind: "no quattro", feed: "single-cable", ports: ["vl"], converter: "l" },
      },
    ]);
  });

  test("is named once for each of two", () => {
    const two = draw(
      {
        r: ["receiver-sat"],
        u: ["multiswitch", { terrestrial: false, satelliteInputs: "8" }],
        m: ["lnb-wideband"],
        l: ["lnb-wideband"],
        j: ["dish"],
        k: ["dish"],
      },
      "k.sky > l.sky, j.sky > m.sky, l.v > u.vl, l.h > u.hl, m.v > u.vl2, m.h > u.hl2, u.out1 > r.sat",
    );
    for (const design of [two, backwards(two)])
      expect(foundBy("wrong-quadrant", design)).toMatchObject([
        { at: { port: "vl" }, parts: ["l", "u"], facts: { feed: "wideband", ports: ["vl", "hl"] } },
        { at: { port: "vl2" }, parts: ["m", "u"], facts: { feed: "wideband", ports: ["vl2", "hl2"] } },
      ]);
  });
});

describe("with two satellites", () => {
  const two = (wires: string) => foundBy("wrong-quadrant", twoSatellites(wires));

  test("an open input is told with its satellite", () => {
    expect(
      two("l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, n.vl > u.vl2, n.vh > u.vh2, n.hh > u.hh2"),
    ).toMatchObject([
      { at: { part: "u", port: "hl2", band: "2:HL" }, facts: { kind: "open", expects: "2:HL" } },
    ]);
  });

  // Two LNBs beside each other on one dish: one part, two satellites. As met on every block with two of them.
  test("two satellites of one dish are two", () => {
    const oneDish = (leads: string) =>
      foundBy(
        "wrong-quadrant",
        draw(
          {
            r: ["receiver-sat"],
            u: ["multiswitch", { terrestrial: false, satelliteInputs: "8" }],
            n: ["lnb-quattro"],
            l: ["lnb-quattro"],
            k: ["dish", { sideFeeds: [{ orbitalPositionDegE: 26, satelliteName: "East" }] }],
          },
          `k.sky > l.sky, k.sky2 > n.sky, ${leads}, u.out1 > r.sat`,
        ),
      );
    const others = "l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, n.vh > u.vh2, n.hl > u.hl2, n.hh > u.hh2";
    expect(oneDish(`l.vl > u.vl, n.vl > u.vl2, ${others}`)).toEqual([]);
    expect(oneDish(`l.vl > u.vl2, n.vl > u.vl, ${others}`)).toMatchObject([
      { parts: ["u"], facts: { kind: "swapped", ports: ["vl", "vl2"] } },
    ]);
    expect(oneDish(`n.vl > u.vl, ${others}`)).toMatchObject([
      { at: { port: "vl" }, facts: { kind: "misplaced", foreign: { dish: "k", satellite: "East" } } },
      { at: { port: "vl2" }, facts: { kind: "open", expects: "2:VL" } },
    ]);
  });

  // Three of four inputs say which dish is the first satellite.
  test("a lead of the other dish is told by the plane that belongs there and by the dish", () => {
    expect(
      two("n.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, n.vh > u.vh2, n.hl > u.hl2, n.hh > u.hh2"),
    ).toMatchObject([
      {
        at: { port: "vl" },
        facts: { kind: "misplaced", expects: "1:VL", gets: "VL", foreign: { dish: "j" } },
      },
      { at: { port: "vl2" }, facts: { kind: "open", expects: "2:VL" } },
    ]);
  });

  // Dish j feeds three inputs of the second satellite, and one of the first: it is the second.
  test("a dish belongs where most of its leads are", () => {
    const leads = "n.vl > u.vl, n.vh > u.vh2, n.hl > u.hl2, n.hh > u.hh2";
    expect(two(leads).filter((f) => f.facts.kind !== "open")).toMatchObject([
      {
        at: { part: "u", port: "vl" },
        wires: ["n.vl>u.vl"],
        facts: { kind: "misplaced", expects: "1:VL", gets: "VL", foreign: { dish: "j" } },
      },
    ]);
  });

  test("dishes joined the other way round are no fault", () => {
    expect(
      two(
        "n.vl > u.vl, n.vh > u.vh, n.hl > u.hl, n.hh > u.hh, l.vl > u.vl2, l.vh > u.vh2, l.hl > u.hl2, l.hh > u.hh2",
      ),
    ).toEqual([]);
  });
});

describe("in a cascade", () => {
  const cascade = (first: string, between: string) =>
    foundBy(
      "wrong-quadrant",
      draw(
        {
          r: ["receiver-sat"],
          c: ["cable"],
          low: ["multiswitch", { terrestrial: false }],
          mid: ["multiswitch", { terrestrial: false, cascade: true }],
          top: ["multiswitch", { terrestrial: false, cascade: true }],
          l: ["lnb-quattro"],
          k: ["dish"],
        },
        `k.sky > l.sky, ${first}, ${between}, mid.vl-thru > c.in, c.out > low.vl, mid.vh-thru > low.vh, ` +
          "mid.hl-thru > low.hl, mid.hh-thru > low.hh, low.out1 > r.sat",
      ),
    )
      .filter((f) => f.facts.kind !== "open")
      .map((f) => [f.at.part, f.facts.kind, f.parts])
      .sort();
  const STRAIGHT = "top.vl-thru > mid.vl, top.vh-thru > mid.vh, top.hl-thru > mid.hl, top.hh-thru > mid.hh";

  test("the first unit at which the leads are swapped is named for all behind", () => {
    expect(cascade("l.hl > top.vl, l.vl > top.hl, l.vh > top.vh, l.hh > top.hh", STRAIGHT)).toEqual([
      ["low", "swapped", ["top", "low"]],
      ["mid", "swapped", ["top", "mid"]],
      ["top", "swapped", ["top"]],
    ]);
  });

  test("so it is with one misplaced lead", () => {
    expect(cascade("l.vl > top.vh, l.hl > top.hl, l.hh > top.hh", STRAIGHT)).toEqual([
      ["low", "misplaced", ["top", "low"]],
      ["mid", "misplaced", ["top", "mid"]],
      ["top", "misplaced", ["top"]],
    ]);
  });

  test("a swap between two units is the lower one's", () => {
    expect(
      cascade(
        "l.vl > top.vl, l.hl > top.hl, l.vh > top.vh, l.hh > top.hh",
        "top.hl-thru > mid.vl, top.vl-thru > mid.hl, top.vh-thru > mid.vh, top.hh-thru > mid.hh",
      ),
    ).toEqual([
      ["low", "swapped", ["mid", "low"]],
      ["mid", "swapped", ["mid"]],
    ]);
  });

  test("a swap that the next leads put right again is the upper one's alone", () => {
    expect(
      cascade(
        "l.hl > top.vl, l.vl > top.hl, l.vh > top.vh, l.hh > top.hh",
        "top.hl-thru > mid.vl, top.vl-thru > mid.hl, top.vh-thru > mid.vh, top.hh-thru > mid.hh",
      ),
    ).toEqual([["top", "swapped", ["top"]]]);
  });
});
