/**
 * Who makes a level too low or too high. What is missing is given by hand, what each part loses stands beside it;
 * who is to be named is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { blameForLevel, levelled } from "../../../src/findings/blame/level.ts";
import { isAmplifier, stagesTo } from "../../../src/findings/blame/stages.ts";
import { draw, type Sketch } from "../../draw.ts";
import { aerial, blamedForLevel, figures } from "./missed.ts";

/** A set; the parts and wires in between stand in the test. */
const line = (parts: Sketch, wires: string) => draw({ z: ["receiver-tv"], ...parts }, wires);

const tooLittle = (parts: Sketch, wires: string, missingDb: number) =>
  blamedForLevel(line(parts, wires), "z.in", "too little", missingDb);
const tooMuch = (parts: Sketch, wires: string, missingDb: number) =>
  blamedForLevel(line(parts, wires), "z.in", "too much", missingDb);

const FED = ["power-inserter"] as const;

describe("too little, and a part does worse than a sound one", () => {
  const pad: Sketch = { p: ["attenuator", { lossDb: 4 }], a: aerial(60) };
  const wires = "a.out > p.in, p.out > z.in";

  test("names it with what it takes", () => {
    const found = tooLittle(pad, wires, 10);
    expect(found).toMatchObject({ part: "p", port: "out", does: "attenuates" });
    expect(found?.excessDb).toBeCloseTo(4, 6);
    expect(found?.amount).toBeCloseTo(-4, 6);
  });

  // A quarter of 15.9 is 3.975, of 16.1 it is 4.025: then its 4 dB are not the cause, only the greatest loss.
  test("as the cause only where that is a quarter of what is missing", () => {
    expect(tooLittle(pad, wires, 15.9)).toMatchObject({ does: "attenuates" });
    const found = tooLittle(pad, wires, 16.1);
    expect(found).toMatchObject({ part: "p", does: "loses", excessDb: 0 });
    expect(found?.amount).toBeCloseTo(-4, 6);
  });

  // What is known of it counts, not the sign of the distance to the limit.
  test("the worse one of two", () => {
    const both: Sketch = { ...pad, q: ["attenuator", { lossDb: 9 }] };
    expect(tooLittle(both, "a.out > q.in, q.out > p.in, p.out > z.in", 10)).toMatchObject({ part: "q" });
    expect(tooLittle(both, "a.out > p.in, p.out > q.in, q.out > z.in", 10)).toMatchObject({ part: "q" });
  });

  // A masthead amplifier without supply loses 25 dB where it would give 16: whoever lives without that, a tap of 20 dB at which it is
  // missed is not at fault.
  test("an amplifier that nobody feeds, though others get enough", () => {
    const parts: Sketch = {
      y: ["receiver-tv"],
      x: ["outlet-through", { tapLossDb: 20 }],
      e: ["outlet-end"],
      m: ["amp-masthead"],
      a: aerial(85),
    };
    const wires = "a.out > m.in, m.out > x.in, x.out > e.in, e.tv > y.in, x.tv > z.in";
    expect(blamedForLevel(line(parts, wires), "x.tv", "too little", 8)).toMatchObject({
      part: "m",
      does: "unfed",
    });
  });

  test("one that also serves a place in order comes behind", () => {
    const parts: Sketch = {
      y: ["receiver-tv"],
      p: ["attenuator", { lossDb: 6 }],
      s: ["splitter", { loss: "own", ownTvDb: 4 }],
      q: ["attenuator", { lossDb: 9 }],
      a: aerial(63),
    };
    const split = "a.out > q.in, q.out > s.in, s.out1 > p.in, p.out > z.in, s.out2 > y.in";
    // 63 − 9 − 4 = 50 dBµV at y, where 45 are enough, and 44 at z: of the 9 dB before the splitter at most 6 count,
    // and of these a half.
    expect(tooLittle(parts, split, 6)).toMatchObject({ part: "p" });
    // Without y nobody is in order behind it.
    expect(tooLittle(parts, "a.out > q.in, q.out > s.in, s.out1 > p.in, p.out > z.in", 6)).toMatchObject({
      part: "q",
    });
  });
});

describe("too little, and no part does worse than a sound one", () => {
  // 55 dBµV are 7 below a usual level: an aerial is weak only from 10 below on.
  const mast = (o: Record<string, unknown> = {}): Sketch => ({
    i: FED,
    m: ["amp-masthead", o],
    a: aerial(55),
  });
  const wires = "a.out > m.in, m.out > i.in, i.out > z.in";

  test("an amplifier is to be turned up by what is missing", () => {
    const found = tooLittle(mast(), wires, 6);
    expect(found).toMatchObject({ part: "m", port: "out", does: "low gain" });
    expect(found?.excessDb).toBeCloseTo(6, 6);
    expect(found?.amount).toBeCloseTo(16, 6);
  });

  test("of two amplifiers the last one", () => {
    const parts: Sketch = { ...mast(), d: ["amp-distribution"] };
    const found = tooLittle(parts, "a.out > m.in, m.out > i.in, i.out > d.in, d.out > z.in", 6);
    expect(found).toMatchObject({ part: "d", does: "low gain" });
    expect(found?.amount).toBeCloseTo(15, 6);
  });

  // Two channels of 55 dBµV leave with 71, rated 80 for two: 9 dB more it can give. The inserter loses most else.
  test("not where it cannot give that much", () => {
    const two = { channels: [{ channel: 30 }, { channel: 40 }] };
    const parts: Sketch = { ...mast({ outputDbuv: 80 }), c: ["cable", { lengthM: 10 }], a: aerial(55, two) };
    const wires = "a.out > m.in, m.out > i.in, i.out > c.in, c.out > z.in";
    expect(tooLittle(parts, wires, 8.9)).toMatchObject({ part: "m", does: "low gain" });
    expect(tooLittle(parts, wires, 9.1)).toMatchObject({ part: "c", does: "long cable" });
  });

  describe("and no amplifier: the greatest loss is named after what loses", () => {
    // 20 m of copper of 1.0 mm lose 14.581 dB/100 m at 546 MHz (0.585·√546 + 0.00167·546): 2.916 dB.
    test("a cable with its length", () => {
      const found = tooLittle(
        { c: ["cable", { lengthM: 20 }], b: ["dc-block"], a: aerial(60) },
        "a.out > b.in, b.out > c.in, c.out > z.in",
        10,
      );
      expect(found).toMatchObject({ part: "c", port: "out", does: "long cable", excessDb: 0, lengthM: 20 });
      expect(found?.amount).toBeCloseTo(-2.916, 2);
    });

    test.each([
      { name: "a tap", part: ["tap"], out: "tap1", does: "high tap loss", amount: -12 },
      { name: "an end plate", part: ["outlet-end"], out: "tv", does: "high tap loss", amount: -4 },
      {
        name: "a splitter",
        part: ["splitter", { loss: "own", ownTvDb: 4.5 }],
        out: "out2",
        does: "splits",
        amount: -4.5,
      },
      { name: "another part", part: ["filter"], out: "out", does: "loses", amount: -1 },
    ] as const)("$name", ({ part, out, does, amount }) => {
      const found = tooLittle({ x: part, a: aerial(60) }, `a.out > x.in, x.${out} > z.in`, 60);
      expect(found).toMatchObject({ part: "x", port: out, does, excessDb: 0 });
      expect(found?.amount).toBeCloseTo(amount, 6);
      expect(found).not.toHaveProperty("lengthM");
    });

    test("the greater of two, wherever it stands", () => {
      const parts: Sketch = { x: ["filter"], y: ["filter", { lossDb: 2.5 }], a: aerial(60) };
      expect(tooLittle(parts, "a.out > x.in, x.out > y.in, y.out > z.in", 30)).toMatchObject({ part: "y" });
      expect(tooLittle(parts, "a.out > y.in, y.out > x.in, x.out > z.in", 30)).toMatchObject({ part: "y" });
    });

    test("and of a line that loses nothing the source", () => {
      const found = tooLittle({ a: aerial(60) }, "a.out > z.in", 10);
      expect(found).toMatchObject({ part: "a", port: "out", does: "weak source", excessDb: 0 });
      expect(found?.amount).toBeCloseTo(60, 6);
    });
  });
});

describe("too much", () => {
  const mast = (o: Record<string, unknown> = {}): Sketch => ({ i: FED, m: ["amp-masthead", o] });
  const wires = "a.out > m.in, m.out > i.in, i.out > z.in";

  // All that an amplifier gives could be taken back, not only what is above the usual 16 dB.
  test("is an amplifier's with its whole gain", () => {
    const found = tooMuch({ ...mast({ gainDb: 22 }), a: aerial(62) }, wires, 5);
    expect(found).toMatchObject({ part: "m", port: "out", does: "high gain" });
    expect(found?.excessDb).toBeCloseTo(22, 6);
    expect(found?.amount).toBeCloseTo(22, 6);
  });

  // A usual aerial gives 62 dBµV.
  test("is the source's where it gives more beyond the usual than the amplifier gains", () => {
    const found = tooMuch({ ...mast(), a: aerial(95) }, wires, 5);
    expect(found).toMatchObject({ part: "a", port: "out", does: "strong source" });
    expect(found?.excessDb).toBeCloseTo(33, 6);
    expect(found?.amount).toBeCloseTo(95, 6);
    expect(tooMuch({ ...mast(), a: aerial(75) }, wires, 5)).toMatchObject({ part: "m" });
  });

  // Two channels, as the rating is meant: 95 + 28 = 123 dBµV, rated 104: overdriven. Without its 28 dB nothing of the 12 dB
  // would be too much, so it goes first although
  // the source gives 33 dB beyond the usual. Its 28 dB are less than four fifths of 36 dB.
  test("is an overdriven amplifier's, whatever the source gives, where its gain covers it", () => {
    const two = { channels: [{ channel: 30 }, { channel: 40 }] };
    const parts = { ...mast({ gainDb: 28 }), p: ["attenuator", { lossDb: 26 }], a: aerial(95, two) } as const;
    const padded = "a.out > m.in, m.out > i.in, i.out > p.in, p.out > z.in";
    expect(tooMuch(parts, padded, 12)).toMatchObject({ part: "m", does: "high gain", amount: 28 });
    expect(tooMuch(parts, padded, 36)).toMatchObject({ part: "a" });
  });

  test("is of two alike that of the one nearer to the source", () => {
    expect(tooMuch({ ...mast(), a: aerial(78) }, wires, 5)).toMatchObject({ part: "a" });
  });

  // 62 + 15 − 4 = 73 dBµV at y, in order; 83 at z, 9 too much: of the 15 dB before both 9 count, and of these a half.
  test("is the amplifier's that no place in order depends on", () => {
    const parts: Sketch = {
      n: ["amp-distribution", { gainDb: 10, outputDbuv: 120 }],
      s: ["splitter", { loss: "own", ownTvDb: 4 }],
      m: ["amp-distribution", { gainDb: 15, outputDbuv: 120 }],
      a: aerial(62),
    };
    const split = "a.out > m.in, m.out > s.in, s.out1 > n.in, n.out > z.in";
    expect(tooMuch({ y: ["receiver-tv"], ...parts }, `${split}, s.out2 > y.in`, 9)).toMatchObject({
      part: "n",
      does: "high gain",
    });
    expect(tooMuch(parts, split, 9)).toMatchObject({ part: "m" });
  });

  test("is a plate's that takes too little off the line", () => {
    const parts: Sketch = {
      y: ["receiver-tv"],
      e: ["outlet-end"],
      x: ["outlet-through", { tapLossDb: 8 }],
      a: aerial(62),
    };
    const found = blamedForLevel(
      line(parts, "a.out > x.in, x.out > e.in, e.tv > y.in, x.tv > z.in"),
      "x.tv",
      "too much",
      3,
    );
    expect(found).toMatchObject({ part: "x", port: "tv", does: "low tap loss" });
    expect(found?.excessDb).toBeCloseTo(6, 2);
  });

  test("is the source's where nothing gives more than usual", () => {
    const found = tooMuch({ a: aerial(60) }, "a.out > z.in", 7);
    expect(found).toMatchObject({ part: "a", does: "strong source" });
    expect(found?.excessDb).toBeCloseTo(7, 6);
    expect(found?.amount).toBeCloseTo(60, 6);
  });

  test("is a converter's, not a dish's: how much goes down the line is its doing", () => {
    const sky = draw(
      { r: ["receiver-sat"], l: ["lnb-universal"], d: ["dish"] },
      "d.sky > l.sky, l.out > r.sat",
    );
    const found = blamedForLevel(sky, "r.sat", "too much", 4, {
      service: "satellite",
      worst: { origin: "d/V" },
    });
    expect(found).toMatchObject({ part: "l", port: "out", does: "strong source" });
    expect(found?.excessDb).toBeCloseTo(4, 6);
  });
});

describe("a tap whose branch and through output are mixed up", () => {
  // In at tap x; its branch feeds the rest of the riser, its through output one plate. A branch of 20 dB takes 20; the
  // through line loses 0.45 + 1.45·(−10·log10(1 − 0.01)) = 0.45 + 1.45·0.0436 = 0.513 dB: 19.487 dB between the two.
  const parts: Sketch = {
    z: ["receiver-tv"],
    y: ["receiver-tv"],
    e: ["outlet-end"],
    o: ["outlet-tv"],
    x: ["tap", { tapLossDb: 20 }],
    a: aerial(62),
  };
  const riser = draw(parts, "a.out > x.in, x.tap1 > e.in, e.tv > z.in, x.out > o.in, o.tv > y.in");

  test("is named for too little down the line and for too much at the place", () => {
    for (const [at, side, port] of [
      ["e.tv", "too little", "tap1"],
      ["o.tv", "too much", "out"],
    ] as const) {
      const found = blamedForLevel(riser, at, side, 10);
      expect(found).toMatchObject({ part: "x", port, does: "legs swapped" });
      expect(found?.excessDb).toBeCloseTo(19.487, 2);
    }
  });
});

describe("behind a level that is held", () => {
  const stacked = draw(
    {
      r: ["receiver-stacked"],
      c: ["cable", { lengthM: 100 }],
      l: ["lnb-stacked"],
      p: ["dish", { diameterM: 0.4 }],
    },
    "p.sky > l.sky, l.out > c.in, c.out > r.sat",
  );
  const userBand1 = { origin: "l/out", index: 0, userBand: 1 };

  test("nothing counts that lies before", () => {
    const all = stagesTo(evaluate(stacked), { part: "r", port: "sat" }, userBand1);
    expect(all.map((s) => s.step.part)).toEqual(["p", "l", "c"]);
    expect(levelled(all).map((s) => s.step.part)).toEqual(["l", "c"]);
  });

  // A dish of 40 cm is a weak one; but the unit holds its user bands at 80 dBµV.
  test("a weak dish is not to blame, the long cable behind is", () => {
    const found = blamedForLevel(stacked, "r.sat", "too little", 4, {
      service: "satellite",
      worst: userBand1,
    });
    expect(found).toMatchObject({ part: "c", does: "long cable", lengthM: 100 });
  });

  test("a line without such a part counts from its source on", () => {
    const plain = line({ c: ["cable"], a: aerial(60) }, "a.out > c.in, c.out > z.in");
    const all = stagesTo(evaluate(plain), { part: "z", port: "in" }, { origin: "a", index: 0 });
    expect(levelled(all).map((s) => s.step.part)).toEqual(["a", "c"]);
  });
});

describe("an amplifier on the way is one that amplifies", () => {
  const amplifies = (x: Sketch[string], wires = "a.out > x.in, x.out > i.in, i.out > z.in") => {
    const evaluation = evaluate(line({ i: FED, x, a: aerial(60) }, wires));
    const stage = stagesTo(evaluation, { part: "z", port: "in" }, { origin: "a", index: 0 }).find(
      (s) => s.step.part === "x",
    );
    if (!stage) throw new Error("it does not come by there");
    return isAmplifier(stage);
  };

  test.each([
    { name: "a masthead amplifier", x: ["amp-masthead"], is: true },
    { name: "one that is turned down to nothing", x: ["amp-masthead", { gainDb: 0 }], is: false },
    { name: "one for the house", x: ["amp-distribution", { gainDb: 0.5 }], is: true },
    { name: "one that is off", x: ["amp-distribution", { switchedOn: false }], is: false },
    { name: "a cable", x: ["cable"], is: false },
  ] as const)("$name: $is", ({ x, is }) => {
    expect(amplifies(x)).toBe(is);
  });

  test("and not one that nobody feeds", () => {
    expect(amplifies(["amp-masthead"], "a.out > x.in, x.out > z.in")).toBe(false);
  });

  // Its gain is nobody's fault.
  test("and not a multiswitch with some gain for TV", () => {
    const unit = ["stacking-converter", { terrestrialBuild: "active" }] as const;
    const evaluation = evaluate(line({ x: unit, a: aerial(60) }, "a.out > x.ter, x.out1 > z.in"));
    const stage = stagesTo(evaluation, { part: "z", port: "in" }, { origin: "a", index: 0 }).at(-1);
    expect(stage?.step.gainDb).toBeCloseTo(2, 2);
    expect(stage && isAmplifier(stage)).toBe(false);
  });
});

describe("nobody is named", () => {
  const design = line({ a: aerial(60) }, "a.out > z.in");

  test("where the carrier does not arrive", () => {
    expect(blamedForLevel(design, "z.in", "too little", 5, { worst: { index: 1 } })).toBeUndefined();
    expect(blamedForLevel(design, "z.in", "too much", 5, { worst: { origin: "b" } })).toBeUndefined();
  });

  test("at a part as a whole, or of no service", () => {
    expect(blamedForLevel(design, "z", "too little", 5)).toBeUndefined();
    const draft = {
      severity: "warning",
      at: { part: "z", port: "in" },
      parts: ["z"],
      wires: [],
      value: 40,
      limit: 45,
      facts: { failing: 1, of: 1, worst: figures() },
    } as const;
    expect(blameForLevel(evaluate(design), draft)).toBeUndefined();
    expect(blameForLevel(evaluate(design), { ...draft, at: { ...draft.at, service: "tv" } })).toMatchObject({
      part: "a",
      does: "weak source",
    });
  });
});
