/** Faults of satellite houses and blocks of flats, from one receiver to sixteen, and such in which all is well. */
import type { Sketch } from "../draw.ts";
import { c, dish, one, rx, sound, type TradeCase, two } from "./drawings.ts";

type Of = Readonly<Record<string, unknown>>;
type Drawing = readonly [Sketch, string];

/** What receivers side by side ask for, so that no quarter is without somebody who watches it. */
const ASKS: readonly Of[] = [
  { polarisation: "H", half: "high" },
  {},
  { polarisation: "H" },
  { half: "high" },
];

/** Drop cable, plate and receiver for each room; `from` names the output that each hangs on. */
function rooms(from: (n: number) => string, names: readonly string[], each: Of = {}): Drawing {
  const parts: Record<string, Sketch[string]> = {};
  const wires = names.map((name, n) => {
    parts[`${name}Box`] = rx({ ...ASKS[n % 4], ...each });
    parts[`${name}Run`] = c(9 + ((n * 7) % 19));
    parts[`${name}Plate`] = ["outlet-sat"];
    return `${name}Plate.sat > ${name}Box.sat, ${from(n + 1)} > ${name}Run.in, ${name}Run.out > ${name}Plate.in`;
  });
  return [parts, wires.reverse().join(", ")];
}

/** Several drawings and what is added; later parts stand for earlier ones of the same name. */
function together(...drawings: readonly Drawing[]): Drawing {
  return [
    Object.assign({}, ...drawings.map(([parts]) => parts)) as Sketch,
    drawings
      .map(([, wires]) => wires)
      .filter((wires) => wires !== "")
      .join(", "),
  ];
}

/** The same drawing with one part after the other exchanged. */
const but = ([parts, wires]: Drawing, other: Sketch): Drawing => [{ ...parts, ...other }, wires];

/** The same drawing with a wire led otherwise, or none (empty) in its place. */
function rewired([parts, wires]: Drawing, ...changes: readonly (readonly [string, string])[]): Drawing {
  let list = wires.split(", ");
  for (const [old, now] of changes) {
    if (!list.includes(old)) throw new Error(`no wire ${old}`);
    list = list.flatMap((wire) => (wire === old ? (now === "" ? [] : now.split(", ")) : [wire]));
  }
  return [parts, list.join(", ")];
}

const FOUR = ["attic", "study", "den", "nursery"] as const;
const EIGHT = [...FOUR, "hall", "shop", "bar", "cellar"] as const;
const SIXTEEN = Array.from({ length: 16 }, (_, n) => `f${((n * 5) % 16) + 1}x`);

/** A universal converter with an output for each room. */
const lnbHouse = (outputs: "1" | "2" | "4" | "8", names: readonly string[], lnb: Of = {}): Drawing =>
  together(
    rooms((n) => (outputs === "1" ? "head.out" : `head.out${n}`), names),
    [{ head: ["lnb-universal", { outputs, ...lnb }], bowl: dish }, "bowl.sky > head.sky"],
  );

const QUARTERS = ["hh", "vl", "hl", "vh"] as const;

/** A quattro converter, four leads from the roof and a multiswitch. */
const flats = (names: readonly string[], outputs: number, ms: Of = {}): Drawing =>
  together(
    rooms((n) => `matrix.out${n}`, names),
    [
      {
        matrix: ["multiswitch", { terrestrial: false, outputs, ...ms }],
        leadHh: c(11),
        leadVl: c(11),
        bowl: dish,
        leadHl: c(11),
        leadVh: c(11),
        head: ["lnb-quattro"],
      },
      "head.hh > leadHh.in, leadHh.out > matrix.hh, head.vl > leadVl.in, leadVl.out > matrix.vl, head.hl > leadHl.in, leadHl.out > matrix.hl, head.vh > leadVh.in, leadVh.out > matrix.vh, bowl.sky > head.sky",
    ],
  );

/** Three units one below the other; the first hands on to the second, the second to the third. */
const tower = (top: Of = {}, middle: Of = {}, bottom: Of = {}): Drawing => {
  const unit = (of: Of): Sketch[string] => [
    "multiswitch",
    { terrestrial: false, outputs: 4, cascade: true, supply: "trunk", build: "tap", ...of },
  ];
  return together(
    rooms((n) => `lower.out${n}`, ["p9", "p4"]),
    rooms((n) => `upper.out${n}`, ["q1", "q7", "q3"]),
    rooms((n) => `mid.out${n}`, ["k2", "k6", "k5"]),
    [
      {
        lower: unit({ cascade: false, supply: "mains", tapLossDb: 10, ...bottom }),
        upper: unit({ tapLossDb: 18, ...top }),
        bowl: ["dish", { diameterM: 1.2 }],
        mid: unit({ tapLossDb: 14, ...middle }),
        head: ["lnb-quattro", { gainDb: 60 }],
      },
      [
        ...QUARTERS.map((q) => `mid.${q}-thru > lower.${q}`),
        ...QUARTERS.map((q) => `head.${q} > upper.${q}`),
        ...QUARTERS.map((q) => `upper.${q}-thru > mid.${q}`),
        "bowl.sky > head.sky",
      ].join(", "),
    ],
  );
};

/** Two dishes with a converter each, a position switch under the roof, one receiver. */
const twoDishes = (box: Of, extra: Sketch = {}): Drawing => [
  {
    east: dish,
    box: rx(box),
    relay: ["position-switch"],
    down: c(16),
    headB: ["lnb-universal"],
    west: ["dish", { diameterM: 1, orbitalPositionDegE: 5 }],
    headA: ["lnb-universal"],
    ...extra,
  },
  "relay.out > down.in, down.out > box.sat, headB.out > relay.in2, headA.out > relay.in1, west.sky > headB.sky, east.sky > headA.sky",
];

/** Two quattro converters on a multiswitch for two satellites. */
const twoSatellites = (boxes: Drawing, ms: Of = {}): Drawing =>
  together(boxes, [
    {
      matrix: ["multiswitch", { terrestrial: false, satelliteInputs: "8", outputs: 8, ...ms }],
      east: dish,
      headB: ["lnb-quattro"],
      headA: ["lnb-quattro"],
      west: ["dish", { diameterM: 1, orbitalPositionDegE: 5 }],
    },
    [
      ...QUARTERS.map((q) => `headB.${q} > matrix.${q}2`),
      "west.sky > headB.sky, east.sky > headA.sky",
      ...QUARTERS.map((q) => `headA.${q} > matrix.${q}`),
    ].join(", "),
  ]);

const FIRST_ONLY = rooms((n) => `matrix.out${n}`, FOUR, { position: "1" });
const BOTH = together(
  rooms((n) => `matrix.out${n}`, ["attic", "study", "den"], { position: "1" }),
  rooms((n) => `matrix.out${n + 3}`, ["hall", "shop"], { position: "2" }),
);

/** A part put into a wire. */
const into = (drawing: Drawing, wire: string, id: string, part: Sketch[string]): Drawing => {
  const [from, to] = wire.split(" > ");
  return rewired(but(drawing, { [id]: part }), [wire, `${from} > ${id}.in, ${id}.out > ${to}`]);
};

export const SATELLITE_CASES: readonly TradeCase[] = [
  // One house, universal converters.
  one(
    "a single LNB split for a second room",
    "fork head",
    ...together(
      rooms((n) => `fork.out${n}`, ["lounge", "bed"]),
      [
        { fork: ["splitter", { range: "sat" }], bowl: dish, head: ["lnb-universal"], drop: c(14) },
        "bowl.sky > head.sky, head.out > drop.in, drop.out > fork.in",
      ],
    ),
  ),
  one(
    "the second lead of a twin LNB hangs loose on the roof",
    "head studyRun",
    ...rewired(lnbHouse("2", ["attic", "study"]), ["head.out2 > studyRun.in", ""]),
  ),
  one(
    "a masthead amplifier for UHF in a drop behind a quad LNB",
    "lift",
    ...into(lnbHouse("4", FOUR), "denRun.out > denPlate.in", "lift", ["amp-masthead"]),
  ),
  one(
    "a small television alone at an octo LNB cannot feed it",
    "studyBox head",
    // An octo that works whole for any one receiver: 250 to 400 mA, from memory.
    ...but(lnbHouse("8", ["attic", "study", "den"], { commonMa: 340, outputMa: 0 }), {
      studyBox: rx({ limitMa: 250 }),
      atticBox: rx({ state: "standby" }),
      denBox: rx({ state: "standby" }),
    }),
    "studyBox studyPlate studyRun head",
  ),
  one(
    "a quad LNB at the end of a long steel drop dies at 13 V",
    "studyRun",
    // A quad that works whole for any one receiver: 180 to 280 mA, from memory.
    ...but(lnbHouse("4", ["attic", "study"], { commonMa: 200, outputMa: 0 }), {
      atticBox: rx({ state: "unplugged" }),
      studyRun: c(45, { grade: "clad-0.8" }),
    }),
    "studyRun head",
  ),
  one(
    "a corroded plug on the roof lets horizontal fall back to vertical",
    "plug",
    ...into(lnbHouse("4", ["attic"]), "head.out1 > atticRun.in", "plug", [
      "bad-joint",
      { lossDb: 2, ohms: 20 },
    ]),
  ),
  one(
    "the inner conductor of one of eight drops is broken",
    "snap",
    ...into(lnbHouse("8", EIGHT), "shopRun.out > shopPlate.in", "snap", ["bad-joint", { fault: "open" }]),
  ),
  one(
    "a pad without supply pass behind a quad LNB",
    "pad",
    ...into(lnbHouse("4", FOUR), "nurseryPlate.sat > nurseryBox.sat", "pad", ["attenuator", { lossDb: 3 }]),
  ),
  one(
    "a DC block was left in a line when the quad LNB came",
    "stop",
    ...into(lnbHouse("4", ["attic", "study", "den"]), "head.out2 > studyRun.in", "stop", ["dc-block"]),
  ),
  one(
    "a twin receiver with one of its two leads plugged in",
    "duo head",
    {
      duo: ["receiver-sat-twin"],
      lead: c(17),
      head: ["lnb-universal", { outputs: "2" }],
      bowl: dish,
      wall: ["outlet-sat"],
    },
    "wall.sat > duo.sat1, lead.out > wall.in, head.out1 > lead.in, bowl.sky > head.sky",
  ),
  one(
    "a twin receiver with both inputs on a splitter",
    "tee head",
    {
      bowl: dish,
      tee: ["splitter", { range: "sat" }],
      duo: ["receiver-sat-twin"],
      lead: c(17),
      head: ["lnb-universal"],
    },
    "tee.out2 > duo.sat1, tee.out1 > duo.sat2, lead.out > tee.in, head.out > lead.in, bowl.sky > head.sky",
  ),
  one(
    "the second cable of a twin plate is not joined at the LNB",
    "head run2 wall",
    {
      run1: c(12),
      a: rx({ polarisation: "H" }),
      run2: c(12),
      b: rx({ half: "high" }),
      wall: ["outlet-sat-twin"],
      head: ["lnb-universal", { outputs: "4" }],
      bowl: dish,
    },
    "wall.sat2 > b.sat, run2.out > wall.in2, run1.out > wall.in, wall.sat > a.sat, head.out3 > run1.in, bowl.sky > head.sky",
  ),
  one(
    "ninety metres of thin cable to the gatehouse",
    "studyRun",
    ...but(lnbHouse("2", ["attic", "study"]), { studyRun: c(90, { grade: "copper-0.8" }) }),
  ),
  one(
    "a line amplifier at full gain on a short drop",
    "lift",
    ...into(lnbHouse("2", ["attic", "study"]), "head.out1 > atticRun.in", "lift", [
      "amp-if",
      { gainDb: 30, slopeDb: 0 },
    ]),
  ),
  one(
    "an old receiver gives only 15.2 V for horizontal",
    "denBox",
    ...but(lnbHouse("4", ["attic", "study", "den"]), {
      atticBox: rx({ state: "unplugged" }),
      studyBox: rx({ state: "unplugged" }),
      denRun: c(38),
      denBox: rx({ polarisation: "H", volts18: 15.2 }),
    }),
  ),
  one(
    "a dish knocked out of line",
    "bowl",
    ...but(lnbHouse("4", FOUR), { bowl: ["dish", { diameterM: 0.8, pointingLossDb: 12 }] }),
  ),
  one(
    "an LNB for one old band only",
    "head",
    ...lnbHouse("1", ["attic"], { lowLoMHz: 10_000, highLoMHz: 10_000 }),
  ),
  one(
    "a splitter that passes supply from its other leg only",
    "tee",
    ...together(
      rooms((n) => `tee.out${n}`, ["attic", "study"]),
      [
        {
          atticBox: rx({ state: "unplugged" }),
          tee: ["splitter", { range: "sat", dc: "one" }],
          head: ["lnb-universal"],
          bowl: dish,
        },
        "head.out > tee.in, bowl.sky > head.sky",
      ],
    ),
  ),
  one(
    "a phone mast filter in a cable that TV and satellite share",
    "sieve",
    {
      set: ["receiver-tv"],
      box: rx({ half: "high" }),
      wall: ["outlet-diplexed"],
      run: c(15),
      sieve: ["filter-mobile"],
      join: ["diplexer-combine"],
      uhf: ["aerial-uhf", { levelDbuv: 68 }],
      head: ["lnb-universal"],
      bowl: dish,
    },
    "wall.tv > set.in, wall.sat > box.sat, run.out > wall.in, sieve.out > run.in, join.out > sieve.in, uhf.out > join.tv, head.out > join.sat, bowl.sky > head.sky",
  ),
  one(
    "a diplexer that passes supply on its TV side only",
    "join",
    {
      wall: ["outlet-diplexed"],
      bowl: dish,
      join: ["diplexer-combine", { dc: "tv" }],
      uhf: ["aerial-uhf", { levelDbuv: 68 }],
      set: ["receiver-tv"],
      head: ["lnb-universal"],
      box: rx(),
      run: c(15),
    },
    "uhf.out > join.tv, wall.tv > set.in, head.out > join.sat, wall.sat > box.sat, run.out > wall.in, join.out > run.in, bowl.sky > head.sky",
  ),
  one(
    "the receiver is plugged into the TV socket of its plate",
    "wall box",
    {
      wall: ["outlet-diplexed"],
      box: rx({ polarisation: "H" }),
      run: c(15),
      head: ["lnb-universal"],
      bowl: dish,
    },
    "run.out > wall.in, wall.tv > box.sat, head.out > run.in, bowl.sky > head.sky",
  ),
  one(
    "a 12 V inserter of the old aerial left in a satellite line",
    "psu",
    ...into(lnbHouse("2", ["attic", "study"]), "head.out1 > atticRun.in", "psu", ["power-inserter"]),
  ),
  one(
    "a recorder in standby holds the shared line at 18 V",
    "fork idleBox",
    ...but(
      together(
        rooms((n) => `fork.out${n}`, ["idle", "lounge"]),
        [
          { fork: ["splitter", { range: "sat" }], bowl: dish, head: ["lnb-universal"] },
          "bowl.sky > head.sky, head.out > fork.in",
        ],
      ),
      { idleBox: rx({ polarisation: "H", state: "standby", standbySupply: true }) },
    ),
    "fork idleBox head",
  ),

  // Multiswitches.
  one(
    "two leads from the roof are crossed at the multiswitch",
    "matrix leadHl leadVh head",
    ...rewired(
      flats(EIGHT, 8),
      ["leadHl.out > matrix.hl", "leadHl.out > matrix.vh"],
      ["leadVh.out > matrix.vh", "leadVh.out > matrix.hl"],
    ),
  ),
  one(
    "a quad LNB where a quattro belongs, sixteen flats",
    "head",
    ...rewired(
      but(flats(SIXTEEN, 16), { head: ["lnb-universal", { outputs: "4" }] }),
      ["head.hh > leadHh.in", "head.out3 > leadHh.in"],
      ["head.vl > leadVl.in", "head.out1 > leadVl.in"],
      ["head.hl > leadHl.in", "head.out4 > leadHl.in"],
      ["head.vh > leadVh.in", "head.out2 > leadVh.in"],
    ),
  ),
  one(
    "a quattro LNB straight onto three receivers",
    "head",
    ...together(
      rooms((n) => `head.${["hl", "vh", "vl"][n - 1]}`, ["attic", "study", "den"]),
      [{ head: ["lnb-quattro"], bowl: dish }, "bowl.sky > head.sky"],
    ),
  ),
  one("the mains plug of a multiswitch is pulled", "matrix", ...flats(EIGHT, 8, { mainsOn: false })),
  one("the LNB feed of a multiswitch is switched off", "matrix", ...flats(FOUR, 6, { feedsLnb: false })),
  one(
    "a multiswitch whose small mains unit cannot feed the LNB",
    "matrix head",
    ...flats(EIGHT, 12, { lnbLimitMa: 150 }),
  ),
  one(
    "a plate for TV in flat eleven of sixteen",
    "f11xPlate",
    ...rewired(but(flats(SIXTEEN, 16), { f11xPlate: ["outlet-tv"] }), [
      "f11xPlate.sat > f11xBox.sat",
      "f11xPlate.tv > f11xBox.sat",
    ]),
  ),
  one(
    "a riser plate in the drop of a multiswitch",
    "barPlate",
    ...rewired(but(flats(EIGHT, 8), { barPlate: ["outlet-through"] }), [
      "barPlate.sat > barBox.sat",
      "barPlate.tv > barBox.sat",
    ]),
  ),
  one(
    "the full multiswitch got a splitter for two more rooms",
    "fork matrix",
    ...together(rewired(flats(FOUR, 4), ["matrix.out2 > studyRun.in", ""]), [
      {
        spareBox: rx({ polarisation: "H" }),
        fork: ["splitter", { range: "sat" }],
        spareRun: c(6),
      },
      "fork.out2 > spareRun.in, spareRun.out > spareBox.sat, matrix.out2 > fork.in, fork.out1 > studyRun.in",
    ]),
  ),
  one(
    "a plug in a drop of a multiswitch is shorted",
    "crush",
    ...into(flats(EIGHT, 8), "matrix.out6 > shopRun.in", "crush", ["bad-joint", { fault: "shorted" }]),
  ),
  one(
    "a pad of twenty decibels forgotten in a drop",
    "pad",
    ...into(but(flats(FOUR, 8), { nurseryRun: c(34) }), "nurseryRun.out > nurseryPlate.in", "pad", [
      "attenuator",
      { lossDb: 20, dcPass: true },
    ]),
  ),
  one(
    "a multiswitch fed by one receiver with little current",
    "matrix denBox head",
    ...but(flats(["attic", "study", "den"], 4, { supply: "receivers" }), {
      atticBox: rx({ state: "unplugged" }),
      studyBox: rx({ state: "unplugged" }),
      denBox: rx({ limitMa: 200 }),
    }),
    "matrix denBox head",
  ),
  one("the unused leads of a cascade's last unit hang open", "lower", ...tower({}, {}, { cascade: true })),
  one(
    "one lead between two units of a cascade is not plugged in",
    "mid lower",
    ...rewired(tower(), ["mid.hl-thru > lower.hl", ""]),
  ),
  one(
    "two leads between two units of a cascade are crossed",
    "upper mid",
    ...rewired(
      tower(),
      ["upper.hh-thru > mid.hh", "upper.hh-thru > mid.vh"],
      ["upper.vh-thru > mid.vh", "upper.vh-thru > mid.hh"],
    ),
  ),
  one("the mains plug of a cascade's last unit is pulled", "lower", ...tower({}, {}, { mainsOn: false })),
  one(
    "the middle unit of a cascade has taps of far too much loss",
    "mid",
    ...tower({}, { tapLossDb: 38 }, {}),
  ),

  // Two dishes.
  one("a receiver asks for position 3 of a switch for two", "box", ...twoDishes({ position: "3" })),
  one("a receiver behind a position switch has no position set", "box", ...twoDishes({})),
  one(
    "the second LNB is not plugged into the position switch",
    "relay headB",
    ...rewired(twoDishes({ position: "2" }), ["headB.out > relay.in2", ""]),
  ),
  one(
    "a quattro LNB on the second input of a position switch",
    "headB",
    ...rewired(twoDishes({ position: "2", polarisation: "H" }, { headB: ["lnb-quattro"] }), [
      "headB.out > relay.in2",
      "headB.vl > relay.in2",
    ]),
  ),
  one(
    "two rooms share a position switch by a splitter",
    "fork",
    ...rewired(
      but(twoDishes({ position: "2" }), {
        fork: ["splitter", { range: "sat" }],
        second: rx({ position: "1", polarisation: "H" }),
      }),
      ["down.out > box.sat", "down.out > fork.in, fork.out1 > box.sat, fork.out2 > second.sat"],
    ),
    "fork relay",
  ),
  one(
    "the second satellite's LNB lies on the bench, without a dish",
    "headB",
    ...rewired(twoSatellites(BOTH), ["west.sky > headB.sky", ""]),
    "headB west",
  ),
  one(
    "the dish of a second satellite is missing, which nobody watches yet",
    "headB",
    ...rewired(twoSatellites(FIRST_ONLY), ["west.sky > headB.sky", ""]),
    "headB west",
  ),
  one(
    "nothing is plugged in for the second satellite that two flats ask for",
    "matrix headB",
    ...rewired(twoSatellites(BOTH), ...QUARTERS.map((q) => [`headB.${q} > matrix.${q}2`, ""] as const)),
    "matrix headB",
  ),

  // Two faults at once.
  two(
    "a lead from the roof is off, and a plate for TV is in the shop",
    ["matrix leadVl head", "shopPlate"],
    ...rewired(
      but(flats(EIGHT, 8), { shopPlate: ["outlet-tv"] }),
      ["head.vl > leadVl.in", ""],
      ["shopPlate.sat > shopBox.sat", "shopPlate.tv > shopBox.sat"],
    ),
  ),
  two(
    "a DC block in one drop of an octo LNB, a broken plug in another",
    ["stop", "snap"],
    ...into(
      into(lnbHouse("8", EIGHT), "head.out7 > barRun.in", "stop", ["dc-block"]),
      "denRun.out > denPlate.in",
      "snap",
      ["bad-joint", { fault: "open" }],
    ),
  ),
  two(
    "one flat has forty metres of old cable, another a forgotten pad",
    ["cellarRun", "pad"],
    ...into(
      but(flats(EIGHT, 8), { hallRun: c(34), cellarRun: c(60, { grade: "old-solid" }) }),
      "matrix.out5 > hallRun.in",
      "pad",
      ["attenuator", { lossDb: 20, dcPass: true }],
    ),
  ),

  // In order.
  sound("a single LNB, a plate and a receiver", ...lnbHouse("1", ["lodge"])),
  sound(
    "a twin LNB, a twin plate and a recorder",
    {
      duo: ["receiver-sat-twin"],
      wall: ["outlet-sat-twin"],
      r2: c(21),
      bowl: dish,
      r1: c(21),
      head: ["lnb-universal", { outputs: "2" }],
    },
    "bowl.sky > head.sky, head.out2 > r1.in, head.out1 > r2.in, r1.out > wall.in, r2.out > wall.in2, wall.sat2 > duo.sat2, wall.sat > duo.sat1",
  ),
  sound("an octo LNB with six rooms, two outputs free", ...lnbHouse("8", EIGHT.slice(0, 6))),
  sound("sixteen flats behind a quattro LNB and a multiswitch", ...flats(SIXTEEN, 16)),
  sound("three units of a cascade, the last one fed by the mains", ...tower()),
  sound("two dishes and a position switch", ...twoDishes({ position: "2", polarisation: "H", half: "high" })),
  sound("five flats with two satellites", ...twoSatellites(BOTH)),
  sound(
    "fifty metres of good cable with a line amplifier under the roof",
    {
      far: rx({ polarisation: "H", half: "high" }),
      long: c(55, { grade: "copper-1.25" }),
      lift: ["amp-if", { gainDb: 12 }],
      head: ["lnb-universal"],
      bowl: dish,
      short: c(12),
    },
    "short.out > lift.in, lift.out > long.in, long.out > far.sat, head.out > short.in, bowl.sky > head.sky",
  ),
  sound(
    "four flats with TV and satellite over one cable each",
    ...together(
      [
        {
          matrix: ["multiswitch", { outputs: 4 }],
          uhf: ["aerial-uhf", { levelDbuv: 78 }],
          head: ["lnb-quattro"],
          bowl: dish,
        },
        `uhf.out > matrix.ter, bowl.sky > head.sky, ${QUARTERS.map((q) => `head.${q} > matrix.${q}`).join(", ")}`,
      ],
      ...FOUR.map(
        (name, n): Drawing => [
          {
            [`${name}Set`]: ["receiver-tv"],
            [`${name}Wall`]: ["outlet-diplexed"],
            [`${name}Box`]: rx(ASKS[n]),
            [`${name}Run`]: c(12 + n),
          },
          `${name}Wall.tv > ${name}Set.in, ${name}Run.out > ${name}Wall.in, ${name}Wall.sat > ${name}Box.sat, matrix.out${n + 1} > ${name}Run.in`,
        ],
      ),
    ),
  ),
];
