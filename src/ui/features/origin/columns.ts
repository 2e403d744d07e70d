/** The columns of a diagram of steps: one for each part, with its number and, where there is room, its name. */

/** The one of so many columns that lies nearest, by a distance. */
export function nearestColumn(count: number, distance: (n: number) => number): number {
  let best = 0;
  for (let n = 1; n < count; n++) if (distance(n) < distance(best)) best = n;
  return best;
}

/** Narrower columns than this cut every name short [px]. */
const LEAST_NAME_PX = 56;
const LETTER_PX = 6.2;
export const NAME_LINE_PX = 14;

/** Letters of a name that fit into a column; 0 where names would only be stumps. */
export function nameLength(columnPx: number): number {
  return columnPx >= LEAST_NAME_PX ? Math.floor(columnPx / LETTER_PX) : 0;
}

export function shortened(text: string, length: number): string {
  return text.length > length ? `${text.slice(0, length - 1)}…` : text;
}
