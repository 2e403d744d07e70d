/** The design without what only stands in a line: which parts hand signal to which, over how much cable. */
import { kindOf } from "../../parts/catalogue.ts";
import { metresOf } from "../../parts/meanings.ts";
import type { Job } from "../../parts/trade.ts";
import type { DesignContent, Part, PartId, PortId, PortRef } from "../design.ts";
import { portsOf } from "../lookup.ts";

/** Jobs that a line runs through as if they were cable: they neither feed places nor are one. */
const IN_LINE: ReadonlySet<Job> = new Set<Job>([
  "cable",
  "joint",
  "pad",
  "equaliser",
  "filter",
  "supply",
  "block",
  "load",
  "meter",
  "unwanted signal",
]);

/** From an output to the next part that does not only stand in the line. */
export type FeedingEdge = {
  readonly from: FeedingNode;
  readonly port: PortId;
  /** The output and the input at the other end, counted in the order of their kinds. */
  readonly portNumber: number;
  readonly inputNumber: number;
  readonly to: FeedingNode;
  readonly isTrunk: boolean;
  /** Cable in between [m]. */
  readonly cableM: number;
};

export type FeedingNode = {
  readonly id: PartId;
  /** Place in the design. */
  readonly number: number;
  readonly role: "outlet" | "receiver" | "other";
  /** In the order of its outputs. */
  readonly edges: readonly FeedingEdge[];
};

/** Where the line that a part stands in comes from, and the cable up to that part's end [m]. */
export type LineStart = { readonly node: FeedingNode; readonly port: PortId; readonly cableM: number };

export type FeedingGraph = {
  readonly nodes: ReadonlyMap<PartId, FeedingNode>;
  /** For each part that only stands in a line; null where the line comes from nowhere. */
  readonly lineStarts: ReadonlyMap<PartId, LineStart | null>;
};

type Draft = FeedingNode & { readonly edges: FeedingEdge[] };

/** Grows with parts and wires alone. Of a part in line with several inputs, the first wire is its line. */
export function feedingGraph(design: DesignContent): FeedingGraph {
  const nodes = new Map<PartId, Draft>();
  const inLine = new Map<PartId, Part>();
  const parts = new Map(design.parts.map((part) => [part.id, part] as const));
  design.parts.forEach((part, number) => {
    const kind = kindOf(part.kind);
    if (kind && IN_LINE.has(kind.trade.job)) inLine.set(part.id, part);
    else nodes.set(part.id, { id: part.id, number, role: roleOf(part), edges: [] });
  });
  const lineStarts = followLines(design, { nodes, inLine });
  for (const { from, to } of design.wires) {
    const target = nodes.get(to[0]);
    const ownNode = nodes.get(from[0]);
    const start = ownNode ? { node: ownNode, port: from[1], cableM: 0 } : lineStarts.get(from[0]);
    if (!target || !start) continue;
    const out = portNumber(parts.get(start.node.id), start.port);
    nodes.get(start.node.id)?.edges.push({
      from: start.node,
      port: start.port,
      portNumber: out.number,
      inputNumber: portNumber(parts.get(to[0]), to[1]).number,
      to: target,
      isTrunk: out.isTrunk,
      cableM: start.cableM,
    });
  }
  for (const { edges } of nodes.values())
    edges.sort((a, b) => a.portNumber - b.portNumber || a.to.number - b.to.number);
  return { nodes, lineStarts };
}

function roleOf(part: Part): FeedingNode["role"] {
  const kind = kindOf(part.kind);
  if (kind?.delivery) return "outlet";
  return kind?.reception ? "receiver" : "other";
}

function portNumber(part: Part | undefined, port: PortId): { number: number; isTrunk: boolean } {
  const ports = part ? portsOf(part) : [];
  const number = ports.findIndex((p) => p.id === port);
  return { number, isTrunk: ports[number]?.role === "trunk" };
}

/** Each part in line is visited once: whoever comes upon one that is known goes on from there. */
function followLines(
  design: DesignContent,
  { nodes, inLine }: { nodes: ReadonlyMap<PartId, FeedingNode>; inLine: ReadonlyMap<PartId, Part> },
): ReadonlyMap<PartId, LineStart | null> {
  const feeds = new Map<PartId, PortRef>();
  for (const { from, to } of design.wires) if (inLine.has(to[0]) && !feeds.has(to[0])) feeds.set(to[0], from);
  const known = new Map<PartId, LineStart | null>();
  for (const part of inLine.values()) {
    const trail: Part[] = [];
    let start: LineStart | null = null;
    for (let at: Part | undefined = part; at; ) {
      const before = known.get(at.id);
      if (before !== undefined) {
        start = before;
        break;
      }
      // A line that comes round to here comes from nowhere.
      known.set(at.id, null);
      trail.push(at);
      const from = feeds.get(at.id);
      const node = from && nodes.get(from[0]);
      if (from && node) start = { node, port: from[1], cableM: 0 };
      at = from && !node ? inLine.get(from[0]) : undefined;
    }
    for (const each of trail.reverse()) {
      start = start && { ...start, cableM: start.cableM + lengthOf(each) };
      known.set(each.id, start);
    }
  }
  return known;
}

function lengthOf(part: Part): number {
  const kind = kindOf(part.kind);
  return (kind && metresOf(kind, part.options)) ?? 0;
}
