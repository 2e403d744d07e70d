/** Telling designs apart by what they do: places and labels do not count. */
import type { Design, Part } from "../design/design.ts";
import { wireId } from "../design/design.ts";
import { remembered } from "../signal/remember.ts";

// Parts and their options are immutable, and most are shared by all designs of a search.
const optionTexts = new WeakMap<object, string>();
const signatures = new WeakMap<Design, string>();

/** The same for designs that differ in nothing but places and labels. */
export function signature(design: Design): string {
  return remembered(signatures, design, () => {
    const text = (options: Part["options"]) =>
      remembered(optionTexts, options, () => JSON.stringify(options));
    const parts = design.parts.map((p) => `${p.id}:${p.kind}:${text(p.options)}`).sort();
    return `${parts.join("\n")}\n${design.wires.map(wireId).sort().join("\n")}`;
  });
}
