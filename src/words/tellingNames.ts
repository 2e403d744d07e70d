/**
 * What tells neighbours apart in their names: words that all of them begin or end with are left out. "Plate living
 * room", "Plate bedroom 1" become "living room", "bedroom 1". Only for showing beside each other, under a heading.
 */
export function tellingNames(names: readonly string[]): readonly string[] {
  if (new Set(names).size < 2) return names;
  const words = names.map((name) => name.trim().split(/\s+/));
  const least = Math.min(...words.map((w) => w.length));
  const [first = []] = words;
  const sameAt = (place: (w: readonly string[]) => string | undefined) =>
    words.every((w) => place(w) === place(first));
  // One word of the shortest name stays.
  let head = 0;
  while (head < least - 1 && sameAt((w) => w[head])) head++;
  let tail = 0;
  while (head + tail < least - 1 && sameAt((w) => w[w.length - 1 - tail])) tail++;
  return words.map((w) => w.slice(head, w.length - tail).join(" "));
}
