/**
 * Sound jobs drawn with typical values, and what a meter at their outlets shows, against two published tables each that do not
 * quote one another: EN 60728-1 (as quoted in a public table) and Spanish Royal Decree 346/2011, Annex I 4.5; for television a
 * British guide to reception (RA415: 45 to 65 dBµV at the end of the downlead) as a third.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { reading } from "../../src/remedies/faults/reading.ts";
import { draw, type Sketch } from "../draw.ts";

type Table = { readonly name: string; readonly fromDbuv: number; readonly toDbuv: number };

const EN = (fromDbuv: number, toDbuv: number): Table => ({ name: "EN 60728-1", fromDbuv, toDbuv });
const DECREE = (fromDbuv: number, toDbuv: number): Table => ({
  name: "Royal Decree 346/2011",
  fromDbuv,
  toDbuv,
});
const RA415: Table = { name: "RA415", fromDbuv: 45, toDbuv: 65 };

const run = (lengthM: number): Sketch[string] => ["cable", { lengthM }];
const ASKS: Sketch[string] = ["receiver-sat", { polarisation: "H", half: "high" }];

/** A block: dish of 0.8 m, quattro LNB, 10 m to the multiswitch, 30 m to the flat. */
const BLOCK = draw(
  {
    dish: ["dish", { diameterM: 0.8 }],
    lnb: ["lnb-quattro"],
    a: run(10),
    b: run(10),
    c: run(10),
    d: run(10),
    switch: ["multiswitch", { terrestrial: false }],
    drop: run(30),
    plate: ["outlet-sat"],
    rx: ASKS,
  },
  `dish.sky > lnb.sky, lnb.vl > a.in, lnb.vh > b.in, lnb.hl > c.in, lnb.hh > d.in,
   a.out > switch.vl, b.out > switch.vh, c.out > switch.hl, d.out > switch.hh,
   switch.out1 > drop.in, drop.out > plate.in, plate.sat > rx.sat`,
);

const SINGLE = draw(
  { dish: ["dish"], lnb: ["lnb-universal"], drop: run(25), plate: ["outlet-sat"], rx: ASKS },
  "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > plate.in, plate.sat > rx.sat",
);

const HOUSE = draw(
  { uhf: ["aerial-uhf"], drop: run(20), plate: ["outlet-tv"], rx: ["receiver-tv"] },
  "uhf.out > drop.in, drop.out > plate.in, plate.tv > rx.in",
);

const FOUR_ROOMS = draw(
  {
    uhf: ["aerial-uhf", { levelDbuv: 55 }],
    mast: ["amp-masthead"],
    down: run(15),
    psu: ["power-inserter"],
    split: ["splitter", { ways: 4 }],
    drop: run(15),
    plate: ["outlet-tv"],
    rx: ["receiver-tv"],
    e2: ["load"],
    e3: ["load"],
    e4: ["load"],
  },
  `uhf.out > mast.in, mast.out > down.in, down.out > psu.in, psu.out > split.in, split.out1 > drop.in,
   drop.out > plate.in, plate.tv > rx.in, split.out2 > e2.in, split.out3 > e3.in, split.out4 > e4.in`,
);

const RADIO = draw(
  { fm: ["aerial-fm"], drop: run(20), plate: ["outlet-tv"], rx: ["receiver-fm"] },
  "fm.out > drop.in, drop.out > plate.in, plate.tv > rx.in",
);

const DAB = draw(
  { dab: ["aerial-dab"], drop: run(20), plate: ["outlet-tv"], rx: ["receiver-dab"] },
  "dab.out > drop.in, drop.out > plate.in, plate.tv > rx.in",
);

const JOBS = [
  { job: "satellite in a block", design: BLOCK, socket: "sat", tables: [EN(47, 77), DECREE(47, 77)] },
  { job: "satellite, one LNB", design: SINGLE, socket: "sat", tables: [EN(47, 77), DECREE(47, 77)] },
  {
    job: "television, one room",
    design: HOUSE,
    socket: "tv",
    tables: [EN(48, 74), DECREE(47, 70), RA415],
  },
  {
    job: "television, four rooms",
    design: FOUR_ROOMS,
    socket: "tv",
    tables: [EN(48, 74), DECREE(47, 70), RA415],
  },
  { job: "FM", design: RADIO, socket: "tv", tables: [EN(50, 70), DECREE(40, 70)] },
  { job: "DAB", design: DAB, socket: "tv", tables: [EN(28, 94), DECREE(30, 70)] },
] as const;

const shown = (design: typeof BLOCK, socket: string, quantity: "level" | "cn" | "mer") => {
  const read = reading(evaluate(design), ["plate", socket], quantity);
  if (!read || !("carriers" in read)) throw new Error("no carriers");
  return read.carriers.map(({ value }) => value);
};

describe.each(JOBS)("$job", ({ design, socket, tables }) => {
  test("works without a finding", () => {
    const { verdicts, findings } = report(evaluate(design));
    expect(verdicts.find((v) => v.part === "rx")?.state).toBe("works");
    expect(findings).toEqual([]);
  });

  test.each(tables)("has the levels that $name asks for", ({ fromDbuv, toDbuv }) => {
    const levels = shown(design, socket, "level");
    expect(levels.length).toBeGreaterThan(2);
    expect(Math.min(...levels)).toBeGreaterThanOrEqual(fromDbuv);
    expect(Math.max(...levels)).toBeLessThanOrEqual(toDbuv);
  });
});

// What a meter shows in sound blocks and houses, common practice, no source.
describe("what a meter shows", () => {
  test("at an outlet of a block: 60 to 75 dBµV, and a MER of 15 to 17 dB", () => {
    const levels = shown(BLOCK, "sat", "level");
    expect(Math.min(...levels)).toBeGreaterThan(60);
    expect(Math.max(...levels)).toBeLessThan(75);
    const mer = shown(BLOCK, "sat", "mer");
    expect(Math.min(...mer)).toBeGreaterThanOrEqual(15);
    expect(Math.max(...mer)).toBeLessThanOrEqual(17);
  });

  test.each([HOUSE, FOUR_ROOMS])("at an outlet of a house: 55 to 65 dBµV on every channel", (design) => {
    const levels = shown(design, "tv", "level");
    expect(Math.min(...levels)).toBeGreaterThan(55);
    expect(Math.max(...levels)).toBeLessThan(65);
  });
});
