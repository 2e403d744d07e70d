/**
 * How much work a part will be, counted from what arrives at it, before any of it is done. One unit is about
 * one carrier of one band on its way to one output, or one carrier held against one other band.
 */
import type { PowerTreatment, SignalTreatment } from "../parts/contract.ts";
import type { Spectrum } from "../signal/band.ts";
import type { Demand, Feed } from "../signal/control.ts";

export type Work = { readonly loads: number; readonly supplies: number; readonly signals: number };

export const NO_WORK: Work = { loads: 0, supplies: 0, signals: 0 };

export function totalOf({ loads, supplies, signals }: Work): number {
  return loads + supplies + signals;
}

/** A band or an offer costs something by itself, however little is in it [carriers]. */
const PER_BAND = 8;
const PER_OFFER = 8;

/** Loads of several ways are held against each other, name by name. */
export function workOfLoads(power: PowerTreatment, atInput: (port: string) => Demand): number {
  let work = 1;
  const parts = new Map<string, number>();
  for (const path of power.paths ?? []) {
    const arriving = atInput(path.to).parts.length;
    if (arriving === 0) continue;
    const before = parts.get(path.from) ?? 0;
    work += arriving + (before * arriving) / PER_OFFER;
    parts.set(path.from, before + arriving);
  }
  return work;
}

export function workOfSupplies(power: PowerTreatment, atOutput: (port: string) => Feed): number {
  let offers = 0;
  for (const path of power.paths ?? []) offers += atOutput(path.from).length;
  return 1 + PER_OFFER * offers;
}

/** How many bands there are somewhere, and carriers in all of them together. */
type Load = { readonly bands: number; readonly carriers: number };

const NO_LOAD: Load = { bands: 0, carriers: 0 };

type Count = {
  readonly treatment: SignalTreatment;
  readonly inputs: (port: string) => Spectrum;
  /** By node: ports and inner nodes. */
  readonly loads: Map<string, Load>;
  work: number;
};

/** Every path takes on all that arrives at it; and whatever ends at one port is held against all the rest there. */
export function workOfSignals(treatment: SignalTreatment, inputs: (port: string) => Spectrum): number {
  const count: Count = { treatment, inputs, loads: new Map(), work: 1 };
  const served = new Set<string>();
  for (const { port } of treatment.emits ?? []) served.add(port);
  for (const { to } of treatment.paths ?? []) served.add(to);
  for (const { to } of treatment.stacks ?? []) served.add(to);
  for (const node of served) if (!node.startsWith("#")) gather(count, node);
  return count.work;
}

function loadAt(count: Count, node: string): Load {
  const known = count.loads.get(node);
  if (known) return known;
  const isInner = node.startsWith("#");
  // Set before it is added up: a node that led back to itself would end here.
  if (isInner) count.loads.set(node, NO_LOAD);
  const load = isInner ? gather(count, node) : loadOf(count.inputs(node));
  count.loads.set(node, load);
  return load;
}

/** Adds up what ends at a node, and counts it as work. */
function gather(count: Count, node: string): Load {
  const { emits, paths, stacks } = count.treatment;
  let [bands, carriers, met] = [0, 0, 0];
  // Alternatives of one switch never meet: together they are one group.
  let [altBands, altCarriers] = [0, 0];
  for (const emitted of emits ?? []) {
    if (emitted.port !== node) continue;
    const load = loadOf(emitted);
    met += load.carriers * bands + carriers * load.bands;
    bands += load.bands;
    carriers += load.carriers;
  }
  for (const path of paths ?? []) {
    if (path.to !== node) continue;
    const load = loadAt(count, path.from);
    if (path.condition) {
      altBands += load.bands;
      altCarriers += load.carriers;
      continue;
    }
    met += load.carriers * bands + carriers * load.bands;
    bands += load.bands;
    carriers += load.carriers;
  }
  for (const stack of stacks ?? []) {
    if (stack.to !== node) continue;
    for (const inner of stack.from) {
      const load = loadAt(count, inner);
      met += load.carriers * bands + carriers * load.bands;
      bands += load.bands;
      carriers += load.carriers;
    }
  }
  met += altCarriers * bands + carriers * altBands;
  const all = { bands: bands + altBands, carriers: carriers + altCarriers };
  count.work += PER_BAND * all.bands + all.carriers + met;
  return all;
}

function loadOf({ bands, floors = [] }: Pick<Spectrum, "bands" | "floors">): Load {
  let carriers = 0;
  for (const band of bands) carriers += band.level.length;
  for (const band of floors) carriers += band.level.length;
  return { bands: bands.length + floors.length, carriers };
}
