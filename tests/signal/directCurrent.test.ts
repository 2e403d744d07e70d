/** Direct current by Ohm's and Kirchhoff's laws, by hand; and that there is an answer to anything. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type DcNetwork, SHORT_OHMS, solveDirectCurrent } from "../../src/signal/directCurrent.ts";

const line = (o: Partial<DcNetwork>): DcNetwork => ({
  nodes: 2,
  conductors: [{ from: 0, to: 1, ohms: 2 }],
  sources: [{ at: 0, volts: 13, limitMa: 400 }],
  loads: [],
  ...o,
});

describe("one supply on one line", () => {
  // 250 mA through 2 Ω: 0.5 V.
  test("loses current times resistance", () => {
    const found = solveDirectCurrent(line({ loads: [{ at: 1, draws: "current", milliamps: 250 }] }));
    expect(found.volts[0]).toBeCloseTo(13, 3);
    expect(found.volts[1]).toBeCloseTo(12.5, 3);
    expect(found.conductorMa[0]).toBeCloseTo(250, 3);
    expect(found.sourceMa[0]).toBeCloseTo(250, 3);
  });

  // 18 V over 75 Ω and 15 Ω: 0.2 A, and 15 V at the resistor.
  test("gives a resistor what it takes", () => {
    const found = solveDirectCurrent(
      line({
        conductors: [{ from: 0, to: 1, ohms: 15 }],
        sources: [{ at: 0, volts: 18, limitMa: 400 }],
        loads: [{ at: 1, draws: "resistance", ohms: 75 }],
      }),
    );
    expect(found.loadMa[0]).toBeCloseTo(200, 3);
    expect(found.volts[1]).toBeCloseTo(15, 3);
  });

  // U² − 18·U + 8 Ω · 4 W = 0: U = 9 + √(81 − 32) = 16 V, 250 mA.
  test("gives a load of constant power the higher of the two voltages that would do", () => {
    const found = solveDirectCurrent(
      line({
        conductors: [{ from: 0, to: 1, ohms: 8 }],
        sources: [{ at: 0, volts: 18, limitMa: 900 }],
        loads: [{ at: 1, draws: "power", milliwatts: 4000, leastVolts: 9 }],
      }),
    );
    expect(found.volts[1]).toBeCloseTo(16, 3);
    expect(found.loadMa[0]).toBeCloseTo(250, 2);
  });
});

describe("two supplies", () => {
  const pair = (volts: readonly [number, number], limitMa = 400): DcNetwork => ({
    nodes: 3,
    conductors: [
      { from: 0, to: 2, ohms: 1, diodeVolts: 0 },
      { from: 1, to: 2, ohms: 3, diodeVolts: 0 },
    ],
    sources: volts.map((v, at) => ({ at, volts: v, limitMa })),
    loads: [{ at: 2, draws: "current", milliamps: 200 }],
  });

  // Like voltages divide the current as 3 : 1: 150 and 50 mA, 0.15 V each.
  test("share a load as their resistances let them", () => {
    const found = solveDirectCurrent(pair([13, 13]));
    expect([...found.sourceMa].map((ma) => Math.round(ma * 100) / 100)).toEqual([150, 50]);
    expect(found.volts[2]).toBeCloseTo(12.85, 3);
  });

  test("of different voltage: the higher one feeds alone, and nothing flows back into the other", () => {
    const found = solveDirectCurrent(pair([13, 18]));
    expect(found.sourceMa[0]).toBeCloseTo(0, 3);
    expect(found.sourceMa[1]).toBeCloseTo(200, 3);
    // 18 V less 3 Ω · 200 mA.
    expect(found.volts[2]).toBeCloseTo(17.4, 3);
    expect(found.volts[0]).toBeCloseTo(13, 3);
  });

  // Limited to 120 mA the first gives 120, the second the other 80: 13 − 3 Ω · 80 mA = 12.76 V.
  test("the one at its limit sags a little, and the other takes the rest", () => {
    const found = solveDirectCurrent(pair([13, 13], 120));
    expect(found.shutDown.size).toBe(0);
    expect([...found.sourceMa].map((ma) => Math.round(ma * 100) / 100)).toEqual([120, 80]);
    expect(found.volts[2]).toBeCloseTo(12.76, 3);
  });
});

describe("too much", () => {
  const heavy = [{ at: 1, draws: "current" as const, milliamps: 500 }];

  test("shuts a supply down, and says what it would have had to give", () => {
    const found = solveDirectCurrent(line({ loads: heavy }));
    expect(found.shutDown.get(0)?.sourceMa[0]).toBeCloseTo(500, 3);
    expect(found.sourceMa[0]).toBe(0);
    expect(found.volts[1]).toBeCloseTo(0, 3);
  });

  // 18 V carries 500 mA alone and shuts down; then 13 V would have to, and does as well.
  test("takes one supply after the other", () => {
    const found = solveDirectCurrent({
      nodes: 3,
      conductors: [
        { from: 0, to: 2, ohms: 1, diodeVolts: 0 },
        { from: 1, to: 2, ohms: 1, diodeVolts: 0 },
      ],
      sources: [
        { at: 0, volts: 18, limitMa: 400 },
        { at: 1, volts: 13, limitMa: 400 },
      ],
      loads: [{ at: 2, draws: "current", milliamps: 500 }],
    });
    expect([...found.shutDown.keys()]).toEqual([0, 1]);
    expect(found.shutDown.get(1)?.sourceMa[1]).toBeCloseTo(500, 3);
  });

  test("is a short: the supply shuts down", () => {
    const found = solveDirectCurrent(line({ loads: [{ at: 1, draws: "resistance", ohms: SHORT_OHMS }] }));
    expect(found.shutDown.size).toBe(1);
    expect(found.volts[1]).toBeCloseTo(0, 6);
  });

  // 300 and 250 mA on two outputs that share 500 mA: both are gone.
  test("of a budget that several outputs share shuts all of them down", () => {
    const shared = (limitMa: number): DcNetwork => ({
      nodes: 2,
      conductors: [],
      sources: [0, 1].map((at) => ({ at, volts: 13, limitMa, group: "all" })),
      loads: [
        { at: 0, draws: "current", milliamps: 300 },
        { at: 1, draws: "current", milliamps: 250 },
      ],
    });
    expect(solveDirectCurrent(shared(500)).shutDown.size).toBe(2);
    expect(solveDirectCurrent(shared(551)).shutDown.size).toBe(0);
  });
});

/** Any network, with loops, joints of no resistance, supplies against each other and shorts. */
const networks = fc.integer({ min: 1, max: 8 }).chain((nodes) => {
  const at = fc.integer({ min: 0, max: nodes - 1 });
  const load = fc.oneof(
    fc.record({ at, draws: fc.constant("current" as const), milliamps: fc.integer({ min: 0, max: 900 }) }),
    fc.record({
      at,
      draws: fc.constant("power" as const),
      milliwatts: fc.integer({ min: 0, max: 9000 }),
      leastVolts: fc.integer({ min: 4, max: 12 }),
    }),
    fc.record({ at, draws: fc.constant("resistance" as const), ohms: fc.constantFrom(SHORT_OHMS, 75, 2000) }),
  );
  const conductor = fc.record(
    {
      from: at,
      to: at,
      ohms: fc.constantFrom(0, 0.3, 5, 200),
      diodeVolts: fc.constantFrom(0, 0.4, 0.7),
    },
    { requiredKeys: ["from", "to", "ohms"] },
  );
  return fc.record({
    nodes: fc.constant(nodes),
    conductors: fc.array(conductor, { maxLength: 12 }),
    sources: fc.array(
      fc.record({
        at,
        volts: fc.constantFrom(0, 12, 13, 13.01, 18, 24),
        limitMa: fc.integer({ min: 1, max: 900 }),
      }),
      { maxLength: 5 },
    ),
    loads: fc.array(load, { maxLength: 5 }),
  });
});

describe("a load behind a shut diode", () => {
  // 54 mA through 200 Ω leave 12 − 10.8 = 1.2 V at most, the heavy load takes it below the 0.4 V of the diode: no current
  // gets through, and what draws nothing at 0 V cannot pull below it.
  test("draws nothing and stands at 0 V", () => {
    const found = solveDirectCurrent({
      nodes: 3,
      conductors: [
        { from: 0, to: 1, ohms: 200 },
        { from: 1, to: 2, ohms: 0, diodeVolts: 0.4 },
      ],
      sources: [{ at: 0, volts: 12, limitMa: 54 }],
      loads: [
        { at: 1, draws: "current", milliamps: 723 },
        { at: 1, draws: "resistance", ohms: 2000 },
        { at: 2, draws: "current", milliamps: 1 },
      ],
    });
    expect(found.loadMa[2]).toBe(0);
    expect(found.volts[2]).toBeGreaterThanOrEqual(0);
    expect(found.volts[2]).toBeLessThan(1e-6);
    expect(found.sourceMa[0]).toBeCloseTo(54, 3);
  });
});

describe("whatever a network holds", () => {
  test("at every point as much current comes in as goes out, and nothing is above the highest supply", () => {
    fc.assert(
      fc.property(networks, (network) => {
        const found = solveDirectCurrent(network);
        const balance = new Array<number>(network.nodes).fill(0);
        const add = (node: number, ma = 0) => {
          balance[node] = (balance[node] ?? 0) + ma;
        };
        network.conductors.forEach(({ from, to }, i) => {
          add(from, -(found.conductorMa[i] ?? 0));
          add(to, found.conductorMa[i]);
        });
        for (const [i, { at }] of network.sources.entries()) add(at, found.sourceMa[i]);
        for (const [i, { at }] of network.loads.entries()) add(at, -(found.loadMa[i] ?? 0));
        // Kirchhoff's law, to a hundredth of a milliampere.
        for (const ma of balance) expect(Math.abs(ma)).toBeLessThan(0.01);
        const most = network.sources.reduce((max, s) => Math.max(max, s.volts), 0);
        for (const volts of found.volts) {
          expect(volts).toBeGreaterThan(-1e-6);
          expect(volts).toBeLessThan(most + 1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });
});
