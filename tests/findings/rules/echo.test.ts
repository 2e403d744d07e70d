/** One signal that arrives twice. Channel 30: 546 MHz, 7.61 MHz wide (EN 300 744), so 542.195 to 549.805 MHz. */
import { expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const aerial = (...channels: readonly number[]): Sketch[string] => [
  "aerial-uhf",
  { channels: channels.map((channel) => ({ channel, mode: "dvbt-64qam-2/3" })) },
];
const found = (parts: Sketch, wires: string) =>
  foundBy(
    "same-signal-twice",
    draw({ z: ["receiver-tv"], j: ["combiner"], ...parts }, `${wires}, j.out > z.in`),
  );

test("is told where it meets itself, with its source", () => {
  const [echo, ...more] = found(
    { s: ["splitter"], a: aerial(30) },
    "a.out > s.in, s.out1 > j.in1, s.out2 > j.in2",
  );
  expect(more).toEqual([]);
  expect(echo).toMatchObject({
    // Both ways lose the same: copies of one level cancel wholly (rf/echo.test.ts), but nobody knows where.
    severity: "warning",
    at: { part: "j", port: "out", service: "tv" },
    parts: ["j", "a"],
    wires: ["j.out>z.in"],
    facts: { bands: [{ service: "tv", part: "a" }] },
  });
  expect(echo?.facts.fromMHz).toBeCloseTo(542.195, 3);
  expect(echo?.facts.toMHz).toBeCloseTo(549.805, 3);
});

// Channels 30 and 50 (706 MHz).
test("of several signals names each, once", () => {
  const [echo, ...more] = found(
    { s: ["splitter"], i: ["combiner"], b: aerial(50), a: aerial(30) },
    "a.out > i.in1, b.out > i.in2, i.out > s.in, s.out1 > j.in1, s.out2 > j.in2",
  );
  expect(more).toEqual([]);
  expect(echo?.facts.bands.map((band) => band.part).sort()).toEqual(["a", "b"]);
});

// By the radio input it comes 35 dB weaker: 30 dB off what does not belong there, and 5 dB less gain.
test("is told inside a part without a wire", () => {
  const [echo] = foundBy(
    "same-signal-twice",
    draw(
      { z: ["receiver-tv"], x: ["amp-distribution", { inputs: "two" }], s: ["splitter"], a: aerial(30) },
      "a.out > s.in, s.out1 > x.in, s.out2 > x.radio, x.out > z.in",
    ),
  );
  expect(echo).toMatchObject({
    at: { part: "x", port: "#sum", service: "tv" },
    parts: ["x", "a"],
    wires: [],
  });
});

test("is no matter of two sources, nor of one way", () => {
  expect(found({ b: aerial(30), a: aerial(30) }, "a.out > j.in1, b.out > j.in2")).toEqual([]);
  expect(found({ a: aerial(30) }, "a.out > j.in1")).toEqual([]);
});
