/** Real areas, drawn: every multiplex of a list can be entered, and is received at a good level. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { tvCarrier } from "../../src/parts/plans.ts";
import { isModeKey } from "../../src/rf/thresholds.ts";
import { draw, type Sketch } from "../draw.ts";
import { areaNames, hasAreas, rasterOf, readArea, readEntries } from "./terrestrialTables.ts";

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
] as const;

const there = hasAreas(
  AREAS.map(({ area }) => area),
  "channel lists of terrestrial areas through drawn designs",
);

describe.skipIf(!there).each(AREAS)("the multiplexes of $area", ({ area, count, vhf }) => {
  const all = there ? readArea(area) : [];
  const row = ({ channel, mode }: (typeof all)[number]) => ({ channel, mode });

  test(`are ${count}, ${vhf} of them in channels of 7 MHz`, () => {
    expect(all).toHaveLength(count);
    expect(all.filter(({ widthMHz }) => widthMHz === 7)).toHaveLength(vhf);
  });

  test("lie where the program puts their channels, with modes that it knows", () => {
    for (const { channel, mode, frequencyMHz } of all) {
      expect(isModeKey(mode), mode).toBe(true);
      // Some are set off by 167 kHz.
      expect(Math.abs(tvCarrier({ channel, mode }).airMHz - frequencyMHz)).toBeLessThan(0.2);
    }
  });

  test("are all received by aerials of a good level through a masthead amplifier and 25 m of cable", () => {
    const upper = all.filter(({ widthMHz }) => widthMHz === 8).map(row);
    const lower = all.filter(({ widthMHz }) => widthMHz === 7).map(row);
    const parts: Sketch = {
      tv: ["receiver-tv"],
      i: ["power-inserter"],
      c: ["cable", { lengthM: 25 }],
      m: ["amp-masthead-inputs", { uhf1GainDb: 10, uhf1To: 69, radioGainDb: 5 }],
      // The lists are of the years before channels above 48 were cleared.
      ...(upper.length > 0
        ? { u: ["aerial-uhf", { levelDbuv: 58, formerOnAir: true, channels: upper }] }
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
 * All areas, entry by entry: 4,768 of DVB-T and DVB-T2, counted with a script in another language. Those of the European
 * rasters can be entered: 4,186 of 8 MHz in UHF and 267 of 7 MHz in Band III. The other 315 are the rasters that the known limits
 * name: 231 of 7 MHz in UHF and 39 without a width (Oceania), 30 of 6 MHz, 7 of 8 MHz in Band III (one list), and 8 half steps
 * and misprints.
 */
describe.skipIf(!there)("all lists of areas", () => {
  const rasters = there ? areaNames().flatMap(readEntries).map(rasterOf) : [];
  const count = (raster: string) => rasters.filter((each) => each === raster).length;

  test("stand on the rasters of this program, but for 315 entries of other continents", () => {
    expect(rasters).toHaveLength(4768);
    expect({ uhf: count("uhf"), vhf: count("vhf"), none: count("none") }).toEqual({
      uhf: 4186,
      vhf: 267,
      none: 315,
    });
  });
});
