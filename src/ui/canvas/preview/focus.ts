import { afterLayout } from "../../kit/afterLayout.ts";

/** Gives the bar of the preview the focus once it stands there: for a preview that was asked for in a dialog. */
export function focusPreview(): void {
  afterLayout(() => document.querySelector<HTMLElement>(".preview-bar")?.focus());
}
