/** Designs that come back from a worker are copies through and through; what did not change should be the original. */
import type { Design } from "../design/design.ts";

/**
 * The same design with the very objects of `own` wherever nothing differs, so that only what changed is
 * evaluated and drawn anew.
 */
export function withSharedObjects(design: Design, own: Design): Design {
  return {
    ...own,
    parts: shared(design.parts, own.parts, (p) => p.id),
    wires: shared(design.wires, own.wires, (w) => [...w.from, ...w.to].join(" ")),
  };
}

function shared<T>(list: readonly T[], own: readonly T[], keyOf: (one: T) => string): readonly T[] {
  const known = new Map(own.map((one) => [keyOf(one), one] as const));
  const result = list.map((one) => {
    const original = known.get(keyOf(one));
    return original !== undefined && JSON.stringify(original) === JSON.stringify(one) ? original : one;
  });
  return result.length === own.length && result.every((one, i) => one === own[i]) ? own : result;
}
