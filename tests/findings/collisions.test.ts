/**
 * Who meets whom, and how badly: hand-made bands, C/I given. 64 QAM 2/3 needs 18.7 dB (NorDig Unified 2.2, as quoted
 * in a public table): less is dead, up to 3 dB more needs 3 dB of spare, up to 10 dB more half a decibel, up to 20 hardly any.
 */
import { describe, expect, test } from "vitest";
import type { Meeting } from "../../src/evaluate/evaluation.ts";
import { isWanted, lossCounts, meetingsByPair, pairKey, worstHit } from "../../src/findings/collisions.ts";
import type { Band } from "../../src/signal/band.ts";
import { type BandSketch, bandOf, gridOf } from "../signal/bands.ts";

const GRID = gridOf([474, 482, 490, 498]);
const from = (part: string, more: BandSketch = {}) => bandOf({ from: part, grid: GRID, ...more });

/** So many decibels of C/I for single carriers of a band, by another. */
function meeting(
  victim: Band,
  other: Band,
  hits: Readonly<Record<number, number>>,
  more: Partial<Meeting> = {},
): Meeting {
  return {
    victim,
    other,
    echo: false,
    carriers: Object.keys(hits).map(Number),
    ciDb: Object.values(hits),
    fromMHz: 470,
    toMHz: 502,
    port: "out",
    ...more,
  };
}

const north = from("north");
const south = from("south");
const mast = from("mast", { service: "mobile" });

describe("meetings of signals", () => {
  test("of two aerials are one matter, whichever of the two suffers", () => {
    const there = meeting(north, south, { 0: 10 });
    const back = meeting(south, north, { 0: 12 });
    expect(meetingsByPair([there, back])).toEqual([[there, back]]);
    expect(pairKey(there)).toBe(pairKey(back));
  });

  test("with a third are another matter, and so are those at another port", () => {
    const first = meeting(north, south, { 0: 10 });
    const third = meeting(north, from("west"), { 0: 10 });
    const elsewhere = meeting(north, south, { 0: 10 }, { port: "out2" });
    expect(meetingsByPair([first, third, elsewhere])).toEqual([[first], [third], [elsewhere]]);
  });

  test("of one signal with itself are told elsewhere", () => {
    expect(meetingsByPair([meeting(north, north, { 0: 3 }, { echo: true })])).toEqual([]);
  });

  test("matter where somebody may want to watch: a phone mast is nobody's loss", () => {
    const disturbed = meeting(north, mast, { 3: 5 });
    expect(meetingsByPair([meeting(mast, north, { 0: 5 }), disturbed])).toEqual([[disturbed]]);
    expect([isWanted("tv"), isWanted("satellite"), isWanted("mobile"), isWanted("cordless")]).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
});

describe("the carrier that is hit worst", () => {
  // 30 dB are 11.3 dB above 18.7, 20 dB are 1.3 dB above: of four carriers the second has least to spare.
  test("has the least C/I above what it needs", () => {
    const worst = worstHit([meeting(north, south, { 0: 30, 1: 20, 3: 25 })]);
    expect(worst).toMatchObject({ i: 1, ciDb: 20, requiredDb: 18.7, grade: "likely dead" });
    expect([worst?.band, worst?.other]).toEqual([north, south]);
  });

  test("may be one of the other signal", () => {
    const pair = [meeting(north, south, { 0: 30 }), meeting(south, north, { 2: 15 })];
    expect(worstHit(pair)).toMatchObject({ i: 2, ciDb: 15, grade: "dead" });
    expect(worstHit(pair)?.band).toBe(south);
  });

  test("is the first of two that are hit alike", () => {
    expect(worstHit([meeting(north, south, { 1: 20, 2: 20 })])).toMatchObject({ i: 1 });
  });

  test("is none where no carrier is near enough to matter", () => {
    expect(worstHit([meeting(north, south, {})])).toBeUndefined();
    expect(worstHit([])).toBeUndefined();
  });
});

describe("how many carriers suffer", () => {
  // 15 dB are too little; 20, 25 and 35 dB are 1.3, 6.3 and 16.3 dB above 18.7.
  test("is told by grade, the worst first", () => {
    expect(lossCounts([meeting(north, south, { 0: 35, 1: 25, 2: 15, 3: 20 })])).toEqual([
      { grade: "dead", service: "tv", count: 1 },
      { grade: "likely dead", service: "tv", count: 1 },
      { grade: "costs margin", service: "tv", count: 1 },
      { grade: "slight", service: "tv", count: 1 },
    ]);
  });

  test("counts the carriers of both signals", () => {
    const pair = [meeting(north, south, { 0: 10, 1: 10 }), meeting(south, north, { 0: 12 })];
    expect(lossCounts(pair)).toEqual([{ grade: "dead", service: "tv", count: 3 }]);
  });

  test("counts a carrier once, by the worst that it meets, in either order", () => {
    const mild = meeting(north, south, { 0: 25 });
    const bad = meeting(north, south, { 0: 10 });
    const one = [{ grade: "dead", service: "tv", count: 1 }];
    expect(lossCounts([mild, bad])).toEqual(one);
    expect(lossCounts([bad, mild])).toEqual(one);
  });

  // 39 dB are more than 20 dB above 18.7.
  test("leaves out what nobody notices", () => {
    expect(lossCounts([meeting(north, south, { 0: 39 })])).toEqual([]);
  });

  test("tells services apart", () => {
    const dab = from("dab", { service: "dab" });
    const pair = [meeting(north, dab, { 0: 10 }), meeting(dab, north, { 0: 10 })];
    expect(lossCounts(pair)).toEqual([
      { grade: "dead", service: "tv", count: 1 },
      { grade: "dead", service: "dab", count: 1 },
    ]);
  });
});
