/** Channels where phones are now: TV ends at 694 MHz, channel 48 (Decision (EU) 2017/899, from memory). */
import { expect, test } from "vitest";
import { draw } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

const found = (...channels: readonly number[]) =>
  foundBy(
    "above-band-edge",
    draw(
      {
        z: ["receiver-tv"],
        c: ["cable"],
        a: ["aerial-uhf", { channels: channels.map((channel) => ({ channel })) }],
      },
      "a.out > c.in, c.out > z.in",
    ),
  );

test("are told at the aerial, rising", () => {
  expect(found(60, 49, 21, 48)).toMatchObject([
    {
      severity: "note",
      at: { part: "a", port: "out", service: "tv" },
      parts: ["a"],
      wires: ["a.out>c.in"],
      value: 2,
      limit: 0,
      unit: "channels",
      facts: { channels: ["C49", "C60"] },
    },
  ]);
});

test("begin above channel 48", () => {
  expect(found(48)).toEqual([]);
  expect(found(49)).toHaveLength(1);
  expect(found()).toEqual([]);
});

test("are no matter of a dish", () => {
  const sky = draw(
    { r: ["receiver-sat"], l: ["lnb-universal"], d: ["dish"] },
    "d.sky > l.sky, l.out > r.sat",
  );
  expect(foundBy("above-band-edge", sky)).toEqual([]);
});
