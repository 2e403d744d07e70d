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

const inRaster = (raster: string, ...channels: readonly number[]) =>
  foundBy(
    "above-band-edge",
    draw(
      {
        z: ["receiver-tv"],
        a: ["aerial-uhf", { raster, channels: channels.map((channel) => ({ channel })) }],
      },
      "a.out > z.in",
    ),
  );

// 51 is 687 to 694 MHz in channels of 7 MHz, and 692 to 698 in channels of 6 MHz (public channel tables).
test.each(["7", "6"])("begin above channel 51 in channels of %s MHz", (raster) => {
  expect(inRaster(raster, 51)).toEqual([]);
  expect(inRaster(raster, 52)).toMatchObject([{ facts: { channels: ["C52"], nowhere: [] } }]);
});

// 14 is 470 MHz in channels of 6 MHz; in channels of 8 MHz it would lie at 418 MHz, where no television is.
test("a number of another raster lies in no band at all", () => {
  expect(inRaster("6", 14)).toEqual([]);
  expect(inRaster("8", 14, 30)).toMatchObject([{ value: 1, facts: { channels: [], nowhere: ["C14"] } }]);
});

// Networks of cable television use what lies between and above the bands on air (common practice, no source).
test("are no matter of a cable network or a modulator", () => {
  const cable = draw(
    { z: ["receiver-tv"], c: ["cable-entry", { channels: [{ frequencyMHz: 394 }, { frequencyMHz: 810 }] }] },
    "c.out > z.in",
  );
  expect(foundBy("above-band-edge", cable)).toEqual([]);
  const own = draw({ z: ["receiver-tv"], m: ["modulator", { channel: "60" }] }, "m.out > z.in");
  expect(foundBy("above-band-edge", own)).toEqual([]);
});
