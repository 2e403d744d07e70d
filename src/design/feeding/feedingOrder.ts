/** In which order groups, places and the parts of the head stand. */
import type { DesignContent, PartId } from "../design.ts";
import type { FeedingEdge, FeedingNode } from "./feedingGraph.ts";
import type { Reach } from "./nearest.ts";

/** Gives signal off by two outputs, or begins a riser. */
export function isFeeder({ role, edges }: FeedingNode): boolean {
  if (role !== "other") return false;
  return edges.filter((edge) => !edge.isTrunk).length > 1 || edges.some(beginsRiser);
}

/** What it leads to hands the line on, and is not itself what the line comes by. */
function beginsRiser({ isTrunk, to }: FeedingEdge): boolean {
  return !isTrunk && to.edges.some((edge) => edge.isTrunk);
}

/** Each feeder before those below it, side by side in the order of outputs; loops of feeders are cut. */
export function feederOrder(
  nodes: readonly FeedingNode[],
  feeders: ReadonlyMap<PartId, Reach>,
): readonly FeedingNode[] {
  const below = new Map<FeedingNode, FeedingNode[]>();
  const roots: FeedingNode[] = [];
  for (const node of nodes) {
    if (node.role !== "other") continue;
    const above = feeders.get(node.id)?.seed;
    if (!above) roots.push(node);
    if (!above || !isFeeder(node)) continue;
    const list = below.get(above) ?? [];
    below.set(above, list);
    list.push(node);
  }
  const order = new Set<FeedingNode>();
  // What is left after the roots lies on loops.
  for (const root of [...roots, ...nodes.filter(isFeeder)]) {
    const stack = [root];
    for (let node = stack.pop(); node; node = stack.pop()) {
      if (order.has(node)) continue;
      order.add(node);
      const next = (below.get(node) ?? []).map((n) => ({ node: n, reach: feeders.get(n.id) }));
      stack.push(
        ...next
          .sort(byOutput)
          .map((n) => n.node)
          .reverse(),
      );
    }
  }
  return [...order];
}

/** A part with the way to it. */
type Placed = { readonly node: FeedingNode; readonly reach: Reach | undefined };

export function byOutput(a: Placed, b: Placed): number {
  return (
    (a.reach?.first.portNumber ?? 0) - (b.reach?.first.portNumber ?? 0) ||
    (a.reach?.hops ?? 0) - (b.reach?.hops ?? 0) ||
    a.node.number - b.node.number
  );
}

/** Along the wires, each chain from its beginning; a part after all that feed it; loops as they come. */
export function fromTheSources(design: DesignContent, head: readonly PartId[]): readonly PartId[] {
  const own = new Set(head);
  const next = new Map<PartId, PartId[]>();
  const fed = new Set<PartId>();
  for (const { from, to } of design.wires) {
    if (!own.has(from[0]) || !own.has(to[0])) continue;
    const list = next.get(from[0]) ?? [];
    next.set(from[0], list);
    list.push(to[0]);
    fed.add(to[0]);
  }
  // What is left behind last stands first: each part before all that it feeds, and a chain together.
  const seen = new Set<PartId>();
  const left: PartId[] = [];
  for (const first of [...head.filter((id) => !fed.has(id)).reverse(), ...head]) {
    const stack = [{ id: first, isLeft: false }];
    for (let at = stack.pop(); at; at = stack.pop()) {
      if (at.isLeft) left.push(at.id);
      if (at.isLeft || seen.has(at.id)) continue;
      seen.add(at.id);
      stack.push(
        { id: at.id, isLeft: true },
        ...(next.get(at.id) ?? []).map((id) => ({ id, isLeft: false })),
      );
    }
  }
  return left.reverse();
}
