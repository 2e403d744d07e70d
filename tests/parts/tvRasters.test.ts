/**
 * Channels by their numbers in rasters of 6, 7 and 8 MHz. Edges and centres as in public channel tables: the Americas (14 is
 * 470 to 476 MHz, 36 is 602 to 608, 51 is 692 to 698; 7 is 174 to 180, 13 is 210 to 216) and Australia (28 is 526 to 533
 * MHz, 51 is 687 to 694, 69 is 813 to 820).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { MODULATOR } from "../../src/parts/modulator.ts";
import { cableCarrier, modulatedCarrier, tvCarrier, tvChannelEdges } from "../../src/parts/plans.ts";
import { rasterOf, type UhfRaster, uhfChannelOf, vhfRasterOf } from "../../src/parts/tvRasters.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { draw } from "../draw.ts";

describe("a channel", () => {
  test.each<{ raster: UhfRaster; channel: number; fromMHz: number; toMHz: number }>([
    { raster: "6", channel: 14, fromMHz: 470, toMHz: 476 },
    { raster: "6", channel: 36, fromMHz: 602, toMHz: 608 },
    { raster: "6", channel: 51, fromMHz: 692, toMHz: 698 },
    { raster: "6", channel: 7, fromMHz: 174, toMHz: 180 },
    { raster: "6", channel: 13, fromMHz: 210, toMHz: 216 },
    { raster: "7", channel: 28, fromMHz: 526, toMHz: 533 },
    { raster: "7", channel: 51, fromMHz: 687, toMHz: 694 },
    { raster: "7", channel: 69, fromMHz: 813, toMHz: 820 },
    { raster: "7", channel: 12, fromMHz: 223, toMHz: 230 },
    { raster: "8", channel: 21, fromMHz: 470, toMHz: 478 },
    { raster: "8", channel: 12, fromMHz: 223, toMHz: 230 },
  ])("$channel of the $raster MHz raster is $fromMHz to $toMHz MHz", ({ raster, channel, ...edges }) => {
    expect(tvChannelEdges(channel, rasterOf(raster))).toEqual(edges);
  });

  // 178, 186, ... 226 MHz stand in a Russian list of the Debian package dtv-scan-tables.
  test("of Band III is 8 MHz wide where an aerial says so", () => {
    expect(tvChannelEdges(6, vhfRasterOf("8"))).toEqual({ fromMHz: 174, toMHz: 182 });
    expect(tvChannelEdges(12, vhfRasterOf("8"))).toEqual({ fromMHz: 222, toMHz: 230 });
  });

  test.each([
    { centreMHz: 529.5, widthMHz: 6.66, found: { channel: 28, raster: "7" } },
    // Set off by 125 kHz, as many in Australia.
    { centreMHz: 536.625, widthMHz: 6.66, found: { channel: 29, raster: "7" } },
    { centreMHz: 551, widthMHz: 5.71, found: { channel: 27, raster: "6" } },
    { centreMHz: 690, widthMHz: 7.61, found: { channel: 48, raster: "8" } },
  ])("at $centreMHz MHz and $widthMHz MHz wide is known by number and raster", ({ found, ...signal }) => {
    expect(uhfChannelOf(signal)).toEqual(found);
  });
});

describe("a signal fills", () => {
  // 6817 carriers, 1116.07 Hz apart in 8 MHz (EN 300 744, from memory): 7.608 MHz; times 7/8 6.657; times 6/8 5.706.
  test.each<{ raster: UhfRaster; widthMHz: number }>([
    { raster: "8", widthMHz: 7.608 },
    { raster: "7", widthMHz: 6.657 },
    { raster: "6", widthMHz: 5.706 },
  ])("$widthMHz MHz of a channel of $raster MHz, and noise counts in it", ({ raster, widthMHz }) => {
    const carrier = tvCarrier({ channel: 40, mode: "dvbt2-256qam-2/3" }, rasterOf(raster));
    expect(carrier.widthMHz).toBeCloseTo(widthMHz, 2);
    expect(carrier.noiseMHz).toBeCloseTo(widthMHz, 2);
  });

  // A Brazilian list of dtv-scan-tables: 5.217 MBd in 6 MHz. Roll-off 0.15 (EN 300 429): 5.217 · 1.15 = 6.0 MHz.
  test("all of a cable channel of 6 MHz at 5.217 MBd", () => {
    const cable = cableCarrier({ frequencyMHz: 573, mode: "dvbc-256qam" }, 6);
    expect(cable.noiseMHz).toBe(5.217);
    expect(cable.widthMHz).toBeCloseTo(6, 2);
    expect(modulatedCarrier({ channel: 30, mode: "dvbc-256qam" }, rasterOf("6")).noiseMHz).toBe(5.217);
  });
});

describe("noise", () => {
  const cnOf = (raster: UhfRaster, channel: number) => {
    const aerial = evaluate(
      draw({ a: ["aerial-uhf", { levelDbuv: 50, raster, channels: [{ channel }] }] }, ""),
    ).record("a");
    const [band] = aerial?.outputs.out?.bands ?? [];
    if (!band) throw new Error("nothing on air");
    return cnDb(band, 0);
  };

  // kTB into 75 Ω, 290 K: 7.61 MHz 3.6 dBµV, so C/N is 46.4 dB at 50 dBµV; narrower by 10·log10(6.66/7.61) = 0.58 dB and
  // 10·log10(5.71/7.61) = 1.25 dB there is so much less noise.
  test.each<{ raster: UhfRaster; channel: number; cn: number }>([
    { raster: "8", channel: 30, cn: 46.4 },
    { raster: "7", channel: 30, cn: 46.98 },
    { raster: "6", channel: 30, cn: 47.65 },
  ])("leaves $cn dB to 50 dBµV in a channel of $raster MHz", ({ raster, channel, cn }) => {
    expect(cnOf(raster, channel)).toBeCloseTo(cn, 1);
  });
});

describe("one transmitter", () => {
  const bands = (a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>) => {
    const evaluation = evaluate(
      draw({ a: ["aerial-uhf", a], b: ["aerial-uhf", b], c: ["combiner"] }, "a.out > c.in1, b.out > c.in2"),
    );
    return evaluation.record("c")?.outputs.out?.bands ?? [];
  };
  const hill = (channel: number) => ({ channel, transmitter: "Hill" });

  test("by two aerials of one raster is one carrier, by aerials of two rasters two", () => {
    const same = { raster: "6", channels: [hill(30)] };
    expect(bands(same, same).flatMap(({ grid }) => [...grid.centre])).toEqual([569]);
    const other = bands(same, { raster: "7", channels: [hill(30)] });
    // 389 + 6·30 = 569; 333.5 + 7·30 = 543.5.
    expect(other.flatMap(({ grid }) => [...grid.centre]).sort()).toEqual([543.5, 569]);
  });
});

describe("parts that are set to channels", () => {
  const MHZ = { "7": [526, 533], "6": [554, 560] } as const;
  const aerial = (raster: "6" | "7") => ["aerial-uhf", { raster, channels: [{ channel: 28 }] }] as const;

  // 28 is 526 to 533 MHz in Australia, and 470 + 6·14 = 554 to 560 MHz in the Americas; in Europe 526 to 534.
  test.each(["6", "7"] as const)(
    "pass channel 28 of the %s MHz raster where they are set to it",
    (raster) => {
      for (const [kind, options] of [
        ["filter-channel", { channels: [{ channel: 28 }], raster }],
        ["amp-channel", { channels: [{ channel: 28 }], raster }],
      ] as const) {
        const evaluation = evaluate(draw({ a: aerial(raster), f: [kind, options] }, "a.out > f.in"));
        const [band] = evaluation.record("f")?.outputs.out?.bands ?? [];
        expect(band?.cut[0], kind).toBe(0);
        expect(band?.grid.centre[0]).toBe((MHZ[raster][0] + MHZ[raster][1]) / 2);
      }
    },
  );

  test("stop it where they count by another raster", () => {
    const evaluation = evaluate(
      draw({ a: aerial("6"), f: ["filter-channel", { channels: [{ channel: 28 }] }] }, "a.out > f.in"),
    );
    expect(evaluation.record("f")?.outputs.out?.bands[0]?.cut[0]).not.toBe(0);
  });

  test("a masthead amplifier lets in the channels of its raster", () => {
    const got = (raster: "6" | "8") => {
      const amp = ["amp-masthead-inputs", { uhf1From: 27, uhf1To: 29, raster }] as const;
      const parts = { a: aerial("6"), m: amp, i: ["power-inserter"] } as const;
      const evaluation = evaluate(draw(parts, "a.out > m.uhf1, m.out > i.in"));
      return evaluation.record("m")?.outputs.out?.bands[0]?.cut[0] === 0;
    };
    expect({ same: got("6"), other: got("8") }).toEqual({ same: true, other: false });
  });

  test("a modulator sends on the channel that its raster has", () => {
    const centre = (options: Readonly<Record<string, unknown>>) => {
      const evaluation = evaluate(draw({ m: ["modulator", options] }, ""));
      return evaluation.record("m")?.outputs.out?.bands.find((b) => !b.isFloor)?.grid.centre[0];
    };
    expect(centre({ raster: "6", channel6: "14" })).toBe(473);
    expect(centre({ raster: "7", channel7: "28" })).toBe(529.5);
    expect(centre({ channel: "21", channel6: "14" })).toBe(474);
    expect(MODULATOR.caption(MODULATOR.options.parse({ raster: "6", channel6: "14" }))).toMatch(
      /channel 14 /,
    );
  });
});
