/** Setting options by hand, of one part or of several at once; a card that grows gets room. */
import type { PartId } from "../../design/design.ts";
import { done } from "../../design/edits/edit.ts";
import { setOption } from "../../design/edits/options.ts";
import { useApp } from "../../store/app.ts";
import { roomy } from "./place.ts";

/** Null when it was taken, else the reason why not, for the field to say. */
export function changeOption(
  ids: readonly PartId[],
  key: string,
  value: unknown,
  step: { readonly merge?: string; readonly lasts?: boolean },
): string | null {
  const { design, change } = useApp.getState();
  let edit = done(design);
  for (const id of ids) {
    const next = setOption(edit.design, id, key, value);
    // The reason stands at the field; a notice as well would say it twice.
    if (!next.ok) return next.reason;
    edit = done(next.design, [...edit.notes, ...next.notes]);
  }
  change(roomy(design, edit), step);
  return null;
}
