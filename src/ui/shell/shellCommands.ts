/** Moving about the page itself. */
import type { Command } from "../kit/command.ts";
import { focusNextRegion } from "./regions.ts";

export const SHELL_COMMANDS: readonly Command[] = [
  {
    id: "next-region",
    label: "Next region",
    group: "View",
    shortcuts: ["F6"],
    isAnywhere: true,
    run: () => focusNextRegion(1),
    enabled: () => true,
  },
  {
    id: "former-region",
    label: "Previous region",
    group: "View",
    shortcuts: ["Shift+F6"],
    isAnywhere: true,
    run: () => focusNextRegion(-1),
    enabled: () => true,
  },
];
