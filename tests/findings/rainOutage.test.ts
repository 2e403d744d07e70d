/** Minutes without a picture: rain of ITU-R P.618 by share of the year, looked up by what a receiver has to spare. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { rainMinutes } from "../../src/findings/rainOutage.ts";
import { DISH_OPTIONS } from "../../src/parts/dishOptions.ts";
import { rainTable } from "../../src/parts/rainMargin.ts";
import { draw } from "../draw.ts";

/** A line as the findings see it, and the rain at a dish of so many kelvin with its converter. */
function site(dish: Record<string, unknown>, systemKelvin: number, wires = "d.sky > a.sky, a.out > z.sat") {
  const parts = { z: ["receiver-sat"], d: ["dish", dish], a: ["lnb-universal"] } as Parameters<
    typeof draw
  >[0];
  const evaluation = evaluate(draw(parts, wires));
  const record = evaluation.record("d");
  if (!record) throw new Error("no dish");
  const at = { frequencyMHz: 11_778, polarisation: "V", systemKelvin } as const;
  const table = rainTable(DISH_OPTIONS.parse(dish), at);
  const minutes = (marginDb: number) =>
    rainMinutes(evaluation, record, { airMHz: 11_778, polarisation: "V", marginDb });
  const lossDb = (percent: number) => {
    const row = table.find((r) => r.timePercent === percent);
    if (!row) throw new Error(`no row for ${percent} %`);
    return row.lossOfCnDb;
  };
  return { minutes, lossDb };
}

describe("minutes of a year", () => {
  // The dish picks up 35 K; a converter of 0.7 dB adds 290 K·(10^0.07 − 1) = 50.72 K.
  const CLEAR_KELVIN = 35 + 50.7203;

  // A year of 365.25 days has 525 960 minutes: 0.01 % are 52.596, 0.1 % 525.96, 1 % 5259.6.
  test("that rain takes are those of its share of the year", () => {
    const { minutes, lossDb } = site({}, CLEAR_KELVIN);
    expect(minutes(lossDb(0.01))).toBeCloseTo(52.596, 2);
    expect(minutes(lossDb(0.1))).toBeCloseTo(525.96, 1);
    expect(minutes(lossDb(1))).toBeCloseTo(5259.6, 0);
  });

  test("are none where the worst rain that is looked at takes less", () => {
    const { minutes, lossDb } = site({}, CLEAR_KELVIN);
    expect(minutes(lossDb(0.001) + 0.1)).toBe(0);
  });

  // Without a converter nothing but the dish is noisy, and rain costs more of so quiet a system.
  test("of a dish with nothing joined to it go by the dish's own noise", () => {
    const { minutes, lossDb } = site({}, 35, "a.out > z.sat");
    expect(minutes(lossDb(0.01))).toBeCloseTo(52.596, 2);
    expect(lossDb(0.01)).toBeGreaterThan(site({}, CLEAR_KELVIN).lossDb(0.01));
  });

  // The level is worked out with 2 dB of rain already: so much of the loss has been had.
  test("reckon with the rain that the level already stands for", () => {
    // Alone in its plan it is the one hit hardest, which the figure is meant for.
    const transponders = [{ frequencyMHz: 11_778, polarisation: "V" }];
    const { minutes, lossDb } = site({ rainLossDb: 2, transponders }, CLEAR_KELVIN);
    expect(minutes(lossDb(0.01) - 2)).toBeCloseTo(52.596, 2);
  });

  // Big drops fall flat: horizontal waves lose more (ITU-R P.838).
  test("are more for horizontal than for vertical, and more at the top of the band than at its foot", () => {
    const evaluation = evaluate(draw({ d: ["dish"] }, ""));
    const record = evaluation.record("d");
    if (!record) throw new Error("no dish");
    const minutes = (airMHz: number, polarisation: "V" | "H") =>
      rainMinutes(evaluation, record, { airMHz, polarisation, marginDb: 3 }) ?? 0;
    expect(minutes(11_778, "H")).toBeGreaterThan(minutes(11_778, "V"));
    expect(minutes(12_700, "V")).toBeGreaterThan(minutes(10_750, "V"));
  });

  test("are not told of an aerial", () => {
    const evaluation = evaluate(draw({ a: ["aerial-uhf"] }, ""));
    const record = evaluation.record("a");
    if (!record) throw new Error("no aerial");
    expect(rainMinutes(evaluation, record, { airMHz: 600, polarisation: "V", marginDb: 3 })).toBeUndefined();
  });
});
