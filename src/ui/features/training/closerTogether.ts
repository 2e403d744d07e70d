import type { Design } from "../../../design/design.ts";
import { boxOf } from "../../canvas/boxes.ts";
import { CARD_WIDTH_PX, GRID_PX } from "../../canvas/layout.ts";

/** From left edge to left edge of two cards beside each other: a card, and the bends of a wire [px]. */
const LEAST_PITCH_PX = CARD_WIDTH_PX + 72;
/** Narrower than this nothing is gained: names then set the size. */
const LEAST_FACTOR = 0.6;

const drawn = new WeakMap<Design, Design>();

/**
 * The same drawing with its columns closer together, as far as cards that stand beside each other allow: where
 * wires carry no strips, the room for strips only makes everything smaller. The same object for the same design.
 */
export function closerTogether(design: Design): Design {
  let closer = drawn.get(design);
  if (!closer) {
    closer = narrowed(design);
    drawn.set(design, closer);
  }
  return closer;
}

function narrowed(design: Design): Design {
  const factor = narrowestFactor(design);
  if (factor >= 1) return design;
  const x = (px: number) => Math.round((px * factor) / GRID_PX) * GRID_PX;
  return { ...design, parts: design.parts.map((part) => ({ ...part, at: [x(part.at[0]), part.at[1]] })) };
}

function narrowestFactor(design: Design): number {
  const boxes = design.parts.map(boxOf).sort((a, b) => a.x - b.x);
  let factor = LEAST_FACTOR;
  for (const [i, a] of boxes.entries())
    for (const b of boxes.slice(i + 1)) {
      const areBeside = a.y < b.y + b.height && b.y < a.y + a.height;
      if (areBeside && b.x > a.x) factor = Math.max(factor, LEAST_PITCH_PX / (b.x - a.x));
    }
  return factor;
}
