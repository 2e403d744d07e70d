/** Boxes by where they are, so that a wire asks those near it only. */
import type { Box } from "./layout.ts";

const CELL_PX = 256;

/** Edges of an area [px]. */
export type Area = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

export class BoxIndex {
  readonly #cells = new Map<number, Box[]>();
  readonly #seen = new Set<Box>();

  constructor(boxes: readonly Box[]) {
    for (const box of boxes) {
      for (const key of cellsOf(areaOf(box))) {
        const cell = this.#cells.get(key);
        if (cell) cell.push(box);
        else this.#cells.set(key, [box]);
      }
    }
  }

  /** Boxes that share more than an edge with an area. */
  within(area: Area): Box[] {
    const found: Box[] = [];
    this.#seen.clear();
    for (const key of cellsOf(area)) {
      for (const box of this.#cells.get(key) ?? []) {
        if (this.#seen.has(box)) continue;
        this.#seen.add(box);
        if (meets(box, area)) found.push(box);
      }
    }
    return found;
  }

  isFree(area: Area): boolean {
    for (const key of cellsOf(area)) {
      for (const box of this.#cells.get(key) ?? []) if (meets(box, area)) return false;
    }
    return true;
  }
}

function meets(b: Box, { left, top, right, bottom }: Area): boolean {
  return b.x < right && b.x + b.width > left && b.y < bottom && b.y + b.height > top;
}

function areaOf(b: Box): Area {
  return { left: b.x, top: b.y, right: b.x + b.width, bottom: b.y + b.height };
}

function* cellsOf({ left, top, right, bottom }: Area): Generator<number> {
  const lastColumn = Math.floor(right / CELL_PX);
  const lastRow = Math.floor(bottom / CELL_PX);
  for (let column = Math.floor(left / CELL_PX); column <= lastColumn; column++) {
    // A design is far less than a million cells high.
    for (let row = Math.floor(top / CELL_PX); row <= lastRow; row++) yield column * 1_000_003 + row;
  }
}
