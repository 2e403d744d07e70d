/** From card to wire to card by the keys: along the signal and back, to what lies beside, and to every part in turn. */
import type { Design, PartId, Wire } from "../../design/design.ts";
import { wireId } from "../../design/design.ts";
import type { Selection } from "../../store/app.ts";
import { useApp } from "../../store/app.ts";
import { type CanvasItem, focusedItem, focusItem } from "./focusItem.ts";
import { canvasView } from "./view.ts";

export type Way = "upstream" | "downstream" | "before" | "after";

/** Moves the focus on; from elsewhere on the canvas it begins at what is selected, or at the first part. */
export function go(way: Way): void {
  const { evaluation, selection } = useApp.getState();
  const at = focusedItem();
  const next = at ? nextItem(evaluation.design, at, way) : startOf(evaluation.design, selection);
  if (next) focusItem(next);
}

/** Where a step leads from a card or a wire; null at the end of the way. */
export function nextItem(design: Design, at: CanvasItem, way: Way): CanvasItem | null {
  return "part" in at ? fromPart(design, at.part, way) : fromWire(design, at.wire, way);
}

/** A card or wire that stays when others go: what fed the first of them, else what it fed. */
export function neighbourOf({ wires }: Design, gone: Selection): CanvasItem | null {
  const going = new Set(gone.parts);
  for (const id of gone.parts) {
    const feeding = wires.find((w) => w.to[0] === id && !going.has(w.from[0]));
    if (feeding) return { part: feeding.from[0] };
  }
  const fed = wires.find((w) => going.has(w.from[0]) && !going.has(w.to[0]));
  if (fed) return { part: fed.to[0] };
  const wire = wires.find((w) => gone.wires.includes(wireId(w)) && !going.has(w.from[0]));
  return wire ? { part: wire.from[0] } : null;
}

function startOf(design: Design, { parts, wires }: Selection): CanvasItem | null {
  const [part] = parts;
  if (part !== undefined) return { part };
  const [wire] = wires;
  if (wire !== undefined) return { wire };
  const [first] = inReadingOrder(design);
  return first === undefined ? null : { part: first };
}

function fromPart(design: Design, part: PartId, way: Way): CanvasItem | null {
  if (way === "upstream" || way === "downstream") {
    const end = way === "upstream" ? "to" : "from";
    const wire = design.wires.find((w) => w[end][0] === part);
    return wire ? { wire: wireId(wire) } : null;
  }
  const order = inReadingOrder(design);
  const next = order[order.indexOf(part) + (way === "after" ? 1 : -1)];
  return next === undefined ? null : { part: next };
}

function fromWire(design: Design, id: string, way: Way): CanvasItem | null {
  const wire = design.wires.find((w) => wireId(w) === id);
  if (!wire) return null;
  if (way === "upstream") return { part: wire.from[0] };
  if (way === "downstream") return { part: wire.to[0] };
  const beside = sisters(design, wire);
  const next = beside[beside.indexOf(wire) + (way === "after" ? 1 : -1)];
  return next ? { wire: wireId(next) } : null;
}

/** The other wires of the part that sends this one; of a part with one output those that its taker is fed by. */
function sisters({ wires }: Design, wire: Wire): readonly Wire[] {
  const sent = wires.filter((w) => w.from[0] === wire.from[0]);
  return sent.length > 1 ? sent : wires.filter((w) => w.to[0] === wire.to[0]);
}

/** From left to right, and from top to bottom where parts stand below each other. */
function inReadingOrder({ parts }: Design): readonly PartId[] {
  return [...parts].sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1]).map((p) => p.id);
}

export const GO_COMMANDS = [
  command("go-upstream", "Go upstream", "ArrowLeft", "upstream"),
  command("go-downstream", "Go downstream", "ArrowRight", "downstream"),
  command("go-before", "Go to previous", "ArrowUp", "before"),
  command("go-after", "Go to next", "ArrowDown", "after"),
];

function command(id: string, label: string, key: string, way: Way) {
  return {
    id,
    label,
    group: "Select",
    shortcuts: [`Alt+${key}`],
    run: () => go(way),
    // A phone has views without a drawing.
    enabled: () => canvasView() !== null && useApp.getState().design.parts.length > 0,
  } as const;
}
