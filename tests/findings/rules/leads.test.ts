/**
 * Leads on the wrong inputs, open inputs, and supplies that are shorted or asked for too much. Which part is named
 * first is common practice, no source. Parts are drawn in no order of the signal.
 */
import { describe, expect, test } from "vitest";
import { draw } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";
import { quattroBlock, twoSatellites } from "./quattroBlock.ts";

const SOUND = "l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh";

describe("quadrants at a multiswitch", () => {
  test("two leads on each other's inputs are one finding that names both", () => {
    const design = quattroBlock("l.vl > u.vl, l.hl > u.vh, l.vh > u.hl, l.hh > u.hh");
    for (const drawn of [design, backwards(design)])
      expect(foundBy("wrong-quadrant", drawn)).toMatchObject([
        { parts: ["u"], at: { part: "u", port: "vh" }, facts: { kind: "swapped", ports: ["vh", "hl"] } },
      ]);
  });

  test("three leads in a ring are one finding", () => {
    const found = foundBy(
      "wrong-quadrant",
      quattroBlock("l.vl > u.vh, l.vh > u.hl, l.hl > u.vl, l.hh > u.hh"),
    );
    expect(found).toMatchObject([{ facts: { kind: "swapped", ports: ["vl", "vh", "hl"] } }]);
  });

  test("an LNB with switched outputs is one finding that names it, not four", () => {
    const design = quattroBlock("l.out1 > u.vl, l.out2 > u.vh, l.out3 > u.hl, l.out4 > u.hh", {
      l: ["lnb-universal", { outputs: "4" }],
    });
    expect(foundBy("wrong-quadrant", design)).toMatchObject([
      {
        parts: ["l", "u"],
        facts: { kind: "no quattro", feed: "switched", converter: "l", ports: ["vl", "vh", "hl", "hh"] },
      },
    ]);
    expect(foundBy("command-lost", design)).toEqual([]);
  });

  test("so is a wideband LNB; that the other inputs are open follows from it", () => {
    const design = quattroBlock("l.v > u.vl, l.h > u.hl", { l: ["lnb-wideband"] });
    expect(foundBy("wrong-quadrant", design)).toMatchObject([
      { parts: ["l", "u"], facts: { kind: "no quattro", feed: "wideband", ports: ["vl", "hl"] } },
    ]);
  });

  test("an open input leaves its plane out for all behind; without a receiver nobody suffers", () => {
    const trunks = "l.vl > u.vl, l.vh > u.vh, l.hl > u.hl";
    expect(foundBy("wrong-quadrant", quattroBlock(trunks))).toMatchObject([
      {
        severity: "error",
        parts: ["u"],
        at: { port: "hh", band: "HH" },
        facts: { kind: "open", expects: "HH" },
      },
    ]);
    const alone = draw(
      { u: ["multiswitch", { terrestrial: false }], l: ["lnb-quattro"], k: ["dish"] },
      `k.sky > l.sky, ${trunks}`,
    );
    expect(foundBy("wrong-quadrant", alone)).toEqual([]);
    // The open input, and the multiswitch that leads nowhere: LNB output HH is no end of its own.
    expect(foundBy("not-connected", alone)).toMatchObject([{ severity: "note", value: 2, parts: ["u"] }]);
  });

  test("a lead that hangs loose further up is told where it hangs", () => {
    const design = quattroBlock("l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, c.out > u.hh", { c: ["cable"] });
    expect(foundBy("not-connected", design)).toMatchObject([
      { severity: "error", parts: ["c", "r"], at: { part: "c", port: "in" }, facts: { kind: "missed" } },
    ]);
  });

  test("a swap above a cascade is told of the first unit only, and those behind it name that one", () => {
    const design = draw(
      {
        r: ["receiver-sat"],
        low: ["multiswitch", { terrestrial: false }],
        top: ["multiswitch", { terrestrial: false, cascade: true }],
        l: ["lnb-quattro"],
        k: ["dish"],
      },
      "k.sky > l.sky, l.vl > top.hl, l.hl > top.vl, l.vh > top.vh, l.hh > top.hh, top.vl-thru > low.vl, " +
        "top.hl-thru > low.hl, top.vh-thru > low.vh, top.hh-thru > low.hh, low.out1 > r.sat",
    );
    const found = foundBy("wrong-quadrant", design);
    expect(found.map((f) => [f.at.part, f.parts[0]]).sort()).toEqual([
      ["low", "top"],
      ["top", "top"],
    ]);
  });

  test("a lead of the other satellite is told by its dish; two of them on each other's inputs are a swap", () => {
    const two = (trunks: string) =>
      twoSatellites(
        `l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, n.vh > u.vh2, n.hl > u.hl2, n.hh > u.hh2, ${trunks}`,
      );
    expect(foundBy("wrong-quadrant", two("l.vl > u.vl, n.vl > u.vl2"))).toEqual([]);
    expect(foundBy("wrong-quadrant", two("n.vl > u.vl, l.vl > u.vl2"))).toMatchObject([
      { parts: ["u"], facts: { kind: "swapped", ports: ["vl", "vl2"] } },
    ]);
    const foreign = draw(
      {
        r: ["receiver-sat"],
        u: ["multiswitch", { terrestrial: false }],
        n: ["lnb-quattro"],
        l: ["lnb-quattro"],
        j: ["dish", { orbitalPositionDegE: 12 }],
        k: ["dish"],
      },
      "k.sky > l.sky, j.sky > n.sky, n.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, u.out1 > r.sat",
    );
    expect(foundBy("wrong-quadrant", foreign)).toMatchObject([
      {
        parts: ["u"],
        at: { port: "vl" },
        facts: { kind: "misplaced", expects: "VL", gets: "VL", foreign: { dish: "j" } },
      },
    ]);
  });

  test("a trunk missing at a stacking converter", () => {
    const design = draw(
      {
        r: ["receiver-stacked"],
        u: ["stacking-converter", { terrestrial: false, bandSet: "four", standard: "EN 50494" }],
        l: ["lnb-quattro"],
        k: ["dish"],
      },
      "k.sky > l.sky, l.vl > u.vl, l.vh > u.vh, l.hh > u.hh, u.out1 > r.sat",
    );
    expect(foundBy("wrong-quadrant", design)).toMatchObject([
      { parts: ["u"], at: { port: "hl" }, facts: { kind: "open", expects: "HL" } },
    ]);
  });

  test("a sound block finds nothing", () => {
    expect(foundBy("wrong-quadrant", quattroBlock(SOUND))).toEqual([]);
    expect(foundBy("not-connected", quattroBlock(SOUND))).toEqual([]);
  });
});

describe("open ends", () => {
  test("while nobody suffers, all of them are one note, the same however they are drawn", () => {
    const design = draw(
      { t: ["receiver-tv"], s: ["splitter"], b: ["amp-distribution", { inputs: "three" }], c: ["cable"] },
      "c.out > b.in, b.out > s.in",
    );
    // c.in, which is nearest to a source; b.fm and b.dab; s, which leads nowhere; t.in.
    const [note, ...others] = foundBy("not-connected", design);
    expect(others).toEqual([]);
    expect(note).toMatchObject({ severity: "note", value: 5, at: { part: "c" } });
    expect(foundBy("not-connected", backwards(design))).toEqual([note]);
  });

  test("a receiver that is connected makes the input that it suffers from an error, and no other", () => {
    const design = draw(
      { t: ["receiver-tv"], s: ["splitter"], b: ["amp-distribution", { inputs: "three" }], c: ["cable"] },
      "c.out > b.in, b.out > s.in, s.out1 > t.in",
    );
    const found = foundBy("not-connected", design);
    expect(found.map((f) => [f.severity, f.parts[0], f.at.port])).toEqual([
      ["error", "c", "in"],
      ["note", "b", undefined],
    ]);
    expect(found[0]).toMatchObject({ parts: ["c", "t"], facts: { kind: "missed", receivers: ["t"] } });
  });

  test("a receiver with nothing connected is no error", () => {
    const design = draw({ t: ["receiver-sat"], k: ["dish"] }, "");
    expect(foundBy("not-connected", design)).toMatchObject([{ severity: "note", value: 2 }]);
  });

  test("a recorder with one of its two leads off names the input", () => {
    const design = draw(
      { w: ["receiver-sat-twin"], m: ["lnb-universal", { outputs: "2" }], k: ["dish"] },
      "k.sky > m.sky, m.out1 > w.sat1",
    );
    expect(foundBy("not-connected", design)).toMatchObject([
      { severity: "error", parts: ["w"], at: { part: "w", port: "sat2" } },
    ]);
  });

  test("a position switch that stands at an open input", () => {
    const design = draw(
      { a: ["receiver-sat", { position: "2" }], w: ["position-switch"], m: ["lnb-universal"], k: ["dish"] },
      "k.sky > m.sky, m.out > w.in1, w.out > a.sat",
    );
    expect(foundBy("not-connected", design)).toMatchObject([
      { severity: "error", parts: ["w", "a"], at: { part: "w", port: "in2" } },
    ]);
  });
});

describe("a supply that is shorted or asked for too much", () => {
  test("a short is one finding, however many supplies it takes", () => {
    const design = draw(
      {
        b: ["receiver-sat"],
        a: ["receiver-sat", { polarisation: "H" }],
        s: ["splitter", { dc: "all" }],
        x: ["bad-joint", { fault: "shorted" }],
        m: ["lnb-universal"],
        k: ["dish"],
      },
      "k.sky > m.sky, m.out > x.in, x.out > s.in, s.out1 > a.sat, s.out2 > b.sat",
    );
    expect(foundBy("supply-overloaded", design)).toMatchObject([
      {
        at: { part: "x", port: "out" },
        parts: ["x", "a", "b"],
        facts: { kind: "short", supplies: ["a", "b"] },
      },
    ]);
  });

  test("too much current names the supply, and who draws it, most first", () => {
    // A universal LNB with one output draws 60 + 35 mA; a line amplifier of 150 mA beside it makes 245 mA.
    const design = draw(
      {
        a: ["receiver-sat", { limitMa: 200 }],
        g: ["amp-if", { milliamps: 150 }],
        m: ["lnb-universal", { commonMa: 60, outputMa: 35 }],
        k: ["dish"],
      },
      "k.sky > m.sky, m.out > g.in, g.out > a.sat",
    );
    expect(foundBy("supply-overloaded", design)).toMatchObject([
      {
        parts: ["a", "g", "m"],
        value: 245,
        limit: 200,
        facts: {
          kind: "too much",
          draws: [
            { part: "g", milliamps: 150 },
            { part: "m", milliamps: 95 },
          ],
        },
      },
    ]);
  });
});

test("a riser that ends open is told of its trunk, a splitter of its free legs", () => {
  const design = draw(
    {
      t2: ["receiver-tv"],
      t1: ["receiver-tv"],
      s: ["splitter", { ways: 4 }],
      p: ["tap"],
      z: ["aerial-uhf"],
    },
    "z.out > p.in, p.tap1 > s.in, s.out2 > t1.in, s.out3 > t2.in",
  );
  expect(foundBy("open-end", design)).toMatchObject([
    { severity: "warning", parts: ["p"], facts: { of: "trunk", ports: ["out"] } },
    { severity: "note", parts: ["s"], facts: { of: "legs", ports: ["out1", "out4"] } },
  ]);
});
