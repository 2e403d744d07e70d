import type { KeyboardEvent } from "react";

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Arrow keys go from box to box of a table. */
export function moveByArrows(event: KeyboardEvent<HTMLTableElement>): void {
  const step = STEPS[event.key];
  const cell = event.target instanceof HTMLElement ? event.target.closest("td") : null;
  const row = cell?.parentElement;
  if (!step || !cell || !(row instanceof HTMLTableRowElement)) return;
  const to = event.currentTarget.rows[row.rowIndex + step[0]]?.cells[cell.cellIndex + step[1]];
  to?.querySelector("button")?.focus();
  event.preventDefault();
}
