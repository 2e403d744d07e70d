/** Cascades of mismatched ends and two-ports: the ripple of drawn designs against their swept response in ngspice. */
import { describe, expect, test } from "vitest";
import { deviationOf } from "../../src/findings/ripple.ts";
import { draw, type Sketch } from "../draw.ts";
import { decibelPer10M, rippleAt } from "../findings/rippleAt.ts";
import { hasNgspice, simulate } from "./ngspice.ts";

const simulated = hasNgspice("ripple of mismatched cascades against a circuit simulator");

/** Ripple at the TV set: the aerial has a return loss of 10 dB, the set one of 8 dB. */
function drawn(parts: Sketch, wires: string) {
  const aerial: Sketch[string] = ["aerial-uhf", { levelDbuv: 70, channels: [{ channel: 30 }] }];
  return rippleAt(draw({ set: ["receiver-tv"], aerial, ...parts }, wires), "set");
}

/** Reflection r of a resistor R at 75 Ω: r = (R − 75)/(R + 75), so R = 75·(1 + r)/(1 − r). 10 dB: 144.4 Ω, 8 dB: 174.2 Ω. */
const END_10_DB = 144.4;
const END_8_DB = 174.2;

/** Lines of 75 Ω and VF 0.83 that lose 1 dB in 10 m: R·10/(2·75)·8.686 = 1, so R = 1.727 Ω/m. */
const SECONDS_PER_M = 1 / (299_792_458 * 0.83);
const lineModel = (name: string, lengthM: number) =>
  `.model ${name} ltra(r=1.727 l=${75 * SECONDS_PER_M} c=${SECONDS_PER_M / 75} len=${lengthM})`;
/** Swing and standard deviation of the response between 470 and 690 MHz [dB]. */
function swept(circuit: readonly string[]): { readonly swingDb: number; readonly deviationDb: number } {
  const [most = 0, least = 0, mean = 0, meanSquare = 0] = simulate({
    circuit: ["V1 emf 0 dc 0 ac 2", `Rs emf a ${END_10_DB}`, ...circuit].join("\n"),
    commands: ["ac lin 4001 470e6 690e6"],
    read: ["vecmax(vdb(set))", "vecmin(vdb(set))", "mean(vdb(set))", "mean(vdb(set)*vdb(set))"],
  });
  return { swingDb: most - least, deviationDb: Math.sqrt(meanSquare - mean ** 2) };
}

describe.skipIf(!simulated)("ripple of a mismatched cascade", () => {
  // By hand: 0.3162 · 0.3981 · 0.7943 = 0.1: 20·log10(1.1/0.9) = 1.743 dB.
  test("between aerial and set over 10 m is what ngspice sweeps, 1.74 dB", () => {
    const { swingDb, deviationDb } = swept([
      lineModel("one", 10),
      "O1 a 0 set 0 one",
      `Rl set 0 ${END_8_DB}`,
    ]);
    const ripple = drawn({ c: decibelPer10M(10) }, "aerial.out > c.in, c.out > set.in");
    expect(swingDb).toBeCloseTo(1.743, 2);
    expect(ripple.upDb + ripple.downDb).toBeCloseTo(swingDb, 2);
    expect(Math.abs(deviationOf(ripple) / deviationDb - 1)).toBeLessThan(0.05);
  });

  /**
   * A two-port between two cables: a resistor of 69.4 Ω in series has r = 69.4/(69.4 + 150) = 0.316, a return loss of 10 dB, and
   * loses 20·log10(1 + 69.4/150) = 3.30 dB. Drawn as a flat window lead, whose return loss is 10 dB. Three pairs of ends reflect, each
   * in its own phase: by hand for 10 and 15 m 0.0794, 0.0891 and 0.0331, as squares 0.124, times 8.686/√2: 0.76 dB of deviation.
   */
  test.each([
    [10, 15],
    [7, 21],
    [25, 6],
  ])(
    "with a bad two-port between %d m and %d m deviates as ngspice’s does, within 10 %%",
    (first, second) => {
      const { deviationDb } = swept([
        lineModel("one", first),
        lineModel("two", second),
        "O1 a 0 b 0 one",
        "Rx b c 69.4",
        "O2 c 0 set 0 two",
        `Rl set 0 ${END_8_DB}`,
      ]);
      const ripple = drawn(
        {
          c1: decibelPer10M(first),
          lead: ["line-fitting", { fitting: "window", loss: "own", ownTvDb: 3.3, ownSatDb: 3.3 }],
          c2: decibelPer10M(second),
        },
        "aerial.out > c1.in, c1.out > lead.in, lead.out > c2.in, c2.out > set.in",
      );
      expect(Math.abs(deviationOf(ripple) / deviationDb - 1)).toBeLessThan(0.1);
    },
  );
});
