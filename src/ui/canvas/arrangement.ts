/** Where parts go when a design is laid out from the roof to the sockets. */
import type { ELK } from "elkjs/lib/elk-api.js";
import type { Design } from "../../design/design.ts";
import { portsOf } from "../../design/lookup.ts";
import { frameOf } from "./frames.ts";
import { COLUMN_GAP_PX, snapped } from "./place.ts";

const ROW_GAP_PX = 16;

export type Places = ReadonlyMap<string, readonly [x: number, y: number]>;

/** New places for all parts: signal from left to right in columns with room for strips between them. */
export async function arranged(design: Design, elk: Pick<ELK, "layout">): Promise<Places> {
  const result = await elk.layout({
    id: "design",
    layoutOptions: {
      "elk.algorithm": "layered",
      "elk.direction": "RIGHT",
      "elk.spacing.nodeNode": String(ROW_GAP_PX),
      "elk.spacing.componentComponent": String(2 * ROW_GAP_PX),
      "elk.layered.spacing.nodeNodeBetweenLayers": String(COLUMN_GAP_PX),
      // Wires find their own way: the layout must not widen the gap for each of them.
      "elk.edgeRouting": "POLYLINE",
      "elk.layered.spacing.edgeNodeBetweenLayers": "0",
      "elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
      "elk.layered.nodePlacement.favorStraightEdges": "true",
      "elk.layered.considerModelOrder.strategy": "NODES_AND_EDGES",
    },
    children: design.parts.map((part) => {
      const ports = portsOf(part);
      const { width, height, ports: places } = frameOf(design, part);
      return {
        id: part.id,
        width,
        height,
        layoutOptions: { "elk.portConstraints": "FIXED_POS" },
        ports: ports.map((port) => ({
          id: `${part.id}/${port.id}`,
          x: places.get(port.id)?.x ?? 0,
          y: places.get(port.id)?.y ?? 0,
          width: 0,
          height: 0,
          layoutOptions: { "elk.port.side": port.side === "in" ? "WEST" : "EAST" },
        })),
      };
    }),
    edges: design.wires.map((wire, i) => ({
      id: `wire${i}`,
      sources: [wire.from.join("/")],
      targets: [wire.to.join("/")],
    })),
  });
  return new Map(
    (result.children ?? []).map(({ id, x, y }) => [id, [snapped(x ?? 0), snapped(y ?? 0)] as const]),
  );
}
