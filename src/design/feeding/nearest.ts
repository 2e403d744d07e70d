/** Who is nearest upstream of each part, of some that are asked for; loops do no harm. */
import type { PartId } from "../design.ts";
import type { FeedingEdge, FeedingGraph, FeedingNode } from "./feedingGraph.ts";

export type Reach = {
  readonly seed: FeedingNode;
  /** The output of the seed by which the way begins. */
  readonly first: FeedingEdge;
  /** Parts from the seed to here, without those in line. */
  readonly hops: number;
  /** Cable on the way [m]. */
  readonly cableM: number;
  /** The way runs on from a place, or from a tap, to the next one. */
  readonly runsOn: boolean;
};

type Step = { readonly edge: FeedingEdge; readonly reach: Reach };

/**
 * For every part below a seed the nearest one; of several at one distance the one with more outputs in use, then
 * the one at the first input, then the first of the design. A seed hides those above it; `leaves` says by which
 * outputs of a seed the search begins.
 */
export function nearestAbove(
  graph: FeedingGraph,
  asked: {
    readonly isSeed: (node: FeedingNode) => boolean;
    readonly leaves: (edge: FeedingEdge) => boolean;
  },
): ReadonlyMap<PartId, Reach> {
  const found = new Map<PartId, Reach>();
  let steps: Step[] = [];
  for (const seed of graph.nodes.values()) {
    if (!asked.isSeed(seed)) continue;
    for (const edge of seed.edges) {
      if (!asked.leaves(edge)) continue;
      const { isTrunk: runsOn, cableM } = edge;
      steps.push({ edge, reach: { seed, first: edge, hops: 1, cableM, runsOn } });
    }
  }
  while (steps.length > 0) {
    const best = new Map<FeedingNode, Step>();
    for (const step of steps) {
      const { to } = step.edge;
      if (found.has(to.id) || to === step.reach.seed) continue;
      const other = best.get(to);
      if (!other || compare(step, other) < 0) best.set(to, step);
    }
    steps = [];
    for (const [node, { reach }] of best) {
      found.set(node.id, reach);
      if (asked.isSeed(node)) continue;
      for (const edge of node.edges) {
        const runsOn = reach.runsOn || edge.isTrunk;
        const cableM = reach.cableM + edge.cableM;
        steps.push({ edge, reach: { ...reach, hops: reach.hops + 1, cableM, runsOn } });
      }
    }
  }
  return found;
}

function compare(a: Step, b: Step): number {
  return (
    b.reach.seed.edges.length - a.reach.seed.edges.length ||
    a.edge.inputNumber - b.edge.inputNumber ||
    a.reach.seed.number - b.reach.seed.number ||
    a.reach.first.portNumber - b.reach.first.portNumber
  );
}
