/** Supplies that are shorted or asked for too much: currents added by hand. Who is named is common practice, no source. */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

const found = (parts: Sketch, wires: string) =>
  foundBy("supply-overloaded", draw({ ...parts, d: ["dish"] }, `d.sky > l.sky, ${wires}`));

describe("too much current", () => {
  const lnb = (commonMa: number): Sketch[string] => ["lnb-universal", { commonMa, outputMa: 35 }];
  const line = (limitMa: number, milliamps = 150) =>
    found(
      { a: ["receiver-sat", { limitMa }], g: ["amp-if", { milliamps }], l: lnb(60) },
      "l.out > g.in, g.out > a.sat",
    );

  // 60 + 35 mA of the LNB and 150 of the amplifier: 245 mA.
  test("names the supply, then who draws it, most first", () => {
    expect(line(200)).toMatchObject([
      {
        severity: "error",
        at: { part: "a", port: "sat" },
        parts: ["a", "g", "l"],
        wires: ["g.out>a.sat"],
        value: 245,
        limit: 200,
        unit: "mA",
        facts: {
          kind: "too much",
          draws: [
            { part: "g", milliamps: 150 },
            { part: "l", milliamps: 95 },
          ],
        },
      },
    ]);
    expect(line(200, 60)).toEqual([]);
  });

  test("is none just at the limit", () => {
    expect(line(245)).toEqual([]);
    expect(line(244)).toHaveLength(1);
  });

  test("of equal draws is told in the order of names", () => {
    for (const [first, second] of [
      ["g", "h"],
      ["h", "g"],
    ] as const) {
      const [one] = found(
        {
          a: ["receiver-sat", { limitMa: 150 }],
          [first]: ["amp-if", { milliamps: 95 }],
          [second]: ["amp-if", { milliamps: 95 }],
          l: lnb(60),
        },
        `l.out > ${first}.in, ${first}.out > ${second}.in, ${second}.out > a.sat`,
      );
      expect(one).toMatchObject({ value: 285, parts: ["a", "g", "h", "l"] });
    }
  });

  // 190 + 35 = 225 mA each: one receiver of 400 mA feeds either, and not both. It is the second LNB that is too much.
  test("of two LNBs on one receiver is the fault of the LNBs", () => {
    const two = (commonMa: number) =>
      found(
        { a: ["receiver-sat"], c: ["combiner", { dc: "all" }], l: lnb(commonMa), m: lnb(190), e: ["dish"] },
        "e.sky > m.sky, l.out > c.in1, m.out > c.in2, c.out > a.sat",
      );
    expect(two(190)).toMatchObject([{ at: { part: "a" }, parts: ["l", "a", "m"], value: 450, limit: 400 }]);
    // 380 + 35 = 415 mA: more than the receiver gives, even alone.
    expect(two(380)).toMatchObject([{ parts: ["a", "l", "m"], value: 640 }]);
  });

  // 500 + 2·35 = 570 mA, of which two receivers over equal leads give 285 each: too much for either.
  test("for several supplies is the fault of whoever draws it from all", () => {
    const parts: Sketch = {
      b: ["receiver-sat", { limitMa: 250 }],
      a: ["receiver-sat", { limitMa: 200 }],
      l: ["lnb-universal", { outputs: "2", commonMa: 500, outputMa: 35 }],
    };
    const all = found(parts, "l.out1 > a.sat, l.out2 > b.sat");
    expect(all.map((f) => [f.at.part, f.parts, f.value, f.limit]).sort()).toEqual([
      ["a", ["l", "a"], 285, 200],
      ["b", ["l", "b"], 285, 250],
    ]);
  });

  // 200 + 2·35 = 270 mA of a twin LNB: alone it is too much for 200 mA, shared it is 135 mA for each.
  test("is none where two share what is too much for one", () => {
    const twin: Sketch = {
      b: ["receiver-sat", { limitMa: 200 }],
      a: ["receiver-sat", { limitMa: 200 }],
      l: ["lnb-universal", { outputs: "2", commonMa: 200, outputMa: 35 }],
    };
    expect(found(twin, "l.out1 > a.sat, l.out2 > b.sat")).toEqual([]);
    const off: Sketch[string] = ["receiver-sat", { limitMa: 200, state: "standby" }];
    expect(found({ ...twin, b: off }, "l.out1 > a.sat, l.out2 > b.sat")).toMatchObject([
      { at: { part: "a" }, value: 235, limit: 200 },
    ]);
  });

  // An octo LNB: 60 mA in common and 35 for each output in use, never for all eight of them.
  test("counts the outputs of an LNB that are in use", () => {
    const octo: Sketch = { a: ["receiver-sat", { limitMa: 94 }], l: ["lnb-universal", { outputs: "8" }] };
    expect(found(octo, "l.out1 > a.sat")).toMatchObject([{ value: 95, limit: 94 }]);
    expect(found({ ...octo, a: ["receiver-sat", { limitMa: 95 }] }, "l.out1 > a.sat")).toEqual([]);
  });

  // Of its four inputs two feed with 18 V and carry the load; the limit is one for all of them.
  test("of a mains unit is told once, whatever the number of its inputs", () => {
    const [one, ...more] = found(
      {
        r: ["receiver-sat"],
        u: ["multiswitch", { terrestrial: false, outputs: 4, lnbLimitMa: 150 }],
        l: ["lnb-quattro", { currentMa: 200 }],
      },
      "l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, u.out1 > r.sat",
    );
    expect(more).toEqual([]);
    expect(one?.at.part).toBe("u");
    expect(one).toMatchObject({ value: 200, limit: 150, facts: { inputs: 4 } });
  });
});

describe("a short", () => {
  const parts: Sketch = {
    b: ["receiver-sat"],
    a: ["receiver-sat", { polarisation: "H" }],
    s: ["splitter", { dc: "all" }],
    x: ["bad-joint", { fault: "shorted" }],
    l: ["lnb-universal"],
  };

  test("is told where it is, with the supplies that shut down in the order of names", () => {
    const design = draw(
      { ...parts, d: ["dish"] },
      "d.sky > l.sky, l.out > x.in, x.out > s.in, s.out1 > b.sat, s.out2 > a.sat",
    );
    for (const drawn of [design, backwards(design)]) {
      const [short, ...more] = foundBy("supply-overloaded", drawn);
      expect(more).toEqual([]);
      expect(short).toMatchObject({
        severity: "error",
        at: { part: "x", port: "out" },
        parts: ["x", "a", "b"],
        wires: ["x.out>s.in"],
        facts: { kind: "short", supplies: ["a", "b"] },
      });
      expect(short).not.toHaveProperty("value");
    }
  });

  // 60 mA of limit for 95 of the LNB, but the short is what shuts it down.
  test("is told alone, not with what is drawn besides", () => {
    const all = found({ ...parts, b: ["receiver-sat", { limitMa: 60 }] }, "l.out > x.in, x.out > b.sat");
    expect(all.map((f) => f.facts.kind)).toEqual(["short"]);
  });

  test("that no supply reaches harms nobody", () => {
    expect(found({ t: ["receiver-tv"], ...parts }, "l.out > x.in, x.out > t.in")).toEqual([]);
  });

  test("is none at a joint that is merely corroded", () => {
    expect(found({ ...parts, x: ["bad-joint"] }, "l.out > x.in, x.out > b.sat")).toEqual([]);
  });
});

describe("a terminator that does not block DC", () => {
  const riser = (dcBlocked: boolean): Sketch => ({
    a: ["receiver-sat", { polarisation: "H" }],
    p: ["outlet-through", { satellite: true }],
    t: ["load", { dcBlocked }],
    l: ["lnb-universal"],
  });
  const WIRES = "l.out > p.in, p.sat > a.sat, p.out > t.in";

  // The plate's diode leaves 17.5 V of 18, also on the line below it: 17.5 V / 75 Ω = 233 mA, 4.1 W.
  test("draws from the live line that it ends, and is told with what it burns", () => {
    const [one, ...more] = found(riser(false), WIRES);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ severity: "warning", at: { part: "t", port: "in" }, unit: "mA" });
    expect(one?.value).toBeCloseTo(233.33, 1);
    expect(one?.facts.kind === "resistor" ? one.facts.watts : 0).toBeCloseTo(4.08, 2);
    expect(found(riser(true), WIRES)).toEqual([]);
  });

  // 233 mA beside 95 of the LNB: too much for 300 mA, and no fault of the LNB.
  test("is the culprit where it overloads the supply", () => {
    const tight = {
      ...riser(false),
      a: ["receiver-sat", { polarisation: "H", limitMa: 300 }],
    } satisfies Sketch;
    expect(found(tight, WIRES)).toMatchObject([
      { at: { part: "a" }, parts: ["t", "a", "l"], facts: { kind: "too much" } },
    ]);
  });
});
