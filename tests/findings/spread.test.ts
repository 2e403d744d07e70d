/** How far real parts may stray from their values: independent spreads add as squares. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { carriersGot } from "../../src/findings/reception.ts";
import { spreadOf } from "../../src/findings/spread.ts";
import { draw } from "../draw.ts";

function spread(parts: Parameters<typeof draw>[0], wires: string, service: "tv" | "satellite") {
  const evaluation = evaluate(draw(parts, wires));
  const record = evaluation.record("z");
  const [carrier] = record ? carriersGot(record, service) : [];
  if (!record || !carrier) throw new Error("nothing is received");
  const [part, port] = record.joined[carrier.port] ?? ["", ""];
  return spreadOf(evaluation, { part, port }, carrier);
}

const aerial = [
  "aerial-uhf",
  { levelDbuv: 70, channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }] },
] as const;

describe("spread of a carrier's level", () => {
  // A level at the aerial's terminals is known to 2 dB.
  test("an aerial straight into the set has that of its level", () => {
    expect(spread({ z: ["receiver-tv"], a: [...aerial] }, "a.out > z.in", "tv").levelDb).toBeCloseTo(2, 6);
  });

  // 100 m of 1.0 mm copper lose about 17 dB at 546 MHz; 5 % of 17 dB is 0.85 dB: √(2² + 0.85²) = 2.17 dB.
  test("a cable adds a share of its loss", () => {
    const parts = { z: ["receiver-tv"], k: ["cable", { lengthM: 100 }], a: [...aerial] } as Parameters<
      typeof draw
    >[0];
    const { levelDb } = spread(parts, "a.out > k.in, k.out > z.in", "tv");
    expect(levelDb).toBeGreaterThan(2.1);
    expect(levelDb).toBeLessThan(2.3);
  });

  // C/N is decided at the aerial: a cable behind it that loses nothing to speak of adds nothing.
  test("the C/N of an aerial's carrier is as uncertain as its level", () => {
    expect(spread({ z: ["receiver-tv"], a: [...aerial] }, "a.out > z.in", "tv").cnDb).toBeCloseTo(2, 6);
  });
});

describe("spread behind a converter", () => {
  // EIRP 1 dB, pointing 0.3 dB, gain 2.5 dB: √(1 + 0.09 + 6.25) = 2.71 dB at the lower end of the IF; slope adds towards the upper.
  test("of a universal LNB the dish's and its gain's", () => {
    const parts = { z: ["receiver-sat"], d: ["dish"], a: ["lnb-universal"] } as Parameters<typeof draw>[0];
    const { levelDb, cnDb } = spread(parts, "d.sky > a.sky, a.out > z.sat", "satellite");
    expect(levelDb).toBeGreaterThan(2.65);
    expect(levelDb).toBeLessThan(3.2);
    // Its gain changes signal and noise alike: for C/N the dish and the noise figure count, less than the level's spread.
    expect(cnDb).toBeGreaterThan(1);
    expect(cnDb).toBeLessThan(1.6);
  });

  const halfway = { frequencyMHz: 11_300, polarisation: "V", symbolRateMsps: 27.5, mode: "dvbs-qpsk-3/4" };
  const dish = ["dish", { transponders: [halfway] }] as Parameters<typeof draw>[0][string];

  // 11300 MHz come out at 1550 MHz, halfway from 950 to 2150: half of 1.5 dB of slope. EIRP 1 dB, pointing 0.3 dB,
  // clear sky 0.1 dB, gain 2.5 dB: √(1² + 0.3² + 0.1² + 2.5² + 0.75²) = 2.813 dB.
  // The dish picks up 35 K, the LNB adds 290 K·(10^0.07 − 1) = 50.7 K, or 66.8 K with 0.9 dB instead of 0.7:
  // 10·log10(101.8/85.7) = 0.746 dB: √(1² + 0.3² + 0.1² + 0.746²) = 1.287 dB.
  test("in the middle of the band, of dish, gain, slope and noise figure", () => {
    const parts = { z: ["receiver-sat"], d: dish, a: ["lnb-universal"] } as Parameters<typeof draw>[0];
    const { levelDb, cnDb } = spread(parts, "d.sky > a.sky, a.out > z.sat", "satellite");
    expect(levelDb).toBeCloseTo(2.813, 3);
    expect(cnDb).toBeCloseTo(1.287, 3);
  });

  // On user bands too, noise is decided by dish and converter, at the same 0.7 dB.
  test("on a user band C/N is as uncertain as without", () => {
    const parts = { z: ["receiver-stacked"], d: dish, a: ["lnb-stacked"] } as Parameters<typeof draw>[0];
    const { cnDb } = spread(parts, "d.sky > a.sky, a.out > z.sat", "satellite");
    expect(cnDb).toBeCloseTo(1.287, 3);
  });

  // Its gain control holds each user band within 2 dB: what comes before does not spread the level any more.
  test("a single-cable LNB holds its level", () => {
    const parts = { z: ["receiver-stacked"], d: ["dish"], a: ["lnb-stacked"] } as Parameters<typeof draw>[0];
    const { levelDb } = spread(parts, "d.sky > a.sky, a.out > z.sat", "satellite");
    expect(levelDb).toBeCloseTo(2, 6);
  });

  // What follows the gain control spreads the level again: √(2² + 0.5²) behind a pad.
  test("behind a single-cable LNB the line counts", () => {
    const parts = {
      z: ["receiver-stacked"],
      d: ["dish"],
      a: ["lnb-stacked"],
      p: ["attenuator", { dcPass: true }],
    } as Parameters<typeof draw>[0];
    const { levelDb } = spread(parts, "d.sky > a.sky, a.out > p.in, p.out > z.sat", "satellite");
    expect(levelDb).toBeCloseTo(2.061553, 6);
  });
});

describe("spread of a terrestrial line, part by part", () => {
  type Parts = Parameters<typeof draw>[0];
  const source = (o: Record<string, unknown> = {}) => ["aerial-uhf", { ...aerial[1], ...o }] as Parts[string];
  const tv = (parts: Record<string, Parts[string]>, wires: string) =>
    spread({ z: ["receiver-tv"], ...parts }, wires, "tv");

  // Location 5.5 dB, gain 1 dB: √(5.5² + 1²). What is measured at the terminals does not count then.
  test("a level worked out from the field has that of the place and of the gain", () => {
    const a = source({ levelFrom: "field", fieldDbuvPerM: 75 });
    expect(tv({ a }, "a.out > z.in").levelDb).toBeCloseTo(5.59017, 6);
  });

  // A fixed pad is good for 0.5 dB: √(2² + 0.5²), for level and, before any noise, for C/N alike.
  test("a pad adds its own", () => {
    const { levelDb, cnDb } = tv({ p: ["attenuator"], a: source() }, "a.out > p.in, p.out > z.in");
    expect(levelDb).toBeCloseTo(2.061553, 6);
    expect(cnDb).toBeCloseTo(2.061553, 6);
  });

  // A typical splitter is within 0.5 dB of what is typical, whichever leg.
  test("so does what is chosen by a word", () => {
    const { levelDb } = tv({ s: ["splitter"], a: source() }, "a.out > s.in, s.out2 > z.in");
    expect(levelDb).toBeCloseTo(2.061553, 6);
  });

  // 100 m of k1 = 1 dB/100 m/√MHz lose √546 = 23.367 dB at 546 MHz; 5 % of it are 1.168 dB: √(2² + 1.168²).
  test("a cable adds a twentieth of its loss", () => {
    const k = ["cable", { grade: "own", k1: 1, k2: 0, lengthM: 100 }] as Parts[string];
    expect(tv({ k, a: source() }, "a.out > k.in, k.out > z.in").levelDb).toBeCloseTo(2.316247, 6);
  });

  // The same cable on channel 48, 690 MHz: √690 = 26.268 dB, 5 % of it 1.313 dB: √(2² + 1.313²) = 2.393 dB.
  test("each carrier has the spread of its own frequency", () => {
    const channels = [30, 48].map((channel) => ({ channel, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }));
    const parts = {
      z: ["receiver-tv"],
      k: ["cable", { grade: "own", k1: 1, k2: 0, lengthM: 100 }],
      a: ["aerial-uhf", { levelDbuv: 80, channels }],
    } as Parts;
    const evaluation = evaluate(draw(parts, "a.out > k.in, k.out > z.in"));
    const record = evaluation.record("z");
    if (!record) throw new Error("no set");
    const spreads = carriersGot(record, "tv").map(
      (c) => spreadOf(evaluation, { part: "k", port: "out" }, c).levelDb,
    );
    expect(spreads).toHaveLength(2);
    expect(spreads[0]).toBeCloseTo(2.316247, 5);
    expect(spreads[1]).toBeCloseTo(2.392697, 5);
  });

  test("a receiver with nothing joined has none", () => {
    const joined = evaluate(draw({ z: ["receiver-tv"], a: source() }, "a.out > z.in")).record("z");
    const evaluation = evaluate(draw({ z: ["receiver-tv"], a: source() }, ""));
    const [carrier] = joined ? carriersGot(joined, "tv") : [];
    if (!carrier) throw new Error("nothing to ask for");
    expect(spreadOf(evaluation, undefined, carrier)).toEqual({ levelDb: 0, cnDb: 0 });
  });

  const fed = { psu: ["power-inserter"] as Parts[string], m: ["amp-masthead"] as Parts[string] };
  const mast = "m.out > psu.in, psu.out > z.in";

  // Gain 1.5 dB, inserter 0.3 dB: √(2² + 1.5² + 0.3²).
  // At 290 K all noise at the input is kTB: it rises with the noise figure, 0.5 dB: √(2² + 0.5²).
  test("an amplifier spreads the level by its gain, and C/N by its noise figure", () => {
    const { levelDb, cnDb } = tv({ ...fed, a: source() }, `a.out > m.in, ${mast}`);
    expect(levelDb).toBeCloseTo(2.517936, 6);
    expect(cnDb).toBeCloseTo(2.061553, 6);
  });

  // 2900 K bring ten times kTB; of F = 1.585 the amplifier adds 0.585, of 1.778 (half a decibel more) 0.778:
  // 10·log10(10.778/10.585) = 0.0786 dB, √(2² + 0.0786²).
  test("among much noise from the aerial the noise figure hardly counts", () => {
    const { cnDb } = tv({ ...fed, a: source({ noiseKelvin: 2900 }) }, `a.out > m.in, ${mast}`);
    expect(cnDb).toBeCloseTo(2.001545, 5);
  });

  // A pad before the amplifier takes level and no noise: √(2² + 0.5² + 0.5²). One behind it takes both.
  test("what stands before the first amplifier counts for C/N, what stands behind it does not", () => {
    const before = tv({ ...fed, p: ["attenuator"], a: source() }, `a.out > p.in, p.out > m.in, ${mast}`);
    expect(before.cnDb).toBeCloseTo(2.12132, 5);
    const parts = { ...fed, p: ["attenuator", { dcPass: true }] as Parts[string], a: source() };
    const behind = tv(parts, "a.out > m.in, m.out > p.in, p.out > psu.in, psu.out > z.in");
    expect(behind.cnDb).toBeCloseTo(2.061553, 6);
    // √(2² + 1.5² + 0.5² + 0.3²): for the level all of them count.
    expect(behind.levelDb).toBeCloseTo(2.5671, 5);
  });

  // The gain control of a single-cable unit holds its user bands, not the TV that it passes beside them: gain 1.5 dB,
  // √(2² + 1.5²), and for C/N 1 dB of noise figure, √(2² + 1²).
  test("a single-cable unit holds no level but that of its user bands", () => {
    const x = ["stacking-converter", { terrestrialBuild: "active" }] as Parts[string];
    const { levelDb, cnDb } = tv({ x, a: source() }, "a.out > x.ter, x.out1 > z.in");
    expect(levelDb).toBeCloseTo(2.5, 6);
    expect(cnDb).toBeCloseTo(Math.sqrt(5), 6);
  });

  // Of an amplifier without supply gain and noise figure are no matter: nothing of the two is at work.
  test("an amplifier that is not fed adds nothing of its own", () => {
    const { levelDb, cnDb } = tv({ m: fed.m, a: source({ levelDbuv: 90 }) }, "a.out > m.in, m.out > z.in");
    expect(levelDb).toBeCloseTo(2, 6);
    expect(cnDb).toBeCloseTo(2, 6);
  });

  // Gain 1.5 dB twice, 1 dB of slope at the top end counts in part: C/N is decided by the first of the two.
  test("of two amplifiers the first decides about C/N", () => {
    const parts = {
      ...fed,
      h: ["amp-distribution", { gainDb: 10 }] as Parts[string],
      a: source({ levelDbuv: 50 }),
    };
    const { levelDb, cnDb } = tv(parts, "a.out > m.in, m.out > psu.in, psu.out > h.in, h.out > z.in");
    expect(cnDb).toBeCloseTo(2.061553, 6);
    expect(levelDb).toBeGreaterThan(Math.sqrt(2 ** 2 + 1.5 ** 2 + 0.3 ** 2 + 1.5 ** 2));
  });
});
