/** What dishes, aerials and converters fall short of usual ones by, or give too much: worked by hand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../../src/evaluate/evaluation.ts";
import { carriersGot } from "../../../src/findings/reception.ts";
import { draw } from "../../draw.ts";
import { NOTHING, said } from "./said.ts";

type Options = Record<string, unknown>;

function transponder(polarisation: "V" | "H", eirpOffsetDb = 0, frequencyMHz = 11_000) {
  return {
    frequencyMHz,
    polarisation,
    symbolRateMsps: 27.5,
    mode: "dvbs-qpsk-3/4",
    rollOff: "0.35",
    eirpOffsetDb,
  };
}

const ONE = [transponder("V")];

describe("a dish", () => {
  const dish = (options: Options): Evaluation =>
    evaluate(draw({ d: ["dish", { transponders: ONE, ...options }] }, ""));
  const of = (options: Options) => said(dish(options), "d.sky", { origin: "d/V" });

  test("as usual lacks nothing", () => {
    expect(of({})).toEqual(NOTHING);
  });

  // Half a decibel of pointing loss is usual.
  test("off its aim lacks what a usual aim would give back", () => {
    const { lacking, exceeding } = of({ pointingLossDb: 3 });
    expect(lacking).toMatchObject({ does: "off aim" });
    expect(lacking?.excessDb).toBeCloseTo(2.5, 6);
    expect(exceeding).toBeUndefined();
  });

  // Half of the usual 0.6 m is a quarter of the area: 20·log10 2 = 6.02 dB.
  test("half as wide as usual is a weak source by 6 dB, one of twice the width is no strong one", () => {
    const { lacking, exceeding } = of({ diameterM: 0.3 });
    expect(lacking).toMatchObject({ does: "weak source" });
    expect(lacking?.excessDb).toBeCloseTo(6.0206, 3);
    expect(exceeding).toBeUndefined();
    expect(of({ diameterM: 1.2 })).toEqual(NOTHING);
  });

  test("with two faults lacks both together and is named after the greater", () => {
    const small = of({ diameterM: 0.3, pointingLossDb: 3 }).lacking;
    expect(small?.does).toBe("weak source");
    expect(small?.excessDb).toBeCloseTo(6.0206 + 2.5, 3);
    const turned = of({ diameterM: 0.3, pointingLossDb: 8 }).lacking;
    expect(turned?.does).toBe("off aim");
    expect(turned?.excessDb).toBeCloseTo(6.0206 + 7.5, 3);
  });

  // At 60°E the satellite stands 16° above the horizon and is some 1500 km farther off than at 20°E.
  test("is not to blame for a weak satellite or one that stands low, nor for rain", () => {
    expect(of({ orbitalPositionDegE: 60 })).toEqual(NOTHING);
    expect(of({ eirpDbw: 42 })).toEqual(NOTHING);
    expect(of({ eirpDbw: 60 })).toEqual(NOTHING);
    expect(of({ rainLossDb: 6 })).toEqual(NOTHING);
  });

  test("is judged by its size, and not by how well its area works", () => {
    expect(of({ efficiency: 0.5 })).toEqual(NOTHING);
  });

  // Vertical and horizontal come on one frequency; the one is sent 10 dB weaker.
  test("is asked for each polarisation by itself", () => {
    const both = dish({ transponders: [transponder("V", -10), transponder("H")] });
    const vertical = said(both, "d.sky", { origin: "d/V" }).lacking;
    expect(vertical?.does).toBe("weak source");
    expect(vertical?.excessDb).toBeCloseTo(10, 6);
    expect(said(both, "d.sky", { origin: "d/H" })).toEqual(NOTHING);
    const small = dish({ diameterM: 0.3, transponders: [transponder("V", -10), transponder("H")] });
    expect(said(small, "d.sky", { origin: "d/V" }).lacking?.excessDb).toBeCloseTo(16.0206, 3);
    expect(said(small, "d.sky", { origin: "d/H" }).lacking?.excessDb).toBeCloseTo(6.0206, 3);
  });

  test("is asked for each transponder by itself", () => {
    const two = dish({ transponders: [transponder("V"), transponder("V", 4, 11_100)] });
    expect(said(two, "d.sky", { origin: "d/V" })).toEqual(NOTHING);
    const { lacking, exceeding } = said(two, "d.sky", { origin: "d/V", index: 1 });
    expect(lacking).toBeUndefined();
    expect(exceeding?.does).toBe("strong source");
    expect(exceeding?.excessDb).toBeCloseTo(4, 6);
  });
});

describe("an aerial", () => {
  const row = (levelOffsetDb: number, channel = 30) => ({ channel, mode: "dvbt-64qam-2/3", levelOffsetDb });
  const of = (options: Options, index = 0) =>
    said(evaluate(draw({ a: ["aerial-uhf", { channels: [row(0)], ...options }] }, "")), "a.out", { index });

  // 62 dBµV at its terminals are usual.
  test("at its usual level lacks nothing but what one transmitter lies below the others, or above them", () => {
    const channels = [row(0), row(-10, 31), row(5, 32)];
    expect(of({ channels })).toEqual(NOTHING);
    const low = of({ channels }, 1);
    expect(low.lacking).toMatchObject({ does: "weak source" });
    expect(low.lacking?.excessDb).toBeCloseTo(10, 6);
    expect(low.lacking?.amount).toBeCloseTo(52, 6);
    expect(low.exceeding).toBeUndefined();
    const high = of({ channels }, 2);
    expect(high.lacking).toBeUndefined();
    expect(high.exceeding).toMatchObject({ does: "strong source" });
    expect(high.exceeding?.excessDb).toBeCloseTo(5, 6);
    expect(high.exceeding?.amount).toBeCloseTo(67, 6);
  });

  // 72 dBµV/m and 14 dBi are usual; only what is 10 dB below a good place is weak.
  test("whose level comes from the field is judged by the field and by its gain", () => {
    const field = (options: Options) => of({ levelFrom: "field", ...options });
    expect(field({})).toEqual(NOTHING);
    expect(field({ fieldDbuvPerM: 64 })).toEqual(NOTHING);
    expect(field({ fieldDbuvPerM: 52 }).lacking).toMatchObject({ does: "weak source" });
    expect(field({ fieldDbuvPerM: 52 }).lacking?.excessDb).toBeCloseTo(10, 6);
    expect(field({ gainDbi: 20 }).exceeding?.excessDb).toBeCloseTo(6, 6);
    expect(field({ levelDbuv: 20 })).toEqual(NOTHING);
  });
});

describe("a converter", () => {
  const wires = "d.sky > x.sky, x.out > z.sat";

  /** At the output, and the level that the receiver behind it reads. */
  function of(options: Options) {
    const evaluation = evaluate(
      draw(
        {
          z: ["receiver-sat", { polarisation: "V", half: "low" }],
          x: ["lnb-universal", options],
          d: ["dish", { transponders: ONE }],
        },
        wires,
      ),
    );
    const record = evaluation.record("z");
    const [got] = record ? carriersGot(record, "satellite") : [];
    return { ...said(evaluation, "x.out", { origin: "d/V" }), readDbuv: got?.levelDbuv ?? 0 };
  }

  // 55 dB of conversion gain are usual.
  test("lacks gain, or is a source too strong, by what it differs from a usual one", () => {
    const { lacking, exceeding } = of({ gainDb: 45 });
    // Its gain is fixed: nobody turns an LNB up.
    expect(lacking).toMatchObject({ does: "little gain" });
    expect(lacking?.excessDb).toBeCloseTo(10, 6);
    expect(lacking?.amount).toBeCloseTo(45, 6);
    expect(exceeding).toBeUndefined();
    const high = of({ gainDb: 63 });
    expect(high.exceeding).toMatchObject({ does: "strong source" });
    expect(high.exceeding?.excessDb).toBeCloseTo(8, 6);
    expect(high.lacking).toBeUndefined();
  });

  test("that is too strong is told by the level that it gives", () => {
    const { exceeding, readDbuv } = of({ gainDb: 63 });
    expect(readDbuv).toBeGreaterThan(60);
    expect(exceeding?.amount).toBeCloseTo(readDbuv, 6);
  });

  test("gives no less level for being noisy", () => {
    expect(of({ noiseFigureDb: 2 })).toMatchObject(NOTHING);
  });
});

describe("a single-cable LNB", () => {
  const of = (options: Options, userBand = 1) =>
    said(
      evaluate(
        draw(
          { z: ["receiver-stacked"], x: ["lnb-stacked", options], d: ["dish", { transponders: ONE }] },
          "d.sky > x.sky, x.out > z.sat",
        ),
      ),
      "x.out",
      { origin: "x/out", userBand },
    );

  // User bands are held at 80 dBµV as usual.
  test("gives its user bands as much too little or too much as they are set away from the usual level", () => {
    expect(of({})).toEqual(NOTHING);
    const { lacking, exceeding } = of({ stackDbuv: 70 });
    expect(lacking).toMatchObject({ does: "low gain" });
    expect(lacking?.excessDb).toBeCloseTo(10, 6);
    expect(exceeding).toBeUndefined();
    const high = of({ stackDbuv: 92 }, 2);
    expect(high.exceeding).toMatchObject({ does: "strong source" });
    expect(high.exceeding?.excessDb).toBeCloseTo(12, 6);
    expect(high.exceeding?.amount).toBeCloseTo(92, 6);
    expect(high.lacking).toBeUndefined();
  });

  test("gives no less on them for a low conversion gain, for their level is held", () => {
    expect(of({ gainDb: 45 })).toEqual(NOTHING);
  });
});

describe("a multiswitch", () => {
  const of = (options: Options) =>
    said(
      evaluate(
        draw(
          {
            z: ["receiver-tv"],
            x: ["multiswitch", options],
            l: ["lnb-quattro"],
            d: ["dish"],
            a: ["aerial-uhf"],
          },
          "d.sky > l.sky, l.vl > x.vl, a.out > x.ter, x.out1 > z.in",
        ),
      ),
      "x.out1",
    );

  // A unit without an amplifier for TV loses 15 dB as usual; it is no combiner that a diplexer could stand for.
  test("lacks nothing of TV by bringing it together with a satellite, as usual", () => {
    expect(of({})).toEqual(NOTHING);
  });

  test("loses what its TV path loses beyond a usual one", () => {
    const { lacking } = of({ terrestrialLossDb: 22 });
    expect(lacking).toMatchObject({ does: "loses" });
    expect(lacking?.excessDb).toBeCloseTo(7, 6);
    expect(of({ terrestrialBuild: "active", terrestrialLossDb: 22 })).toEqual(NOTHING);
  });
});
