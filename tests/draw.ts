/** Draws a design for a test in a few lines. */
import type { Design, Part, PartId, Wire } from "../src/design/design.ts";
import { kindOf } from "../src/parts/catalogue.ts";

export type Sketch = Readonly<Record<PartId, readonly [kind: string, options?: Record<string, unknown>]>>;

/**
 * `parts`: id → kind and the options that differ from the defaults. `wires`: "dish.sky > lnb.sky", also
 * several in one text, each "from > to", separated by commas.
 */
export function draw(parts: Sketch, wires: string): Design {
  return {
    title: "Test design",
    parts: Object.entries(parts).map(([id, [kindKey, options]], n): Part => {
      const kind = kindOf(kindKey);
      if (!kind) throw new Error(`no kind ${kindKey}`);
      return { id, kind: kindKey, label: id, options: kind.options.parse(options ?? {}), at: [n * 300, 0] };
    }),
    wires: wires
      .split(",")
      .map((text) => text.trim())
      .filter((text) => text !== "")
      .map((text): Wire => {
        const [from, to] = text.split(">").map((end) => end.trim().split("."));
        if (!from?.[0] || !from[1] || !to?.[0] || !to[1]) throw new Error(`not a wire: ${text}`);
        return { from: [from[0], from[1]], to: [to[0], to[1]] };
      }),
  };
}

/** The same design with other options for one part. */
export function withOptions(design: Design, id: PartId, options: Record<string, unknown>): Design {
  return {
    ...design,
    parts: design.parts.map((part) => {
      if (part.id !== id) return part;
      const kind = kindOf(part.kind);
      if (!kind) throw new Error(`no kind ${part.kind}`);
      return { ...part, options: kind.options.parse({ ...part.options, ...options }) };
    }),
  };
}
