/** Real areas, drawn: every multiplex of a list can be entered, and is received at a good level. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { tvCarrier } from "../../src/parts/plans.ts";
import { rasterOf, type UhfRaster } from "../../src/parts/tvRasters.ts";
import { isModeKey } from "../../src/rf/thresholds.ts";
import { draw, type Sketch } from "../draw.ts";
import { areaNames, hasAreas, rasterOf as listedOn, readArea, readEntries } from "./terrestrialTables.ts";

type Area = {
  readonly area: string;
  readonly count: number;
  readonly vhf: number;
  /** Width of UHF channels where they are not 8 MHz wide. */
  readonly uhf?: UhfRaster;
};

/**
 * Number of multiplexes, each frequency once, and how many of them in Band III: counted in Debian's dtv-scan-tables
 * 0+git20190925 with grep, sort and uniq.
 */
const AREAS = [
  { area: "uk-CrystalPalace", count: 9, vhf: 0 },
  { area: "uk-Divis", count: 9, vhf: 0 },
  { area: "at-All", count: 6, vhf: 0 },
  { area: "be-All", count: 5, vhf: 0 },
  { area: "de-Berlin", count: 9, vhf: 0 },
  { area: "es-Madrid", count: 11, vhf: 0 },
  { area: "hu-Budapest", count: 3, vhf: 0 },
  { area: "lu-All", count: 4, vhf: 1 },
  { area: "pl-Rzeszow", count: 4, vhf: 1 },
  { area: "pl-Warszawa", count: 5, vhf: 1 },
  { area: "se-Arjang", count: 7, vhf: 1 },
  { area: "se-Stockholm_Nacka", count: 7, vhf: 0 },
  { area: "au-Hobart", count: 5, vhf: 5 },
  { area: "au-Darwin", count: 5, vhf: 0, uhf: "7" },
  { area: "au-Sydney_Kings_Cross", count: 5, vhf: 0, uhf: "7" },
  { area: "co-All", count: 6, vhf: 0, uhf: "6" },
  { area: "tw-All", count: 11, vhf: 0, uhf: "6" },
] as const satisfies readonly Area[];

/** First UHF channel of each raster, as public channel tables give it. */
const FIRST: Readonly<Record<UhfRaster, number>> = { 8: 21, 7: 28, 6: 14 };

const LISTED: readonly Area[] = AREAS;

const there = hasAreas(
  AREAS.map(({ area }) => area),
  "channel lists of terrestrial areas through drawn designs",
);

describe.skipIf(!there).each(LISTED)("the multiplexes of $area", ({ area, count, vhf, uhf = "8" }) => {
  const all = there ? readArea(area) : [];
  const row = ({ channel, mode }: (typeof all)[number]) => ({ channel, mode });

  test(`are ${count}, ${vhf} of them in Band III, the others in channels of ${uhf} MHz`, () => {
    expect(all).toHaveLength(count);
    expect(all.filter(({ raster }) => raster === "vhf7")).toHaveLength(vhf);
    expect(all.filter(({ raster }) => raster === `uhf${uhf}`)).toHaveLength(count - vhf);
  });

  test("lie where the program puts their channels, with modes that it knows", () => {
    for (const { channel, mode, frequencyMHz, widthMHz } of all) {
      expect(isModeKey(mode), mode).toBe(true);
      const carrier = tvCarrier({ channel, mode }, rasterOf(uhf));
      // Some are set off by 125 or 167 kHz.
      expect(Math.abs(carrier.airMHz - frequencyMHz)).toBeLessThan(0.2);
      expect(Math.ceil(carrier.widthMHz)).toBe(widthMHz);
    }
  });

  test("are all received by aerials of a good level through a masthead amplifier and 25 m of cable", () => {
    const upper = all.filter(({ raster }) => raster !== "vhf7").map(row);
    const lower = all.filter(({ raster }) => raster === "vhf7").map(row);
    const parts: Sketch = {
      tv: ["receiver-tv"],
      i: ["power-inserter"],
      c: ["cable", { lengthM: 25 }],
      m: [
        "amp-masthead-inputs",
        { uhf1GainDb: 10, uhf1From: FIRST[uhf], uhf1To: 69, radioGainDb: 5, raster: uhf },
      ],
      // The lists are of the years before channels above 48 were cleared.
      ...(upper.length > 0
        ? { u: ["aerial-uhf", { levelDbuv: 58, formerOnAir: true, channels: upper, raster: uhf }] }
        : {}),
      ...(lower.length > 0 ? { v: ["aerial-vhf", { levelDbuv: 58, channels: lower }] } : {}),
    };
    const wires = [
      ...(upper.length > 0 ? ["u.out > m.uhf1"] : []),
      ...(lower.length > 0 ? ["v.out > m.vhf"] : []),
      "m.out > c.in, c.out > i.in, i.out > tv.in",
    ];
    const { findings, verdicts } = report(evaluate(draw(parts, wires.join(", "))));
    const [service] = verdicts.find((v) => v.part === "tv")?.services ?? [];
    expect(service).toMatchObject({ wanted: count, got: count });
    // EN 60728-1, as quoted: 45 to 74 dBµV for DVB-T 64QAM 2/3 and 48 for 3/4.
    expect(service?.levelMin).toBeGreaterThan(48);
    expect(service?.levelMax).toBeLessThan(74);
    expect(findings.filter((f) => f.severity !== "note")).toEqual([]);
  });
});

/**
 * All areas, entry by entry: 4,768 of DVB-T and DVB-T2, counted by raster with a script in another language. All but 54 can
 * be entered. Of those 39 have no width; one channel counted a half step off, one in channel 0, four below 10 MHz or above
 * 1 GHz, one at 851.968 MHz, and seven on vision carriers or half steps of the 7 MHz raster are misprints.
 */
describe.skipIf(!there)("all lists of areas", () => {
  const rasters = there
    ? areaNames()
        .flatMap(readEntries)
        .map((entry) => listedOn(entry)?.raster)
    : [];

  test("stand on the rasters of this program, but for 54 without width or off any raster", () => {
    const count = (raster: (typeof rasters)[number]) => rasters.filter((each) => each === raster).length;
    expect(rasters).toHaveLength(4768);
    expect({
      uhf8: count("uhf8"),
      uhf7: count("uhf7"),
      uhf6: count("uhf6"),
      vhf7: count("vhf7"),
      vhf8: count("vhf8"),
      none: count(undefined),
    }).toEqual({ uhf8: 4186, uhf7: 224, uhf6: 30, vhf7: 267, vhf8: 7, none: 54 });
  });

  // The Russian list has Band III in channels of 8 MHz: 178 to 226 MHz.
  test("of Band III in channels of 8 MHz lie where an aerial set to that raster has them", () => {
    const listed = readEntries("ru-all").filter((entry) => listedOn(entry)?.raster === "vhf8");
    const channels = listed.map((entry) => ({ channel: listedOn(entry)?.channel ?? 0 }));
    const aerial = evaluate(draw({ v: ["aerial-vhf", { raster: "8", channels }] }, "")).record("v");
    const centres = aerial?.outputs.out?.bands.flatMap(({ grid }) => [...grid.centre]);
    expect(centres).toEqual(listed.map(({ frequencyMHz }) => frequencyMHz));
    expect(centres).toHaveLength(7);
  });
});
