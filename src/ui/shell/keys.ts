/** Binds the shortcuts of the command list. */
import { type RefObject, useEffect } from "react";
import { tinykeys } from "tinykeys";
import { COMMANDS, type Command } from "./commands.ts";

export function useCommandKeys(canvas: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const bindings: Record<string, (event: KeyboardEvent) => void> = {};
    for (const command of COMMANDS) {
      for (const shortcut of command.shortcuts) {
        bindings[shortcut] = (event) => press(command, shortcut, event, canvas.current);
      }
    }
    return tinykeys(window, bindings);
  }, [canvas]);
}

function press(command: Command, shortcut: string, event: KeyboardEvent, canvas: HTMLElement | null): void {
  const target = event.target instanceof Element ? event.target : null;
  if (event.defaultPrevented || isElsewhere(target)) return;
  const isPlain = !shortcut.includes("$mod");
  const onCanvas = target === null || target === document.body || canvas?.contains(target) === true;
  if (isPlain && !onCanvas) return;
  // A focused card moves itself by the arrow keys already.
  if (shortcut.includes("Arrow") && target?.closest(".react-flow__node")) return;
  // Text that is marked on the page is what a copy means.
  if (command.id === "copy" && String(window.getSelection() ?? "") !== "") return;
  if (!command.enabled()) return;
  event.preventDefault();
  command.run();
}

/** In a field, the keys belong to the field; in a dialog or a menu, to that. */
export function isElsewhere(target: Element | null): boolean {
  return (
    target !== null &&
    target.closest(
      "input, textarea, select, [contenteditable], [role=dialog], [role=menu], [role=listbox]",
    ) !== null
  );
}
