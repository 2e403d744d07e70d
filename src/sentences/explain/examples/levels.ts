/** Tiny designs for the rules about level, noise and gain. */
import { USUAL_SETTINGS } from "../../../design/settings.ts";
import type { RuleSketch } from "../examples.ts";
import type { Sketch } from "../sketch.ts";

const satellite = { dish: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;

export const LEVELS_EXAMPLES: readonly RuleSketch[] = [
  {
    rule: "overload",
    speaks: [
      // 6 carriers of 80 dBµV and 35 dB of gain make 115 dBµV each; 100 − 7.5·log10(5) = 94.8 dBµV are allowed.
      "six strong channels and too much gain",
      {
        uhf: ["aerial-uhf", { levelDbuv: 80 }],
        amp: ["amp-distribution", { gainDb: 35, outputDbuv: 100 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > amp.in, amp.out > tv.in",
    ],
    silent: [
      "the same channels with 10 dB",
      {
        uhf: ["aerial-uhf", { levelDbuv: 80 }],
        amp: ["amp-distribution", { gainDb: 10, outputDbuv: 100 }],
        tv: ["receiver-tv"],
      },
      "uhf.out > amp.in, amp.out > tv.in",
    ],
  },
  {
    rule: "stacking-input",
    speaks: [
      // 73 dBµV less 100 m of 1.0 mm copper, about 20 dB at 950 MHz and 31 dB at 2150 MHz: below 60 dBµV.
      "100 m of cable before the unit",
      {
        dish: ["dish"],
        lnb: ["lnb-wideband"],
        v: ["cable", { lengthM: 100 }],
        h: ["cable", { lengthM: 100 }],
        stacker: ["stacking-converter", { feed: "wideband", terrestrial: false }],
        sat: ["receiver-stacked"],
      },
      "dish.sky > lnb.sky, lnb.v > v.in, v.out > stacker.v, lnb.h > h.in, h.out > stacker.h, stacker.out1 > sat.sat",
    ],
    silent: [
      "10 m of it",
      {
        dish: ["dish"],
        lnb: ["lnb-wideband"],
        v: ["cable", { lengthM: 10 }],
        h: ["cable", { lengthM: 10 }],
        stacker: ["stacking-converter", { feed: "wideband", terrestrial: false }],
        sat: ["receiver-stacked"],
      },
      "dish.sky > lnb.sky, lnb.v > v.in, v.out > stacker.v, lnb.h > h.in, h.out > stacker.h, stacker.out1 > sat.sat",
    ],
  },
  {
    rule: "level-limits",
    speaks: [
      // EN 60728-1 as quoted: DVB-T 74 dBµV at most, and the aerial is said to give 90.
      "a very strong aerial straight into an outlet",
      { uhf: ["aerial-uhf", { levelDbuv: 90 }], plate: ["outlet-tv"], tv: ["receiver-tv"] },
      "uhf.out > plate.in, plate.tv > tv.in",
    ],
    silent: [
      "60 dBµV, the middle of the range",
      { uhf: ["aerial-uhf", { levelDbuv: 60 }], plate: ["outlet-tv"], tv: ["receiver-tv"] },
      "uhf.out > plate.in, plate.tv > tv.in",
    ],
  },
  {
    rule: "tuner-blocked",
    speaks: [
      // BT.1368 from memory: a neighbour may be 30 dB stronger; this one is 33 dB.
      "an aerial near a mast, with one channel 33 dB above its neighbour",
      {
        uhf: [
          "aerial-uhf",
          {
            levelDbuv: 50,
            channels: [
              { channel: 30, mode: "dvbt-64qam-2/3" },
              { channel: 33, mode: "dvbt-64qam-2/3", levelOffsetDb: -4 },
              { channel: 34, mode: "dvbt-64qam-2/3", levelOffsetDb: 29 },
            ],
          },
        ],
        tv: ["receiver-tv"],
      },
      "uhf.out > tv.in",
    ],
    silent: [
      "the same channels without the mast",
      {
        uhf: [
          "aerial-uhf",
          {
            levelDbuv: 48,
            channels: [
              { channel: 30, mode: "dvbt-64qam-2/3" },
              { channel: 33, mode: "dvbt-64qam-2/3" },
              { channel: 34, mode: "dvbt-64qam-2/3" },
            ],
          },
        ],
        tv: ["receiver-tv"],
      },
      "uhf.out > tv.in",
    ],
  },
  {
    rule: "low-carrier-to-noise",
    speaks: [
      // DVB-T 64 QAM: 26 dB by EN 60728-1 from memory. 34 dBµV less 3.6 dBµV of thermal noise and 5 dB are 25.4 dB.
      "a weak aerial before a noisy amplifier",
      {
        uhf: ["aerial-uhf", { levelDbuv: 34 }],
        amp: ["amp-distribution", { gainDb: 18, noiseFigureDb: 5 }],
        plate: ["outlet-tv"],
      },
      "uhf.out > amp.in, amp.out > plate.in",
    ],
    silent: [
      "a strong one",
      {
        uhf: ["aerial-uhf", { levelDbuv: 60 }],
        amp: ["amp-distribution", { gainDb: 10, noiseFigureDb: 5 }],
        plate: ["outlet-tv"],
      },
      "uhf.out > amp.in, amp.out > plate.in",
    ],
  },
  {
    rule: "intermodulation",
    speaks: [
      // Two like amplifiers at 106 dBµV for six carriers: 100 − 7.5·log10(5) = 94.8 dBµV allowed, 60 − 2·11.2 = 37.5 dB
      // each, 31.5 dB behind both; a third one, 28 dB. The decree asks for 30 dB.
      "three amplifiers behind each other, each too high",
      {
        uhf: ["aerial-uhf", { levelDbuv: 76 }],
        one: ["amp-distribution", { gainDb: 30 }],
        lead1: ["attenuator", { lossDb: 20 }],
        two: ["amp-distribution", { gainDb: 20 }],
        lead2: ["attenuator", { lossDb: 20 }],
        three: ["amp-distribution", { gainDb: 20 }],
        lead3: ["attenuator", { lossDb: 40 }],
        plate: ["outlet-tv"],
      },
      "uhf.out > one.in, one.out > lead1.in, lead1.out > two.in, two.out > lead2.in, lead2.out > three.in, three.out > lead3.in, lead3.out > plate.in",
    ],
    silent: [
      "the same three, each 6 dB lower",
      {
        uhf: ["aerial-uhf", { levelDbuv: 70 }],
        one: ["amp-distribution", { gainDb: 30 }],
        lead1: ["attenuator", { lossDb: 20 }],
        two: ["amp-distribution", { gainDb: 20 }],
        lead2: ["attenuator", { lossDb: 20 }],
        three: ["amp-distribution", { gainDb: 20 }],
        lead3: ["attenuator", { lossDb: 34 }],
        plate: ["outlet-tv"],
      },
      "uhf.out > one.in, one.out > lead1.in, lead1.out > two.in, two.out > lead2.in, lead2.out > three.in, three.out > lead3.in, lead3.out > plate.in",
    ],
    settings: { ...USUAL_SETTINGS, limits: "rd346" },
  },
  {
    rule: "level-difference",
    speaks: [
      "one channel 20 dB above its neighbour",
      {
        uhf: [
          "aerial-uhf",
          {
            levelDbuv: 50,
            channels: [
              { channel: 25, mode: "dvbt-64qam-2/3", levelOffsetDb: 20 },
              { channel: 30, mode: "dvbt-64qam-2/3" },
            ],
          },
        ],
        plate: ["outlet-tv"],
      },
      "uhf.out > plate.in",
    ],
    silent: [
      "6 dB above, where 12 are allowed",
      {
        uhf: [
          "aerial-uhf",
          {
            levelDbuv: 50,
            channels: [
              { channel: 25, mode: "dvbt-64qam-2/3", levelOffsetDb: 6 },
              { channel: 30, mode: "dvbt-64qam-2/3" },
            ],
          },
        ],
        plate: ["outlet-tv"],
      },
      "uhf.out > plate.in",
    ],
  },
  {
    rule: "slope",
    speaks: [
      // 200 m of 1.0 mm copper: 19.6 dB/100 m at 950 MHz, 30.7 at 2150 MHz (skin effect): over 20 dB apart.
      "200 m of cable at satellite IF",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        drop: ["cable", { lengthM: 200 }],
        plate: ["outlet-sat"],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > plate.in, plate.sat > rx.sat",
    ],
    silent: [
      "20 m of it",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        drop: ["cable", { lengthM: 20 }],
        plate: ["outlet-sat"],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > plate.in, plate.sat > rx.sat",
    ],
    // Only the Spanish law limits slope.
    settings: { ...USUAL_SETTINGS, limits: "rd346" },
  },
  {
    rule: "dwelling-isolation",
    speaks: [
      // Two legs of 1 dB and 22 dB of decoupling are 24 dB; RD 346/2011 asks for 38 dB up to 300 MHz.
      "two flats on one splitter with short cables",
      {
        fm: ["aerial-fm"],
        uhf: ["aerial-uhf"],
        both: ["triplexer-combine"],
        split: ["splitter", { range: "tv", isolationDb: 22 }],
        p1: ["outlet-tv", { lossDb: 1, dwelling: "flat 1" }],
        p2: ["outlet-tv", { lossDb: 1, dwelling: "flat 2" }],
      },
      "fm.out > both.fm, uhf.out > both.uhf, both.out > split.in, split.out1 > p1.in, split.out2 > p2.in",
    ],
    silent: [
      "two rooms of the same flat",
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { range: "tv", isolationDb: 22 }],
        p1: ["outlet-tv", { lossDb: 1, dwelling: "flat 1" }],
        p2: ["outlet-tv", { lossDb: 1, dwelling: "flat 1" }],
      },
      "uhf.out > split.in, split.out1 > p1.in, split.out2 > p2.in",
    ],
  },
];
