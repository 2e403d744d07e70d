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

  // Its gain control holds each user band: what comes before does not spread the level any more.
  test("a single-cable LNB holds its level", () => {
    const parts = { z: ["receiver-stacked"], d: ["dish"], a: ["lnb-stacked"] } as Parameters<typeof draw>[0];
    const { levelDb } = spread(parts, "d.sky > a.sky, a.out > z.sat", "satellite");
    expect(levelDb).toBeGreaterThan(0);
    expect(levelDb).toBeLessThan(2.5);
  });
});
