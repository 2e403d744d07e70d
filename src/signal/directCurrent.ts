/**
 * The direct-current network of a design: supplies, cables, diodes and what draws on them, solved as a whole.
 * Where several feed one load, each gives the share that its resistance lets it give.
 */
import { type Element, type KneeNetwork, kneeNetwork } from "./knees.ts";

/** A way for current between two points. */
export type Conductor = {
  readonly from: number;
  readonly to: number;
  readonly ohms: number;
  /** Only from → to, and at the cost of so many volts (0: a diode that takes none) [V]. */
  readonly diodeVolts?: number;
};

/** Puts up to `limitMa` on a point; a diode of its own keeps other supplies out of it. */
export type DcSource = {
  readonly at: number;
  readonly volts: number;
  readonly limitMa: number;
  /** Supplies of one group share one limit: that of the largest. */
  readonly group?: string;
};

export type DcLoad =
  | { readonly at: number; readonly draws: "current"; readonly milliamps: number }
  /** A converter with a switching regulator: the lower the voltage, the more it draws, down to `leastVolts`. */
  | {
      readonly at: number;
      readonly draws: "power";
      readonly milliwatts: number;
      readonly leastVolts: number;
    }
  | { readonly at: number; readonly draws: "resistance"; readonly ohms: number };

export type DcNetwork = {
  readonly nodes: number;
  readonly conductors: readonly Conductor[];
  readonly sources: readonly DcSource[];
  readonly loads: readonly DcLoad[];
};

export type DcSolution = {
  /** Of every point [V]. */
  readonly volts: Float64Array;
  /** Along every conductor, from → to; out of every source; into every load [mA]. */
  readonly conductorMa: Float64Array;
  readonly sourceMa: Float64Array;
  readonly loadMa: Float64Array;
  /**
   * Sources that shut down because they are asked for too much, and the state in which each of them would have had to
   * give it, were there no limit; empty where all hold.
   */
  readonly shutDown: ReadonlyMap<number, DcSolution>;
  readonly work: number;
};

/** A short to earth still has the resistance of its contact [Ω]; our choice, a supply shuts down in any case. */
export const SHORT_OHMS = 0.05;

/** Below it a regulator takes less and less, down to nothing at 0 V [V]; our choice, below anything that works. */
const REGULATES_FROM_VOLTS = 5;

/** A limited supply that sags by more is taken to shut down [V]; our choice: it cuts off within tens of milliseconds. */
export const SAG_VOLTS = 1;

/** Resistance of whatever is taken for none, so that currents divide between such ways [Ω]. */
const NO_OHMS = 1e-4;

/** Less than this flows for no reason but the arithmetic [mA]. */
const LEAST_MA = 0.01;

const MOST_POWER_ROUNDS = 60;

/** Solves a network; whatever it holds, there is an answer without NaN. */
export function solveDirectCurrent(network: DcNetwork): DcSolution {
  return dcSolver(network)(network);
}

/** The same for several networks that differ in volts, limits, loads and resistances, and in nothing else. */
export function dcSolver(shape: DcNetwork): (network: DcNetwork) => DcSolution {
  const knees = kneeNetwork(shape.nodes, elementsOf(shape, { isLimited: false, off: NONE, powerMa: [] }));
  return (network) => {
    const off = new Set<number>();
    const shutDown = new Map<number, DcSolution>();
    let work = 0;
    // Each round shuts one more source down at least, so it comes to an end.
    for (;;) {
      const free = solvedOnce(knees, network, { isLimited: false, off });
      work += free.work;
      if (exceeding(network, free).size === 0) return { ...free, shutDown, work };
      const limited = solvedOnce(knees, network, { isLimited: true, off });
      work += limited.work;
      const failing = sagging(network, limited, off);
      if (failing.size === 0) return { ...limited, shutDown, work };
      for (const i of failing) {
        const others = new Set([...off, ...failing].filter((k) => k !== i));
        // One that gave nothing beside the others has to say what it would alone.
        const isAsked = network.sources[i]?.group !== undefined || (free.sourceMa[i] ?? 0) > LEAST_MA;
        const asked = isAsked ? free : solvedOnce(knees, network, { isLimited: false, off: others });
        work += isAsked ? 0 : asked.work;
        shutDown.set(i, asked);
      }
      for (const i of failing) off.add(i);
    }
  };
}

const NONE: ReadonlySet<number> = new Set();

type Mode = {
  readonly isLimited: boolean;
  readonly off: ReadonlySet<number>;
  /** What each load of constant power draws for the moment [mA]. */
  readonly powerMa: readonly number[];
};

function solvedOnce(knees: KneeNetwork, network: DcNetwork, mode: Omit<Mode, "powerMa">): DcSolution {
  const { conductors, sources, loads } = network;
  let powerMa: readonly number[] = loads.map((load) => (load.draws === "power" ? load.milliwatts / 30 : 0));
  let found = knees.solve(elementsOf(network, { ...mode, powerMa }));
  let rounds = found.rounds;
  // From the least current upwards: voltages only fall and currents only grow, up to what is drawn at the least voltage.
  for (let k = 0; k < MOST_POWER_ROUNDS; k++) {
    const next = loads.map((load) =>
      load.draws === "power"
        ? load.milliwatts / Math.max(load.leastVolts, REGULATES_FROM_VOLTS, found.volts[load.at] ?? 0)
        : 0,
    );
    if (next.every((ma, i) => Math.abs(ma - (powerMa[i] ?? 0)) < 1e-4)) break;
    powerMa = next;
    found = knees.solve(elementsOf(network, { ...mode, powerMa }), found.volts);
    rounds += found.rounds;
  }
  const milliamps = (from: number, count: number) =>
    found.amperes.slice(from, from + count).map((a) => a * 1000);
  return {
    volts: found.volts,
    conductorMa: milliamps(0, conductors.length),
    sourceMa: milliamps(conductors.length, sources.length),
    loadMa: milliamps(conductors.length + sources.length, loads.length),
    shutDown: new Map(),
    work: rounds * knees.work,
  };
}

function elementsOf({ conductors, sources, loads }: DcNetwork, mode: Mode): readonly Element[] {
  const open = { leastA: Number.NEGATIVE_INFINITY, mostA: Number.POSITIVE_INFINITY };
  return [
    ...conductors.map(({ from, to, ohms, diodeVolts }) => ({
      a: from,
      b: to,
      fromVolts: diodeVolts ?? 0,
      siemens: 1 / Math.max(ohms, NO_OHMS),
      ...open,
      ...(diodeVolts === undefined ? {} : { leastA: 0 }),
    })),
    ...sources.map(({ at, volts, limitMa }, i) => ({
      a: -1,
      b: at,
      fromVolts: -volts,
      siemens: 1 / NO_OHMS,
      leastA: 0,
      mostA: mode.off.has(i) ? 0 : mode.isLimited ? limitMa / 1000 : Number.POSITIVE_INFINITY,
    })),
    ...loads.map((load, i) => ({ a: load.at, b: -1, fromVolts: 0, ...drawing(load, mode.powerMa[i] ?? 0) })),
  ];
}

function drawing(load: DcLoad, powerMa: number): Pick<Element, "siemens" | "leastA" | "mostA"> {
  if (load.draws === "resistance")
    return {
      siemens: 1 / Math.max(load.ohms, NO_OHMS),
      leastA: Number.NEGATIVE_INFINITY,
      mostA: Number.POSITIVE_INFINITY,
    };
  const amperes = (load.draws === "current" ? load.milliamps : powerMa) / 1000;
  return { siemens: amperes / REGULATES_FROM_VOLTS, leastA: 0, mostA: amperes };
}

/** A supply that gives a thousandth more than it may still holds: measured currents are not finer. */
const EXACTLY = 1.001;

/** Sources that are asked for more than they give, alone or as a group. */
function exceeding({ sources }: DcNetwork, { sourceMa }: DcSolution): ReadonlySet<number> {
  return new Set(
    sources.flatMap((_, i) => (drawnWith(sources, sourceMa, i) > limitOf(sources, i) * EXACTLY ? [i] : [])),
  );
}

/** Current of a source and of all others of its group [mA]. */
function drawnWith(sources: readonly DcSource[], sourceMa: Float64Array, i: number): number {
  const group = sources[i]?.group;
  if (group === undefined) return sourceMa[i] ?? 0;
  return sources.reduce((sum, s, k) => (s.group === group ? sum + (sourceMa[k] ?? 0) : sum), 0);
}

function limitOf(sources: readonly DcSource[], i: number): number {
  const own = sources[i];
  if (own?.group === undefined) return own?.limitMa ?? 0;
  return sources.reduce((most, s) => (s.group === own.group ? Math.max(most, s.limitMa) : most), 0);
}

/** Of the limited sources those that cannot hold their voltage; where a group gives too much, all of it. */
function sagging(network: DcNetwork, limited: DcSolution, off: ReadonlySet<number>): ReadonlySet<number> {
  const { sources } = network;
  const { volts, sourceMa } = limited;
  const tooMuch = exceeding(network, limited);
  return new Set(
    sources.flatMap((source, i) => {
      if (off.has(i)) return [];
      if (tooMuch.has(i)) return [i];
      const isAtLimit = (sourceMa[i] ?? 0) >= source.limitMa / EXACTLY;
      const hasSagged = isAtLimit && source.volts - (volts[source.at] ?? 0) > SAG_VOLTS;
      return hasSagged && (sourceMa[i] ?? 0) > LEAST_MA ? [i] : [];
    }),
  );
}
