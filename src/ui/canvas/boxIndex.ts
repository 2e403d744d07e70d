/** Boxes by where they are, so that a wire asks those near it only. */
import type { Box } from "./layout.ts";

const CELL_PX = 256;
/** A design is far less than this number of cells high. */
const COLUMN = 1_000_003;

/** Edges of an area [px]. */
export type Area = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

const cell = (px: number) => Math.floor(px / CELL_PX);

export class BoxIndex {
  readonly #boxes: readonly Box[];
  readonly #cells = new Map<number, number[]>();
  /** By the number of a box, the question that found it last. */
  readonly #found: Uint32Array;
  #questions = 0;

  constructor(boxes: readonly Box[]) {
    this.#boxes = boxes;
    this.#found = new Uint32Array(boxes.length);
    boxes.forEach((b, i) => {
      for (let column = cell(b.x); column <= cell(b.x + b.width); column++) {
        for (let row = cell(b.y); row <= cell(b.y + b.height); row++) {
          const key = column * COLUMN + row;
          const known = this.#cells.get(key);
          if (known) known.push(i);
          else this.#cells.set(key, [i]);
        }
      }
    });
  }

  /** Boxes that share more than an edge with an area. */
  within(area: Area): Box[] {
    const found: Box[] = [];
    this.#questions++;
    this.#ask(area, (box, i) => {
      if (this.#found[i] !== this.#questions) found.push(box);
      this.#found[i] = this.#questions;
      return true;
    });
    return found;
  }

  isFree(area: Area): boolean {
    return this.#ask(area, () => false);
  }

  /** Until an answer is no. A box may come more than once. */
  #ask(area: Area, goesOn: (box: Box, i: number) => boolean): boolean {
    const { left, top, right, bottom } = area;
    const [lastColumn, lastRow] = [cell(right), cell(bottom)];
    for (let column = cell(left); column <= lastColumn; column++) {
      for (let row = cell(top); row <= lastRow; row++) {
        const known = this.#cells.get(column * COLUMN + row);
        if (!known) continue;
        for (const i of known) {
          const b = this.#boxes[i];
          if (!b || b.x >= right || b.x + b.width <= left || b.y >= bottom || b.y + b.height <= top) continue;
          if (!goesOn(b, i)) return false;
        }
      }
    }
    return true;
  }
}
