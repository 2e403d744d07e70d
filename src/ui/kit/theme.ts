/** Light, dark, or as the system has it; remembered on this device where that is allowed. */
import { create } from "zustand";
import { useMedia } from "./useMedia.ts";

export type ThemeChoice = "system" | "light" | "dark";

const KEY = "downlead.theme";

function remembered(): ThemeChoice {
  try {
    const value = localStorage.getItem(KEY);
    return value === "light" || value === "dark" ? value : "system";
  } catch {
    // A browser that denies storage still gets a theme, it just isn't remembered.
    return "system";
  }
}

export const useThemeChoice = create<{ readonly choice: ThemeChoice }>(() => ({ choice: remembered() }));

export function setTheme(choice: ThemeChoice): void {
  useThemeChoice.setState({ choice });
  applyTheme();
  try {
    localStorage.setItem(KEY, choice);
  } catch {
    // As above: not remembered.
  }
}

/** Takes over at once what another window of this browser chooses. */
export function followTheme(): void {
  window.addEventListener("storage", ({ key }) => {
    if (key !== KEY && key !== null) return;
    useThemeChoice.setState({ choice: remembered() });
    applyTheme();
  });
}

/** Puts the choice onto the root element, where theme.css reads it. */
export function applyTheme(): void {
  const { choice } = useThemeChoice.getState();
  // The frame of the window takes the colour whose condition holds.
  for (const colour of document.querySelectorAll<HTMLMetaElement>("meta[name=theme-color]")) {
    const { scheme } = colour.dataset;
    if (choice === "system") colour.media = `(prefers-color-scheme: ${scheme})`;
    else colour.media = choice === scheme ? "all" : "not all";
  }
  if (choice === "system") delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = choice;
}

/** The theme that is on the screen now. */
export function useTheme(): "light" | "dark" {
  const choice = useThemeChoice((s) => s.choice);
  const systemIsDark = useMedia("(prefers-color-scheme: dark)");
  if (choice === "system") return systemIsDark ? "dark" : "light";
  return choice;
}
