/** Binds the shortcuts of the command list. */
import { useEffect } from "react";
import { tinykeys } from "tinykeys";
import type { Command } from "../kit/command.ts";
import { isElsewhere } from "../kit/isElsewhere.ts";
import { COMMANDS } from "./commands.ts";

export function useCommandKeys(): void {
  useEffect(() => {
    const bindings: Record<string, (event: KeyboardEvent) => void> = {};
    for (const command of COMMANDS) {
      for (const shortcut of command.shortcuts) {
        bindings[shortcut] = (event) => press(command, shortcut, event);
      }
    }
    return tinykeys(window, bindings);
  }, []);
}

function press(command: Command, shortcut: string, event: KeyboardEvent): void {
  const target = event.target instanceof Element ? event.target : null;
  if (event.defaultPrevented || isElsewhere(target)) return;
  const isPlain = !shortcut.includes("$mod");
  const onCanvas = target === null || target === document.body || target.closest(".canvas") !== null;
  if (isPlain && !onCanvas) return;
  // A focused card moves itself by the arrow keys already.
  if (shortcut.includes("Arrow") && target?.closest(".react-flow__node")) return;
  // Text that is marked on the page is what a copy means.
  if (command.id === "copy" && String(window.getSelection() ?? "") !== "") return;
  if (!command.enabled()) return;
  event.preventDefault();
  command.run();
}
