/** What combiners, taps and plates fall short of fitting ones by, or give too much: worked by hand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Misdeed } from "../../../src/findings/blame/culprit.ts";
import { draw } from "../../draw.ts";
import { NOTHING, type Said, said } from "./said.ts";

type Parts = Parameters<typeof draw>[0];

/** One channel at 546 MHz, one station at 98 MHz, one block in 12A (223.936 MHz). */
const TV: Parts[string] = [
  "aerial-uhf",
  { channels: [{ channel: 30, mode: "dvbt-64qam-2/3", levelOffsetDb: 0 }] },
];
const FM: Parts[string] = [
  "aerial-fm",
  { stations: [{ frequencyMHz: 98, mode: "fm-stereo", levelOffsetDb: 0 }] },
];
const DAB: Parts[string] = ["aerial-dab", { blocks: [{ block: "12A", levelOffsetDb: 0 }] }];

function expectLacks({ lacking, exceeding }: Said, does: Misdeed, excessDb: number, digits = 3): void {
  expect(lacking?.does).toBe(does);
  expect(lacking?.excessDb).toBeCloseTo(excessDb, digits);
  expect(exceeding).toBeUndefined();
}

describe("a combiner", () => {
  const of = (x: Parts[string], sources: Parts, wires: string, origin = "a") =>
    said(evaluate(draw({ z: ["receiver-tv"], x, ...sources }, `${wires}, x.out > z.in`)), "x.out", {
      origin,
    });
  const combiner: Parts[string] = ["combiner"];
  const inputs = "a.out > x.in1, b.out > x.in2";

  // Two ways lose 10·log10 2 = 3.010 dB and for one stage 0.5 dB at 5 MHz to 0.75 dB at 862 MHz, 0.658 dB at 546 MHz
  // and 0.527 dB at 98 MHz; a diplexer loses 1.2 dB.
  // Four ways lose 6.02 dB and for two stages twice 0.658 dB: 7.34 dB in all, of which a diplexer would lose 1.2 dB
  // whatever the number of ways.
  test("of two services with spare inputs is counted once, as the diplexer that would stand there", () => {
    const four: Parts[string] = ["combiner", { ways: 4 }];
    expectLacks(of(four, { a: TV, b: FM }, inputs), "loses", 6.137, 2);
  });

  test("of two services loses what a diplexer in its place would not", () => {
    const sources = { a: TV, b: FM };
    expectLacks(of(combiner, sources, inputs), "loses", 2.468);
    expectLacks(of(combiner, sources, inputs, "b"), "loses", 2.337);
    expect(of(combiner, sources, inputs).lacking?.amount).toBeCloseTo(-3.668, 3);
  });

  // Three ways: 10·log10 3 = 4.771 dB, and log2 3 = 1.585 stages of 0.658 dB: 5.814 − 1.2 dB.
  test("of three services, too", () => {
    const wires = `${inputs}, c.out > x.in3`;
    expectLacks(of(["combiner", { ways: 3 }], { a: TV, b: FM, c: DAB }, wires), "loses", 4.614);
  });

  test("of one service twice cannot be spared: a diplexer would not do it", () => {
    expect(of(combiner, { a: TV, b: TV }, inputs)).toEqual(NOTHING);
    const wires = `${inputs}, c.out > x.in3`;
    expect(of(["combiner", { ways: 3 }], { a: TV, b: TV, c: FM }, wires)).toEqual(NOTHING);
  });

  test("cannot be spared where a line carries two services, or none yet", () => {
    const mixed = { a: TV, b: FM, c: FM, m: combiner };
    expect(of(combiner, mixed, "a.out > m.in1, c.out > m.in2, m.out > x.in1, b.out > x.in2")).toEqual(
      NOTHING,
    );
    const silent: Parts = { a: TV, b: ["attenuator"] };
    expect(of(combiner, silent, inputs)).toEqual(NOTHING);
  });

  // A resistive one loses 20·log10 2 = 6.021 dB, a hybrid 3.668 dB.
  test("of resistors loses what a hybrid would not", () => {
    expectLacks(of(["combiner", { type: "resistive" }], { a: TV, b: TV }, inputs), "loses", 2.352);
  });

  test("with filters lacks nothing as usual, and what its branch loses beyond that", () => {
    const triplexer = "a.out > x.uhf, b.out > x.fm, c.out > x.dab";
    const sources = { a: TV, b: FM, c: DAB };
    expect(of(["triplexer-combine"], sources, triplexer)).toEqual(NOTHING);
    expectLacks(of(["triplexer-combine", { lossDb: 3.5 }], sources, triplexer), "loses", 2.5);
  });
});

describe("a splitter", () => {
  test("with spare ways gives nobody too much", () => {
    const wires = "a.out > x.in, x.out1 > y.in, x.out2 > z.in";
    const parts: Parts = {
      a: TV,
      x: ["splitter", { ways: 8 }],
      y: ["receiver-tv"],
      z: ["receiver-tv"],
    };
    expect(said(evaluate(draw(parts, wires)), "x.out1").exceeding).toBeUndefined();
  });
});

describe("a plate on a riser", () => {
  const of = (options: Record<string, unknown>, output: string) =>
    said(
      evaluate(
        draw(
          { a: TV, x: ["outlet-through", options], y: ["outlet-end"], z: ["receiver-tv"] },
          "a.out > x.in, x.out > y.in, y.tv > z.in",
        ),
      ),
      output,
    );

  // Its line loses 0.45 dB and 1.45 times what the sockets take: −10·log10(1 − 10^(−C/10)), 0.749 dB for 8 dB and
  // 0.176 dB for the usual 14 dB. 1.45·(0.7494 − 0.1764) = 0.831 dB.
  test("with a small tap loss takes too much off the line that goes on", () => {
    expectLacks(of({ tapLossDb: 8 }, "x.out"), "low tap loss", 0.831);
  });

  test("with a great one takes less off it than usual, which is no fault", () => {
    expect(of({ tapLossDb: 26 }, "x.out")).toEqual(NOTHING);
    expect(of({}, "x.out")).toEqual(NOTHING);
  });

  // Its sockets have 14 dB where an end plate has 4 dB.
  test("at the end of the riser loses what an end plate would not", () => {
    const wires = "a.out > x.in, x.tv > z.in";
    const parts: Parts = { a: TV, x: ["outlet-through"], z: ["receiver-tv"] };
    const found = said(evaluate(draw(parts, wires)), "x.tv");
    expectLacks(found, "through at end", 10);
    expect(found.lacking?.amount).toBeCloseTo(-14, 6);
  });

  test("that ends the line loses what its loss is beyond the usual 4 dB", () => {
    const wires = "a.out > x.in, x.tv > z.in";
    const parts = (options: Record<string, unknown>): Parts => ({
      a: TV,
      x: ["outlet-end", options],
      z: ["receiver-tv"],
    });
    expectLacks(said(evaluate(draw(parts({ lossDb: 12 }), wires)), "x.tv"), "loses", 8);
    expect(said(evaluate(draw(parts({}), wires)), "x.tv")).toEqual(NOTHING);
  });
});

describe("a tap", () => {
  const of = (options: Record<string, unknown>, output = "x.tap1") =>
    said(
      evaluate(draw({ a: TV, x: ["tap", options], z: ["receiver-tv"] }, "a.out > x.in, x.tap1 > z.in")),
      output,
    );

  // 12 dB are usual. Nothing follows on its line, but it is no plate that an end plate could stand for.
  test("gives its branch too little or too much by what it differs from a usual one", () => {
    expect(of({})).toEqual(NOTHING);
    expectLacks(of({ tapLossDb: 20 }), "high tap loss", 8);
    const { lacking, exceeding } = of({ tapLossDb: 7 });
    expect(lacking).toBeUndefined();
    expect(exceeding?.does).toBe("low tap loss");
    expect(exceeding?.excessDb).toBeCloseTo(5, 6);
  });
});

// 15 m of good cable, a plate without loss, a DC block of low loss: less than usual, and nobody's fault.
test.each([
  { what: "a cable", x: ["cable", { lengthM: 15, grade: "own", k1: 0.366, k2: 0.001 }] as Parts[string] },
  { what: "a DC block", x: ["dc-block", { lossDb: 0 }] as Parts[string] },
])("$what that loses little gives nobody too much", ({ x }) => {
  const evaluation = evaluate(draw({ z: ["receiver-tv"], x, a: TV }, "a.out > x.in, x.out > z.in"));
  expect(said(evaluation, "x.out").exceeding).toBeUndefined();
});
