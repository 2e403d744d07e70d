/**
 * Voltages of a network of conductances, by taking out one node after the other and putting a mesh between its
 * neighbours in its place. Nothing is ever subtracted, so a joint of no resistance beside an open diode costs no accuracy.
 * The order (fewest neighbours first) is worked out once for a network and used for every set of conductances.
 */

/** A conductance between two nodes; −1 is earth. */
export type MeshEdge = { readonly a: number; readonly b: number };

export type StarMesh = {
  readonly nodes: number;
  /** How many sums one solution takes, for whoever counts work. */
  readonly work: number;
  /** Volts of each node [V], from the conductance of every edge [S] and the current that is put into every node [A]. */
  readonly solve: (siemens: Float64Array, amperes: Float64Array) => Float64Array;
};

/** Keeps a node that nothing holds at earth [S]: at 18 V it takes 18 nA. */
export const LEAK_SIEMENS = 1e-9;

type Step = {
  readonly node: number;
  /** Nodes still there that it is connected to, and the place where each conductance is kept. */
  readonly others: readonly number[];
  readonly slots: readonly number[];
  /** For each pair of them, the place of the conductance between the two. */
  readonly pairs: readonly number[];
};

export function starMesh(nodes: number, edges: readonly MeshEdge[]): StarMesh {
  const { steps, slotOf, slots } = planned(nodes, edges);
  const work = steps.reduce((sum, s) => sum + 1 + s.others.length + s.pairs.length, edges.length);
  return {
    nodes,
    work,
    solve: (siemens, amperes) => {
      const between = new Float64Array(slots);
      const toEarth = new Float64Array(nodes).fill(LEAK_SIEMENS);
      edges.forEach(({ a, b }, i) => {
        const g = siemens[i] ?? 0;
        const slot = slotOf[i] ?? -1;
        if (slot >= 0) between[slot] = (between[slot] ?? 0) + g;
        else if (a !== b) toEarth[Math.max(a, b)] = (toEarth[Math.max(a, b)] ?? 0) + g;
      });
      return solved(steps, { between, toEarth, into: Float64Array.from(amperes) });
    },
  };
}

/** The order of the nodes, and a place for every conductance that there is or comes to be. */
function planned(nodes: number, edges: readonly MeshEdge[]) {
  const near: Map<number, number>[] = Array.from({ length: nodes }, () => new Map());
  let slots = 0;
  const slotBetween = (a: number, b: number): number => {
    const known = near[a]?.get(b);
    if (known !== undefined) return known;
    near[a]?.set(b, slots);
    near[b]?.set(a, slots);
    return slots++;
  };
  const slotOf = edges.map(({ a, b }) => (a >= 0 && b >= 0 && a !== b ? slotBetween(a, b) : -1));
  const byCount: Set<number>[] = [];
  const put = (node: number) => {
    const count = near[node]?.size ?? 0;
    while (byCount.length <= count) byCount.push(new Set());
    byCount[count]?.add(node);
  };
  const take = (node: number) => byCount[near[node]?.size ?? 0]?.delete(node);
  for (let node = 0; node < nodes; node++) put(node);
  const steps: Step[] = [];
  while (steps.length < nodes) {
    const [node] = byCount.find((set) => set.size > 0) ?? [];
    if (node === undefined) break;
    take(node);
    const others = [...(near[node]?.keys() ?? [])];
    const own = [...(near[node]?.values() ?? [])];
    for (const other of others) {
      take(other);
      near[other]?.delete(node);
    }
    const pairs: number[] = [];
    others.forEach((a, i) => {
      for (const b of others.slice(i + 1)) pairs.push(slotBetween(a, b));
    });
    for (const other of others) put(other);
    steps.push({ node, others, slots: own, pairs });
  }
  return { steps, slotOf, slots };
}

function solved(
  steps: readonly Step[],
  net: { readonly between: Float64Array; readonly toEarth: Float64Array; readonly into: Float64Array },
): Float64Array {
  const { between, toEarth, into } = net;
  const totals = new Float64Array(into.length);
  for (const { node, others, slots, pairs } of steps) {
    let total = toEarth[node] ?? LEAK_SIEMENS;
    for (const slot of slots) total += between[slot] ?? 0;
    totals[node] = total;
    let pair = 0;
    for (let i = 0; i < others.length; i++) {
      const other = others[i] ?? 0;
      const share = (between[slots[i] ?? 0] ?? 0) / total;
      toEarth[other] = (toEarth[other] ?? 0) + share * (toEarth[node] ?? 0);
      into[other] = (into[other] ?? 0) + share * (into[node] ?? 0);
      for (let j = i + 1; j < others.length; j++) {
        const place = pairs[pair++] ?? 0;
        between[place] = (between[place] ?? 0) + share * (between[slots[j] ?? 0] ?? 0);
      }
    }
  }
  const volts = new Float64Array(into.length);
  for (let k = steps.length - 1; k >= 0; k--) {
    const step = steps[k];
    if (!step) continue;
    let sum = into[step.node] ?? 0;
    step.others.forEach((other, i) => {
      sum += (between[step.slots[i] ?? 0] ?? 0) * (volts[other] ?? 0);
    });
    volts[step.node] = sum / (totals[step.node] ?? 1);
  }
  return volts;
}
