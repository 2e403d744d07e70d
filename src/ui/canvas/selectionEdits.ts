/** What is done to the selection, from keys, buttons and menus alike. */
import { copyParts, pasteFragment } from "../../design/edits/clipboard.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { removeParts } from "../../design/edits/remove.ts";
import { partById } from "../../design/lookup.ts";
import { useApp } from "../../store/app.ts";
import { plural } from "../../words/plural.ts";
import { focusCanvas } from "../kit/focusKeeper.ts";
import { focusItem } from "./focusItem.ts";
import { neighbourOf } from "./goAlong.ts";
import { canvasView } from "./view.ts";

const partIds = () => new Set(useApp.getState().selection.parts);

export function hasSelection(): boolean {
  const { parts, wires } = useApp.getState().selection;
  return parts.length + wires.length > 0;
}

export function hasSelectedParts(): boolean {
  return useApp.getState().selection.parts.length > 0;
}

/** Deletes what is selected; the wire of a part that sat in line closes again. */
export function deleteSelection(): void {
  const { design, selection, change } = useApp.getState();
  const isHere = document.activeElement?.closest(".canvas, .inspector");
  const next = neighbourOf(design, selection);
  if (!change(removeParts(design, partIds(), new Set(selection.wires))) || !isHere) return;
  if (next) focusItem(next);
  else focusCanvas();
}

export function copySelection(): void {
  const { design, setClipboard, notify, selection } = useApp.getState();
  setClipboard(copyParts(design, partIds()));
  notify(
    plural(selection.parts.length, { one: (n) => `Copied ${n} part.`, other: (n) => `Copied ${n} parts.` }),
  );
}

export function cutSelection(): void {
  const { design, setClipboard } = useApp.getState();
  setClipboard(copyParts(design, partIds()));
  deleteSelection();
}

/** Pastes beside the original while that is in view, otherwise in the middle of what is seen. */
export function paste(): void {
  const { design, clipboard, change, select } = useApp.getState();
  const [first] = clipboard?.parts ?? [];
  if (!clipboard || !first) return;
  const isNear = partById(design, first.id) !== undefined;
  const centre = canvasView()?.centre();
  const at = isNear || !centre ? undefined : ([Math.round(centre.x), Math.round(centre.y)] as const);
  const pasted = pasteFragment(design, clipboard, at);
  if (change(pasted) && pasted.ok) select({ parts: [...pasted.added] });
}

export function duplicateSelection(): void {
  const { design, change, select } = useApp.getState();
  const pasted = pasteFragment(design, copyParts(design, partIds()));
  if (change(pasted) && pasted.ok) select({ parts: [...pasted.added] });
}

export function selectAll(): void {
  const { design, select } = useApp.getState();
  select({ parts: design.parts.map((p) => p.id) });
}

/** Moves the selected parts by so many pixels; presses that follow each other are one step back. */
export function nudge(dx: number, dy: number): void {
  const { design, change } = useApp.getState();
  const ids = partIds();
  const positions = new Map(
    design.parts
      .filter((p) => ids.has(p.id))
      .map((p) => [p.id, [p.at[0] + dx, p.at[1] + dy] as const] as const),
  );
  change(moveParts(design, positions), { merge: "nudge" });
}
