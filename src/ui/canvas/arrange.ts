/**
 * Lays a whole design out from the roof to the sockets. The layout library is fetched when first asked for
 * and works beside the page: a thousand parts take it seconds.
 */
import type { ELK } from "elkjs/lib/elk-api.js";
import type { Design } from "../../design/design.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { portsOf } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { layoutWorker } from "../../store/workers.ts";
import { CARD_WIDTH_PX, COLUMN_PITCH_PX, cardSize, portPlaces } from "./layout.ts";
import { snapped } from "./place.ts";
import { canvasView } from "./view.ts";

const ROW_GAP_PX = 40;

/** Arranges the open design as one undo step and shows it. */
export async function arrange(): Promise<void> {
  const { design, notify } = useApp.getState();
  try {
    const places = await arrangedBeside(design);
    const { design: now, change } = useApp.getState();
    if (change(moveParts(now, places))) canvasView()?.fit();
  } catch {
    notify("The layout could not be worked out; everything stays where it was.", "error");
  }
}

type Places = ReadonlyMap<string, readonly [x: number, y: number]>;

async function arrangedBeside(design: Design): Promise<Places> {
  const { default: Elk } = await import("elkjs/lib/elk-api.js");
  const elk = new Elk({ workerFactory: layoutWorker });
  try {
    return await arranged(design, elk);
  } finally {
    elk.terminateWorker();
  }
}

/** New places for all parts: signal from left to right in columns with room for strips between them. */
export async function arranged(design: Design, elk: Pick<ELK, "layout">): Promise<Places> {
  const result = await elk.layout({
    id: "design",
    layoutOptions: {
      "elk.algorithm": "layered",
      "elk.direction": "RIGHT",
      "elk.spacing.nodeNode": String(ROW_GAP_PX),
      "elk.spacing.componentComponent": String(2 * ROW_GAP_PX),
      "elk.layered.spacing.nodeNodeBetweenLayers": String(COLUMN_PITCH_PX - CARD_WIDTH_PX),
      // Wires find their own way: the layout must not widen the gap for each of them.
      "elk.edgeRouting": "POLYLINE",
      "elk.layered.spacing.edgeNodeBetweenLayers": "0",
      "elk.layered.nodePlacement.strategy": "NETWORK_SIMPLEX",
      "elk.layered.nodePlacement.favorStraightEdges": "true",
      "elk.layered.considerModelOrder.strategy": "NODES_AND_EDGES",
    },
    children: design.parts.map((part) => {
      const ports = portsOf(part);
      const places = portPlaces(ports);
      return {
        id: part.id,
        ...cardSize(ports),
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
