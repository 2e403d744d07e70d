/** Binds the shortcuts of the command list. */
import { useEffect } from "react";
import { tinykeys } from "tinykeys";
import type { Command } from "../kit/command.ts";
import { isElsewhere } from "../kit/isElsewhere.ts";
import { COMMANDS } from "./commands.ts";

/** @param commands a constant: the keys are bound once */
export function useCommandKeys(commands: readonly Command[] = COMMANDS): void {
  useEffect(() => {
    const early: Bindings = {};
    const late: Bindings = {};
    for (const command of commands) {
      for (const shortcut of command.shortcuts) {
        const bindings = comesFirst(shortcut) ? early : late;
        bindings[shortcut] = (event) => press(command, shortcut, event);
      }
    }
    const stops = [tinykeys(window, early, { capture: true }), tinykeys(window, late)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [commands]);
}

function press(command: Command, shortcut: string, event: KeyboardEvent): void {
  const target = event.target instanceof Element ? event.target : null;
  if (event.defaultPrevented) return;
  if (command.isAnywhere ? target?.closest("[role=dialog], [role=menu]") : isElsewhere(target)) return;
  const isPlain = !shortcut.includes("$mod") && !command.isAnywhere;
  if (isPlain && !takesPlainKeys(target, shortcut)) return;
  // A selected card that has the focus moves itself by the arrow keys already.
  if (shortcut.includes("Arrow") && !comesFirst(shortcut) && target?.closest(".react-flow__node")) return;
  // Text that is marked on the page is what a copy means.
  if (command.id === "copy" && String(window.getSelection() ?? "") !== "") return;
  if (command.isNative || !command.enabled()) return;
  event.preventDefault();
  if (comesFirst(shortcut)) event.stopPropagation();
  command.run();
}

type Bindings = Record<string, (event: KeyboardEvent) => void>;

/** With Alt, the arrow keys go along the wires: before the canvas library hears them and moves the card. */
function comesFirst(shortcut: string): boolean {
  return shortcut.startsWith("Alt+");
}

/**
 * Keys without a modifier are the canvas’s own, and those of panes that choose parts on it; there the arrow keys scroll.
 * The bare page takes none: what a dialog has just given up must not delete anything.
 */
function takesPlainKeys(target: Element | null, shortcut: string): boolean {
  if (!target || target === document.body) return false;
  if (target.closest(".canvas, [data-region=drawing]")) return true;
  if (shortcut.includes("Arrow")) return false;
  const pane = target.closest("[role=tabpanel], [data-region=sheet]") ?? target;
  return pane.closest(CHOOSING) !== null || pane.querySelector(CHOOSING) !== null;
}

const CHOOSING = "[data-chooses-parts]";
