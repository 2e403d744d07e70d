/**
 * The first line that somebody reads of a wrong job, and how many causes there are: what a master of the trade would say first.
 * Common practice, no source.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { cureOf, messageOf } from "../../src/sentences/finding.ts";
import { draw, type Sketch } from "../draw.ts";

type Job = {
  readonly job: string;
  readonly parts: Sketch;
  readonly wires: string;
  readonly first: RegExp;
  readonly cure: RegExp;
  readonly causes: number;
};

const SKY: Sketch = { rx: ["receiver-sat"], l: ["lnb-universal"], d: ["dish"] };
const TRUNKS = "d.sky > l.sky, l.vl > ms.vl, l.vh > ms.vh, l.hh > ms.hh";
const BLOCK: Sketch = {
  rx: ["receiver-sat", { polarisation: "H" }],
  ms: ["multiswitch", { outputs: 4, terrestrial: false }],
  l: ["lnb-quattro"],
  d: ["dish", { diameterM: 0.8 }],
};

const JOBS: readonly Job[] = [
  {
    job: "an amplifier 30 dB over its rating, a pad behind, a strong aerial",
    parts: {
      tv: ["receiver-tv"],
      pad: ["attenuator", { lossDb: 20 }],
      amp: ["amp-distribution", { gainDb: 25 }],
      a: ["aerial-uhf", { levelDbuv: 100 }],
    },
    wires: "a.out > amp.in, amp.out > pad.in, pad.out > tv.in",
    first: /^“amp” is overdriven: it amplifies by 25 dB, which is too much here\./,
    cure: /^Take “amp” out, or put 31 dB of attenuation before it\.$/,
    causes: 1,
  },
  {
    job: "two LNBs on one receiver",
    parts: {
      ...SKY,
      l: ["lnb-universal", { commonMa: 220 }],
      l2: ["lnb-universal", { commonMa: 220 }],
      d2: ["dish", { orbitalPositionDegE: 28 }],
      c: ["combiner", { dc: "all" }],
    },
    wires: "d.sky > l.sky, d2.sky > l2.sky, l.out > c.in1, l2.out > c.in2, c.out > rx.sat",
    // 220 + 35 mA each.
    first: /^“l” and “l2” together draw 510 mA; “rx” delivers 400 mA at most\.$/,
    cure: /stronger supply/,
    causes: 1,
  },
  {
    job: "an FM transmitter next door drives the amplifier for all too far",
    parts: {
      fm: ["receiver-fm"],
      tv: ["receiver-tv"],
      ts: ["triplexer-split"],
      amp: ["amp-distribution", { gainDb: 25 }],
      tr: ["triplexer-combine"],
      f: ["aerial-fm", { levelDbuv: 105 }],
      a: ["aerial-uhf"],
    },
    wires: "f.out > tr.fm, a.out > tr.uhf, tr.out > amp.in, amp.out > ts.in, ts.fm > fm.in, ts.uhf > tv.in",
    first: /^“amp” is overdriven: too much comes in from “f”\./,
    cure: /of attenuation before “amp”\.$/,
    causes: 1,
  },
  {
    // 12 stations of 95 dBµV against 6 channels of 60: 10^3.5 · 12/6, 99.98 % of the power.
    job: "FM on the same amplifier as a far weaker UHF aerial",
    parts: {
      tv: ["receiver-tv"],
      amp: ["amp-distribution", { gainDb: 25 }],
      tr: ["triplexer-combine"],
      f: ["aerial-fm", { levelDbuv: 95 }],
      a: ["aerial-uhf", { levelDbuv: 60 }],
    },
    wires: "f.out > tr.fm, a.out > tr.uhf, tr.out > amp.in, amp.out > tv.in",
    first: /^“amp” is overdriven: FM stations from “f” make 99 % of its load\./,
    cure: /^Put 27 dB of attenuation behind “f”, before the other signals come in, or turn “amp” down\.$/,
    causes: 1,
  },
  {
    job: "two aerials with the same channels on one combiner",
    parts: {
      tv: ["receiver-tv"],
      j: ["combiner", { range: "tv" }],
      a: ["aerial-uhf", { levelDbuv: 66 }],
      b: ["aerial-uhf", { levelDbuv: 60 }],
    },
    wires: "a.out > j.in1, b.out > j.in2, j.out > tv.in",
    first: /share 486 to 670 MHz behind “j”\./,
    cure: /^Take “b” off this line, or stop the shared channels of one of them before “j”\.$/,
    causes: 1,
  },
  {
    job: "an aerial of the wrong group: the top channels are 22 dB weaker",
    parts: {
      tv: ["receiver-tv"],
      c: ["cable"],
      a: [
        "aerial-uhf",
        { levelDbuv: 60, channels: [{ channel: 22 }, { channel: 25 }, { channel: 47, levelOffsetDb: -22 }] },
      ],
    },
    wires: "a.out > c.in, c.out > tv.in",
    first: /^“a” gives only 38 dBµV, 22 dB less than its strongest signal\./,
    cure: /^Replace “a” with an aerial made for these channels, or point one of its own at their transmitter\.$/,
    causes: 1,
  },
  {
    job: "too weak even for the masthead amplifier that is there",
    parts: {
      tv: ["receiver-tv"],
      pi: ["power-inserter"],
      c: ["cable"],
      m: ["amp-masthead", { gainDb: 26 }],
      a: ["aerial-uhf", { levelDbuv: 20 }],
    },
    wires: "a.out > m.in, m.out > c.in, c.out > pi.in, pi.out > tv.in",
    first: /^“a” gives only 20 dBµV\./,
    cure: /^Realign “a”, move it to a better place, or replace it with an aerial of more gain\.$/,
    causes: 1,
  },
  {
    job: "two aerials on each other’s inputs of a masthead amplifier",
    parts: {
      tv: ["receiver-tv"],
      pi: ["power-inserter"],
      m: ["amp-masthead-inputs", { uhf1To: 34, uhf2From: 36 }],
      a: ["aerial-uhf", { levelDbuv: 50, channels: [{ channel: 22 }, { channel: 25 }] }],
      b: ["aerial-uhf", { levelDbuv: 50, channels: [{ channel: 40 }, { channel: 43 }] }],
    },
    wires: "b.out > m.uhf1, a.out > m.uhf2, m.out > pi.in, pi.out > tv.in",
    first: /^Terrestrial TV comes into the input UHF 1 of “m”, which stops 4 TV channels/,
    cure: /^Swap the leads on UHF 1 and UHF 2 of “m”\.$/,
    causes: 1,
  },
  {
    job: "a channel amplifier that was not given all channels",
    parts: {
      tv: ["receiver-tv"],
      ca: ["amp-channel", { levelDbuv: 65, channels: [{ channel: 22 }] }],
      a: ["aerial-uhf", { channels: [{ channel: 22 }, { channel: 25 }] }],
    },
    wires: "a.out > ca.in, ca.out > tv.in",
    first: /^The channel list of “ca” lacks 1 TV channel/,
    cure: /^Add the missing channels to the list of “ca”\.$/,
    causes: 1,
  },
  {
    job: "one aerial for two transmitters a right angle apart",
    parts: {
      tv: ["receiver-tv"],
      c: ["cable"],
      a: [
        "aerial-uhf",
        {
          levelDbuv: 58,
          aim: "bearing",
          channels: [
            { channel: 22, transmitter: "Hill" },
            { channel: 40, transmitter: "Town", bearingDeg: 90 },
          ],
        },
      ],
    },
    wires: "a.out > c.in, c.out > tv.in",
    first: /^“a” faces another transmitter and loses 16 dB of this one\./,
    cure: /^Give that transmitter an aerial of its own: “a” faces another one\.$/,
    causes: 1,
  },
  {
    // 54 + 30 = 84 dBµV, of which 74 are allowed (EN 60728-1 as quoted).
    job: "an amplifier that nobody turned down",
    parts: {
      tv: ["receiver-tv"],
      amp: ["amp-distribution", { gainDb: 30, outputDbuv: 114 }],
      a: ["aerial-uhf", { levelDbuv: 54, channels: [{ channel: 22 }, { channel: 25 }] }],
    },
    wires: "a.out > amp.in, amp.out > tv.in",
    first: /^“amp” amplifies by 30 dB, which is too much here\./,
    cure: /^Turn “amp” down by 10 dB\.$/,
    causes: 1,
  },
  {
    job: "a corroded joint in one of the four lines to a multiswitch",
    parts: { ...BLOCK, j: ["bad-joint", { fault: "corroded", lossDb: 15 }], c: ["cable"] },
    wires: `${TRUNKS}, l.hl > j.in, j.out > ms.hl, ms.out1 > c.in, c.out > rx.sat`,
    first: /“j” is a faulty joint/,
    cure: /^Cut out “j” and fit a new connector\.$/,
    causes: 1,
  },
  {
    job: "a broken inner conductor in the drop of a multiswitch",
    parts: { ...BLOCK, j: ["bad-joint", { fault: "open" }] },
    wires: `${TRUNKS}, l.hl > ms.hl, ms.out1 > j.in, j.out > rx.sat`,
    first: /^Supply and commands of “rx” stop at “j”, so “rx” cannot control “ms”\.$/,
    cure: /^Cut out “j” and fit a new connector\.$/,
    causes: 1,
  },
  {
    job: "an inserter of an old aerial in the line to an LNB",
    parts: { ...SKY, p: ["power-inserter", { volts: 18, limitMa: 400 }] },
    wires: "d.sky > l.sky, l.out > p.in, p.out > rx.sat",
    // The LNB works, as the inserter feeds it.
    first: /^Supply and commands of “rx” stop at “p”, so “rx” cannot control “l”\.$/,
    cure: /^Replace “p” with one that passes DC and 22 kHz, or remove it\.$/,
    causes: 1,
  },
  {
    job: "the lead of the aerial and a trunk changed at the multiswitch",
    parts: {
      ...BLOCK,
      ms: ["multiswitch", { outputs: 4 }],
      tv: ["receiver-tv"],
      o: ["outlet-diplexed"],
      a: ["aerial-uhf"],
    },
    wires:
      "d.sky > l.sky, l.vl > ms.ter, l.vh > ms.vh, l.hl > ms.hl, l.hh > ms.hh, a.out > ms.vl, ms.out1 > o.in, o.tv > tv.in, o.sat > rx.sat",
    first: /^Terrestrial TV comes into the input VL of “ms”/,
    cure: /^Swap the leads on VL and TV of “ms”\.$/,
    causes: 1,
  },
  {
    job: "an LNB of 45 dB before taps of 20 dB",
    parts: {
      ...BLOCK,
      ms: ["multiswitch", { outputs: 4, terrestrial: false, build: "tap", tapLossDb: 20 }],
      l: ["lnb-quattro", { gainDb: 45 }],
    },
    wires: `${TRUNKS}, l.hl > ms.hl, ms.out1 > rx.sat`,
    // Usual LNBs have 55 dB. Nobody can turn one up.
    first: /^“l” amplifies by only 45 dB, 10 dB less than usual\./,
    cure: /^Replace “l” with an LNB of more gain\.$/,
    causes: 1,
  },
  {
    job: "a modulator on a channel that the aerial receives",
    parts: {
      tv: ["receiver-tv"],
      c: ["combiner"],
      a: ["aerial-uhf", { channels: [{ channel: 30, levelOffsetDb: 8 }, { channel: 42 }] }],
      m: ["modulator", { channel: "42", levelDbuv: 75 }],
    },
    wires: "a.out > c.in1, m.out > c.in2, c.out > tv.in",
    // 13 dB between the two on C42 are no matter of levelling.
    first: /^“m” sends on C42, where Terrestrial TV from “a” is\. 2 TV channels are lost\.$/,
    cure: /^Set “m” to a free channel\.$/,
    causes: 1,
  },
];

/** Parts go by their ids, so that the sentences can be read here. */
function drawn({ parts, wires }: Job): Design {
  const design = draw(parts, wires);
  return { ...design, parts: design.parts.map((part) => ({ ...part, label: part.id })) };
}

describe("what is said first of", () => {
  test.each(JOBS)("$job", (job) => {
    const evaluation = evaluate(drawn(job));
    const causes = report(evaluation).causes.filter((cause) => cause.severity !== "note");
    const [first] = causes;
    if (!first) throw new Error("nothing is found");
    expect(messageOf(first.root, evaluation)).toMatch(job.first);
    expect(cureOf(first.root, evaluation)).toMatch(job.cure);
    expect(causes).toHaveLength(job.causes);
  });
});
