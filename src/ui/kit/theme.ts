/** Light, dark, or as the system has it; remembered on this device where that is allowed. */
import { create } from "zustand";
import { type PersistStorage, persist } from "zustand/middleware";
import { useMedia } from "./useMedia.ts";
import { keptTexts } from "./viewStorage.ts";

export type ThemeChoice = "system" | "light" | "dark";

const KEY = "downlead.theme";

type Chosen = { readonly choice: ThemeChoice };

/** Kept as a bare word, as it always was; anything else means the system's. */
const storage: PersistStorage<Chosen> = {
  getItem: (key) => {
    const value = keptTexts.getItem(key);
    return { state: { choice: value === "light" || value === "dark" ? value : "system" } };
  },
  setItem: (key, { state }) => keptTexts.setItem(key, state.choice),
  removeItem: (key) => keptTexts.removeItem(key),
};

export const useThemeChoice = create<Chosen>()(
  persist((): Chosen => ({ choice: "system" }), { name: KEY, storage }),
);

export function setTheme(choice: ThemeChoice): void {
  useThemeChoice.setState({ choice });
  applyTheme();
}

/** Takes over at once what another window of this browser chooses. */
export function followTheme(): void {
  window.addEventListener("storage", ({ key }) => {
    if (key !== KEY && key !== null) return;
    void useThemeChoice.persist.rehydrate();
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
