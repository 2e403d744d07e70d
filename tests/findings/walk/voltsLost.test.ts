/**
 * Who takes the volts that are missing. Worked by hand: 50 m of copper-clad steel at 130 Ω/km are 6.5 Ω and take 1.625 V
 * of 250 mA, so 16.375 of 18 V arrive. Copper: 0.39 % more for each degree (IEC 60028, from memory).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { voltsLost } from "../../../src/findings/walk/voltsLost.ts";
import { draw, type Sketch } from "../../draw.ts";
import { recordOf } from "../byHand.ts";

/** What is lost to LNB “m” from a receiver that gives 18 V, with something between. */
function lost(between: Sketch, wires: string, needs: number) {
  const evaluation = evaluate(
    draw(
      {
        m: ["lnb-universal", { commonMa: 250, outputMa: 0 }],
        ...between,
        a: ["receiver-sat", { polarisation: "H" }],
      },
      wires,
    ),
  );
  const offer = recordOf(evaluation, "m").feeds.out?.[0];
  if (!offer) throw new Error("nothing arrives");
  return voltsLost(evaluation, { part: "m", port: "out" }, { offer, asked: "volts", needs });
}

const byCable = (needs: number) =>
  lost({ c: ["cable", { grade: "clad-1.0", lengthM: 50 }] }, "m.out > c.in, c.out > a.sat", needs);

const TAKER = { part: "c", volts: 1.625, ohms: 6.5, diodeVolts: 0 };

describe("over a cable", () => {
  test("with volts to spare it is told what the cable takes, and no temperature", () => {
    expect(byCable(11.5)).toStrictEqual({ supply: "a", givenVolts: 18, spareVolts: 4.875, taker: TAKER });
  });

  test("with less than 1 V to spare also how warm the cable may get", () => {
    // 0.365 V over 1.625 V are 22.46 %, at 0.393 % for a degree 57.2 degrees more than 20.
    const { failsAtC, spareVolts, taker } = byCable(16.01);
    expect(spareVolts).toBeCloseTo(0.365, 9);
    expect(failsAtC).toBeCloseTo(77.2, 1);
    expect(taker).toEqual(TAKER);
  });

  test("just enough fails above 20 °C; 1 V to spare is enough not to tell", () => {
    expect(byCable(16.375)).toMatchObject({ spareVolts: 0, failsAtC: 20 });
    expect(byCable(15.375)).toStrictEqual({ supply: "a", givenVolts: 18, spareVolts: 1, taker: TAKER });
  });

  test("too few volts fail whatever the temperature", () => {
    expect(byCable(17)).toStrictEqual({ supply: "a", givenVolts: 18, spareVolts: -0.625, taker: TAKER });
  });

  test("the cable is to blame while what is given would do, and not where it never would", () => {
    expect(byCable(18)).toStrictEqual({ supply: "a", givenVolts: 18, spareVolts: -1.625, taker: TAKER });
    expect(byCable(18.5)).toStrictEqual({ supply: "a", givenVolts: 18, spareVolts: -2.125 });
  });
});

describe("without a cable", () => {
  test("a splitter's diode takes 0.5 V, however warm it is", () => {
    expect(lost({ s: ["splitter"] }, "m.out > s.in, s.out1 > a.sat", 17)).toStrictEqual({
      supply: "a",
      givenVolts: 18,
      spareVolts: 0.5,
      taker: { part: "s", volts: 0.5, ohms: 0, diodeVolts: 0.5 },
    });
  });

  test("a combiner takes nothing and is not named", () => {
    expect(lost({ j: ["combiner"] }, "m.out > j.in1, j.out > a.sat", 17.5)).toStrictEqual({
      supply: "a",
      givenVolts: 18,
      spareVolts: 0.5,
    });
  });
});
