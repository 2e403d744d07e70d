/**
 * Every rule where it must speak and where it must stay silent. The situations are trade facts
 * (common practice, no source) unless a source stands beside them.
 */
import { describe, expect, test } from "vitest";
import { USUAL_SETTINGS } from "../../src/design/settings.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { DESIGN_RULES, RULES } from "../../src/findings/rules/index.ts";
import { draw, type Sketch } from "../draw.ts";

const satellite = { dish: ["dish", { diameterM: 0.8 }] } as const satisfies Sketch;

type Case = {
  readonly rule: string;
  readonly speaks: readonly [why: string, parts: Sketch, wires: string];
  readonly silent: readonly [why: string, parts: Sketch, wires: string];
  /** Words that the message must hold. */
  readonly says: RegExp;
};

const CASES: readonly Case[] = [
  {
    rule: "loop",
    speaks: [
      "two attenuators in a ring",
      { a: ["attenuator"], b: ["attenuator"] },
      "a.out > b.in, b.out > a.in",
    ],
    silent: ["two in a row", { a: ["attenuator"], b: ["attenuator"] }, "a.out > b.in"],
    says: /“a” lies on a loop/,
  },
  {
    rule: "supply-overloaded",
    speaks: [
      "a joint that shorts the cable",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        bad: ["bad-joint", { fault: "shorted" }],
        tv: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > bad.in, bad.out > tv.sat",
    ],
    silent: [
      "the plain chain",
      { ...satellite, lnb: ["lnb-universal"], tv: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > tv.sat",
    ],
    says: /shorts|draw/,
  },
  {
    rule: "no-supply",
    speaks: [
      "a block in the direct-current path",
      { ...satellite, lnb: ["lnb-universal"], block: ["dc-block"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > block.in, block.out > rx.sat",
    ],
    silent: [
      "without the block",
      { ...satellite, lnb: ["lnb-universal"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
    says: /“lnb” gets no supply/,
  },
  {
    rule: "shared-frequencies",
    speaks: [
      "both polarisations of a wideband converter joined by a broadband combiner",
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
    says: /share .* MHz/,
  },
  {
    rule: "band-cut",
    speaks: [
      "a wideband feed through a plate made for 950 MHz and up",
      { ...satellite, lnb: ["lnb-wideband"], plate: ["outlet-diplexed"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > plate.in, plate.sat > rx.v",
    ],
    silent: [
      "the same feed through a plain satellite plate",
      { ...satellite, lnb: ["lnb-wideband"], plate: ["outlet-sat"], rx: ["receiver-hybrid"] },
      "dish.sky > lnb.sky, lnb.v > plate.in, plate.sat > rx.v",
    ],
    says: /passes only \d+ of 40/,
  },
  {
    rule: "switched-output-shared",
    speaks: [
      "two receivers behind a splitter",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-sat"],
        r2: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ],
    silent: [
      "two receivers on two outputs",
      { ...satellite, lnb: ["lnb-universal", { outputs: "2" }], r1: ["receiver-sat"], r2: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.out1 > r1.sat, lnb.out2 > r2.sat",
    ],
    says: /“r1” and “r2” share/,
  },
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
    says: /115 dBµV for each of 6 carriers, 20\.2 dB over/,
  },
  {
    rule: "wrong-quadrant",
    speaks: [
      "two trunks swapped",
      { ...satellite, lnb: ["lnb-quattro"], ms: ["multiswitch"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > ms.hl, lnb.hl > ms.vl, ms.out1 > rx.sat",
    ],
    silent: [
      "every trunk on its own input",
      { ...satellite, lnb: ["lnb-quattro"], ms: ["multiswitch"], rx: ["receiver-sat"] },
      "dish.sky > lnb.sky, lnb.vl > ms.vl, lnb.hl > ms.hl, ms.out1 > rx.sat",
    ],
    says: /expects/,
  },
  {
    rule: "command-lost",
    speaks: [
      // 120 m at 130 Ω/km are 15.6 Ω: with 245 mA that is 3.8 V of the 18 V.
      "18 V over a long drop of copper-clad steel",
      {
        ...satellite,
        lnb: ["lnb-universal", { outputs: "4", commonMa: 140, outputMa: 35 }],
        drop: ["cable", { grade: "clad-1.0", lengthM: 120 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out1 > drop.in, drop.out > rx.sat",
    ],
    silent: [
      "the same length of copper",
      {
        ...satellite,
        lnb: ["lnb-universal"],
        drop: ["cable", { grade: "copper-1.0", lengthM: 30 }],
        rx: ["receiver-sat"],
      },
      "dish.sky > lnb.sky, lnb.out > drop.in, drop.out > rx.sat",
    ],
    says: /horizontal cannot be selected/,
  },
  {
    rule: "user-band-conflict",
    speaks: [
      "two receivers set to the same user bands",
      {
        ...satellite,
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-stacked"],
        r2: ["receiver-stacked"],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ],
    silent: [
      "each with bands of its own",
      {
        ...satellite,
        lnb: ["lnb-stacked"],
        split: ["splitter", { dc: "all" }],
        r1: ["receiver-stacked"],
        r2: [
          "receiver-stacked",
          {
            userBands: [
              { number: 3, centreMHz: 1680 },
              { number: 4, centreMHz: 2040 },
            ],
          },
        ],
      },
      "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
    ],
    says: /User band 1 .* “r1” and “r2”/,
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
    says: /wideband feed/,
  },
  {
    rule: "too-many-tuners",
    speaks: [
      "three tuners, two user bands",
      { ...satellite, lnb: ["lnb-stacked"], rx: ["receiver-stacked", { tuners: 3 }] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
    silent: [
      "two and two",
      { ...satellite, lnb: ["lnb-stacked"], rx: ["receiver-stacked", { tuners: 2 }] },
      "dish.sky > lnb.sky, lnb.out > rx.sat",
    ],
    says: /3 tuners but is set to 2 user bands/,
  },
  {
    rule: "polarisation-missing",
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
    says: /40 of 80 .* horizontal/,
  },
  {
    rule: "receiver-misses",
    speaks: [
      "a filter for mobile phones in the way of DAB: a UHF channel filter",
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
    says: /none of 3 DAB blocks: 3 are stopped by “filter”/,
  },
  {
    rule: "level-limits",
    speaks: [
      // EN 60728-1 as quoted: DVB-T 74 dBµV at most, and the aerial is said to give 90.
      "a very strong aerial straight into a plate",
      { uhf: ["aerial-uhf", { levelDbuv: 90 }], plate: ["outlet-tv"], tv: ["receiver-tv"] },
      "uhf.out > plate.in, plate.tv > tv.in",
    ],
    silent: [
      "60 dBµV, the middle of the range",
      { uhf: ["aerial-uhf", { levelDbuv: 60 }], plate: ["outlet-tv"], tv: ["receiver-tv"] },
      "uhf.out > plate.in, plate.tv > tv.in",
    ],
    says: /too strong; the worst has 89 dBµV .* 74 dBµV at most/,
  },
  {
    rule: "low-carrier-to-noise",
    speaks: [
      // DVB-T 64 QAM: 26 dB by EN 60728-1 from memory. 30 dBµV less 3.6 dBµV of thermal noise and 5 dB are 21 dB.
      "a weak aerial before a noisy amplifier",
      {
        uhf: ["aerial-uhf", { levelDbuv: 30 }],
        amp: ["amp-distribution", { gainDb: 30, noiseFigureDb: 5 }],
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
    says: /too little C\/N/,
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
    says: /C25 is 20 dB stronger than C30; 12 dB/,
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
    says: /falls by .* dB from/,
  },
  {
    rule: "open-end",
    speaks: [
      "the last tap of a riser left open",
      { uhf: ["aerial-uhf"], tap: ["tap"], tv: ["receiver-tv"] },
      "uhf.out > tap.in, tap.tap1 > tv.in",
    ],
    silent: [
      "the same with a load",
      { uhf: ["aerial-uhf"], tap: ["tap"], end: ["load"], tv: ["receiver-tv"] },
      "uhf.out > tap.in, tap.tap1 > tv.in, tap.out > end.in",
    ],
    says: /“tap” ends open/,
  },
  {
    rule: "above-band-edge",
    speaks: [
      "an old plan with channel 55",
      { uhf: ["aerial-uhf", { channels: [{ channel: 55, mode: "dvbt2-256qam-2/3" }] }], tv: ["receiver-tv"] },
      "uhf.out > tv.in",
    ],
    silent: [
      "channels up to 48",
      { uhf: ["aerial-uhf", { channels: [{ channel: 48, mode: "dvbt2-256qam-2/3" }] }], tv: ["receiver-tv"] },
      "uhf.out > tv.in",
    ],
    says: /C55/,
  },
  {
    rule: "dwelling-isolation",
    speaks: [
      // Two legs of 1 dB and 22 dB of decoupling are 24 dB; RD 346/2011 asks for 38 dB up to 300 MHz.
      "two flats on one splitter with short cables",
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { range: "tv", isolationDb: 22 }],
        p1: ["outlet-tv", { lossDb: 1, dwelling: "flat 1" }],
        p2: ["outlet-tv", { lossDb: 1, dwelling: "flat 2" }],
      },
      "uhf.out > split.in, split.out1 > p1.in, split.out2 > p2.in",
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
    says: /“p1” \(flat 1\) and “p2” \(flat 2\) .* 24 dB at 47 MHz; 38 dB/,
  },
  {
    rule: "same-signal-twice",
    speaks: [
      "a signal split and joined again",
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { range: "tv" }],
        join: ["combiner", { range: "tv" }],
        tv: ["receiver-tv"],
      },
      "uhf.out > split.in, split.out1 > join.in1, split.out2 > join.in2, join.out > tv.in",
    ],
    silent: [
      "joined from one way only",
      {
        uhf: ["aerial-uhf"],
        split: ["splitter", { range: "tv" }],
        join: ["combiner", { range: "tv" }],
        tv: ["receiver-tv"],
      },
      "uhf.out > split.in, split.out1 > join.in1, join.out > tv.in",
    ],
    says: /two ways/,
  },
  {
    rule: "not-connected",
    speaks: ["a receiver by itself", { tv: ["receiver-tv"] }, ""],
    silent: ["a receiver with an aerial", { uhf: ["aerial-uhf"], tv: ["receiver-tv"] }, "uhf.out > tv.in"],
    says: /Nothing is connected to the input of “tv”/,
  },
];

/** Slope is limited by the Spanish law only; everything else is judged by the usual profile. */
function said(rule: string, parts: Sketch, wires: string) {
  const settings = rule === "slope" ? { settings: { ...USUAL_SETTINGS, limits: "rd346" as const } } : {};
  return report(evaluate({ ...draw(parts, wires), ...settings })).findings.filter((f) => f.rule === rule);
}

describe("a rule speaks where it must", () => {
  test.each(CASES)("$rule: $speaks.0", ({ rule, speaks, says }) => {
    const findings = said(rule, speaks[1], speaks[2]);
    expect(findings.map((f) => f.message).join(" ")).toMatch(says);
    for (const f of findings) {
      expect(f.parts.length).toBeGreaterThan(0);
      expect(f.message).not.toMatch(/[⟦⟧]|undefined|NaN/);
      expect(f.message).toMatch(/\.$/);
    }
  });
});

describe("a rule stays silent where it must", () => {
  test.each(CASES)("$rule: $silent.0", ({ rule, silent }) => {
    expect(said(rule, silent[1], silent[2])).toEqual([]);
  });
});

test("every rule has a case here, and every case a rule", () => {
  expect(CASES.map((c) => c.rule).sort()).toEqual([...RULES, ...DESIGN_RULES].map((r) => r.id).sort());
});
