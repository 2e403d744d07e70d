/** What is done to the selection, from keys, buttons and menus alike. */

import { copyParts, type Fragment, pasteFragment } from "../../design/edits/clipboard.ts";
import { done } from "../../design/edits/edit.ts";
import { moveParts } from "../../design/edits/parts.ts";
import { removeParts } from "../../design/edits/remove.ts";
import { useApp } from "../../store/app.ts";
import { plural } from "../../words/plural.ts";
import { focusCanvas } from "../kit/focusKeeper.ts";
import { reveal } from "./adding.ts";
import { boxesOf } from "./boxes.ts";
import { focusItem } from "./focusItem.ts";
import { itemLeftBeside } from "./goAlong.ts";
import { boundsOf } from "./layout.ts";
import { pastePlace } from "./place.ts";
import { withRoom } from "./rooms.ts";
import { focusSelected } from "./selectedFocus.ts";
import { readClipboard, writeClipboard } from "./systemClipboard.ts";
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
  const isHere = document.activeElement?.closest(".canvas, .canvas-bar, .inspector");
  const next = itemLeftBeside(design, selection);
  if (!change(removeParts(design, partIds(), new Set(selection.wires))) || !isHere) return;
  if (next) focusItem(next);
  else focusCanvas();
}

export function copySelection(): void {
  const { design, setClipboard, notify, selection } = useApp.getState();
  const fragment = copyParts(design, partIds());
  setClipboard(fragment);
  writeClipboard(fragment);
  notify(
    plural(selection.parts.length, { one: (n) => `Copied ${n} part.`, other: (n) => `Copied ${n} parts.` }),
  );
}

export function cutSelection(): void {
  const { design, setClipboard } = useApp.getState();
  const fragment = copyParts(design, partIds());
  setClipboard(fragment);
  writeClipboard(fragment);
  deleteSelection();
}

/** Asks the system for what was copied last, in this window or another. */
export async function paste(): Promise<void> {
  const fragment = await readClipboard();
  if (fragment) pasteParts(fragment);
}

/** Pastes below the original while that is in view, otherwise in the middle of what is seen. */
export function pasteParts(fragment: Fragment): void {
  const { design, change, select } = useApp.getState();
  const ids = new Set(fragment.parts.map(({ id }) => id));
  const original = boundsOf(boxesOf({ ...design, parts: design.parts.filter(({ id }) => ids.has(id)) }));
  const seen = canvasView();
  const at = pastePlace(design, fragment, original || !seen ? null : seen.centre());
  const pasted = pasteFragment(design, fragment, at);
  if (!pasted.ok) {
    change(pasted);
    return;
  }
  if (!change(done(withRoom(design, pasted.design), pasted.notes))) return;
  const added = [...pasted.added];
  select({ parts: added });
  reveal(added);
  focusSelected();
}

export function duplicateSelection(): void {
  pasteParts(copyParts(useApp.getState().design, partIds()));
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
