/** The same installation drawn by another hand: other ids, parts and wires in another order. */
import fc from "fast-check";
import type { Design, PartId, PortRef } from "../src/design/design.ts";

export type Redrawn = {
  readonly design: Design;
  /** Former id of a part by its new one. */
  readonly former: ReadonlyMap<PartId, PartId>;
};

export function redrawn(design: Design): fc.Arbitrary<Redrawn> {
  return fc
    .tuple(shuffled(design.parts), shuffled(design.wires), shuffled(design.parts.map((_, n) => `x${n}`)))
    .map(([parts, wires, ids]) => {
      const renamed = new Map(parts.map((part, n) => [part.id, ids[n] ?? ""]));
      const end = ([part, port]: PortRef): PortRef => [renamed.get(part) ?? part, port];
      return {
        former: new Map([...renamed].map(([before, now]) => [now, before])),
        design: {
          ...design,
          parts: parts.map((part) => ({ ...part, id: renamed.get(part.id) ?? part.id })),
          wires: wires.map(({ from, to }) => ({ from: end(from), to: end(to) })),
        },
      };
    });
}

function shuffled<T>(list: readonly T[]): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...list], { minLength: list.length, maxLength: list.length });
}
