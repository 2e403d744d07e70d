/** Room on the canvas for what a proposal puts in: the core knows nothing of the size of cards. */
import type { Design } from "../../../design/design.ts";
import { moveParts } from "../../../design/edits/parts.ts";
import { difference } from "../../../remedies/difference.ts";
import { boxOf } from "../../canvas/boxes.ts";
import { overlaps } from "../../canvas/layout.ts";
import { freePlace } from "../../canvas/place.ts";

const known = new WeakMap<Design, Design>();

/** A proposed design with its new cards, and those that grew, beside the others. The same object each time. */
export function withPlacedCards(design: Design, document: Design): Design {
  let result = known.get(design);
  if (!result) {
    result = withRoom(design, document);
    known.set(design, result);
  }
  return result;
}

function withRoom(design: Design, document: Design): Design {
  const { added, changed } = difference(document, design);
  const grown = changed.filter(
    ({ before, after }) => boxOf(design, after).height > boxOf(document, before).height,
  );
  let now = design;
  for (const part of [...added, ...grown.map((c) => c.after)]) {
    const box = boxOf(now, part);
    const others = { ...now, parts: now.parts.filter((p) => p.id !== part.id) };
    if (!others.parts.some((other) => overlaps(boxOf(now, other), box))) continue;
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const moved = moveParts(now, new Map([[part.id, freePlace(others, part, middle)]]));
    if (moved.ok) now = moved.design;
  }
  return now;
}
