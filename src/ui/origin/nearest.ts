/** The one of so many places that lies nearest, by a distance. */
export function nearest(count: number, distance: (n: number) => number): number {
  let best = 0;
  for (let n = 1; n < count; n++) if (distance(n) < distance(best)) best = n;
  return best;
}
