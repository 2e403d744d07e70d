import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { boxesOf } from "../../../src/ui/canvas/boxes.ts";
import { editorFirstView } from "../../../src/ui/canvas/viewMath.ts";

/** Panes of the drawing on a phone, upright and on its side. [px] */
const PHONES = [
  { name: "upright", pane: { width: 390, height: 640 } },
  { name: "on its side", pane: { width: 390, height: 280 } },
];

/** The bar over the lower edge of such a drawing is a row of buttons of 44 px within its padding. [px] */
const BAR_PX = 56;

describe.each(PHONES)("the first look on a phone $name", ({ pane }) => {
  test.each(EXAMPLES)("has every part of $key in view, above the bar", ({ load }) => {
    const design = load();
    const { x, y, zoom } = editorFirstView(design, pane);
    for (const box of boxesOf(design)) {
      expect(box.x * zoom + x).toBeGreaterThanOrEqual(0);
      expect((box.x + box.width) * zoom + x).toBeLessThanOrEqual(pane.width);
      expect(box.y * zoom + y).toBeGreaterThanOrEqual(0);
      expect((box.y + box.height) * zoom + y).toBeLessThanOrEqual(pane.height - BAR_PX);
    }
  });
});
