/**
 * Commands, shared lines and user bands: who takes them, holds them or is set wrongly stands first.
 * Who is to be named is common practice, no source, unless a source stands beside it. Parts are drawn in no order of
 * the signal.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { report } from "../../../src/findings/report.ts";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

const line = (between: Sketch, wires: string, receiver = {}, lnb = {}) =>
  draw(
    { a: ["receiver-sat", receiver], ...between, m: ["lnb-universal", lnb], k: ["dish"] },
    `k.sky > m.sky, ${wires}`,
  );

describe("18 V that arrive too low", () => {
  // 250 mA through R ohms take R/4 V of 18 V. EN 61319-1, from memory: to 14 V vertical, from 16 V horizontal.
  test.each([
    { ohms: 7.8, found: undefined },
    { ohms: 8.4, found: { severity: "warning", kind: "undecided", volts: 15.9 } },
    { ohms: 13, found: { severity: "error", kind: "undecided", volts: 14.75 } },
    { ohms: 16.4, found: { severity: "error", kind: "too low", volts: 13.9 } },
  ])("a corroded joint of $ohms Ω", ({ ohms, found: expected }) => {
    const design = line(
      { j: ["bad-joint", { fault: "corroded", ohms, lossDb: 0 }], c: ["cable", { lengthM: 1 }] },
      "m.out > c.in, c.out > j.in, j.out > a.sat",
      { polarisation: "H" },
      // The metre of cable has 0.036 Ω and takes 9 mV.
      { commonMa: 250, outputMa: 0 },
    );
    const [found] = foundBy("command-lost", design);
    if (!expected) {
      expect(found).toBeUndefined();
      return;
    }
    expect(found).toMatchObject({
      severity: expected.severity,
      parts: ["j", "m", "a"],
      at: { part: "m", port: "out", side: "too little" },
      limit: 16,
      facts: { kind: expected.kind, receiver: "a", lost: { taker: { part: "j", diodeVolts: 0 } } },
    });
    expect(found?.value).toBeCloseTo(expected.volts - 0.009, 6);
  });

  test("a receiver that gives too few is named itself", () => {
    const [found] = foundBy("command-lost", line({}, "m.out > a.sat", { volts18: 15.5 }));
    expect(found).toMatchObject({ severity: "warning", parts: ["a", "m"], value: 15.5 });
  });

  test("13 V that arrive above 14 V may be taken for horizontal", () => {
    const [found] = foundBy("command-lost", line({}, "m.out > a.sat", { volts13: 14.6 }));
    expect(found).toMatchObject({
      severity: "warning",
      parts: ["a", "m"],
      value: 14.6,
      limit: 14,
      at: { side: "too much" },
    });
  });
});

describe("commands that do not arrive", () => {
  const block = (between: Sketch, wires: string) =>
    draw(
      {
        r2: ["receiver-sat", { polarisation: "H" }],
        ...between,
        u: ["multiswitch", { terrestrial: false }],
        r1: ["receiver-sat"],
        l: ["lnb-quattro"],
        k: ["dish"],
      },
      `k.sky > l.sky, l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, u.out1 > r1.sat, ${wires}`,
    );

  test.each([
    { name: "a DC block", between: { x: ["dc-block"] } as Sketch },
    { name: "a broken joint", between: { x: ["bad-joint", { fault: "open" }] } as Sketch },
  ])("$name before one receiver of a multiswitch is named, and no other receiver", ({ between }) => {
    for (const drawn of [block(between, "u.out2 > x.in, x.out > r2.sat")].flatMap((d) => [d, backwards(d)]))
      expect(foundBy("command-lost", drawn)).toMatchObject([
        {
          severity: "error",
          at: { part: "r2", port: "sat" },
          parts: ["x", "r2", "u"],
          facts: { kind: "no command" },
        },
      ]);
  });

  // The LNB hangs on a supply of its own, so all that is missing is what the receiver asks for.
  describe("a diplexer that hands them on to the wrong input", () => {
    const house = (dip: Sketch[string], leads: string) =>
      draw(
        {
          r: ["receiver-sat", { polarisation: "H" }],
          p: ["outlet-diplexed"],
          dip,
          amp: ["amp-distribution"],
          uhf: ["aerial-uhf"],
          other: ["receiver-sat"],
          m: ["lnb-universal", { outputs: "2" }],
          k: ["dish"],
        },
        `k.sky > m.sky, m.out2 > other.sat, uhf.out > amp.in, ${leads}, dip.out > p.in, p.sat > r.sat`,
      );

    test("is named with both inputs: a type that passes supply there would do", () => {
      const design = house(["diplexer-combine", { dc: "tv" }], "m.out1 > dip.sat, amp.out > dip.tv");
      for (const drawn of [design, backwards(design)])
        expect(foundBy("command-lost", drawn)).toMatchObject([
          {
            parts: ["dip", "r", "m"],
            facts: { kind: "no command", wrongInput: { port: "sat", feeds: "tv", isMiswired: false } },
          },
        ]);
    });

    test("since its leads are changed, is told so", () => {
      const design = house(["diplexer-combine", { dc: "sat" }], "m.out1 > dip.tv, amp.out > dip.sat");
      for (const drawn of [design, backwards(design)])
        expect(foundBy("command-lost", drawn)).toMatchObject([
          {
            parts: ["dip", "r", "m"],
            facts: { kind: "no command", wrongInput: { port: "tv", feeds: "sat", isMiswired: true } },
          },
        ]);
    });

    test("is not, where it passes them to no input at all", () => {
      const design = house(["diplexer-combine", { dc: "none" }], "m.out1 > dip.sat, amp.out > dip.tv");
      const [found] = foundBy("command-lost", design);
      expect(found?.parts[0]).toBe("dip");
      expect(found?.facts).not.toHaveProperty("wrongInput");
    });
  });

  test("an inserter that stops the receiver's own supply leaves the LNB to its own voltage", () => {
    const design = line(
      { p: ["power-inserter", { volts: 12, limitMa: 500 }] },
      "m.out > p.in, p.out > a.sat",
    );
    expect(foundBy("command-lost", design)).toMatchObject([
      { parts: ["p", "a", "m"], facts: { kind: "no command" } },
    ]);
    expect(foundBy("no-supply", design)).toEqual([]);
  });

  // Such a unit hands direct current on to the LNB, and no 22 kHz: only the low band can be asked for.
  test("the tone stops at a unit that hands on direct current alone, and it is told for each line", () => {
    const design = draw(
      {
        z: ["receiver-sat"],
        u: ["multiswitch", { terrestrial: false, supply: "receivers" }],
        l: ["lnb-universal", { outputs: "4", commonMa: 280, outputMa: 0 }],
        k: ["dish"],
      },
      "k.sky > l.sky, l.out1 > u.vl, l.out2 > u.vh, l.out3 > u.hl, l.out4 > u.hh, u.out1 > z.sat",
    );
    for (const drawn of [design, backwards(design)]) {
      const found = foundBy("command-lost", drawn).filter((f) => f.facts.kind === "no tone");
      expect(found.map((f) => f.at.port).sort()).toEqual(["out1", "out2", "out3", "out4"]);
      for (const one of found)
        expect(one).toMatchObject({
          severity: "error",
          at: { part: "l", band: "z.sat" },
          parts: ["u", "l", "z"],
          wires: [expect.stringMatching(/^l\.out\d>u\./)],
          facts: { kind: "no tone", receiver: "z", carries: "high band" },
        });
    }
  });

  test("a position switch with two satellites, asked for none of them (DiSEqC, committed)", () => {
    const two = (position: string) =>
      draw(
        {
          a: ["receiver-sat", { position }],
          w: ["position-switch"],
          m2: ["lnb-universal"],
          m1: ["lnb-universal"],
          k2: ["dish"],
          k1: ["dish"],
        },
        "k1.sky > m1.sky, k2.sky > m2.sky, m1.out > w.in1, m2.out > w.in2, w.out > a.sat",
      );
    // Whoever sends none never sees the second satellite, so half of what is wanted is missing.
    expect(foundBy("command-lost", two("none"))).toMatchObject([
      { severity: "error", parts: ["a", "w"], facts: { kind: "no position", positions: 2 } },
    ]);
    expect(foundBy("command-lost", two("2"))).toEqual([]);
    const verdict = (position: string) => report(evaluate(two(position))).verdicts[0]?.state;
    expect(["none", "1", "2", "3"].map(verdict)).toEqual(["fails", "works", "works", "fails"]);
  });

  test("a multiswitch for two satellites, asked for neither; with one of them plugged in there is nothing to ask", () => {
    const trunksTo = (lnb: string, n: string) =>
      ["vl", "vh", "hl", "hh"].map((q) => `${lnb}.${q} > u.${q}${n}`).join(", ");
    const block = (position: string, second: string) =>
      draw(
        {
          a: ["receiver-sat", { position }],
          u: ["multiswitch", { satelliteInputs: "8" }],
          m2: ["lnb-quattro"],
          m1: ["lnb-quattro"],
          k2: ["dish"],
          k1: ["dish"],
        },
        `k1.sky > m1.sky, k2.sky > m2.sky, ${trunksTo("m1", "")}${second}, u.out1 > a.sat`,
      );
    const both = `, ${trunksTo("m2", "2")}`;
    expect(foundBy("command-lost", block("none", both))).toMatchObject([
      { severity: "error", parts: ["a", "u"], facts: { kind: "no position", positions: 2 } },
    ]);
    expect(foundBy("command-lost", block("1", both))).toEqual([]);
    expect(foundBy("command-lost", block("none", ""))).toEqual([]);
  });

  test("a sound block finds nothing", () => {
    expect(foundBy("command-lost", block({}, "u.out2 > r2.sat"))).toEqual([]);
  });
});

describe("a switched output that several share", () => {
  test("the splitter that brings them together is named, then the receivers leg by leg", () => {
    const design = draw(
      {
        y: ["receiver-sat", { polarisation: "H" }],
        b: ["receiver-sat"],
        s: ["splitter", { dc: "all" }],
        c: ["cable"],
        far: ["cable"],
        m: ["lnb-universal"],
        k: ["dish"],
      },
      "k.sky > m.sky, m.out > c.in, c.out > s.in, s.out1 > far.in, far.out > y.sat, s.out2 > b.sat",
    );
    for (const drawn of [design, backwards(design)])
      expect(foundBy("switched-output-shared", drawn)).toMatchObject([
        {
          at: { part: "m", port: "out" },
          parts: ["s", "y", "b", "m"],
          value: 2,
          facts: { joins: "s", receivers: ["y", "b"] },
        },
      ]);
  });
});

describe("user bands", () => {
  const bands = (...numbers: number[]) => ({
    tuners: numbers.length,
    // The usual set of four, as quoted in public tables of converters.
    userBands: numbers.map((number) => ({ number, centreMHz: [1210, 1420, 1680, 2040][number - 1] ?? 1500 })),
  });
  const scr = (first: object, second: object) =>
    draw(
      {
        z: ["receiver-stacked", { ...second }],
        s: ["splitter", { dc: "all" }],
        e: ["receiver-stacked", { ...first }],
        m: ["lnb-stacked"],
        k: ["dish"],
      },
      "k.sky > m.sky, m.out > s.in, s.out1 > e.sat, s.out2 > z.sat",
    );

  test("each one that is used twice is one finding, with the tuners", () => {
    const design = scr(bands(1, 2, 3), bands(3, 1));
    for (const drawn of [design, backwards(design)]) {
      const found = foundBy("user-band-conflict", drawn);
      expect(found.map((f) => f.at.band).sort()).toEqual(["1", "3"]);
      const third = found.find((f) => f.at.band === "3");
      expect(third).toMatchObject({
        parts: ["e", "z", "m"],
        value: 2,
        facts: {
          kind: "twice",
          userBand: 3,
          centreMHz: 1680,
          tuners: [
            { part: "e", tuner: 3 },
            { part: "z", tuner: 1 },
          ],
        },
      });
    }
  });

  test("one that the LNB does not have names the receiver and its tuner", () => {
    expect(foundBy("user-band-conflict", scr(bands(1), bands(2, 7)))).toMatchObject([
      {
        severity: "error",
        at: { part: "z", port: "sat", tuner: 2 },
        parts: ["z", "m"],
        facts: { kind: "no such user band", userBand: 7, has: [1, 2, 3, 4] },
      },
    ]);
  });

  test("one with another centre names both centres", () => {
    const wrong = { tuners: 1, userBands: [{ number: 3, centreMHz: 1400 }] };
    expect(foundBy("user-band-conflict", scr(bands(1), wrong))).toMatchObject([
      { parts: ["z", "m"], facts: { kind: "other centre", userBand: 3, hereMHz: 1400, thereMHz: 1680 } },
    ]);
  });

  test("a receiver left in universal mode holds the line, and could be set otherwise", () => {
    expect(foundBy("user-band-conflict", scr(bands(1), { ...bands(2), mode: "universal" }))).toMatchObject([
      {
        at: { part: "z", port: "sat" },
        parts: ["z", "m"],
        facts: { kind: "wrong mode", isAlone: false, setting: { option: "mode", value: "single-cable" } },
      },
    ]);
  });

  test("too few for the tuners leave one dead", () => {
    const few = { ...bands(3), tuners: 2 };
    expect(foundBy("too-many-tuners", scr(bands(1), few))).toMatchObject([
      { severity: "error", parts: ["z"], value: 1, limit: 2, facts: { of: "user bands" } },
    ]);
  });

  test("a sound line finds nothing", () => {
    const sound = scr(bands(1, 2), bands(3, 4));
    expect(foundBy("user-band-conflict", sound)).toEqual([]);
    expect(foundBy("too-many-tuners", sound)).toEqual([]);
    expect(foundBy("command-lost", sound)).toEqual([]);
  });
});
