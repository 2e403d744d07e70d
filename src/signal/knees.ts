/**
 * Networks of parts whose current grows with the voltage in straight pieces: resistors, diodes, supplies with a current
 * limit, loads of constant current. There is exactly one solution, the least of a convex function of the voltages;
 * Newton's method with a search along each step finds it from anywhere, after finitely many steps.
 */
import { LEAK_SIEMENS, starMesh } from "./starMesh.ts";

/** Current from a to b [A]: (Va − Vb − `from`) · `siemens`, held between `least` and `most`; −1 is earth. */
export type Element = {
  readonly a: number;
  readonly b: number;
  readonly fromVolts: number;
  readonly siemens: number;
  readonly leastA: number;
  readonly mostA: number;
};

export type KneeNetwork = {
  /** What one round takes, for whoever counts work. */
  readonly work: number;
  readonly solve: (elements: readonly Element[], start?: Float64Array) => KneeSolution;
};

export type KneeSolution = {
  /** Of every node [V]. */
  readonly volts: Float64Array;
  /** Through every element [A]. */
  readonly amperes: Float64Array;
  readonly rounds: number;
};

/** More rounds are never needed in practice; what is there by then is within a hair of the solution. */
const MOST_ROUNDS = 80;

/** A network of so many nodes, whose elements always lie between the same ones. */
export function kneeNetwork(nodes: number, shape: readonly Pick<Element, "a" | "b">[]): KneeNetwork {
  const mesh = starMesh(nodes, shape);
  return {
    work: mesh.work,
    solve: (elements, start) => {
      let volts = start ?? highest(nodes, elements);
      let rounds = 0;
      while (rounds < MOST_ROUNDS) {
        rounds++;
        const places = elements.map((e) => placeAt(e, across(e, volts)));
        const next = mesh.solve(...asLines(nodes, elements, places));
        if (elements.every((e, i) => fits(e, across(e, next), places[i] ?? 0))) {
          volts = next;
          break;
        }
        volts = bestBetween(elements, volts, next);
      }
      volts = notBelowEarth(volts);
      return { volts, amperes: Float64Array.from(elements, (e) => currentAt(e, across(e, volts))), rounds };
    },
  };
}

/** Every node at the highest voltage that any supply has. */
function highest(nodes: number, elements: readonly Element[]): Float64Array {
  const most = elements.reduce((max, e) => (e.a < 0 ? Math.max(max, -e.fromVolts) : max), 0);
  return new Float64Array(nodes).fill(most);
}

/**
 * Nothing supplies less than earth, so no node lies below it. Raising to 0 V what arithmetic left there brings every
 * set of voltages nearer to the solution: a node behind a shut diode is held by its leak alone, hardly more than rounding.
 */
function notBelowEarth(volts: Float64Array): Float64Array {
  return volts.map((v) => Math.max(0, v));
}

function across({ a, b }: Element, volts: Float64Array): number {
  return (a < 0 ? 0 : (volts[a] ?? 0)) - (b < 0 ? 0 : (volts[b] ?? 0));
}

function currentAt(e: Element, volts: number): number {
  return Math.min(e.mostA, Math.max(e.leastA, (volts - e.fromVolts) * e.siemens));
}

/** On which of its straight pieces an element works: −1 at its least, 1 at its most, 0 between. */
function placeAt(e: Element, volts: number): -1 | 0 | 1 {
  const amperes = (volts - e.fromVolts) * e.siemens;
  return amperes < e.leastA ? -1 : amperes > e.mostA ? 1 : 0;
}

const ROUNDING_A = 1e-10;

function fits(e: Element, volts: number, place: number): boolean {
  const amperes = (volts - e.fromVolts) * e.siemens;
  if (place < 0) return amperes <= e.leastA + ROUNDING_A;
  if (place > 0) return amperes >= e.mostA - ROUNDING_A;
  return amperes >= e.leastA - ROUNDING_A && amperes <= e.mostA + ROUNDING_A;
}

/** Each element as the straight line that it works on: a conductance, and a current beside it. */
function asLines(
  nodes: number,
  elements: readonly Element[],
  places: readonly number[],
): [siemens: Float64Array, amperes: Float64Array] {
  const siemens = new Float64Array(elements.length);
  const amperes = new Float64Array(nodes);
  elements.forEach((e, i) => {
    const place = places[i] ?? 0;
    siemens[i] = place === 0 ? e.siemens : 0;
    const fixed = place === 0 ? -e.fromVolts * e.siemens : place < 0 ? e.leastA : e.mostA;
    if (e.a >= 0) amperes[e.a] = (amperes[e.a] ?? 0) - fixed;
    if (e.b >= 0) amperes[e.b] = (amperes[e.b] ?? 0) + fixed;
  });
  return [siemens, amperes];
}

/** The best point on the way to the next one: where the convex function stops falling. */
function bestBetween(elements: readonly Element[], from: Float64Array, to: Float64Array): Float64Array {
  const start = elements.map((e) => across(e, from));
  const way = elements.map((e, i) => across(e, to) - (start[i] ?? 0));
  // What leaks away from the nodes themselves belongs to it: it alone holds a node between shut diodes.
  let leak = 0;
  let leakGrows = 0;
  from.forEach((v, i) => {
    const step = (to[i] ?? 0) - v;
    leak += LEAK_SIEMENS * v * step;
    leakGrows += LEAK_SIEMENS * step * step;
  });
  const slopeAt = (t: number) =>
    elements.reduce(
      (sum, e, i) => sum + currentAt(e, (start[i] ?? 0) + t * (way[i] ?? 0)) * (way[i] ?? 0),
      leak + t * leakGrows,
    );
  let low = 0;
  let high = 1;
  if (slopeAt(1) > 0)
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (slopeAt(middle) > 0) high = middle;
      else low = middle;
    }
  return from.map((v, i) => v + high * ((to[i] ?? 0) - v));
}
