/**
 * Level that leans over the range: 16 dB at most from end to end of the terrestrial one (Spanish Royal Decree 346/2011,
 * Annex I 4.5). The line of least squares through the carriers, between the lowest and the highest of them.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";
import { judgedBy } from "./judged.ts";

type Row = readonly [channel: number, levelOffsetDb: number];
const line = (...rows: readonly Row[]) => {
  const channels = rows.map(([channel, levelOffsetDb]) => ({
    channel,
    mode: "dvbt-64qam-2/3",
    levelOffsetDb,
  }));
  const parts: Sketch = { z: ["receiver-tv"], a: ["aerial-uhf", { levelDbuv: 70, channels }] };
  return judgedBy("rd346", draw(parts, "a.out > z.in"));
};
const found = (...rows: readonly Row[]) => foundBy("slope", line(...rows));

describe("a slope", () => {
  test("that falls is told with its ends", () => {
    const [one, ...more] = found([41, -17], [21, 0], [31, -8.5]);
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      severity: "warning",
      at: { part: "z", port: "in", service: "tv" },
      parts: ["a", "z"],
      wires: ["a.out>z.in"],
      limit: 16,
      unit: "dB",
      source: "Spanish Royal Decree 346/2011, Annex I 4.3 to 4.5",
      facts: {
        lowest: { name: "C21", centreMHz: 474, levelDbuv: 70 },
        highest: { name: "C41", centreMHz: 634, levelDbuv: 53 },
        falls: true,
        culprit: { part: "a", does: "uneven source" },
      },
    });
    expect(one?.value).toBeCloseTo(17, 6);
    expect(one?.facts.culprit?.excessDb).toBeCloseTo(17, 6);
    expect(one?.facts.lowest).not.toHaveProperty("limits");
  });

  test("that rises is told so", () => {
    const [one] = found([21, -17], [31, -8.5], [41, 0]);
    expect(one).toMatchObject({
      facts: { falls: false, lowest: { name: "C21" }, highest: { name: "C41" }, culprit: { part: "a" } },
    });
    expect(one?.value).toBeCloseTo(17, 6);
    expect(one?.facts.culprit?.excessDb).toBeCloseTo(17, 6);
  });

  test("of 16 dB is still well", () => {
    expect(found([21, 0], [31, -8], [41, -16])).toEqual([]);
    expect(found([21, 0], [31, -8.5], [41, -16.5])).toHaveLength(1);
  });

  // 474, 490 and 634 MHz: mean 532.67; deviations −58.67, −42.67, 101.33; of levels 0, 0, −20 from their mean 6.67, 6.67,
  // −13.33. Σ products −2026.7, Σ squares 15 530.7: −0.1305 dB/MHz, over 160 MHz 20.88 dB.
  test("is that of all carriers, not of the two ends alone", () => {
    const [one] = found([21, 0], [23, 0], [41, -20]);
    expect(one?.value).toBeCloseTo(20.88, 2);
    // The one in the middle takes no side: 17 dB for a fall that comes all at once.
    expect(found([21, 0], [31, 0], [41, -17])[0]?.value).toBeCloseTo(17, 6);
    // One that is low in the middle makes no slope.
    expect(found([21, 0], [31, -20], [41, 0])).toEqual([]);
  });

  test("is not asked of two carriers", () => {
    expect(found([21, 0], [41, -25])).toEqual([]);
  });

  test("is not asked by a profile that sets none", () => {
    const design = line([21, 0], [31, -10], [41, -20]);
    expect(foundBy("slope", design)).toHaveLength(1);
    expect(foundBy("slope", judgedBy("en60728", design))).toEqual([]);
  });
});

describe("of satellite IF", () => {
  // Offsets of transponders make 19 and 22 dB from 979 to 1891 MHz: 20 are allowed. The line adds nothing worth a word.
  const sky = (fallDb: number) => {
    const transponders = [0, 1, 2].map((n) => ({
      frequencyMHz: 10_729 + 456 * n,
      polarisation: "V",
      mode: "dvbs2-qpsk-1/2",
      eirpOffsetDb: 10 - (fallDb / 2) * n,
    }));
    return foundBy(
      "slope",
      judgedBy(
        "rd346",
        draw(
          { r: ["receiver-sat"], l: ["lnb-universal"], d: ["dish", { diameterM: 1.2, transponders }] },
          "d.sky > l.sky, l.out > r.sat",
        ),
      ),
    );
  };

  test("20 dB are allowed", () => {
    expect(sky(19)).toEqual([]);
    expect(sky(22)).toMatchObject([
      { at: { part: "r", port: "sat", service: "satellite" }, limit: 20, facts: { falls: true } },
    ]);
  });
});
