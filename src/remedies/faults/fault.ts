/** Single faults: what can be wrong with a system that was planned well. Facts only: `src/sentences/faults/` names them. */
import type { Design, PartId, Wire } from "../../design/design.ts";

/** How often each is met beside the others; a rough order, common practice, no source. */
const LIKELIHOODS = {
  "plug-off": 8,
  "open-joint": 6,
  "short-joint": 5,
  "corroded-joint": 6,
  "screen-off": 4,
  "wet-joint": 4,
  "supply-blocked": 3,
  "wrong-leg": 3,
  "mains-off": 6,
  "receiver-off": 4,
  "weak-supply": 2,
  "aerial-supply-off": 3,
  "motor-jammed": 2,
  swapped: 5,
  "wrong-converter": 3,
  "converter-dead": 4,
  "wrong-plate": 4,
  "wrong-user-band": 4,
  "wrong-mode": 3,
  "gain-high": 3,
  "gain-low": 3,
  "wrong-tap": 2,
  "aerial-off": 5,
  "dish-off": 6,
  "lnb-turned": 3,
  "wet-cable": 4,
  "steel-cable": 3,
  "filter-missing": 3,
  "pad-missing": 2,
  "load-missing": 2,
  "dead-cable": 2,
  "switch-leaks": 1,
} as const;

export type FaultType = keyof typeof LIKELIHOODS;
export const FAULT_TYPES = Object.keys(LIKELIHOODS) as readonly FaultType[];

/** At a joint: the wire that it belongs to. */
type AtWire = { readonly wire: Wire };
type Nothing = Readonly<Record<never, never>>;

/** What is to be told of a fault beside its type and its parts. */
export type FactsByFault = {
  "plug-off": AtWire;
  "open-joint": AtWire;
  "short-joint": AtWire;
  "corroded-joint": AtWire;
  "screen-off": AtWire;
  "wet-joint": AtWire;
  "supply-blocked": AtWire;
  /** Choice of an option by which supply passes; null: it passes nowhere. */
  "wrong-leg": { readonly option: string; readonly choice: string | null };
  "mains-off": Nothing;
  "receiver-off": Nothing;
  "weak-supply": { readonly volts: number; readonly plannedVolts: number };
  "aerial-supply-off": { readonly plannedVolts: number };
  /** What it draws where its drive cannot turn. */
  "motor-jammed": { readonly milliamps: number };
  swapped: { readonly side: "in" | "out"; readonly ports: readonly [string, string] };
  /** Key of the kind that is there instead. */
  "wrong-converter": { readonly kind: string };
  "converter-dead": Nothing;
  "wrong-plate": { readonly kind: string };
  "wrong-user-band":
    | { readonly as: "another receiver"; readonly other: PartId }
    | { readonly as: "another centre"; readonly userBand: number };
  "wrong-mode": Nothing;
  "gain-high": { readonly gainDb: number };
  "gain-low": { readonly gainDb: number };
  "wrong-tap": { readonly tapLossDb: number };
  "aerial-off": Nothing;
  "dish-off": Nothing;
  "lnb-turned": { readonly turnedDeg: number };
  "wet-cable": Nothing;
  "steel-cable": Nothing;
  "filter-missing": Nothing;
  "pad-missing": Nothing;
  "load-missing": Nothing;
  "dead-cable": AtWire & { readonly lengthM: number };
  /** How far apart it still keeps its inputs [dB]. */
  "switch-leaks": { readonly crosstalkDb: number };
};

export type FaultOf<T extends FaultType> = {
  /** Unique within a design and stable for it: "plug-off:amp.out>drop.in". */
  readonly id: string;
  readonly type: T;
  /** Part to look at first. */
  readonly part: PartId;
  /** All parts at which the fault is found: both ends of a wire, for instance. */
  readonly parts: readonly PartId[];
  readonly facts: FactsByFault[T];
  /** The design with the fault in it; the same object where the fault cannot be made. */
  readonly apply: (design: Design) => Design;
};

export type Fault = { readonly [T in FaultType]: FaultOf<T> }[FaultType];

/** Lists the faults of some types that a design can have. */
export type FaultFinder = (design: Design) => readonly Fault[];

type Made<T extends FaultType> = {
  /** What tells it from others of its type. */
  readonly key: string;
  readonly parts: readonly [PartId, ...PartId[]];
  readonly facts: FactsByFault[T];
  readonly apply: Fault["apply"];
};

export function makeFault<T extends FaultType>(type: T, { key, parts, facts, apply }: Made<T>): FaultOf<T> {
  return { id: `${type}:${key}`, type, part: parts[0], parts, facts, apply };
}

export function likelihoodOf(fault: Fault): number {
  return LIKELIHOODS[fault.type];
}
