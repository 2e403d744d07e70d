/** Tiny designs for the rules about what lies where, and what gets through. */
import type { RuleSketch } from "../examples.ts";
import type { Sketch } from "../sketch.ts";

const satellite = { dish: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;

/** A house to the south, where all satellites of the region stand; in `silent` it is low enough. */
const house = (elevationDeg: number) => ({ obstacles: [{ fromDeg: 120, toDeg: 220, elevationDeg }] });

export const FREQUENCIES_EXAMPLES: readonly RuleSketch[] = [
  {
    rule: "blocked-view",
    speaks: [
      "a dish behind the neighbour’s house",
      { dish: ["dish", { diameterM: 0.8, ...house(45) }], lnb: ["lnb-universal"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
    silent: [
      "a dish that looks over the neighbour’s roof",
      { dish: ["dish", { diameterM: 0.8, ...house(20) }], lnb: ["lnb-universal"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
  },
  {
    rule: "shared-frequencies",
    speaks: [
      "both polarisations of a wideband LNB on one broadband combiner",
      {
        ...satellite,
        lnb: ["lnb-wideband"],
        join: ["combiner", { range: "sat", dc: "one" }],
        rx: ["receiver-hybrid"],
      },
      "dish.sky > lnb.sky, lnb.v > join.in1, lnb.h > join.in2, join.out > rx.v",
    ],
    silent: [
      "universal IF and terrestrial TV through a diplexer",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        uhf: ["aerial-uhf"],
        dip: ["diplexer-combine"],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > dip.sat, uhf.out > dip.tv, dip.out > rx.sat",
    ],
  },
  {
    rule: "wideband-shared",
    speaks: [
      "a wideband LNB where an aerial comes in through a diplexer",
      {
        ...satellite,
        lnb: ["lnb-wideband"],
        uhf: ["aerial-uhf", { levelDbuv: 70 }],
        dip: ["diplexer-combine"],
        plate: ["outlet-diplexed"],
        rx: ["receiver-hybrid"],
        tv: ["receiver-tv"],
      },
      "dish.sky > lnb.sky, lnb.v > dip.sat, uhf.out > dip.tv, dip.out > plate.in, plate.sat > rx.v, plate.tv > tv.in",
    ],
    silent: [
      "radio alone, through a diplexer made for it",
      {
        ...satellite,
        lnb: ["lnb-wideband"],
        dab: ["aerial-dab"],
        dip: ["diplexer-combine", { split: "radio" }],
        rx: ["receiver-hybrid"],
      },
      "dish.sky > lnb.sky, lnb.v > dip.sat, dab.out > dip.tv, dip.out > rx.v, lnb.h > rx.h",
    ],
  },
  {
    rule: "band-cut",
    speaks: [
      "a wideband feed through an outlet made for 950 MHz and up",
      { ...satellite, lnb: ["lnb-wideband"], plate: ["outlet-diplexed"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > plate.in, plate.sat > rx.v",
    ],
    silent: [
      "the same feed through a plain satellite outlet",
      { ...satellite, lnb: ["lnb-wideband"], plate: ["outlet-sat"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > plate.in, plate.sat > rx.v",
    ],
  },
  {
    rule: "wrong-feed",
    speaks: [
      "a universal receiver on a wideband output",
      { ...satellite, lnb: ["lnb-wideband"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.v > rx.sat",
    ],
    silent: [
      "on a universal output",
      { ...satellite, lnb: ["lnb-universal"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
    more: [
      [
        // 10 000 − 9750 MHz: all of the low band appears 250 MHz above where it is looked for.
        "a menu with the oscillator of another LNB",
        { ...satellite, lnb: ["lnb-universal"], rx: ["receiver-sat", { menuLowMHz: 10_000 }] },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      ],
    ],
  },
  {
    rule: "plane-missing",
    speaks: [
      "a wideband receiver with one of its two cables",
      { ...satellite, lnb: ["lnb-wideband"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > rx.v",
    ],
    silent: [
      "with both",
      { ...satellite, lnb: ["lnb-wideband"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > rx.v, lnb.h > rx.h",
    ],
    more: [
      [
        "a receiver that gives 13 V without tone, whatever it is tuned to",
        { ...satellite, lnb: ["lnb-universal"], rx: ["receiver-sat", { gives: "13" }] },
        "dish.sky > lnb.sky, lnb.out > rx.sat",
      ],
    ],
  },
  {
    rule: "receiver-misses",
    speaks: [
      "a UHF channel filter in the way of DAB",
      {
        dab: ["aerial-dab"],
        filter: ["filter", { mode: "pass", fromMHz: 470, toMHz: 694 }],
        rx: ["receiver-dab"],
      },
      "dab.out > filter.in, filter.out > rx.in",
    ],
    silent: [
      "the aerial straight into the radio",
      { dab: ["aerial-dab"], rx: ["receiver-dab"] },
      "dab.out > rx.in",
    ],
  },
  {
    rule: "same-signal-twice",
    speaks: [
      "a signal split and combined again",
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { range: "tv" }],
        join: ["combiner", { range: "tv" }],
        tv: ["receiver-tv"],
      },
      "uhf.out > split.in, split.out1 > join.in1, split.out2 > join.in2, join.out > tv.in",
    ],
    silent: [
      "combined from one way only",
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { range: "tv" }],
        join: ["combiner", { range: "tv" }],
        tv: ["receiver-tv"],
      },
      "uhf.out > split.in, split.out1 > join.in1, join.out > tv.in",
    ],
  },
  {
    rule: "above-band-edge",
    speaks: [
      "an old plan with channel 55",
      {
        uhf: [
          "aerial-uhf",
          {
            channels: [
              { channel: 40, mode: "dvbt2-256qam-2/3" },
              { channel: 55, mode: "dvbt2-256qam-2/3" },
            ],
          },
        ],
        tv: ["receiver-tv"],
      },
      "uhf.out > tv.in",
    ],
    silent: [
      "channels up to 48",
      { uhf: ["aerial-uhf", { channels: [{ channel: 48, mode: "dvbt2-256qam-2/3" }] }], tv: ["receiver-tv"] },
      "uhf.out > tv.in",
    ],
  },
];
