/** Two aerials on one wire: noise and interference add by power, from the drawing to the verdict. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { ciDb, cnDb, cniDb } from "../../src/signal/readout.ts";
import { draw } from "../draw.ts";

/** A noisy place, so that nothing on the way adds noise worth counting [K]. */
const TOWN_KELVIN = 100_000;
/**
 * Level for C/N 14.9 dB there: kTB in 7.61 MHz at 290 K is 3.59 dBµV (public constant tables), 100 000 K are
 * 10·log10(100 000/290) = 25.38 dB more, so 3.59 + 25.38 + 14.9 = 43.87 dBµV.
 */
const LEVEL_DBUV = 43.87;
const CHANNEL = 30;

/** The wanted channel, and behind a combiner another one that lies `ciDb` below it. */
function twoAerials(o: { ciDb: number; otherChannel?: number }): Design {
  const row = (channel: number) => ({ channel, mode: "dvbt-qpsk-3/4" });
  const { otherChannel = CHANNEL } = o;
  return draw(
    {
      wanted: ["aerial-uhf", { levelDbuv: LEVEL_DBUV, channels: [row(CHANNEL)], noiseKelvin: TOWN_KELVIN }],
      other: ["aerial-uhf", { levelDbuv: LEVEL_DBUV - o.ciDb, channels: [row(otherChannel)] }],
      join: ["combiner"],
      tv: ["receiver-tv"],
    },
    "wanted.out > join.in1, other.out > join.in2, join.out > tv.in",
  );
}

function behindTheCombiner(design: Design) {
  const band = evaluate(design)
    .record("join")
    ?.outputs.out?.bands.find((b) => b.origin.part === "wanted");
  if (!band) throw new Error("the wanted channel is not there");
  return { cn: cnDb(band, 0), ci: ciDb(band, 0), cni: cniDb(band, 0) };
}

// By hand, powers relative to the carrier, e.g. C/I 10: 10^−1.49 + 10^−1 = 0.03236 + 0.1 = 0.13236, 8.78 dB.
const SUMS = [
  { ci: 5, cni: 4.58 },
  { ci: 10, cni: 8.78 },
  { ci: 15, cni: 11.94 },
  { ci: 20, cni: 13.73 },
  { ci: 25, cni: 14.5 },
  { ci: 30, cni: 14.77 },
];

describe("a channel of C/N 14.9 dB meets the same channel from another aerial", () => {
  test.each(SUMS)("$ci dB below: C/(N+I) $cni dB", ({ ci, cni }) => {
    const found = behindTheCombiner(twoAerials({ ciDb: ci }));
    expect(Math.abs(found.cn - 14.9)).toBeLessThan(0.05);
    expect(found.ci).toBeCloseTo(ci, 6);
    expect(Math.abs(found.cni - cni)).toBeLessThan(0.05);
  });

  // DVB-T QPSK 3/4 needs 7.9 dB (NorDig Unified 2.2, as quoted in a public table): 8.78 dB do, 4.58 dB don't.
  // Of two on one frequency the receiver can have the stronger one at most, and no more is wanted.
  test.each([
    { ci: 10, got: 1, missing: [] },
    { ci: 5, got: 0, missing: ["disturbed"] },
  ])("$ci dB below it, the receiver gets $got", ({ ci, got, missing }) => {
    const verdict = report(evaluate(twoAerials({ ciDb: ci }))).verdicts.find((v) => v.part === "tv");
    expect(verdict?.services[0]).toMatchObject({ wanted: 1, got });
    expect(verdict?.services[0]?.missing.map(({ reason }) => reason.kind)).toEqual(missing);
  });

  test("one channel further it takes nothing away, however strong", () => {
    const found = behindTheCombiner(twoAerials({ ciDb: -20, otherChannel: CHANNEL + 1 }));
    expect(found.ci).toBe(Number.POSITIVE_INFINITY);
    expect(Math.abs(found.cni - 14.9)).toBeLessThan(0.05);
  });
});

// Arithmetic of areas: of a signal 200 kHz wide that lies beside another, so much of its power falls into it.
describe("a station that overlaps another only in part counts with the share that lies inside", () => {
  test.each([
    { name: "on the same frequency", otherMHz: 98, share: 1 },
    { name: "100 kHz beside it", otherMHz: 98.1, share: 1 / 2 },
    { name: "150 kHz beside it", otherMHz: 98.15, share: 1 / 4 },
  ])("$name: $share", ({ otherMHz, share }) => {
    const design = draw(
      {
        wanted: ["aerial-fm", { levelDbuv: 70, stations: [{ frequencyMHz: 98 }] }],
        other: ["aerial-fm", { levelDbuv: 50, stations: [{ frequencyMHz: otherMHz }] }],
        join: ["combiner"],
      },
      "wanted.out > join.in1, other.out > join.in2",
    );
    expect(behindTheCombiner(design).ci).toBeCloseTo(20 - 10 * Math.log10(share), 3);
  });
});
