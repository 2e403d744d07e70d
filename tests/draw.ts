/** Draws a design for a test in a few lines. */
import type { Design, Part, PartId } from "../src/design/design.ts";
import { kindOf } from "../src/parts/catalogue.ts";
import { type Sketch, sketch } from "../src/sentences/explain/sketch.ts";

export type { Sketch };

/** As a sketch of the rule book is drawn, but each part is named after its id, so that messages can be foretold. */
export function draw(parts: Sketch, wires: string): Design {
  const design = sketch("Test design", parts, wires);
  return {
    ...design,
    parts: design.parts.map((part, n): Part => ({ ...part, label: part.id, at: [n * 300, 0] })),
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
