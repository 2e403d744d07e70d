/** Faults of aerials, amplifiers and risers as tradesmen find them. Common practice, no source. */
import type { Sketch } from "../draw.ts";
import { c, dish, one, rx, sound, TRUNKS, type TradeCase, two } from "./drawings.ts";

type Of = Readonly<Record<string, unknown>>;
type Drawing = readonly [Sketch, string];

const uhf = (levelDbuv: number, o: Of = {}): readonly [string, Of] => ["aerial-uhf", { levelDbuv, ...o }];
const fm = (levelDbuv: number): readonly [string, Of] => ["aerial-fm", { levelDbuv }];
const dab = (levelDbuv: number): readonly [string, Of] => ["aerial-dab", { levelDbuv }];
const mast = (o: Of = {}): readonly [string, Of] => ["amp-masthead", o];
const psu = (o: Of = {}): readonly [string, Of] => ["power-inserter", o];
const amp = (o: Of = {}): readonly [string, Of] => ["amp-distribution", o];
const split = (ways: number, o: Of = {}): readonly [string, Of] => ["splitter", { ways, ...o }];
const tap = (tapLossDb: number, o: Of = {}): readonly [string, Of] => ["tap", { tapLossDb, ...o }];
const plate = ["outlet-tv"] as const;
const tv = ["receiver-tv"] as const;
const channels = (...numbers: readonly number[]): Of => ({
  channels: numbers.map((channel) => ({ channel, mode: "dvbt-64qam-2/3" })),
});

/** Parts in the order of their names, which is no order of signals. */
function mixed(...sketches: readonly Sketch[]): Sketch {
  const all = Object.assign({}, ...sketches) as Sketch;
  return Object.fromEntries(Object.entries(all).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** A cable, a plate and a set behind each of these sockets; named after `x` and counted from 1. */
function rooms(x: string, sockets: readonly string[], lengthM = 12, plates: Of = {}): Drawing {
  const parts: Record<string, Sketch[string]> = {};
  const wires = sockets.map((socket, i) => {
    const n = `${x}${i + 1}`;
    parts[`${n}run`] = c(lengthM + i);
    parts[`${n}box`] = ["outlet-tv", plates];
    parts[`${n}set`] = tv;
    return `${socket} > ${n}run.in, ${n}run.out > ${n}box.in, ${n}box.tv > ${n}set.in`;
  });
  return [parts, wires.join(", ")];
}

const legs = (part: string, count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `${part}.out${i + 1}`);
/** The outputs of a distribution amplifier. */
const ampOuts = (part: string, count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `${part}.out${i === 0 ? "" : i + 1}`);

/** Puts a head and several groups of rooms together. */
function all(head: Sketch, wires: string, ...groups: readonly Drawing[]): Drawing {
  return [
    mixed(head, ...groups.map(([parts]) => parts)),
    [wires, ...groups.map(([, w]) => w)].filter(Boolean).join(", "),
  ];
}

/** A riser of taps with one flat on each, 4 m from floor to floor; a load ends it. */
function tapRiser(from: string, losses: readonly number[], x = "f", dwellings = false): Drawing {
  const parts: Record<string, Sketch[string]> = { [`${x}end`]: ["load"] };
  const wires: string[] = [];
  let before = from;
  losses.forEach((loss, i) => {
    const n = `${x}${i + 1}`;
    parts[`${n}tap`] = tap(loss);
    parts[`${n}rise`] = c(4);
    parts[`${n}drop`] = c(9);
    parts[`${n}box`] = ["outlet-tv", dwellings ? { dwelling: n } : {}];
    parts[`${n}set`] = tv;
    wires.push(
      `${before} > ${n}rise.in, ${n}rise.out > ${n}tap.in, ${n}tap.tap1 > ${n}drop.in, ${n}drop.out > ${n}box.in, ${n}box.tv > ${n}set.in`,
    );
    before = `${n}tap.out`;
  });
  return [parts, [...wires, `${before} > ${x}end.in`].join(", ")];
}

/** A riser of through plates with a set on each, and an end plate. */
function plateRiser(from: string, losses: readonly number[], last = "outlet-end"): Drawing {
  const parts: Record<string, Sketch[string]> = { top: [last], topset: tv };
  const wires: string[] = [];
  let before = from;
  losses.forEach((loss, i) => {
    const n = `g${i + 1}`;
    parts[n] = ["outlet-through", { tapLossDb: loss }];
    parts[`${n}set`] = tv;
    parts[`${n}up`] = c(4);
    wires.push(`${before} > ${n}.in, ${n}.out > ${n}up.in, ${n}.tv > ${n}set.in`);
    before = `${n}up.out`;
  });
  return [parts, [...wires, `${before} > top.in, top.tv > topset.in`].join(", ")];
}

/** A quattro converter, a multiswitch with a terrestrial input, and plates with a set and a receiver each. */
function switched(count: number, ms: Of, head: Sketch, wires: string): Drawing {
  const parts: Record<string, Sketch[string]> = {
    dish,
    quattro: ["lnb-quattro"],
    ms: ["multiswitch", { outputs: count, ...ms }],
  };
  const runs = Array.from({ length: count }, (_, i) => {
    const n = `w${i + 1}`;
    parts[`${n}run`] = c(14 + i);
    parts[`${n}box`] = ["outlet-diplexed"];
    parts[`${n}set`] = tv;
    parts[`${n}rx`] = rx();
    return `ms.out${i + 1} > ${n}run.in, ${n}run.out > ${n}box.in, ${n}box.tv > ${n}set.in, ${n}box.sat > ${n}rx.sat`;
  });
  const trunks = TRUNKS.replaceAll("lnb.", "quattro.");
  return [mixed(head, parts), [wires, "dish.sky > quattro.sky", trunks, ...runs].join(", ")];
}

const SUPPLY: readonly TradeCase[] = [
  one(
    "an inserter between aerial and masthead amplifier",
    "unit boost",
    mixed({ yagi: uhf(48), unit: psu(), boost: mast(), lead: c(18), box: plate, set: tv }),
    "yagi.out > unit.in, unit.out > boost.in, boost.out > lead.in, lead.out > box.in, box.tv > set.in",
    "unit",
  ),
  one(
    "an inserter behind a plate that passes no supply",
    "box",
    mixed({ yagi: uhf(50), unit: psu(), boost: mast(), lead: c(14), box: plate, set: tv }),
    "yagi.out > boost.in, boost.out > lead.in, lead.out > box.in, box.tv > unit.in, unit.out > set.in",
    "box unit",
  ),
  one(
    "an inserter behind a splitter that passes no supply",
    "two",
    ...all(
      { yagi: uhf(50), boost: mast({ gainDb: 20 }), down: c(10), two: split(2, { dc: "none" }), unit: psu() },
      "yagi.out > boost.in, boost.out > down.in, down.out > two.in, two.out1 > unit.in",
      rooms("r", ["unit.out", "two.out2"]),
    ),
    "two unit",
  ),
  one(
    "an inserter on the third leg of a splitter that feeds from its first",
    "four unit",
    ...all(
      { top: uhf(50), boost: mast({ gainDb: 24 }), down: c(10), four: split(4, { dc: "one" }), unit: psu() },
      "top.out > boost.in, boost.out > down.in, down.out > four.in, four.out3 > unit.in",
      rooms("r", ["four.out1", "four.out2", "unit.out", "four.out4"]),
    ),
  ),
  one(
    "an inserter that is unplugged, behind the loft's splitter",
    "unit",
    ...all(
      { yagi: uhf(49), boost: mast({ gainDb: 22 }), unit: psu({ switchedOn: false }), three: split(3) },
      "yagi.out > boost.in, boost.out > unit.in, unit.out > three.in",
      rooms("q", legs("three", 3)),
    ),
  ),
  one(
    "a 24 V masthead amplifier on a 12 V inserter",
    "unit boost",
    ...all(
      { yagi: uhf(49), boost: mast({ gainDb: 22, minVolts: 18 }), down: c(12), unit: psu(), pair: split(2) },
      "yagi.out > boost.in, boost.out > down.in, down.out > unit.in, unit.out > pair.in",
      rooms("b", legs("pair", 2)),
    ),
  ),
  one(
    "a distribution amplifier that is not set to feed the masthead amplifier",
    "loft boost",
    ...all(
      { yagi: uhf(44), boost: mast({ gainDb: 18 }), down: c(15), loft: amp({ outputs: 4, gainDb: 8 }) },
      "yagi.out > boost.in, boost.out > down.in, down.out > loft.in",
      rooms("r", ampOuts("loft", 4)),
    ),
  ),
  one(
    "a phone mast filter that blocks the masthead amplifier's supply",
    "guard",
    ...all(
      {
        yagi: uhf(50),
        boost: mast({ gainDb: 20 }),
        down: c(10),
        guard: ["filter-mobile", { dcPass: false }],
        unit: psu(),
        pair: split(2),
      },
      "yagi.out > boost.in, boost.out > guard.in, guard.out > down.in, down.out > unit.in, unit.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
    "guard unit",
  ),
  one(
    "a long copper-clad downlead that starves the masthead amplifier",
    "lead",
    ...all(
      {
        yagi: uhf(56),
        boost: mast({ gainDb: 28, milliamps: 150 }),
        lead: c(110, { grade: "clad-0.8" }),
        unit: psu({ limitMa: 200 }),
        pair: split(2),
      },
      "yagi.out > boost.in, boost.out > lead.in, lead.out > unit.in, unit.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
    "lead unit",
  ),
  one(
    "two masthead amplifiers on an inserter for one",
    "unit",
    ...all(
      {
        west: uhf(48, channels(22, 25, 28)),
        east: uhf(47, channels(41, 44, 47)),
        wboost: mast({ milliamps: 80, gainDb: 24 }),
        eboost: mast({ milliamps: 80, gainDb: 24 }),
        mix: ["combiner", { dc: "all" }],
        unit: psu({ limitMa: 100 }),
        pair: split(2),
      },
      "west.out > wboost.in, east.out > eboost.in, wboost.out > mix.in1, eboost.out > mix.in2, mix.out > unit.in, unit.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
  ),
  one(
    "a short circuit in a masthead amplifier's downlead",
    "splice",
    ...all(
      {
        yagi: uhf(48),
        boost: mast({ gainDb: 24 }),
        splice: ["bad-joint", { fault: "shorted" }],
        down: c(14),
        unit: psu(),
        three: split(3),
      },
      "yagi.out > boost.in, boost.out > splice.in, splice.out > down.in, down.out > unit.in, unit.out > three.in",
      rooms("r", legs("three", 3)),
    ),
  ),
];

const BANDS: readonly TradeCase[] = [
  one(
    "a UHF masthead amplifier behind a triplexer for three aerials",
    "boost",
    mixed({
      ukw: fm(58),
      dr: dab(46),
      tvant: uhf(52),
      tri: ["triplexer-combine"],
      boost: mast({ gainDb: 14 }),
      unit: psu(),
      pair: split(2),
      p1: ["outlet-triplexed"],
      p2: ["outlet-triplexed"],
      set1: tv,
      set2: tv,
      radio1: ["receiver-fm"],
      radio2: ["receiver-dab"],
    }),
    "ukw.out > tri.fm, dr.out > tri.dab, tvant.out > tri.uhf, tri.out > boost.in, boost.out > unit.in, unit.out > pair.in, pair.out1 > p1.in, pair.out2 > p2.in, p1.tv > set1.in, p2.tv > set2.in, p1.radio > radio1.in, p2.radio > radio2.in",
  ),
  one(
    "a DAB radio at the radio socket of a plate for FM only",
    "box kitchen",
    mixed({
      dr: dab(52),
      tvant: uhf(58),
      tri: ["triplexer-combine"],
      lead: c(15),
      box: ["outlet-triplexed", { radio: "fm" }],
      set: tv,
      kitchen: ["receiver-dab"],
    }),
    "dr.out > tri.dab, tvant.out > tri.uhf, tri.out > lead.in, lead.out > box.in, box.tv > set.in, box.radio > kitchen.in",
  ),
  one(
    "the FM and the DAB aerial swapped at the amplifier",
    "hub ring fin",
    ...all(
      {
        ring: fm(60),
        fin: dab(50),
        yagi: uhf(60),
        hub: amp({ inputs: "three", outputs: 4, gainDb: 12 }),
        x: c(9),
        xbox: plate,
        xradio: ["receiver-fm"],
        y: c(9),
        ybox: plate,
        yradio: ["receiver-dab"],
      },
      "ring.out > hub.dab, fin.out > hub.fm, yagi.out > hub.in, hub.out3 > x.in, x.out > xbox.in, xbox.tv > xradio.in, hub.out4 > y.in, y.out > ybox.in, ybox.tv > yradio.in",
      rooms("r", ampOuts("hub", 2)),
    ),
  ),
  one(
    "UHF and DAB aerial swapped at the triplexer",
    "tri",
    ...all(
      {
        fin: dab(40),
        yagi: uhf(54),
        tri: ["triplexer-combine"],
        hub: amp({ gainDb: 18 }),
        four: split(4),
        run: c(8),
        box: plate,
        radio: ["receiver-dab"],
      },
      "fin.out > tri.uhf, yagi.out > tri.dab, tri.out > hub.in, hub.out > four.in, four.out4 > run.in, run.out > box.in, box.tv > radio.in",
      rooms("r", legs("four", 3)),
    ),
    "tri fin yagi",
  ),
  one(
    "a channel filter made for another transmitter",
    "sieve",
    ...all(
      { yagi: uhf(60), sieve: ["filter-channel"], hub: amp({ outputs: 2, gainDb: 12 }) },
      "yagi.out > sieve.in, sieve.out > hub.in",
      rooms("r", ampOuts("hub", 2)),
    ),
  ),
  one(
    "a band pass that ends below the two top channels",
    "pass",
    ...all(
      { yagi: uhf(68), pass: ["filter", { fromMHz: 470, toMHz: 606 }], four: split(4) },
      "yagi.out > pass.in, pass.out > four.in",
      rooms("r", legs("four", 4), 6),
    ),
  ),
  one(
    "a satellite line amplifier bought for TV",
    "bought",
    ...all(
      { yagi: uhf(48), bought: ["amp-if"], unit: psu(), pair: split(2) },
      "yagi.out > bought.in, bought.out > unit.in, unit.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
  ),
  one(
    "a satellite equaliser in a TV line",
    "tilt",
    mixed({
      yagi: uhf(54),
      tilt: ["equaliser", { slopeDb: 12 }],
      lead: c(15),
      box: plate,
      set: tv,
    }),
    "yagi.out > tilt.in, tilt.out > lead.in, lead.out > box.in, box.tv > set.in",
  ),
  one(
    "two aerials that bring the same channel onto one combiner",
    "side mix",
    ...all(
      {
        main: uhf(60, channels(23, 26, 30)),
        side: uhf(58, channels(26, 39, 45)),
        mix: ["combiner"],
        hub: amp({ outputs: 4, gainDb: 14 }),
      },
      "main.out > mix.in1, side.out > mix.in2, mix.out > hub.in",
      rooms("r", ampOuts("hub", 4)),
    ),
    "side mix main",
  ),
  one(
    "a plain combiner for FM and TV that costs what the set needs",
    "mix",
    mixed({ ring: fm(66), yagi: uhf(51), mix: ["combiner"], lead: c(20), box: plate, set: tv }),
    "ring.out > mix.in1, yagi.out > mix.in2, mix.out > lead.in, lead.out > box.in, box.tv > set.in",
    "mix yagi",
  ),
  one(
    "a converter on the input of a plain combiner that gets no supply",
    "mix",
    mixed({
      dish,
      eye: ["lnb-universal"],
      yagi: uhf(66),
      mix: ["combiner"],
      lead: c(16),
      box: ["outlet-diplexed"],
      set: tv,
      sat: rx(),
    }),
    "dish.sky > eye.sky, yagi.out > mix.in1, eye.out > mix.in2, mix.out > lead.in, lead.out > box.in, box.tv > set.in, box.sat > sat.sat",
  ),
  one(
    "TV set and satellite receiver swapped at the plate",
    "box set sat",
    mixed({
      dish,
      eye: ["lnb-universal"],
      yagi: uhf(66),
      mix: ["diplexer-combine"],
      lead: c(16),
      box: ["outlet-diplexed"],
      set: tv,
      sat: rx(),
    }),
    "dish.sky > eye.sky, yagi.out > mix.tv, eye.out > mix.sat, mix.out > lead.in, lead.out > box.in, box.tv > sat.sat, box.sat > set.in",
  ),
  one(
    "an FM radio at the TV socket of a riser plate",
    "second radio",
    mixed({
      ring: fm(62),
      yagi: uhf(62),
      tri: ["triplexer-combine"],
      hub: amp({ gainDb: 18 }),
      first: ["outlet-through", { tapLossDb: 14 }],
      rise: c(5),
      second: ["outlet-end", { lossDb: 10 }],
      set: tv,
      radio: ["receiver-fm"],
    }),
    "ring.out > tri.fm, yagi.out > tri.uhf, tri.out > hub.in, hub.out > first.in, first.out > rise.in, rise.out > second.in, first.tv > set.in, second.tv > radio.in",
  ),
];

const LEVELS: readonly TradeCase[] = [
  one(
    "an amplifier where the transmitter is near",
    "hub",
    ...all(
      { yagi: uhf(78), hub: amp({ gainDb: 20, outputs: 4 }) },
      "yagi.out > hub.in",
      rooms("r", ampOuts("hub", 4)),
    ),
  ),
  one(
    "a masthead amplifier in sight of the transmitter",
    "boost",
    ...all(
      { yagi: uhf(82), boost: mast({ gainDb: 26 }), unit: psu(), four: split(4) },
      "yagi.out > boost.in, boost.out > unit.in, unit.out > four.in",
      rooms("r", legs("four", 4), 10),
    ),
    "boost yagi",
  ),
  one(
    "an attenuator left behind in the loft",
    "old",
    ...all(
      { yagi: uhf(64), old: ["attenuator", { lossDb: 20 }], down: c(10), pair: split(2) },
      "yagi.out > down.in, down.out > old.in, old.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
  ),
  one(
    "an amplifier with its input attenuator turned up",
    "hub",
    ...all(
      { yagi: uhf(54), hub: amp({ gainDb: 20, padDb: 20 }), four: split(4) },
      "yagi.out > hub.in, hub.out > four.in",
      rooms("r", legs("four", 4)),
    ),
  ),
  one(
    "a launch amplifier turned down before sixteen outlets",
    "launch",
    ...all(
      {
        yagi: uhf(56),
        launch: amp({ gainDb: 7, outputDbuv: 112 }),
        halves: split(2),
        left: split(8),
        right: split(8),
      },
      "yagi.out > launch.in, launch.out > halves.in, halves.out1 > left.in, halves.out2 > right.in",
      rooms("l", legs("left", 8), 8),
      rooms("r", legs("right", 8), 10),
    ),
  ),
  one(
    "an FM aerial far too strong beside a UHF aerial",
    "ring launch",
    mixed({
      ring: fm(80),
      yagi: uhf(58),
      tri: ["triplexer-combine"],
      launch: amp({ gainDb: 26, outputDbuv: 114 }),
      trunk: c(50),
      pair: split(2),
      p1: ["outlet-triplexed"],
      p2: ["outlet-triplexed"],
      s1: tv,
      s2: tv,
      f1: ["receiver-fm"],
      f2: ["receiver-fm"],
    }),
    "ring.out > tri.fm, yagi.out > tri.uhf, tri.out > launch.in, launch.out > trunk.in, trunk.out > pair.in, pair.out1 > p1.in, pair.out2 > p2.in, p1.tv > s1.in, p2.tv > s2.in, p1.radio > f1.in, p2.radio > f2.in",
    "ring",
  ),
  one(
    "eight outlets on a splitter without an amplifier",
    "eight yagi",
    ...all(
      { yagi: uhf(58), down: c(8), eight: split(8) },
      "yagi.out > down.in, down.out > eight.in",
      rooms("r", legs("eight", 8)),
    ),
    "eight yagi down",
  ),
  one(
    "a radio input turned all the way down",
    "hub",
    ...all(
      {
        fin: dab(46),
        yagi: uhf(58),
        hub: amp({ inputs: "two", outputs: 4, radioGainDb: -20 }),
        run: c(11),
        box: plate,
        radio: ["receiver-dab"],
      },
      "fin.out > hub.radio, yagi.out > hub.in, hub.out4 > run.in, run.out > box.in, box.tv > radio.in",
      rooms("r", ampOuts("hub", 3)),
    ),
  ),
  one(
    "a corroded joint in one drop of six",
    "wet",
    ...all(
      { yagi: uhf(56), hub: amp({ outputs: 8, gainDb: 10 }), wet: ["bad-joint", { lossDb: 25 }] },
      "yagi.out > hub.in, hub.out5 > wet.in",
      rooms("k", [...ampOuts("hub", 4), "wet.out", "hub.out6"]),
    ),
  ),
  one(
    "old cable to a garden house",
    "ditch",
    mixed({ yagi: uhf(62), ditch: c(75, { grade: "old-solid" }), box: plate, set: tv }),
    "yagi.out > ditch.in, ditch.out > box.in, box.tv > set.in",
    "ditch yagi",
  ),
  one(
    "a weak aerial amplified only at the foot of a long downlead",
    "yagi lead hub",
    ...all(
      { yagi: uhf(34), lead: c(45), hub: amp({ gainDb: 30, outputs: 2 }) },
      "yagi.out > lead.in, lead.out > hub.in",
      rooms("r", ampOuts("hub", 2)),
    ),
    "yagi lead",
  ),
  one(
    "a tenant's own amplifier behind his plate",
    "gadget",
    ...all(
      {
        yagi: uhf(60),
        hub: amp({ gainDb: 16 }),
        four: split(4),
        flat: plate,
        gadget: amp({ gainDb: 30 }),
        pair: split(2),
        seta: tv,
        setb: tv,
      },
      "yagi.out > hub.in, hub.out > four.in, four.out4 > flat.in, flat.tv > gadget.in, gadget.out > pair.in, pair.out1 > seta.in, pair.out2 > setb.in",
      rooms("r", legs("four", 3)),
    ),
  ),
  one(
    "a phone mast in front of an old masthead amplifier",
    "beam boost",
    ...all(
      {
        yagi: uhf(55),
        beam: ["pick-up", { mastDbuv: 96 }],
        boost: mast({ gainDb: 22, uhfTo: "862" }),
        unit: psu(),
        three: split(3),
      },
      "yagi.out > beam.in, beam.out > boost.in, boost.out > unit.in, unit.out > three.in",
      rooms("r", legs("three", 3)),
    ),
  ),
  one(
    "a phone mast filter behind the amplifier instead of before it",
    "guard boost beam",
    ...all(
      {
        yagi: uhf(55),
        beam: ["pick-up", { mastDbuv: 96 }],
        boost: mast({ gainDb: 22, uhfTo: "862" }),
        guard: ["filter-mobile"],
        unit: psu(),
        pair: split(2),
      },
      "yagi.out > beam.in, beam.out > boost.in, boost.out > guard.in, guard.out > unit.in, unit.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
  ),
  one(
    "one local channel that drives the masthead amplifier too far",
    "yagi boost",
    ...all(
      {
        yagi: uhf(52, {
          channels: [22, 25, 28, 32, 40].map((channel) => ({
            channel,
            mode: "dvbt-64qam-2/3",
            levelOffsetDb: channel === 32 ? 30 : 0,
          })),
        }),
        boost: mast({ gainDb: 24 }),
        unit: psu(),
        four: split(4),
      },
      "yagi.out > boost.in, boost.out > unit.in, unit.out > four.in",
      rooms("r", legs("four", 4)),
    ),
  ),
  one(
    "a trap on a channel that people watch",
    "trap",
    ...all(
      {
        yagi: uhf(54),
        trap: ["filter", { mode: "stop", fromMHz: 574, toMHz: 582, dcPass: true }],
        hub: amp({ outputs: 4 }),
      },
      "yagi.out > trap.in, trap.out > hub.in",
      rooms("r", ampOuts("hub", 4)),
    ),
  ),
];

const SWITCHES: readonly TradeCase[] = [
  one(
    "a weak aerial straight into a passive multiswitch",
    "ms yagi",
    ...switched(
      6,
      { terrestrialLossDb: 18 },
      { yagi: uhf(56), lead: c(9) },
      "yagi.out > lead.in, lead.out > ms.ter",
    ),
    "ms yagi lead",
  ),
  one(
    "a multiswitch with its terrestrial amplifier turned up at a strong aerial",
    "ms",
    ...switched(
      4,
      { terrestrialBuild: "active", terrestrialGainDb: 26 },
      { yagi: uhf(80), lead: c(9) },
      "yagi.out > lead.in, lead.out > ms.ter",
    ),
    "ms yagi lead",
  ),
  one(
    "a second multiswitch whose terrestrial input was forgotten",
    "ms low",
    ...switched(
      2,
      { cascade: true },
      {
        yagi: uhf(78),
        low: ["multiswitch", { outputs: 2 }],
        bsmt: ["outlet-diplexed"],
        bset: tv,
        brx: rx(),
        brun: c(20),
        garden: ["outlet-diplexed"],
        gset: tv,
        grx: rx(),
        grun: c(28),
      },
      "yagi.out > ms.ter, ms.vl-thru > low.vl, ms.vh-thru > low.vh, ms.hl-thru > low.hl, ms.hh-thru > low.hh, low.out1 > brun.in, brun.out > bsmt.in, bsmt.tv > bset.in, bsmt.sat > brx.sat, low.out2 > grun.in, grun.out > garden.in, garden.tv > gset.in, garden.sat > grx.sat",
    ),
  ),
];

const launch = (gainDb: number): Of => ({ gainDb, outputDbuv: 114 });

const RISERS: readonly TradeCase[] = [
  one(
    "a riser of through plates of one value",
    "g1 g2 g3 g4 launch",
    ...all(
      { yagi: uhf(62), launch: amp(launch(28)) },
      "yagi.out > launch.in",
      plateRiser("launch.out", [8, 8, 8, 8, 8, 8, 8]),
    ),
    "g1 g2 g3 g4 launch",
  ),
  one(
    "a through plate at the end of the riser",
    "top",
    ...all(
      { yagi: uhf(62), launch: amp(launch(20)) },
      "yagi.out > launch.in",
      plateRiser("launch.out", [16, 14, 12, 10], "outlet-through"),
    ),
  ),
  one(
    // Whoever sees the loose cable looks for a way on at the plate before it.
    "an end plate in the middle of the riser",
    "mid more",
    ...all(
      {
        yagi: uhf(62),
        launch: amp(launch(14)),
        low: ["outlet-through", { tapLossDb: 14 }],
        lowset: tv,
        up: c(4),
        mid: ["outlet-end"],
        midset: tv,
        more: c(4),
        high: ["outlet-end"],
        highset: tv,
      },
      "yagi.out > launch.in, launch.out > low.in, low.out > up.in, up.out > mid.in, low.tv > lowset.in, mid.tv > midset.in, more.out > high.in, high.tv > highset.in",
    ),
    "mid more",
  ),
  one(
    "taps in the wrong order along a riser",
    "f5tap f4tap f1tap",
    ...all(
      { yagi: uhf(60), launch: amp(launch(17)) },
      "yagi.out > launch.in",
      tapRiser("launch.out", [8, 12, 16, 20, 26]),
    ),
    "f5tap f4tap launch",
  ),
  one(
    "one tap of too small a value near the amplifier",
    "f1tap",
    ...all(
      { yagi: uhf(62), launch: amp(launch(28)) },
      "yagi.out > launch.in",
      tapRiser("launch.out", [8, 18, 16, 14, 14, 12]),
    ),
  ),
  one(
    "line and branch swapped at a tap",
    "f2tap",
    ...all(
      { yagi: uhf(62), launch: amp(launch(24)), f3tap: tap(14), f3box: plate, f3set: tv, f3end: ["load"] },
      "yagi.out > launch.in, launch.out > f1tap.in, f1tap.out > f2tap.in, f1tap.tap1 > f1box.in, f1box.tv > f1set.in, f2tap.out > f2box.in, f2box.tv > f2set.in, f2tap.tap1 > f3tap.in, f3tap.tap1 > f3box.in, f3box.tv > f3set.in, f3tap.out > f3end.in",
      [{ f1tap: tap(16), f2tap: tap(16), f1box: plate, f2box: plate, f1set: tv, f2set: tv }, ""],
    ),
  ),
  one(
    "four flats on a resistive splitter",
    "star",
    ...all(
      { yagi: uhf(62), hub: amp({ gainDb: 16 }), star: split(4, { type: "resistive" }) },
      "yagi.out > hub.in, hub.out > star.in",
      ...[1, 2, 3, 4].map((n) => rooms(`d${n}`, [`star.out${n}`], 8 + n, { dwelling: `flat ${n}` })),
    ),
  ),
  one(
    "a tap of far too high a value for four flats",
    "floor",
    ...all(
      { yagi: uhf(60), launch: amp(launch(14)), floor: tap(30, { taps: "4" }), rest: ["load"] },
      "yagi.out > launch.in, launch.out > floor.in, floor.out > rest.in",
      rooms("r", ["floor.tap1", "floor.tap2", "floor.tap3", "floor.tap4"]),
    ),
    "floor launch",
  ),
  one(
    "a riser plate in a house with one set",
    "box",
    mixed({ yagi: uhf(58), lead: c(12), box: ["outlet-through", { tapLossDb: 20 }], set: tv }),
    "yagi.out > lead.in, lead.out > box.in, box.tv > set.in",
  ),
  one(
    "a broken inner conductor between the second and the third floor",
    "cracked",
    mixed({
      yagi: uhf(62),
      launch: amp(launch(22)),
      one: tap(16),
      onebox: plate,
      oneset: tv,
      two: tap(14),
      twobox: plate,
      twoset: tv,
      cracked: ["bad-joint", { fault: "open" }],
      three: tap(12),
      threebox: plate,
      threeset: tv,
      four: tap(10),
      fourbox: plate,
      fourset: tv,
      end: ["load"],
    }),
    "yagi.out > launch.in, launch.out > one.in, one.tap1 > onebox.in, onebox.tv > oneset.in, one.out > two.in, two.tap1 > twobox.in, twobox.tv > twoset.in, two.out > cracked.in, cracked.out > three.in, three.tap1 > threebox.in, threebox.tv > threeset.in, three.out > four.in, four.tap1 > fourbox.in, fourbox.tv > fourset.in, four.out > end.in",
  ),
  one(
    "a drop that was never put onto its splitter",
    "r3run four",
    ...all(
      { yagi: uhf(62), hub: amp({ gainDb: 14 }), four: split(4), r3run: c(14), r3box: plate, r3set: tv },
      "yagi.out > hub.in, hub.out > four.in, r3run.out > r3box.in, r3box.tv > r3set.in",
      rooms("q", ["four.out1", "four.out2", "four.out4"]),
    ),
    "r3run r3box four",
  ),
];

const PAIRS: readonly TradeCase[] = [
  two(
    "an inserter that is off, and a broken lead of the DAB aerial",
    ["unit", "lead"],
    ...all(
      {
        yagi: uhf(48),
        boost: mast({ gainDb: 22 }),
        unit: psu({ switchedOn: false }),
        three: split(3),
        fin: dab(54),
        lead: ["bad-joint", { fault: "open" }],
        run: c(12),
        radio: ["receiver-dab"],
      },
      "yagi.out > boost.in, boost.out > unit.in, unit.out > three.in, fin.out > run.in, run.out > lead.in, lead.out > radio.in",
      rooms("r", legs("three", 3)),
    ),
  ),
  two(
    "FM and DAB aerial swapped, and a broken drop to one set",
    ["hub ring fin", "snag"],
    ...all(
      {
        ring: fm(60),
        fin: dab(50),
        yagi: uhf(60),
        hub: amp({ inputs: "three", outputs: 8, gainDb: 12 }),
        x: c(9),
        xbox: plate,
        xradio: ["receiver-fm"],
        y: c(9),
        ybox: plate,
        yradio: ["receiver-dab"],
        snag: ["bad-joint", { fault: "open" }],
      },
      "ring.out > hub.dab, fin.out > hub.fm, yagi.out > hub.in, hub.out7 > x.in, x.out > xbox.in, xbox.tv > xradio.in, hub.out8 > y.in, y.out > ybox.in, ybox.tv > yradio.in, hub.out4 > snag.in",
      rooms("r", [...ampOuts("hub", 3), "snag.out"]),
    ),
  ),
  two(
    "a tap of too high a value in one flat, and an old attenuator in another",
    ["f2tap", "pad"],
    ...all(
      { yagi: uhf(62), launch: amp(launch(12)), pad: ["attenuator", { lossDb: 20 }], xbox: plate, xset: tv },
      "yagi.out > launch.in, f3tap.out > last.in, last.tap1 > pad.in, pad.out > xbox.in, xbox.tv > xset.in, last.out > stop.in",
      [
        {
          f1tap: tap(16),
          f2tap: tap(30),
          f3tap: tap(14),
          last: tap(12),
          stop: ["load"],
          f1box: plate,
          f2box: plate,
          f3box: plate,
          f1set: tv,
          f2set: tv,
          f3set: tv,
          rise1: c(4),
          rise2: c(4),
          rise3: c(12),
        },
        "launch.out > rise3.in, rise3.out > f1tap.in, f1tap.out > rise1.in, rise1.out > f2tap.in, f2tap.out > rise2.in, rise2.out > f3tap.in, f1tap.tap1 > f1box.in, f1box.tv > f1set.in, f2tap.tap1 > f2box.in, f2box.tv > f2set.in, f3tap.tap1 > f3box.in, f3box.tv > f3set.in",
      ],
    ),
  ),
];

const IN_ORDER: readonly TradeCase[] = [
  sound(
    "one aerial and one set",
    mixed({ yagi: uhf(60), lead: c(14), box: plate, set: tv }),
    "yagi.out > lead.in, lead.out > box.in, box.tv > set.in",
  ),
  sound(
    "a strong aerial on a three-way splitter",
    ...all({ yagi: uhf(73), three: split(3) }, "yagi.out > three.in", rooms("r", legs("three", 3))),
  ),
  sound(
    "a masthead amplifier, its inserter and four rooms",
    ...all(
      { yagi: uhf(50), boost: mast({ gainDb: 24 }), down: c(12), unit: psu(), four: split(4) },
      "yagi.out > boost.in, boost.out > down.in, down.out > unit.in, unit.out > four.in",
      rooms("r", legs("four", 4)),
    ),
  ),
  sound(
    "a masthead amplifier fed by the loft amplifier, eight rooms",
    ...all(
      {
        yagi: uhf(46),
        boost: mast({ gainDb: 14 }),
        down: c(10),
        hub: amp({ outputs: 8, gainDb: 10, aerialSupply: "12" }),
      },
      "yagi.out > boost.in, boost.out > down.in, down.out > hub.in",
      rooms("r", ampOuts("hub", 8)),
    ),
  ),
  sound(
    "three aerials, a triplexer and plates for TV and radio",
    mixed({
      ring: fm(58),
      fin: dab(50),
      yagi: uhf(58),
      tri: ["triplexer-combine"],
      hub: amp({ outputs: 2, gainDb: 10 }),
      a: c(14),
      b: c(20),
      p1: ["outlet-triplexed"],
      p2: ["outlet-triplexed"],
      s1: tv,
      s2: tv,
      f1: ["receiver-fm"],
      d2: ["receiver-dab"],
    }),
    "ring.out > tri.fm, fin.out > tri.dab, yagi.out > tri.uhf, tri.out > hub.in, hub.out > a.in, hub.out2 > b.in, a.out > p1.in, b.out > p2.in, p1.tv > s1.in, p2.tv > s2.in, p1.radio > f1.in, p2.radio > d2.in",
  ),
  sound(
    "a graded riser of eight flats",
    ...all(
      { yagi: uhf(62), launch: amp(launch(24)) },
      "yagi.out > launch.in",
      tapRiser("launch.out", [20, 20, 18, 18, 16, 16, 14, 12], "f", true),
    ),
  ),
  sound(
    "twenty-four outlets on three risers",
    ...all(
      {
        yagi: uhf(64),
        launch: amp({ gainDb: 30, outputDbuv: 116 }),
        three: split(3),
        ...Object.fromEntries(
          ["a", "b", "c"].flatMap((x) => [
            [`${x}low`, tap(18, { taps: "4" })],
            [`${x}high`, tap(16, { taps: "4" })],
            [`${x}end`, ["load"] as const],
            [`${x}trunk`, c(18)],
            [`${x}up`, c(6)],
          ]),
        ),
      },
      `yagi.out > launch.in, launch.out > three.in, ${["a", "b", "c"]
        .map(
          (x, i) =>
            `three.out${i + 1} > ${x}trunk.in, ${x}trunk.out > ${x}low.in, ${x}low.out > ${x}up.in, ${x}up.out > ${x}high.in, ${x}high.out > ${x}end.in`,
        )
        .join(", ")}`,
      ...["a", "b", "c"].flatMap((x) => [
        rooms(
          `${x}l`,
          [1, 2, 3, 4].map((n) => `${x}low.tap${n}`),
        ),
        rooms(
          `${x}h`,
          [1, 2, 3, 4].map((n) => `${x}high.tap${n}`),
        ),
      ]),
    ),
  ),
  sound(
    "a phone mast kept out by a filter before the amplifier",
    ...all(
      {
        yagi: uhf(55),
        beam: ["pick-up", { mastDbuv: 90 }],
        guard: ["filter-mobile"],
        boost: mast({ gainDb: 20 }),
        unit: psu(),
        pair: split(2),
      },
      "yagi.out > beam.in, beam.out > guard.in, guard.out > boost.in, boost.out > unit.in, unit.out > pair.in",
      rooms("r", legs("pair", 2)),
    ),
  ),
  sound(
    "terrestrial TV beside satellite in a multiswitch for four",
    ...switched(4, {}, { yagi: uhf(76), lead: c(6) }, "yagi.out > lead.in, lead.out > ms.ter"),
  ),
];

export const TERRESTRIAL_CASES: readonly TradeCase[] = [
  ...SUPPLY,
  ...BANDS,
  ...LEVELS,
  ...SWITCHES,
  ...RISERS,
  ...PAIRS,
  ...IN_ORDER,
];
