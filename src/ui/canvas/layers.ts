/**
 * Which column each part stands in, and how high, as the layout library sees it: signal from left to right, with few
 * crossings and straight wires. How wide the columns are and how far apart is for others to say.
 */
import type { ELK, ElkExtendedEdge, ElkNode } from "elkjs/lib/elk-api.js";
import type { Design, Part, Wire } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import { CARD_WIDTH_PX, type Frame, frameOf } from "./frames.ts";
import { GRID_PX } from "./layout.ts";

/** Room between two parts one below the other [px]. */
export const ROW_GAP_PX = 2 * GRID_PX;

/**
 * A long wire passes a card at this distance [px]: ports lie half a step off the grid and cards on it, so that with
 * one and a half steps every part comes to lie on the grid.
 */
const PASSING_PX = 1.5 * GRID_PX;

/** Parts of a design; how they look also depends on the rest of it. */
export type Chosen = { readonly design: Design; readonly parts: readonly Part[] };

export type Layered = {
  readonly places: ReadonlyMap<string, { readonly column: number; readonly y: number }>;
  readonly columns: number;
  readonly height: number;
  /** How many wires bend beside each other behind each column. */
  readonly lanes: readonly number[];
};

/** Where a receiver goes: all of them in the last column, or each behind what feeds it. */
export type Layering = "receivers-last" | "near";

const STRATEGY: Readonly<Record<Layering, string>> = {
  "receivers-last": "LONGEST_PATH",
  near: "NETWORK_SIMPLEX",
};

/**
 * For each group of parts that hang together, in the order of the design.
 * Wires to parts that were not chosen don't count.
 */
export async function layered(
  { design, parts }: Chosen,
  layering: Layering,
  elk: Pick<ELK, "layout">,
): Promise<readonly Layered[]> {
  const ids = new Set(parts.map((p) => p.id));
  const wires = design.wires.filter((w) => ids.has(w.from[0]) && ids.has(w.to[0]));
  const pills = new Set(parts.filter((p) => frameOf(design, p).look === "pill").map((p) => p.id));
  const result = await elk.layout({
    id: "design",
    layoutOptions: {
      "elk.algorithm": "layered",
      "elk.direction": "RIGHT",
      "elk.padding": "[top=0,left=0,bottom=0,right=0]",
      "elk.spacing.nodeNode": String(ROW_GAP_PX),
      "elk.spacing.edgeNode": String(PASSING_PX),
      "elk.spacing.edgeEdge": String(GRID_PX),
      "elk.spacing.componentComponent": String(ROW_GAP_PX),
      "elk.edgeRouting": "ORTHOGONAL",
      "elk.layered.layering.strategy": STRATEGY[layering],
      "elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
      "elk.layered.considerModelOrder.strategy": "NODES_AND_EDGES",
    },
    children: parts.map((part) => nodeOf(part, frameOf(design, part))),
    edges: wires.map((wire, i) => edgeOf(wire, i, pills)),
  });
  const nodes = new Map((result.children ?? []).map((n) => [n.id, n]));
  const edges = result.edges ?? [];
  return groupsOf(parts, wires).map((group) => inColumns(group, nodes, edges));
}

/** All as wide as a card, so that what stands in one column has one place across. */
function nodeOf(part: Part, { height, ports }: Frame): ElkNode {
  return {
    id: part.id,
    width: CARD_WIDTH_PX,
    height,
    layoutOptions: { "elk.portConstraints": "FIXED_POS" },
    ports: portsOf(part).map((port) => ({
      id: `${part.id}/${port.id}`,
      x: port.side === "in" ? 0 : CARD_WIDTH_PX,
      y: ports.get(port.id)?.y ?? 0,
      width: 0,
      height: 0,
      layoutOptions: { "elk.port.side": port.side === "in" ? "WEST" : "EAST" },
    })),
  };
}

function edgeOf(wire: Wire, i: number, pills: ReadonlySet<string>): ElkExtendedEdge {
  return {
    id: `wire${i}`,
    sources: [wire.from.join("/")],
    targets: [wire.to.join("/")],
    // A run of cable bends before its pill rather than behind it.
    layoutOptions: { "elk.layered.priority.straightness": pills.has(wire.from[0]) ? "4" : "1" },
  };
}

/** Parts that hang together by wires. */
function groupsOf(parts: readonly Part[], wires: readonly Wire[]): readonly (readonly string[])[] {
  const neighbours = new Map<string, string[]>(parts.map((p) => [p.id, []]));
  for (const { from, to } of wires) {
    neighbours.get(from[0])?.push(to[0]);
    neighbours.get(to[0])?.push(from[0]);
  }
  const seen = new Set<string>();
  const groups: string[][] = [];
  for (const { id } of parts) {
    if (seen.has(id)) continue;
    const group = [id];
    seen.add(id);
    for (const each of group) {
      for (const next of neighbours.get(each) ?? []) {
        if (seen.has(next)) continue;
        seen.add(next);
        group.push(next);
      }
    }
    groups.push(group);
  }
  return groups;
}

function inColumns(
  ids: readonly string[],
  nodes: ReadonlyMap<string, ElkNode>,
  edges: readonly ElkExtendedEdge[],
): Layered {
  const placed = ids.map((id) => ({ id, x: 0, y: 0, height: 0, ...nodes.get(id) }));
  const lefts = [...new Set(placed.map((p) => p.x))].sort((a, b) => a - b);
  const columnAt = new Map(lefts.map((x, column) => [x, column]));
  const top = Math.min(...placed.map((p) => p.y));
  const upright = lefts.map(() => new Set<number>());
  const own = new Set(ids);
  for (const edge of edges) {
    if (!own.has(edge.sources[0]?.split("/")[0] ?? "")) continue;
    for (const { bendPoints = [] } of edge.sections ?? []) {
      for (const { x } of bendPoints) upright[lefts.findLastIndex((left) => left < x)]?.add(x);
    }
  }
  return {
    places: new Map(
      placed.map((p) => [p.id, { column: columnAt.get(p.x) ?? 0, y: onGrid(p.y - top) }] as const),
    ),
    columns: lefts.length,
    height: Math.max(...placed.map((p) => p.y + p.height)) - top,
    lanes: upright.map((xs) => xs.size),
  };
}

const onGrid = (px: number) => Math.round(px / GRID_PX) * GRID_PX;
