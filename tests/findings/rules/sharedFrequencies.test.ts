/**
 * Two signals on the same frequencies. Channel 61 (794 MHz, 790.195 to 797.805) in 64 QAM 2/3 needs 18.7 dB (NorDig Unified
 * 2.2, as quoted in a public table). A mast's carrier at 796 MHz is 9 MHz wide, 791.5 to 800.5: 6.305 of 9 MHz lie in the
 * channel, −1.546 dB. So 60 dBµV stand 61.546 − m dB above a mast of m dBµV.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

const channel = (n: number) => ({ channel: n, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 });
const aerial = (levelDbuv: number, ...channels: readonly number[]): Sketch[string] => [
  "aerial-uhf",
  // Where TV above channel 48 is still on air, a mast can meet it.
  { levelDbuv, formerOnAir: true, channels: channels.map(channel) },
];
const mast = (mastDbuv: number): Sketch[string] => ["pick-up", { mast700: false, mastDbuv }];

const masted = (mastDbuv: number, ...channels: readonly number[]) =>
  draw(
    {
      z: ["receiver-tv"],
      j: ["combiner"],
      m: mast(mastDbuv),
      a: aerial(60, ...(channels.length > 0 ? channels : [61])),
    },
    "a.out > j.in1, m.out > j.in2, j.out > z.in",
  );

describe("a signal from outside", () => {
  test("is told with what it does to the channel, and comes first", () => {
    const [found, ...more] = foundBy("shared-frequencies", masted(50));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      severity: "error",
      at: { part: "j", port: "out", service: "tv", band: "out|mobile@m|tv@a" },
      parts: ["m", "j", "a"],
      wires: ["j.out>z.in"],
      limit: 18.7,
      unit: "dB C/I",
      facts: {
        victim: { service: "tv", part: "a" },
        other: { service: "mobile", part: "m" },
        tolls: [{ grade: "dead", service: "tv", count: 1 }],
        worst: { name: "C61", centreMHz: 794, origin: "a", index: 0 },
        intruder: "m",
      },
    });
    expect(found?.value).toBeCloseTo(11.546, 2);
    expect(found?.facts.fromMHz).toBeCloseTo(790.195, 3);
    expect(found?.facts.toMHz).toBeCloseTo(797.805, 3);
  });

  // Beyond what the channel needs: dead up to 0 dB, likely dead to 3, costs margin to 10, slight to 20.
  test.each([
    { mastDbuv: 43, severity: "error", grade: "dead" },
    { mastDbuv: 42, severity: "error", grade: "likely dead" },
    { mastDbuv: 40, severity: "error", grade: "likely dead" },
    { mastDbuv: 39, severity: "warning", grade: "costs margin" },
    { mastDbuv: 33, severity: "warning", grade: "costs margin" },
    { mastDbuv: 32, severity: "note", grade: "slight" },
    { mastDbuv: 23, severity: "note", grade: "slight" },
  ])("of $mastDbuv dBµV makes it $grade: $severity", ({ mastDbuv, severity, grade }) => {
    expect(foundBy("shared-frequencies", masted(mastDbuv))).toMatchObject([
      { severity, facts: { tolls: [{ grade, count: 1 }] } },
    ]);
  });

  test("of 22 dBµV costs nothing worth a word", () => {
    expect(foundBy("shared-frequencies", masted(22))).toEqual([]);
  });

  // Channel 62, 798.195 to 805.805, holds 2.305 MHz of the mast at 796 and 4.305 of that at 806: −1.341 dB, and is hit
  // harder. Channel 50 at 706 MHz lies beside.
  test("counts all channels that it hits, and tells of the one hit worst", () => {
    const [found] = foundBy("shared-frequencies", masted(50, 50, 61, 62));
    expect(found?.facts).toMatchObject({
      tolls: [{ grade: "dead", service: "tv", count: 2 }],
      worst: { name: "C62", centreMHz: 802, index: 2 },
    });
    expect(found?.value).toBeCloseTo(60 - 50 + 1.341, 2);
    expect(found?.facts.fromMHz).toBeCloseTo(790.195, 3);
    expect(found?.facts.toMHz).toBeCloseTo(805.805, 3);
  });

  test("where it comes onto the line itself is named with what it meets", () => {
    const [found] = foundBy(
      "shared-frequencies",
      draw({ z: ["receiver-tv"], m: mast(50), a: aerial(60, 61) }, "a.out > m.in, m.out > z.in"),
    );
    expect(found).toMatchObject({ at: { part: "m", port: "out" }, facts: { intruder: "m" } });
    expect(found?.parts).toEqual(["m", "a"]);
  });
});

describe("two wanted signals on one channel", () => {
  const joined = (a: number, b: number) =>
    draw(
      { z: ["receiver-tv"], j: ["combiner"], b: aerial(b, 30), a: aerial(a, 30) },
      "a.out > j.in1, b.out > j.in2, j.out > z.in",
    );

  test("name the part that brings them together, and tell of the weaker one", () => {
    for (const design of [joined(60, 50), backwards(joined(60, 50))]) {
      const [found, ...more] = foundBy("shared-frequencies", design);
      expect(more).toEqual([]);
      expect(found).toMatchObject({
        severity: "error",
        at: { part: "j", port: "out", service: "tv", band: "out|tv@a|tv@b" },
        parts: ["j", "b", "a"],
        wires: ["j.out>z.in"],
        limit: 18.7,
        facts: {
          victim: { service: "tv", part: "b" },
          other: { service: "tv", part: "a" },
          // 10 dB for the one, −10 for the other: both are lost.
          tolls: [{ grade: "dead", service: "tv", count: 2 }],
          worst: { origin: "b", index: 0, name: "C30", centreMHz: 546 },
        },
      });
      expect(found?.value).toBeCloseTo(-10, 3);
      expect(found?.facts).not.toHaveProperty("intruder");
    }
  });

  test("on different channels have nothing to meet", () => {
    const apart = draw(
      { z: ["receiver-tv"], j: ["combiner"], b: aerial(60, 32), a: aerial(60, 30) },
      "a.out > j.in1, b.out > j.in2, j.out > z.in",
    );
    expect(foundBy("shared-frequencies", apart)).toEqual([]);
  });
});

// An amplifier gives 15 dB to TV, 10 to its radio input, which takes 30 off what does not belong there: 35 dB between two
// alike, 16.3 more than needed.
test("what meets inside a part is told there, without a wire", () => {
  const design = draw(
    { z: ["receiver-tv"], x: ["amp-distribution", { inputs: "two" }], b: aerial(62, 30), a: aerial(62, 30) },
    "a.out > x.in, b.out > x.radio, x.out > z.in",
  );
  const [found, ...more] = foundBy("shared-frequencies", design);
  expect(more).toEqual([]);
  expect(found).toMatchObject({
    severity: "note",
    at: { part: "x", port: "#sum", band: "#sum|tv@a|tv@b" },
    parts: ["x", "a", "b"],
    wires: [],
    facts: { tolls: [{ grade: "slight", service: "tv", count: 1 }] },
  });
  expect(found?.value).toBeCloseTo(35, 3);
});

test("a signal that meets itself is another matter", () => {
  const twice = draw(
    { z: ["receiver-tv"], j: ["combiner"], s: ["splitter"], a: aerial(60, 30) },
    "a.out > s.in, s.out1 > j.in1, s.out2 > j.in2, j.out > z.in",
  );
  expect(foundBy("shared-frequencies", twice)).toEqual([]);
});
