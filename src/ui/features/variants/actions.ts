/** What is done with variants; each is one undo step. */
import type { Design } from "../../../design/design.ts";
import { addVariant, removeVariant, renameVariant, switchVariant } from "../../../design/edits/variants.ts";
import { useApp } from "../../../store/app.ts";

/** These yield null, or a sentence that says why not. */
export function copyAsVariant(name: string): string | null {
  return take((design) => addVariant(design, name));
}

export function goToVariant(name: string): string | null {
  const { design } = useApp.getState();
  const problem = take((d) => switchVariant(d, name));
  // The variants of one house mostly lie at the same place; only what is somewhere else needs looking for.
  if (problem === null && useApp.getState().design !== design) useApp.getState().frame(whole());
  return problem;
}

export function nameVariant(name: string, newName: string): string | null {
  return take((design) => renameVariant(design, name, newName));
}

export function deleteVariant(name: string): string | null {
  return take((design) => removeVariant(design, name));
}

function take(edit: (design: Design) => ReturnType<typeof addVariant>): string | null {
  const { design, change, closePreview } = useApp.getState();
  closePreview();
  const result = edit(design);
  // The reason is shown where it was asked; a notice as well would say it twice.
  if (!result.ok) return result.reason;
  change(result);
  return null;
}

function whole() {
  return { parts: useApp.getState().design.parts.map((p) => p.id) };
}
