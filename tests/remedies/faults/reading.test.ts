/** RD: what the meter shows, against hand calculation and standards' constants named beside each check. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { alike } from "../../../src/remedies/faults/alike.ts";
import { faultOf } from "../../../src/remedies/faults/list.ts";
import { measure } from "../../../src/remedies/faults/measure.ts";
import { type Quantity, reading } from "../../../src/remedies/faults/reading.ts";
import { askingFor, requestsOf } from "../../../src/remedies/faults/requestChoice.ts";
import { designOf } from "../../../src/remedies/training/case.ts";
import { readingWords } from "../../../src/sentences/faults/readingWords.ts";
import { draw } from "../../draw.ts";

const ONE_CHANNEL = { channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }] };
const HOUSE = draw(
  {
    uhf: ["aerial-uhf", { levelDbuv: 62, ...ONE_CHANNEL }],
    pad: ["attenuator", { lossDb: 10 }],
    tv: ["receiver-tv"],
  },
  "uhf.out > pad.in, pad.out > tv.in",
);

function values(quantity: "level" | "cn" | "mer", at: readonly [string, string]) {
  const shown = reading(evaluate(HOUSE), at, quantity);
  return shown && "carriers" in shown ? shown.carriers.map((c) => c.value) : null;
}

describe("levels", () => {
  test("RD1: a 10 dB pad takes 10 dB off what the meter shows", () => {
    expect(values("level", ["uhf", "out"])).toEqual([62]);
    expect(values("level", ["tv", "in"])).toEqual([52]);
  });

  test("RD2: C/N is level over kTB and the meter's noise figure", () => {
    // kTB at 290 K in 7.61 MHz is 3.59 dBµV into 75 Ω (Boltzmann's constant); a noise figure of 8 dB is typical, from memory:
    // 62 − 3.59 − 8 = 50.41, shown in steps of 0.5.
    expect(values("cn", ["uhf", "out"])).toEqual([50.5]);
    expect(values("cn", ["tv", "in"])).toEqual([40.5]);
  });

  test("RD3: MER stops at what a meter can show and never exceeds C/N", () => {
    // 50.41 dB beside errors of the meter at 40 dB: −10·log10(10^−5.041 + 10^−4) = 39.62.
    expect(values("mer", ["uhf", "out"])).toEqual([39.5]);
  });

  test("RD4: a wire is read at its upper end", () => {
    const evaluation = evaluate(HOUSE);
    const wire = HOUSE.wires[1];
    if (!wire) throw new Error("no wire");
    expect(reading(evaluation, wire, "level")).toEqual(reading(evaluation, ["pad", "out"], "level"));
  });

  test("RD5: whatever is below the meter's range is not shown", () => {
    const weak = draw(
      { uhf: ["aerial-uhf", { levelDbuv: 10, ...ONE_CHANNEL }], tv: ["receiver-tv"] },
      "uhf.out > tv.in",
    );
    expect(reading(evaluate(weak), ["tv", "in"], "level")).toEqual({ quantity: "level", carriers: [] });
  });
});

describe("supply", () => {
  const line = (options: Record<string, unknown>) =>
    draw(
      {
        dish: ["dish"],
        lnb: ["lnb-universal", { commonMa: 215, outputMa: 35 }],
        cable: ["cable", { lengthM: 50, grade: "own", loopOhmPerKm: 36 }],
        rx: ["receiver-sat", options],
      },
      "dish.sky > lnb.sky, lnb.out > cable.in, cable.out > rx.sat",
    );
  const show = (options: Record<string, unknown>, at: readonly [string, string], quantity: Quantity) =>
    reading(evaluate(line(options)), at, quantity);

  test("RD6: 250 mA over 50 m at 36 Ω/km costs 0.45 V (Ohm's law): 18 V become 17.55 V, shown as 17.6 or 17.5", () => {
    const shown = show({ polarisation: "H" }, ["lnb", "out"], "volts");
    expect([17.5, 17.6]).toContain(shown?.quantity === "volts" ? shown.volts : null);
    expect(show({ polarisation: "H" }, ["rx", "sat"], "volts")).toEqual({ quantity: "volts", volts: 18 });
  });

  // 13 V: vertical, 18 V: horizontal, no tone: low, 22 kHz: high. EN 61319-1 practice, as in a meter's manual.
  test.each([
    { polarisation: "V", half: "low", volts: 13, tone: false },
    { polarisation: "H", half: "low", volts: 18, tone: false },
    { polarisation: "V", half: "high", volts: 13, tone: true },
    { polarisation: "H", half: "high", volts: 18, tone: true },
  ])("RD7: $polarisation $half is $volts V, tone $tone", ({ polarisation, half, volts, tone }) => {
    expect(show({ polarisation, half }, ["rx", "sat"], "volts")).toEqual({ quantity: "volts", volts });
    expect(show({ polarisation, half }, ["rx", "sat"], "tone")).toEqual({ quantity: "tone", tone });
  });

  test("RD8: only the quadrant that is asked for is seen on a switched output", () => {
    const count = (polarisation: string, half: string) => {
      const shown = show({ polarisation, half }, ["lnb", "out"], "level");
      return shown && "carriers" in shown ? shown.carriers.length : 0;
    };
    const all = ["low", "high"].flatMap((half) => [count("V", half), count("H", half)]);
    // The default plan has 80 transponders, 20 in each quadrant.
    expect(all).toEqual([20, 20, 20, 20]);
  });

  test("RD9: an unplugged receiver leaves the line dead", () => {
    expect(show({ state: "unplugged" }, ["lnb", "out"], "volts")).toEqual({ quantity: "volts", volts: 0 });
  });
});

describe("places and words", () => {
  test("RD10: a dish's beam, an unknown port and a part that is gone cannot be measured", () => {
    const evaluation = evaluate(designOf("barn-line"));
    expect(reading(evaluation, ["dish", "sky"], "level")).toBeNull();
    expect(reading(evaluation, ["lnb", "nowhere"], "level")).toBeNull();
    expect(reading(evaluation, ["gone", "in"], "volts")).toBeNull();
  });

  test("RD14: a plug of the plan is found although another part has other ports", () => {
    const plan = designOf("house-universal");
    const wideband = faultOf(plan, "wrong-converter:lnb=lnb-wideband");
    const ended = faultOf(designOf("riser-block"), "wrong-plate:plate3=outlet-end");
    if (!wideband || !ended) throw new Error("no such fault");
    const converted = evaluate(wideband.apply(plan));
    expect(reading(converted, ["lnb", "out1"], "level")).toBeNull();
    expect(measure(plan, converted, ["lnb", "out1"], "level")).toEqual(
      reading(converted, ["dip1", "sat"], "level"),
    );
    const riser = designOf("riser-block");
    expect(measure(riser, evaluate(ended.apply(riser)), ["plate3", "out"], "level")).toEqual({
      quantity: "level",
      carriers: [],
    });
    expect(measure(plan, converted, ["dish", "sky"], "level")).toBeNull();
  });

  test("RD11: readings in words", () => {
    const shown = reading(evaluate(HOUSE), ["tv", "in"], "level");
    expect(shown && readingWords(shown)).toBe("52 dBµV on 1 TV channel");
    expect(readingWords({ quantity: "level", carriers: [] })).toBe("nothing");
    expect(readingWords({ quantity: "tone", tone: false })).toBe("no tone");
  });

  test("RD12: readings within what meters differ by are the same, others are not", () => {
    expect(alike({ quantity: "volts", volts: 17.6 }, { quantity: "volts", volts: 18 })).toBe(true);
    expect(alike({ quantity: "volts", volts: 13 }, { quantity: "volts", volts: 18 })).toBe(false);
    expect(alike({ quantity: "volts", volts: 0 }, { quantity: "tone", tone: false })).toBe(false);
    const at = (value: number) => ({
      quantity: "level" as const,
      carriers: [{ service: "tv" as const, name: "C30", centreMHz: 546, value }],
    });
    expect(alike(at(52), at(54))).toBe(true);
    expect(alike(at(52), at(60))).toBe(false);
    expect(alike(at(52), { quantity: "level", carriers: [] })).toBe(false);
  });

  test("RD13: receivers can be made to ask for something else, where they ask at all", () => {
    expect(requestsOf(HOUSE)).toEqual([]);
    const design = designOf("two-satellites");
    expect(requestsOf(design)).toHaveLength(4);
    const asking = askingFor(design, { polarisation: "V", half: "low", position: "2" });
    expect(reading(evaluate(asking), ["lnb2", "out"], "volts")).toMatchObject({ quantity: "volts" });
    const volts = (id: string) => {
      const shown = reading(evaluate(asking), [id, "out"], "volts");
      return shown?.quantity === "volts" ? shown.volts : null;
    };
    expect(volts("lnb1")).toBe(0);
    expect(volts("lnb2")).toBeGreaterThan(12);
    expect(askingFor(design, null)).toBe(design);
  });
});
