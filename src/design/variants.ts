/** Variants of a design: as built, plan A, plan B, in one document. One of them is at work, the others rest. */
import type { Design, Variant } from "./design.ts";

/** What the variant at work is called while nobody has named it. */
export const FIRST_VARIANT = "As built";

export function activeName({ variant }: { readonly variant?: string | undefined }): string {
  return variant ?? FIRST_VARIANT;
}

/** Names of all variants, the one at work among them, in an order that does not change with the work. */
export function variantNames(design: Design): readonly string[] {
  const names = [activeName(design), ...(design.variants ?? []).map((v) => v.name)];
  return names.sort((a, b) => rank(a) - rank(b) || a.localeCompare(b, "en", { numeric: true }));
}

function rank(name: string): number {
  return name === FIRST_VARIANT ? 0 : 1;
}

/** "Plan A", or the next letter that is free. */
export function freshVariantName(design: Design): string {
  const taken = new Set(variantNames(design));
  for (let i = 0; i < 26; i++) {
    const name = `Plan ${String.fromCharCode(65 + i)}`;
    if (!taken.has(name)) return name;
  }
  return `Plan ${taken.size + 1}`;
}

/** A variant as a design of its own, to evaluate and compare; undefined for an unknown name. */
export function variantDesign(design: Design, name: string): Design | undefined {
  const { variant: _, variants: resting = [], ...rest } = design;
  if (name === activeName(design)) return { ...rest, variant: name };
  const chosen = resting.find((v) => v.name === name);
  return chosen && { ...rest, parts: chosen.parts, wires: chosen.wires, variant: name };
}

/** Parts and wires of the variant at work and of all that rest: what the limits of a document count. */
export function heldCount(design: Design): { readonly parts: number; readonly wires: number } {
  const resting: readonly Variant[] = design.variants ?? [];
  return {
    parts: resting.reduce((n, v) => n + v.parts.length, design.parts.length),
    wires: resting.reduce((n, v) => n + v.wires.length, design.wires.length),
  };
}
