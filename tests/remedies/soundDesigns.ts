/**
 * Installations as they are built, all of them sound: what faults are put into, and what cures are tried on.
 * Levels, lengths and values are common practice, no source.
 */
import type { Design } from "../../src/design/design.ts";
import { draw, type Sketch } from "../draw.ts";

const SKY = { dish: ["dish", { diameterM: 0.85 }] } as const satisfies Sketch;

/** The user bands of EN 50494 that a converter with four of them has, two by two. */
const BANDS = [
  { number: 1, centreMHz: 1210 },
  { number: 2, centreMHz: 1420 },
  { number: 3, centreMHz: 1680 },
  { number: 4, centreMHz: 2040 },
] as const;

/** Drops of a star: a cable, a plate and a receiver on each output. */
function drops(
  outputs: readonly string[],
  metres: readonly number[],
  ends: { readonly plate: readonly [string, string]; readonly set: readonly [string, string] },
): { parts: Sketch; wires: string } {
  const [plate, socket] = ends.plate;
  const [set, input] = ends.set;
  const parts: Record<string, readonly [string, Record<string, unknown>?]> = {};
  const wires: string[] = [];
  outputs.forEach((output, i) => {
    const n = i + 1;
    parts[`drop${n}`] = ["cable", { lengthM: metres[i] ?? 15 }];
    parts[`plate${n}`] = [plate];
    parts[`set${n}`] = [set, set === "receiver-sat" ? { polarisation: i % 2 ? "H" : "V" } : {}];
    wires.push(
      `${output} > drop${n}.in, drop${n}.out > plate${n}.in, plate${n}.${socket} > set${n}.${input}`,
    );
  });
  return { parts, wires: wires.join(", ") };
}

const SAT = { plate: ["outlet-sat", "sat"], set: ["receiver-sat", "sat"] } as const;
const TV = { plate: ["outlet-tv", "tv"], set: ["receiver-tv", "in"] } as const;

const outs = (part: string, n: number, name = "out") =>
  Array.from({ length: n }, (_, i) => `${part}.${name}${i + 1}`);

const TRUNKS = ["vl", "vh", "hl", "hh"] as const;

/** Four trunks of a quattro LNB to a unit. */
function trunks(from: string, to: string, metres: number, suffix = ""): { parts: Sketch; wires: string } {
  const parts = Object.fromEntries(
    TRUNKS.map((q) => [`${q}${suffix}-cable`, ["cable", { lengthM: metres }] as const]),
  );
  const wires = TRUNKS.map(
    (q) => `${from}.${q} > ${q}${suffix}-cable.in, ${q}${suffix}-cable.out > ${to}.${q}${suffix}`,
  );
  return { parts, wires: wires.join(", ") };
}

function twin(): Design {
  return draw(
    {
      ...SKY,
      lnb: ["lnb-universal", { outputs: "2" }],
      one: ["cable", { lengthM: 18 }],
      two: ["cable", { lengthM: 18 }],
      plate: ["outlet-sat-twin"],
      set: ["receiver-sat-twin"],
    },
    "dish.sky > lnb.sky, lnb.out1 > one.in, lnb.out2 > two.in, one.out > plate.in, two.out > plate.in2, plate.sat > set.sat1, plate.sat2 > set.sat2",
  );
}

function quad(): Design {
  const star = drops(outs("lnb", 4), [12, 16, 20, 24], SAT);
  return draw(
    { ...SKY, lnb: ["lnb-universal", { outputs: "4" }], ...star.parts },
    `dish.sky > lnb.sky, ${star.wires}`,
  );
}

function multiswitchHouse(): Design {
  const four = trunks("lnb", "unit", 8);
  const star = drops(outs("unit", 4), [10, 14, 18, 25], {
    plate: ["outlet-diplexed", "sat"],
    set: ["receiver-sat", "sat"],
  });
  return draw(
    {
      ...SKY,
      lnb: ["lnb-quattro"],
      ...four.parts,
      uhf: ["aerial-uhf", { levelDbuv: 66 }],
      amp: ["amp-distribution", { gainDb: 14, outputDbuv: 108 }],
      unit: ["multiswitch", { outputs: 4 }],
      ...star.parts,
      tv1: ["receiver-tv"],
      tv2: ["receiver-tv"],
    },
    `dish.sky > lnb.sky, ${four.wires}, uhf.out > amp.in, amp.out > unit.ter, ${star.wires}, plate1.tv > tv1.in, plate2.tv > tv2.in`,
  );
}

/** The first unit hands the trunks on to a second one. */
function cascade(): Design {
  const four = trunks("lnb", "upper", 6);
  const above = drops(outs("upper", 2), [10, 14], SAT);
  const below = drops(outs("lower", 2), [10, 14], SAT);
  const rename = (s: { parts: Sketch; wires: string }) => ({
    parts: Object.fromEntries(Object.entries(s.parts).map(([id, p]) => [`low-${id}`, p])),
    wires: s.wires.replace(/\b(drop|plate|set)(\d)/g, "low-$1$2"),
  });
  const lower = rename(below);
  return draw(
    {
      ...SKY,
      lnb: ["lnb-quattro"],
      ...four.parts,
      upper: ["multiswitch", { outputs: 2, cascade: true, terrestrial: false }],
      lower: ["multiswitch", { outputs: 2, terrestrial: false, feedsLnb: false }],
      ...above.parts,
      ...lower.parts,
    },
    `dish.sky > lnb.sky, ${four.wires}, ${TRUNKS.map((q) => `upper.${q}-thru > lower.${q}`).join(", ")}, ${above.wires}, ${lower.wires}`,
  );
}

/** Two satellites, eight trunks without cables of their own, one unit. */
function twoSatelliteBlock(): Design {
  const star = drops(outs("unit", 2), [12, 16], SAT);
  const trunk = (lnb: string, position: string) =>
    TRUNKS.map((q) => `${lnb}.${q} > unit.${q}${position}`).join(", ");
  return draw(
    {
      ...SKY,
      dish2: ["dish", { diameterM: 0.85, orbitalPositionDegE: 14 }],
      lnb: ["lnb-quattro"],
      lnb2: ["lnb-quattro"],
      unit: ["multiswitch", { satelliteInputs: "8", outputs: 2, terrestrial: false }],
      ...star.parts,
      set1: ["receiver-sat", { position: "1", polarisation: "V" }],
      set2: ["receiver-sat", { position: "2", polarisation: "H" }],
    },
    `dish.sky > lnb.sky, dish2.sky > lnb2.sky, ${trunk("lnb", "")}, ${trunk("lnb2", "2")}, ${star.wires}`,
  );
}

function positionSwitch(): Design {
  return draw(
    {
      ...SKY,
      dish2: ["dish", { diameterM: 0.85, orbitalPositionDegE: 14 }],
      lnb1: ["lnb-universal"],
      lnb2: ["lnb-universal"],
      pos: ["position-switch"],
      down: ["cable", { lengthM: 20 }],
      plate: ["outlet-sat"],
      set: ["receiver-sat", { position: "2", half: "high" }],
    },
    "dish.sky > lnb1.sky, dish2.sky > lnb2.sky, lnb1.out > pos.in1, lnb2.out > pos.in2, pos.out > down.in, down.out > plate.in, plate.sat > set.sat",
  );
}

function singleCable(): Design {
  return draw(
    {
      ...SKY,
      lnb: ["lnb-stacked"],
      down: ["cable", { lengthM: 15 }],
      split: ["splitter", { dc: "all" }],
      drop1: ["cable", { lengthM: 8 }],
      drop2: ["cable", { lengthM: 12 }],
      plate1: ["outlet-sat"],
      plate2: ["outlet-sat"],
      set1: ["receiver-stacked", { userBands: BANDS.slice(0, 2) }],
      set2: ["receiver-stacked", { userBands: BANDS.slice(2, 4) }],
    },
    "dish.sky > lnb.sky, lnb.out > down.in, down.out > split.in, split.out1 > drop1.in, split.out2 > drop2.in, drop1.out > plate1.in, drop2.out > plate2.in, plate1.sat > set1.sat, plate2.sat > set2.sat",
  );
}

/** A converter unit under the roof, a line for each of two flats, TV beside the user bands. */
function stackedBlock(): Design {
  const four = trunks("lnb", "unit", 5);
  const star = drops(outs("unit", 2), [14, 20], {
    plate: ["outlet-diplexed", "sat"],
    set: ["receiver-stacked", "sat"],
  });
  return draw(
    {
      ...SKY,
      lnb: ["lnb-quattro"],
      ...four.parts,
      uhf: ["aerial-uhf", { levelDbuv: 68 }],
      amp: ["amp-distribution", { gainDb: 18, outputDbuv: 108 }],
      unit: ["stacking-converter", { outputs: 2, bandSet: "four", standard: "EN 50494" }],
      ...star.parts,
      set1: ["receiver-stacked", { tuners: 4, userBands: BANDS }],
      tv1: ["receiver-tv"],
      tv2: ["receiver-tv"],
    },
    `dish.sky > lnb.sky, ${four.wires}, uhf.out > amp.in, amp.out > unit.ter, ${star.wires}, plate1.tv > tv1.in, plate2.tv > tv2.in`,
  );
}

function wideband(): Design {
  return draw(
    {
      ...SKY,
      lnb: ["lnb-wideband"],
      v: ["cable", { lengthM: 15 }],
      h: ["cable", { lengthM: 15 }],
      plate: ["outlet-sat-twin"],
      set: ["receiver-hybrid"],
    },
    "dish.sky > lnb.sky, lnb.v > v.in, lnb.h > h.in, v.out > plate.in, h.out > plate.in2, plate.sat > set.v, plate.sat2 > set.h",
  );
}

/** Two recorders with wideband inputs, each polarisation split. */
function widebandPair(): Design {
  return draw(
    {
      ...SKY,
      lnb: ["lnb-wideband"],
      v: ["splitter", { ways: 2 }],
      h: ["splitter", { ways: 2 }],
      v1: ["cable", { lengthM: 12 }],
      h1: ["cable", { lengthM: 12 }],
      v2: ["cable", { lengthM: 18 }],
      h2: ["cable", { lengthM: 18 }],
      set1: ["receiver-hybrid", { tuners: 4 }],
      set2: ["receiver-hybrid"],
    },
    "dish.sky > lnb.sky, lnb.v > v.in, lnb.h > h.in, v.out1 > v1.in, v.out2 > v2.in, h.out1 > h1.in, h.out2 > h2.in, v1.out > set1.v, h1.out > set1.h, v2.out > set2.v, h2.out > set2.h",
  );
}

function terrestrialHouse(): Design {
  const star = drops(outs("split", 4), [8, 12, 15, 20], TV);
  return draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 64 }],
      down: ["cable", { lengthM: 10 }],
      amp: ["amp-distribution", { gainDb: 20, outputDbuv: 108 }],
      split: ["splitter", { ways: 4, range: "tv", dc: "none" }],
      ...star.parts,
    },
    `uhf.out > down.in, down.out > amp.in, amp.out > split.in, ${star.wires}`,
  );
}

/** Far from the transmitter: amplified on the mast, fed through the cable, and again under the roof. */
function mastheadAndLaunch(): Design {
  const star = drops(outs("split", 4), [10, 14, 18, 24], TV);
  return draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 50 }],
      head: ["amp-masthead", { gainDb: 16, outputDbuv: 104 }],
      down: ["cable", { lengthM: 18 }],
      amp: ["amp-distribution", { gainDb: 18, outputDbuv: 108, aerialSupply: "12" }],
      split: ["splitter", { ways: 4, range: "tv", dc: "none" }],
      ...star.parts,
    },
    `uhf.out > head.in, head.out > down.in, down.out > amp.in, amp.out > split.in, ${star.wires}`,
  );
}

/** Phone masts near the house: without the filter they drive the amplifier. */
function mastFilter(): Design {
  const star = drops(outs("split", 2), [10, 16], TV);
  return draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 58 }],
      masts: ["pick-up", { mast700: true, mast800: true, mastDbuv: 90 }],
      filter: ["filter-mobile", { band: "700" }],
      amp: ["amp-distribution", { gainDb: 20, outputDbuv: 104 }],
      split: ["splitter", { ways: 2, range: "tv", dc: "none" }],
      ...star.parts,
    },
    `uhf.out > masts.in, masts.out > filter.in, filter.out > amp.in, amp.out > split.in, ${star.wires}`,
  );
}

/** A strong transmitter: a pad saves the amplifier. */
function strongTransmitter(): Design {
  const star = drops(outs("split", 2), [15, 25], TV);
  return draw(
    {
      uhf: ["aerial-uhf", { levelDbuv: 92 }],
      pad: ["attenuator", { lossDb: 20 }],
      amp: ["amp-distribution", { gainDb: 6, outputDbuv: 100 }],
      split: ["splitter", { ways: 2, range: "tv", dc: "none" }],
      ...star.parts,
    },
    `uhf.out > pad.in, pad.out > amp.in, amp.out > split.in, ${star.wires}`,
  );
}

/** FM, DAB and TV brought together on the mast and taken apart at the plates. */
function radioAndTv(): Design {
  return draw(
    {
      fm: ["aerial-fm", { levelDbuv: 66 }],
      dab: ["aerial-dab", { levelDbuv: 58 }],
      uhf: ["aerial-uhf", { levelDbuv: 66 }],
      join: ["triplexer-combine"],
      down: ["cable", { lengthM: 12 }],
      split: ["splitter", { ways: 2, range: "tv", dc: "none" }],
      drop1: ["cable", { lengthM: 8 }],
      drop2: ["cable", { lengthM: 10 }],
      plate1: ["outlet-triplexed"],
      plate2: ["outlet-triplexed"],
      tv1: ["receiver-tv", { fromMHz: 470 }],
      fm1: ["receiver-fm"],
      tv2: ["receiver-tv", { fromMHz: 470 }],
      dab2: ["receiver-dab"],
    },
    "fm.out > join.fm, dab.out > join.dab, uhf.out > join.uhf, join.out > down.in, down.out > split.in, split.out1 > drop1.in, split.out2 > drop2.in, drop1.out > plate1.in, drop2.out > plate2.in, plate1.tv > tv1.in, plate1.radio > fm1.in, plate2.tv > tv2.in, plate2.radio > dab2.in",
  );
}

/** A line through the floors: plates with falling values, a terminated end. */
function riser(): Design {
  const values = [24, 22, 18, 16];
  const parts: Record<string, readonly [string, Record<string, unknown>?]> = {
    uhf: ["aerial-uhf", { levelDbuv: 72 }],
    amp: ["amp-distribution", { gainDb: 20, outputDbuv: 104 }],
  };
  const wires = ["uhf.out > amp.in"];
  let at = "amp.out";
  values.forEach((tapLossDb, i) => {
    const n = i + 1;
    parts[`run${n}`] = ["cable", { lengthM: 4 }];
    parts[`plate${n}`] = ["outlet-through", { tapLossDb }];
    parts[`tv${n}`] = ["receiver-tv"];
    wires.push(`${at} > run${n}.in, run${n}.out > plate${n}.in, plate${n}.tv > tv${n}.in`);
    at = `plate${n}.out`;
  });
  parts.load = ["load"];
  return draw(parts, [...wires, `${at} > load.in`].join(", "));
}

/** A trunk with taps in the stairwell, a drop for each flat, a load at the end. */
function stairwell(): Design {
  const parts: Record<string, readonly [string, Record<string, unknown>?]> = {
    uhf: ["aerial-uhf", { levelDbuv: 70 }],
    amp: ["amp-distribution", { gainDb: 22, slopeDb: 4, outputDbuv: 108 }],
  };
  const wires = ["uhf.out > amp.in"];
  let at = "amp.out";
  [20, 16, 12].forEach((tapLossDb, i) => {
    const n = i + 1;
    parts[`trunk${n}`] = ["cable", { lengthM: 8 }];
    parts[`tap${n}`] = ["tap", { tapLossDb }];
    parts[`drop${n}`] = ["cable", { lengthM: 10 }];
    parts[`plate${n}`] = ["outlet-tv"];
    parts[`tv${n}`] = ["receiver-tv"];
    wires.push(
      `${at} > trunk${n}.in, trunk${n}.out > tap${n}.in, tap${n}.tap1 > drop${n}.in, drop${n}.out > plate${n}.in, plate${n}.tv > tv${n}.in`,
    );
    at = `tap${n}.out`;
  });
  parts.load = ["load"];
  return draw(parts, [...wires, `${at} > load.in`].join(", "));
}

/** TV and satellite on one cable to each room, taken apart at the plate. */
function sharedCable(): Design {
  return draw(
    {
      ...SKY,
      lnb: ["lnb-universal"],
      uhf: ["aerial-uhf", { levelDbuv: 68 }],
      join: ["diplexer-combine"],
      down: ["cable", { lengthM: 22 }],
      plate: ["outlet-diplexed"],
      tv: ["receiver-tv"],
      set: ["receiver-sat", { polarisation: "H" }],
    },
    "dish.sky > lnb.sky, lnb.out > join.sat, uhf.out > join.tv, join.out > down.in, down.out > plate.in, plate.tv > tv.in, plate.sat > set.sat",
  );
}

/** A long run with an amplifier half way, fed by the receiver. */
function longRun(): Design {
  return draw(
    {
      ...SKY,
      lnb: ["lnb-universal"],
      first: ["cable", { lengthM: 40, grade: "copper-1.25" }],
      amp: ["amp-if", { gainDb: 15 }],
      second: ["cable", { lengthM: 45, grade: "copper-1.25" }],
      plate: ["outlet-sat"],
      set: ["receiver-sat", { half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out > first.in, first.out > amp.in, amp.out > second.in, second.out > plate.in, plate.sat > set.sat",
  );
}

/** A recorder with eight tuners on a converter with 32 user bands. */
function recorder(): Design {
  // Centres of EN 50607's usual plan are the converter's to choose; these are what its kind sends out.
  const rows = [1, 2, 3, 4, 5, 6, 7, 8].map((number) => ({ number, centreMHz: 958 + (number - 1) * 38 }));
  return draw(
    {
      ...SKY,
      lnb: ["lnb-stacked", { standard: "EN 50607", bandSet: "own", ownBands: rows, ownWidthMHz: 36 }],
      down: ["cable", { lengthM: 18 }],
      plate: ["outlet-sat"],
      set: ["receiver-stacked", { tuners: 8, userBands: rows }],
    },
    "dish.sky > lnb.sky, lnb.out > down.in, down.out > plate.in, plate.sat > set.sat",
  );
}

/** A unit of the wideband kind under the roof: one cable to each of two rooms. */
function widebandUnit(): Design {
  const star = drops(outs("unit", 2), [12, 18], {
    plate: ["outlet-sat", "sat"],
    set: ["receiver-stacked", "sat"],
  });
  return draw(
    {
      ...SKY,
      lnb: ["lnb-wideband"],
      unit: [
        "stacking-converter",
        { feed: "wideband", outputs: 2, terrestrial: false, bandSet: "four", standard: "EN 50494" },
      ],
      ...star.parts,
    },
    `dish.sky > lnb.sky, lnb.v > unit.v, lnb.h > unit.h, ${star.wires}`,
  );
}

export const SOUND_DESIGNS: Readonly<Record<string, () => Design>> = {
  twin,
  quad,
  multiswitchHouse,
  cascade,
  twoSatelliteBlock,
  positionSwitch,
  singleCable,
  stackedBlock,
  wideband,
  widebandPair,
  terrestrialHouse,
  mastheadAndLaunch,
  mastFilter,
  strongTransmitter,
  radioAndTv,
  riser,
  stairwell,
  sharedCable,
  longRun,
  recorder,
  widebandUnit,
};
