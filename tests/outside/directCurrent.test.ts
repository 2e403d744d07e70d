/** The direct-current solver against ngspice, on networks as houses have them: within 0.1 V. */
import { describe, expect, test } from "vitest";
import { type DcNetwork, SHORT_OHMS, solveDirectCurrent } from "../../src/signal/directCurrent.ts";
import { hasNgspice, simulate } from "./ngspice.ts";

type Case = { readonly name: string; readonly network: DcNetwork };

/**
 * The same network for the simulator. A diode is a junction with a hundredth of the usual emission coefficient, hence nearly
 * without a drop, in series with a source of its drop; a load of constant current takes less below 5 V, as the solver's does.
 */
function circuitOf({ nodes, conductors, sources, loads }: DcNetwork): string {
  const node = (n: number) => `n${n}`;
  const lines = [".model sharp d(is=1e-12 n=0.01)"];
  conductors.forEach(({ from, to, ohms, diodeVolts }, i) => {
    if (diodeVolts === undefined) lines.push(`rc${i} ${node(from)} ${node(to)} ${Math.max(ohms, 1e-4)}`);
    else
      lines.push(
        `vc${i} ${node(from)} cm${i} ${diodeVolts}`,
        `dc${i} cm${i} cn${i} sharp`,
        `rc${i} cn${i} ${node(to)} ${Math.max(ohms, 1e-4)}`,
      );
  });
  sources.forEach(({ at, volts }, i) => {
    lines.push(`vs${i} sp${i} 0 ${volts}`, `ds${i} sp${i} ${node(at)} sharp`);
  });
  loads.forEach((load, i) => {
    const at = node(load.at);
    if (load.draws === "resistance") lines.push(`rl${i} ${at} 0 ${load.ohms}`);
    else {
      const amperes =
        load.draws === "current"
          ? `${load.milliamps / 1000}*min(1,v(${at})/5)`
          : `${load.milliwatts / 1000}/max(v(${at}),${load.leastVolts})`;
      lines.push(`bl${i} ${at} 0 i=${amperes}`);
    }
  });
  // A point between two shut diodes hangs on nothing else in the simulator: a meter of 1 MΩ shows its voltage.
  for (let n = 0; n < nodes; n++) lines.push(`rm${n} ${node(n)} 0 1e6`);
  return lines.join("\n");
}

const LNB = { draws: "current", milliamps: 130 } as const;

/** 20 m, 50 m and so on of cable, by its loop resistance [Ω/km]; 36 is copper of 1.0 mm, 130 copper-clad steel. */
const cable = (metres: number, ohmPerKm = 36) => (metres * ohmPerKm) / 1000;

const CASES: readonly Case[] = [
  {
    name: "two receivers share an LNB over unequal cables",
    network: {
      nodes: 3,
      conductors: [
        { from: 0, to: 2, ohms: cable(10), diodeVolts: 0 },
        { from: 1, to: 2, ohms: cable(40), diodeVolts: 0 },
      ],
      sources: [
        { at: 0, volts: 13, limitMa: 400 },
        { at: 1, volts: 13, limitMa: 400 },
      ],
      loads: [{ at: 2, ...LNB }],
    },
  },
  {
    name: "the higher of two voltages carries all behind a diode",
    network: {
      nodes: 3,
      conductors: [
        { from: 0, to: 2, ohms: cable(60), diodeVolts: 0.7 },
        { from: 1, to: 2, ohms: cable(10), diodeVolts: 0.7 },
      ],
      sources: [
        { at: 0, volts: 18, limitMa: 400 },
        { at: 1, volts: 13, limitMa: 400 },
      ],
      loads: [{ at: 2, ...LNB, milliamps: 250 }],
    },
  },
  {
    name: "a trunk with four taps on it, fed at the head and loaded all along",
    network: {
      nodes: 9,
      conductors: [
        ...[0, 1, 2, 3].map((k) => ({ from: k, to: k + 1, ohms: cable(25) })),
        ...[1, 2, 3, 4].map((k) => ({ from: k, to: k + 4, ohms: cable(15, 52), diodeVolts: 0.4 })),
      ],
      sources: [{ at: 0, volts: 18, limitMa: 2000 }],
      loads: [5, 6, 7, 8].map((at, i) => ({ at, draws: "current" as const, milliamps: 60 + 40 * i })),
    },
  },
  {
    name: "50 m of copper-clad steel",
    network: {
      nodes: 2,
      conductors: [{ from: 0, to: 1, ohms: cable(50, 130) }],
      sources: [{ at: 0, volts: 17, limitMa: 400 }],
      loads: [{ at: 1, draws: "current", milliamps: 250 }],
    },
  },
  {
    name: "a mesh: two receivers, each by two diodes, onto two loads that a wire joins",
    network: {
      nodes: 6,
      conductors: [
        { from: 0, to: 2, ohms: 0.9, diodeVolts: 0.7 },
        { from: 0, to: 3, ohms: 2, diodeVolts: 0.7 },
        { from: 1, to: 2, ohms: 1.4, diodeVolts: 0.4 },
        { from: 1, to: 3, ohms: 0.3, diodeVolts: 0.4 },
        { from: 2, to: 4, ohms: 3 },
        { from: 3, to: 5, ohms: 1 },
        { from: 4, to: 5, ohms: 0.5 },
      ],
      sources: [
        { at: 0, volts: 13.4, limitMa: 500 },
        { at: 1, volts: 13.1, limitMa: 500 },
      ],
      loads: [
        { at: 4, ...LNB, milliamps: 200 },
        { at: 5, ...LNB, milliamps: 90 },
      ],
    },
  },
  {
    name: "a resistor of 75 Ω at the end of a live line",
    network: {
      nodes: 3,
      conductors: [
        { from: 0, to: 1, ohms: cable(30) },
        { from: 1, to: 2, ohms: cable(20) },
      ],
      sources: [{ at: 0, volts: 18, limitMa: 500 }],
      loads: [
        { at: 1, ...LNB, milliamps: 120 },
        { at: 2, draws: "resistance", ohms: 75 },
      ],
    },
  },
  {
    name: "a corroded joint that starves its load below where it regulates",
    network: {
      nodes: 3,
      conductors: [
        { from: 0, to: 1, ohms: 60 },
        { from: 1, to: 2, ohms: cable(20) },
      ],
      sources: [{ at: 0, volts: 13, limitMa: 400 }],
      loads: [{ at: 2, ...LNB, milliamps: 250 }],
    },
  },
  {
    name: "a load of constant power on a long line",
    network: {
      nodes: 2,
      conductors: [{ from: 0, to: 1, ohms: 8 }],
      sources: [{ at: 0, volts: 18, limitMa: 900 }],
      loads: [{ at: 1, draws: "power", milliwatts: 4000, leastVolts: 9 }],
    },
  },
  {
    name: "a short behind a joint of 2 Ω, out of a supply that gives all it is asked for",
    network: {
      nodes: 3,
      conductors: [
        { from: 0, to: 1, ohms: cable(20) },
        { from: 1, to: 2, ohms: 2 },
      ],
      sources: [{ at: 0, volts: 13, limitMa: 20_000 }],
      loads: [
        { at: 1, ...LNB },
        { at: 2, draws: "resistance", ohms: SHORT_OHMS },
      ],
    },
  },
];

const isThere = hasNgspice("the direct-current solver against a circuit simulator");

describe("direct current as ngspice has it", () => {
  test.runIf(isThere).each(CASES)("$name", ({ network }) => {
    const found = solveDirectCurrent(network);
    const nodes = Array.from({ length: network.nodes }, (_, n) => n);
    const simulated = simulate({
      circuit: circuitOf(network),
      commands: ["op"],
      read: [...nodes.map((n) => `v(n${n})`), ...network.sources.map((_, i) => `-i(vs${i})*1000`)],
    });
    expect(found.shutDown.size).toBe(0);
    nodes.forEach((n) => {
      expect(Math.abs((found.volts[n] ?? 0) - (simulated[n] ?? 0)), `node ${n}`).toBeLessThan(0.1);
    });
    network.sources.forEach((_, i) => {
      const milliamps = simulated[network.nodes + i] ?? 0;
      expect(Math.abs((found.sourceMa[i] ?? 0) - milliamps), `source ${i}`).toBeLessThan(3);
    });
  });
});
