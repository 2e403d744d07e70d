/** Supply as a network, on designs: sums by Ohm's and Kirchhoff's laws, each beside its check. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { whoIsOn } from "../../src/findings/whoIsOn.ts";
import { draw, type Sketch } from "../draw.ts";

const COMMON: Sketch[string] = ["lnb-universal", { outputs: "2", commonMa: 200, outputMa: 0 }];
const metres = (lengthM: number): Sketch[string] => ["cable", { lengthM, grade: "own", loopOhmPerKm: 100 }];

describe("two receivers on a twin LNB", () => {
  const twin = (a: Record<string, unknown>, b: Record<string, unknown>) =>
    evaluate(
      draw(
        {
          l: COMMON,
          near: metres(10),
          far: metres(30),
          a: ["receiver-sat", a],
          b: ["receiver-sat", b],
        },
        "l.out1 > near.in, l.out2 > far.in, near.out > a.sat, far.out > b.sat",
      ),
    );

  // 1 and 3 Ω from 13 V each: 150 and 50 mA, 0.15 V on both lines.
  test("share its current as their cables let them", () => {
    const evaluation = twin({}, {});
    expect(evaluation.record("a")?.demands.sat?.milliamps).toBeCloseTo(150, 1);
    expect(evaluation.record("b")?.demands.sat?.milliamps).toBeCloseTo(50, 1);
    expect(evaluation.record("l")?.feeds.out1?.[0]?.volts).toBeCloseTo(12.85, 3);
    expect(evaluation.record("l")?.feeds.out2?.[0]?.volts).toBeCloseTo(12.85, 3);
    expect(evaluation.record("l")?.drawsMa).toBeCloseTo(200, 2);
    expect(evaluation.record("near")?.demands.out?.draws).toEqual([
      { part: "l", milliamps: expect.closeTo(150, 1) },
    ]);
  });

  // The one that asks for horizontal gives 18 V and all of the current: 3 Ω · 200 mA = 0.6 V.
  test("of which one asks for horizontal: that one carries all", () => {
    const evaluation = twin({}, { polarisation: "H" });
    expect(evaluation.record("a")?.demands.sat).toBeUndefined();
    expect(evaluation.record("b")?.demands.sat?.milliamps).toBeCloseTo(200, 1);
    expect(evaluation.record("l")?.feeds.out2?.[0]?.volts).toBeCloseTo(17.4, 3);
    // If it asked for vertical, both would share again; if the other asked for horizontal, 18 V on both: 0.15 V.
    expect(evaluation.record("l")?.feeds.out2?.[0]?.volts13).toBeCloseTo(12.85, 3);
    expect(evaluation.record("l")?.feeds.out1?.[0]?.volts18).toBeCloseTo(17.85, 3);
  });

  test("of which one is off: the other carries all", () => {
    const evaluation = twin({ state: "unplugged" }, {});
    expect(evaluation.record("l")?.feeds.out2?.[0]?.volts).toBeCloseTo(12.4, 3);
  });
});

describe("what a converter draws", () => {
  // 60 mA in common and 35 mA for each of the outputs in use: 165 mA of an octo LNB with three receivers.
  test("is its common part and that of every output in use, shared by who is on", () => {
    const receivers = [1, 2, 3].map((n) => [`r${n}`, ["receiver-sat"] as const]);
    const evaluation = evaluate(
      draw(
        {
          l: ["lnb-universal", { outputs: "8" }],
          off: ["receiver-sat", { state: "standby" }],
          ...Object.fromEntries(receivers),
        },
        "l.out1 > r1.sat, l.out2 > r2.sat, l.out3 > r3.sat, l.out4 > off.sat",
      ),
    );
    expect(evaluation.record("l")?.drawsMa).toBeCloseTo(60 + 3 * 35, 2);
    for (const [id] of receivers)
      expect(evaluation.record(id as string)?.demands.sat?.milliamps).toBeCloseTo(55, 1);
  });
});

describe("one receiver by several ways", () => {
  // A receiver-fed multiswitch (60 mA) and a quattro LNB (200 mA) on its four inputs: 260 mA, not 200 for every way.
  test("pays for a converter once", () => {
    const evaluation = evaluate(
      draw(
        {
          l: ["lnb-quattro", { currentMa: 200 }],
          u: ["multiswitch", { supply: "receivers", terrestrial: false, outputs: 4, ownMa: 60 }],
          r: ["receiver-sat"],
        },
        "l.vl > u.vl, l.vh > u.vh, l.hl > u.hl, l.hh > u.hh, u.out1 > r.sat",
      ),
    );
    expect(evaluation.record("r")?.demands.sat?.milliamps).toBeCloseTo(260, 2);
  });
});

describe("a supply that is asked for too much", () => {
  const fed = (limitMa: number) =>
    evaluate(
      draw(
        {
          d: ["dish"],
          l: ["lnb-universal", { outputs: "1", commonMa: 300, outputMa: 0 }],
          r: ["receiver-sat", { limitMa }],
        },
        "d.sky > l.sky, l.out > r.sat",
      ),
    );

  test("shuts down, and what lived on it is dead", () => {
    const record = fed(299).record("l");
    expect(record).toMatchObject({ powered: false, drawsMa: 0 });
    expect(record?.feeds.out).toMatchObject([{ volts: 0, volts13: 0, volts18: 0 }]);
    expect(fed(299).record("r")).toMatchObject({ shutDown: ["sat"], inputs: {} });
    // What it would have had to give is told all the same.
    expect(fed(299).record("r")?.demands.sat?.milliamps).toBeCloseTo(300, 2);
  });

  test("holds just at its limit", () => {
    expect(fed(300).record("l")?.powered).toBe(true);
    expect(fed(300).record("r")?.shutDown).toEqual([]);
  });
});

describe("a line below the plate of a riser", () => {
  // Direct current runs back along the line: a short anywhere on the riser shuts down whoever feeds into it.
  test("that is shorted takes the supply of the receivers above", () => {
    const evaluation = evaluate(
      draw(
        {
          l: ["lnb-stacked"],
          p: ["outlet-through", { satellite: true }],
          c: ["cable"],
          x: ["bad-joint", { fault: "shorted" }],
          e: ["outlet-end", { satellite: true }],
          r: ["receiver-stacked"],
        },
        "l.out > p.in, p.out > c.in, c.out > x.in, x.out > e.in, p.sat > r.sat",
      ),
    );
    expect(evaluation.record("x")?.shorts).toEqual(["r"]);
    expect(evaluation.record("l")?.powered).toBe(false);
  });
});

describe("a cable in the sun", () => {
  // 50 m at 100 Ω/km are 5 Ω, at 70 °C 5 · (1 + 50 · 0.00393) = 5.98 Ω: 200 mA take 1.197 V instead of 1.
  test("has more resistance, by 0.393 % a degree", () => {
    const volts = (temperatureC: number) =>
      evaluate(
        draw(
          {
            l: ["lnb-universal", { commonMa: 200, outputMa: 0 }],
            c: ["cable", { lengthM: 50, grade: "own", loopOhmPerKm: 100, temperatureC }],
            r: ["receiver-sat"],
          },
          "l.out > c.in, c.out > r.sat",
        ),
      ).record("l")?.feeds.out?.[0]?.volts;
    expect(volts(20)).toBeCloseTo(12, 3);
    expect(volts(70)).toBeCloseTo(13 - 1.1965, 3);
  });
});

describe("a wet joint", () => {
  const line = (fault: string) =>
    evaluate(
      draw(
        { r: ["receiver-sat", { polarisation: "H" }], x: ["bad-joint", { fault }], l: COMMON, d: ["dish"] },
        "d.sky > l.sky, l.out1 > x.in, x.out > r.sat",
      ),
    );

  // 18 V across some 1 kΩ of water (order of magnitude, from memory): 18 mA beside the 200 mA of the LNB.
  test("leaks some milliamperes from the supply, and passes the rest", () => {
    const wet = line("wet");
    expect(wet.record("x")?.drawsMa).toBeCloseTo(18, 2);
    expect(wet.record("r")?.demands.sat?.milliamps).toBeCloseTo(218, 1);
    expect(wet.record("l")?.powered).toBe(true);
    // Nobody would call it a terminator that gets hot.
    expect(report(wet).findings.filter((f) => f.rule === "supply-overloaded")).toEqual([]);
  });

  test("leaks, and one that is corroded does not", () => {
    expect(line("corroded").record("r")?.demands.sat?.milliamps).toBeCloseTo(200, 1);
  });
});

describe("an energy-saving multiswitch", () => {
  const house = (state: "on" | "standby", energySaving = true) =>
    evaluate(
      draw(
        {
          k: ["dish"],
          l: ["lnb-quattro", { currentMa: 200 }],
          a: ["aerial-uhf"],
          m: ["amp-masthead", { milliamps: 40 }],
          s: ["multiswitch", { outputs: 4, energySaving, aerialSupply: "12" }],
          r: ["receiver-sat", { state }],
          t: ["receiver-tv"],
        },
        `k.sky > l.sky, l.vl > s.vl, l.vh > s.vh, l.hl > s.hl, l.hh > s.hh, a.out > m.in, m.out > s.ter,
         s.out1 > r.sat, s.out2 > t.in`,
      ),
    );

  // Like any other with mains while one is on: 18 V on the lines for horizontal, 12 V for the masthead. In standby, nothing.
  test("feeds its LNB and its masthead amplifier only while a receiver is on", () => {
    const awake = house("on");
    expect(awake.record("l")?.feeds.hl?.map(({ part, volts }) => [part, volts])).toEqual([["s", 18]]);
    expect(awake.record("m")?.feeds.out?.map(({ part, volts }) => [part, volts])).toEqual([["s", 12]]);
    expect([awake.record("l")?.drawsMa, awake.record("m")?.drawsMa]).toEqual([200, 40]);
    const asleep = house("standby");
    for (const [part, port] of [
      ["l", "hl"],
      ["m", "out"],
    ] as const) {
      expect(
        asleep.record(part)?.feeds[port]?.map(({ volts, volts13, volts18 }) => [volts, volts13, volts18]),
      ).toEqual([[0, 0, 0]]);
      expect(asleep.record(part)).toMatchObject({ powered: false, drawsMa: 0 });
    }
    expect(house("standby", false).record("m")?.powered).toBe(true);
  });

  test("is told by who is on: nobody, and the LNB is dead", () => {
    const table = whoIsOn(house("standby").design, "l");
    expect(table?.states.map(({ on, volts, milliamps, works }) => [on, volts, milliamps, works])).toEqual([
      [[], 0, 0, false],
      [["r"], 18, 200, true],
    ]);
  });

  // An SCR/dSCR unit of the same sort.
  test("may be one for single-cable feeds", () => {
    const block = (state: "on" | "standby") =>
      evaluate(
        draw(
          {
            k: ["dish"],
            l: ["lnb-quattro"],
            s: ["stacking-converter", { energySaving: true }],
            r: ["receiver-stacked", { state }],
          },
          "k.sky > l.sky, l.vl > s.vl, l.vh > s.vh, l.hl > s.hl, l.hh > s.hh, s.out1 > r.sat",
        ),
      );
    expect(block("on").record("l")?.powered).toBe(true);
    expect(block("standby").record("l")?.powered).toBe(false);
  });
});

describe("trunks fed from the head end", () => {
  const TRUNKS = ["vl", "vh", "hl", "hh"];
  const each = (wire: (trunk: string) => string) => TRUNKS.map(wire).join(", ");
  /** A launch amplifier, 50 m of trunks of 10 Ω each, a unit, 25 m of 5 Ω each, and the last unit. */
  const cascade = (limitMa: number, volts = "18") =>
    evaluate(
      draw(
        {
          k: ["dish"],
          l: ["lnb-quattro", { currentMa: 200 }],
          h: ["amp-trunks", { terrestrial: false, trunkSupply: volts, trunkLimitMa: limitMa }],
          u: ["multiswitch", { supply: "head", terrestrial: false, outputs: 4, cascade: true, ownMa: 240 }],
          w: ["multiswitch", { supply: "head", terrestrial: false, outputs: 4, ownMa: 160 }],
          r: ["receiver-sat"],
          ...Object.fromEntries(
            TRUNKS.flatMap((t) => [
              [`c${t}`, ["cable", { lengthM: 50, grade: "own", loopOhmPerKm: 200 }] as const],
              [`d${t}`, ["cable", { lengthM: 25, grade: "own", loopOhmPerKm: 200 }] as const],
            ]),
          ),
        },
        [
          "k.sky > l.sky",
          each((t) => `l.${t} > h.${t}, h.${t}-out > c${t}.in, c${t}.out > u.${t}`),
          each((t) => `u.${t}-thru > d${t}.in, d${t}.out > w.${t}`),
          "w.out1 > r.sat",
        ].join(", "),
      ),
    );

  // 400 mA on four lines of 10 Ω: 100 mA each, 1 V; then 160 mA on four of 5 Ω: 40 mA each, 0.2 V. The LNB lives on the
  // 13 and 18 V that the amplifier puts upwards, and has no part in it.
  test("lose on every cable what flows through it", () => {
    const evaluation = cascade(1000);
    for (const t of TRUNKS) {
      expect(evaluation.record("u")?.feeds[t]?.[0]?.volts).toBeCloseTo(17, 3);
      expect(evaluation.record("w")?.feeds[t]?.[0]?.volts).toBeCloseTo(16.8, 3);
      expect(evaluation.record("h")?.demands[`${t}-out`]?.milliamps).toBeCloseTo(100, 1);
      expect(evaluation.record(`d${t}`)?.demands.in?.milliamps).toBeCloseTo(40, 1);
    }
    expect([evaluation.record("u")?.powered, evaluation.record("w")?.powered]).toEqual([true, true]);
    expect(evaluation.record("l")?.drawsMa).toBeCloseTo(200, 2);
  });

  test("are dead below a unit that is asked for more than it gives", () => {
    const evaluation = cascade(399);
    expect(evaluation.record("h")?.shutDown).toHaveLength(4);
    expect([evaluation.record("u")?.powered, evaluation.record("w")?.powered]).toEqual([false, false]);
    expect(evaluation.record("l")?.powered).toBe(true);
    expect(report(evaluation).causes.map(({ root }) => root.rule)).toEqual(["supply-overloaded"]);
  });

  // 12 V less 1 V are too few for 11.5 V (the least that multiswitches take here).
  test("fall short where the cables take too much", () => {
    expect(cascade(1000, "12").record("u")?.powered).toBe(false);
  });

  test("of which nobody feeds: the head end could", () => {
    const [cause, ...more] = report(cascade(1000, "0")).causes;
    expect(cause?.root).toMatchObject({
      rule: "no-supply",
      parts: ["h", "u"],
      facts: {
        stop: { why: "nothing above feeds", nearest: "h", setting: { option: "trunkSupply", value: "12" } },
      },
    });
    expect(more).toEqual([]);
  });

  // An inserter in one trunk: 18 V for the LNB above, and 160 mA of 18 V over 2 Ω below: 17.68 V. Together within its limit.
  test("by an inserter that feeds both ways", () => {
    const both = (limitMa: number) =>
      evaluate(
        draw(
          {
            l: ["lnb-wideband", { currentMa: 100 }],
            i: ["power-inserter", { feeds: "both", volts: 18, limitMa }],
            c: ["cable", { lengthM: 10, grade: "own", loopOhmPerKm: 200 }],
            u: ["multiswitch", { supply: "head", feed: "wideband", terrestrial: false, ownMa: 160 }],
          },
          "l.v > i.in, i.out > c.in, c.out > u.v",
        ),
      );
    expect(both(260).record("u")?.feeds.v?.[0]?.volts).toBeCloseTo(17.68, 3);
    expect(both(260).record("l")?.powered).toBe(true);
    // 100 + 160 mA.
    expect(both(259).record("i")?.shutDown).toEqual(["in", "out"]);
  });
});

describe("an LNB with a switching regulator", () => {
  const behind8Ohm = (polarisation: "V" | "H", regulator: string) =>
    evaluate(
      draw(
        {
          l: ["lnb-universal", { commonMa: 250, outputMa: 0, regulator }],
          c: ["cable", { lengthM: 80, grade: "own", loopOhmPerKm: 100 }],
          r: ["receiver-sat", { polarisation }],
        },
        "l.out > c.in, c.out > r.sat",
      ),
    ).record("l");

  // 250 mA at 13 V are 3.25 W. U² − 18·U + 8 Ω · 3.25 W = 0: U = 9 + √(81 − 26) = 16.416 V, and 3.25 W / U = 198 mA.
  test("draws less at 18 V", () => {
    expect(behind8Ohm("H", "switching")?.feeds.out?.[0]?.volts).toBeCloseTo(16.416, 2);
    expect(behind8Ohm("H", "switching")?.drawsMa).toBeCloseTo(198, 0);
  });

  // U² − 13·U + 26 = 0: U = 6.5 + √(42.25 − 26) = 10.531 V, below the 11.5 V from which its regulator works: there it
  // draws no more than 3.25 W / 11.5 V = 282.6 mA, so that 13 V − 8 Ω · 282.6 mA = 10.739 V are left; it is dead.
  test("draws more on a long line at 13 V, down to where it works no more", () => {
    expect(behind8Ohm("V", "switching")?.drawsMa).toBeCloseTo(282.6, 0);
    expect(behind8Ohm("V", "switching")?.feeds.out?.[0]?.volts).toBeCloseTo(10.739, 2);
    expect(behind8Ohm("V", "switching")?.powered).toBe(false);
  });

  // 13 V − 8 Ω · 250 mA = 11 V; 18 V − 2 V = 16 V.
  test("is told apart from one whose current is the same at every voltage", () => {
    expect(behind8Ohm("V", "linear")?.feeds.out?.[0]?.volts).toBeCloseTo(11, 3);
    expect(behind8Ohm("H", "linear")?.feeds.out?.[0]?.volts).toBeCloseTo(16, 3);
  });
});

describe("a plate", () => {
  const behind = (kind: string, options = {}) =>
    evaluate(
      draw(
        {
          l: ["lnb-universal", { commonMa: 100, outputMa: 0 }],
          p: [kind, options],
          r: ["receiver-sat", { half: "high" }],
        },
        "l.out > p.in, p.sat > r.sat",
      ),
    )
      .record("l")
      ?.feeds.out?.map(({ volts, toneArrives }) => [volts, toneArrives]);

  // A Schottky diode takes 0.3 to 0.5 V (textbook, from memory); the upper end stands for it.
  test.each(["outlet-sat", "outlet-sat-twin", "outlet-diplexed", "outlet-triplexed", "outlet-quad"])(
    "%s passes DC and tone, DC by a diode, DC alone, or nothing, as it is sold",
    (kind) => {
      expect(behind(kind)).toEqual([[13, true]]);
      expect(behind(kind, { satelliteDc: "diode" })).toEqual([[12.5, true]]);
      expect(behind(kind, { satelliteTone: false })).toEqual([[13, false]]);
      expect(behind(kind, { satelliteDc: "none" })).toBeUndefined();
    },
  );

  test.each(["outlet-through", "outlet-end"])(
    "of a riser, %s, passes them by its diode or not at all",
    (kind) => {
      expect(behind(kind, { satellite: true })).toEqual([[12.5, true]]);
      expect(behind(kind, { satellite: true, satelliteTone: false })).toEqual([[12.5, false]]);
      expect(behind(kind, { satellite: true, satelliteDc: "none" }) ?? []).toEqual([]);
    },
  );

  // 5 V of the set in the room reach a masthead amplifier only through a TV socket that passes them.
  test("with a TV socket that passes DC lets a set feed the masthead", () => {
    const masthead = (tvDc: boolean) =>
      evaluate(
        draw(
          {
            a: ["aerial-uhf"],
            m: ["amp-masthead", { minVolts: 5 }],
            p: ["outlet-diplexed", { tvDc }],
            t: ["receiver-tv", { aerialSupply: "5" }],
          },
          "a.out > m.in, m.out > p.in, p.tv > t.in",
        ),
      ).record("m")?.powered;
    expect([masthead(false), masthead(true)]).toEqual([false, true]);
  });
});

describe("a single-cable LNB that a second receiver on its switched output feeds as well", () => {
  const house = (asks: "V" | "H", volts13: number) =>
    evaluate(
      draw(
        {
          k: ["dish"],
          l: ["lnb-stacked", { currentMa: 300, legacy: true }],
          c: ["cable", { lengthM: 60, grade: "own", loopOhmPerKm: 200 }],
          g: ["cable", { lengthM: 15, grade: "own", loopOhmPerKm: 500 }],
          r: ["receiver-stacked", { volts13, tuners: 1, userBands: [{ number: 1, centreMHz: 1210 }] }],
          q: ["receiver-sat", { volts13, polarisation: asks, volts18: 19 }],
        },
        "k.sky > l.sky, l.out > c.in, c.out > r.sat, l.legacy > g.in, g.out > q.sat",
      ),
    );
  const stateOf = (evaluation: ReturnType<typeof house>, part: string) =>
    report(evaluation).verdicts.find((v) => v.part === part)?.state;

  // 12 Ω and 7.5 Ω side by side are 4.615 Ω: 300 mA take 1.385 V. Of 12.6 V 11.215 are left, and 11.5 are needed; of 13 V
  // 11.615. Single-cable receivers rest at 13 V between messages (EN 50494, as quoted), so that is what it must hold with.
  test("dies when that one turns to a vertical channel, and takes the user bands with it", () => {
    const now = house("H", 12.6);
    expect(now.record("l")?.powered).toBe(true);
    expect(stateOf(now, "r")).toBe("fails");
    const [found] = report(now).findings.filter(({ rule }) => rule === "no-supply");
    expect(found?.facts).toMatchObject({ kind: "too low for vertical", isTogether: true });
    expect(found?.value).toBeCloseTo(11.215, 2);
    expect(house("V", 12.6).record("l")?.powered).toBe(false);
  });

  test("lives where 13 V are enough for both", () => {
    expect(stateOf(house("H", 13), "r")).not.toBe("fails");
    expect(house("V", 13).record("l")?.powered).toBe(true);
  });
});

describe("a switch of four inputs behind one of sixteen", () => {
  // Each takes 15 mA and has 1 Ω; an LNB with one output in use takes 95 mA. Chosen, an LNB behind both gets
  // 13 V − 1 Ω · (95 + 15) mA − 1 Ω · 95 mA = 12.795 V; one on the second input of the sixteen 13 V − 0.095 V.
  const house = (asked: Record<string, unknown>) =>
    evaluate(
      draw(
        {
          a: ["lnb-universal"],
          b: ["lnb-universal"],
          c: ["lnb-universal"],
          four: ["position-switch", { inputs: "4" }],
          sixteen: ["position-switch", { inputs: "16", heeds: "uncommitted" }],
          r: ["receiver-sat", asked],
        },
        "a.out > four.in1, b.out > four.in2, four.out > sixteen.in1, c.out > sixteen.in2, sixteen.out > r.sat",
      ),
    );
  const volts = (of: ReturnType<typeof house>, id: string) => of.record(id)?.feeds.out?.[0]?.volts;

  test.each([
    { position: "1", uncommitted: "1" },
    { position: "2", uncommitted: "1" },
    { position: "2", uncommitted: "2" },
    { position: "1", uncommitted: "2" },
  ])("feeds every LNB once it is chosen, whatever is now: %o", (asked) => {
    const evaluation = house(asked);
    expect(volts(evaluation, "a")).toBeCloseTo(12.795, 3);
    expect(volts(evaluation, "b")).toBeCloseTo(12.795, 3);
    expect(volts(evaluation, "c")).toBeCloseTo(12.905, 3);
    for (const id of ["a", "b", "c"]) expect(evaluation.record(id)?.powered).toBe(true);
  });
});
