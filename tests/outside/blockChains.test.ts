/**
 * Chains of blocks of flats as they are calculated on paper with figures that others have published, against the drawing. What
 * typical parts of the catalogue lose is theirs: the sums may differ from it by what makes differ in.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";

/** Level of the carrier nearest to a frequency at an input [dBµV]. */
function levelAt(design: Design, part: string, frequencyMHz: number, port = "in"): number {
  const all = (evaluate(design).record(part)?.inputs[port]?.bands ?? []).flatMap((b) =>
    Array.from(b.grid.centre, (f, i) => ({
      off: Math.abs(f - frequencyMHz),
      level: b.level[i] ?? Number.NaN,
    })),
  );
  const [nearest] = all.sort((a, b) => a.off - b.off);
  if (!nearest || nearest.off > 20) throw new Error(`nothing at ${frequencyMHz} MHz`);
  return nearest.level;
}

const HEAD_DBUV = 80;
/** UHF channel 48, 690 MHz. */
const UHF: Sketch[string] = ["aerial-uhf", { levelDbuv: HEAD_DBUV, channels: [{ channel: 48 }] }];

/**
 * Trade catalogue of 2016 (planning table of a maker of single-cable systems): through outlets of 17, 14 and 10 dB lose 0.8, 0.8 and
 * 1.0 dB to the line at TV, the end outlet 4 dB to its sockets; its cable 1.8 dB/10 m at 860 MHz, √(690/860) of that at 690: 1.61 dB.
 */
describe("a riser of loop-through plates of 17, 14, 10 dB and an end plate, 10 m and three times 4 m", () => {
  const losses = [17, 14, 10];
  const design = draw(
    {
      head: UHF,
      r1: ["cable", { lengthM: 10 }],
      ...Object.fromEntries(losses.map((tapLossDb, k) => [`p${k + 1}`, ["outlet-through", { tapLossDb }]])),
      p4: ["outlet-end"],
      ...Object.fromEntries([2, 3, 4].map((n) => [`r${n}`, ["cable", { lengthM: 4 }]])),
      ...Object.fromEntries([1, 2, 3, 4].map((n) => [`tv${n}`, ["receiver-tv"]])),
    },
    `head.out > r1.in, r1.out > p1.in, ${[2, 3, 4].map((n) => `p${n - 1}.out > r${n}.in, r${n}.out > p${n}.in`).join(", ")},
     ${[1, 2, 3, 4].map((n) => `p${n}.tv > tv${n}.in`).join(", ")}`,
  );

  test.each([
    { set: "tv1", sum: 18.6 }, // 1.61 + 17
    { set: "tv2", sum: 17.1 }, // 1.61 + 0.8 + 0.64 + 14
    { set: "tv3", sum: 14.5 }, // 1.61 + 0.8 + 0.64 + 0.8 + 0.64 + 10
    { set: "tv4", sum: 10.1 }, // 1.61 + 0.8 + 0.64 + 0.8 + 0.64 + 1.0 + 0.64 + 4
  ])("$set lies $sum dB below the head, within half a decibel", ({ set, sum }) => {
    expect(Math.abs(HEAD_DBUV - levelAt(design, set, 690) - sum)).toBeLessThan(0.5);
  });
});

/**
 * Splitters of 4 ways lose 7 dB at TV (published installer tables); foam RG-6 17.0 to 18.4 dB/100 m at 694 MHz (two independent tables),
 * 17.7 in the middle. 7 + 12 m + 7 + 18 m: 7 + 2.1 + 7 + 3.2 = 19.3 dB.
 */
test("a flat behind two splitters of 4 ways and 30 m of cable lies 19.3 dB below the amplifier, within a decibel", () => {
  const four: Sketch[string] = ["splitter", { ways: 4, range: "tv" }];
  const design = draw(
    {
      head: UHF,
      s: four,
      k: ["cable", { lengthM: 12 }],
      t: four,
      d: ["cable", { lengthM: 18 }],
      tv: ["receiver-tv"],
    },
    "head.out > s.in, s.out3 > k.in, k.out > t.in, t.out2 > d.in, d.out > tv.in",
  );
  expect(Math.abs(HEAD_DBUV - levelAt(design, "tv", 690) - 19.3)).toBeLessThan(1);
});

/**
 * Installer table of series 6 cable: 6.4 dB/100 ft at 950 MHz and 9.7 at 2150, which are 21.0 and 31.8 dB/100 m. 60 m of riser lose
 * 12.6 and 19.1 dB: the top lies 6.5 dB lower. An equaliser of 6 dB leaves 0.5 dB of that.
 */
describe("a satellite trunk of 60 m", () => {
  // Local oscillator 10.4 GHz: 11.35 and 12.55 GHz come at 950 and 2150 MHz.
  const transponders = [11_350, 12_550].map((frequencyMHz) => ({
    frequencyMHz,
    polarisation: "V",
    symbolRateMsps: 27.5,
  }));
  const trunk = (more: Sketch, way: string): number => {
    const design = draw(
      {
        dish: ["dish", { transponders }],
        lnb: ["lnb-wideband"],
        psu: ["power-inserter", { volts: 13, limitMa: 500 }],
        k: ["cable", { lengthM: 60 }],
        block: ["dc-block"],
        z: ["meter"],
        ...more,
      },
      `dish.sky > lnb.sky, lnb.v > psu.in, psu.out > k.in, ${way}`,
    );
    return levelAt(design, "z", 950) - levelAt(design, "z", 2150);
  };
  // The sky itself gives the two not quite alike: a trunk of no length tells by how much.
  const sky = (() => {
    const design = draw(
      {
        dish: ["dish", { transponders }],
        lnb: ["lnb-wideband"],
        psu: ["power-inserter", { volts: 13, limitMa: 500 }],
        z: ["meter"],
      },
      "dish.sky > lnb.sky, lnb.v > psu.in, psu.out > z.in",
    );
    return levelAt(design, "z", 950) - levelAt(design, "z", 2150);
  })();

  test("leans by 6.5 dB, within half a decibel", () => {
    expect(Math.abs(trunk({}, "k.out > z.in") - sky - 6.5)).toBeLessThan(0.5);
  });

  test("is level to 0.5 dB behind an equaliser of 6 dB, within half a decibel", () => {
    const found = trunk({ e: ["equaliser", { range: "sat", slopeDb: 6 }] }, "k.out > e.in, e.out > z.in");
    expect(Math.abs(found - sky - 0.5)).toBeLessThan(0.5);
  });
});

/**
 * Friis' formula (textbook): 3 dB before a launch amplifier of noise figure 6 dB and gain 30 dB, then 25 dB to a set of 8 dB.
 * F = 10^0.6 + (10^3.3 − 1)/1000 = 3.981 + 1.994 = 5.975, 7.76 dB, and 3 dB before it: 10.76 dB. kTB of 7.61 MHz is 3.59 dBµV:
 * 60 − 3.59 − 10.76 = 45.6 dB. Without amplifier 3 + 25 + 8 = 36 dB: 20.4 dB.
 */
describe("C/N in a flat behind 25 dB of distribution, 60 dBµV at the aerial", () => {
  const block = (between: Sketch, wires: string) =>
    draw(
      {
        a: ["aerial-uhf", { levelDbuv: 60, channels: [{ channel: 30, mode: "dvbt-64qam-2/3" }] }],
        before: ["attenuator", { lossDb: 3 }],
        after: ["attenuator", { lossDb: 25 }],
        tv: ["receiver-tv", { noiseFigureDb: 8 }],
        ...between,
      },
      `a.out > before.in, ${wires}, after.out > tv.in`,
    );
  const cnOf = (design: Design): number => {
    const verdict = report(evaluate(design)).verdicts.find((v) => v.part === "tv");
    return verdict?.services[0]?.cnMin ?? Number.NaN;
  };

  test.each([
    {
      name: "with a launch amplifier 45.6 dB",
      between: { l: ["amp-distribution", { gainDb: 30, noiseFigureDb: 6, outputDbuv: 120 }] } as Sketch,
      wires: "before.out > l.in, l.out > after.in",
      cnDb: 45.6,
    },
    { name: "without 20.4 dB", between: {}, wires: "before.out > after.in", cnDb: 20.4 },
  ])("$name, within 0.2 dB", ({ between, wires, cnDb }) => {
    expect(Math.abs(cnOf(block(between, wires)) - cnDb)).toBeLessThan(0.2);
  });
});

/**
 * A cable house with published losses: 8-way splitter 10.5 dB; its cable 1 dB/10 m at 300 MHz, √(330/300) of that at 330: 1.05 dB;
 * plate 0.5 to 1 dB, 0.8 in the middle (planning value). 75 + 20 − 10.5 − 2.1 − 0.8 = 81.6 dBµV, 7.6 dB above the 74 of DVB-C 256QAM
 * (EN 60728-1, as a public page quotes it): 8 dB too much gain.
 */
describe("a cable house of 8 flats, 75 dBµV at the hand-over point, 20 dB of gain", () => {
  const house = (gainDb: number) =>
    draw(
      {
        net: ["cable-entry", { levelDbuv: 75, channels: [{ frequencyMHz: 330, mode: "dvbc-256qam" }] }],
        amp: ["amp-distribution", { gainDb, outputDbuv: 112 }],
        s: ["splitter", { ways: 8, range: "tv" }],
        d: ["cable", { lengthM: 20 }],
        p: ["outlet-tv"],
        tv: ["receiver-tv"],
      },
      "net.out > amp.in, amp.out > s.in, s.out1 > d.in, d.out > p.in, p.tv > tv.in",
    );

  test("brings 81.6 dBµV to a flat, within a decibel", () => {
    expect(Math.abs(levelAt(house(20), "tv", 330) - 81.6)).toBeLessThan(1);
  });

  test("is too strong, and the amplifier is told; with 10 dB less nothing is", () => {
    // The legs that are not drawn are a note.
    const [cause, ...notes] = report(evaluate(house(20))).causes;
    expect(notes.map((note) => note.severity)).toEqual(["note"]);
    expect(cause?.root).toMatchObject({ rule: "level-limits", parts: ["amp", "p"], limit: 74 });
    expect(report(evaluate(house(10))).causes.filter((c) => c.root.rule === "level-limits")).toEqual([]);
  });
});
