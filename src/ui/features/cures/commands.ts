/** What the keys and menus ask of the search for cures. */
import { useApp } from "../../../store/app.ts";
import { findCures } from "../../kit/asked/findCures.ts";
import type { Command } from "../../kit/command.ts";

export const CURE_COMMANDS: readonly Command[] = [
  {
    id: "cures",
    label: "Find cures",
    group: "View",
    shortcuts: ["c"],
    run: () => void findCures(),
    enabled: () => useApp.getState().design.parts.length > 0,
  },
];
