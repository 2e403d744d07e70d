/** Which two states are compared: view state of this window. */
import { create } from "zustand";
import type { Design } from "../../../design/design.ts";
import { activeName, variantDesign, variantNames } from "../../../design/variants.ts";
import { openDialog } from "../panes.ts";

/** A variant by its name, or a design that only was proposed. */
export type Side = { readonly name: string; readonly design?: Design };

type Asked = { readonly before: Side | null; readonly after: Side | null };

export const useCompared = create<Asked>(() => ({ before: null, after: null }));

/** Without a choice: the first variant, and the one at work. */
export function openComparison(): void {
  useCompared.setState({ before: null, after: null });
  openDialog("compare");
}

export function compareVariants(before: string, after: string): void {
  useCompared.setState({ before: { name: before }, after: { name: after } });
  openDialog("compare");
}

/** What would become of the design at work. */
export function compareWithPresent(design: Design, name: string): void {
  useCompared.setState({ before: null, after: { name, design } });
  openDialog("compare");
}

/** What has become of it, against how it was. */
export function compareWithFormer(design: Design, name = "Before the change"): void {
  useCompared.setState({ before: { name, design }, after: null });
  openDialog("compare");
}

/**
 * Both sides as designs. Without a choice, before is the first variant and after the one at work;
 * a name that no longer exists counts as no choice.
 */
export function sidesOf(
  design: Design,
  { before, after }: Asked,
): { readonly before: Side; readonly after: Side } {
  const names = variantNames(design);
  const active = activeName(design);
  const known = (side: Side | null) => (side && (side.design || names.includes(side.name)) ? side : null);
  const last = known(after) ?? { name: active };
  const first = known(before) ?? {
    name: last.design ? active : (names.find((n) => n !== last.name) ?? active),
  };
  return { before: first, after: last };
}

export function sideDesign(document: Design, side: Side): Design {
  return side.design ?? variantDesign(document, side.name) ?? document;
}
