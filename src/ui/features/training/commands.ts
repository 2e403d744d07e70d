/** The way to practice. */
import type { Command } from "../../kit/command.ts";
import { openDialog } from "../../kit/panes.ts";

export const PRACTICE_COMMANDS: readonly Command[] = [
  {
    id: "practice",
    label: "Practice",
    group: "View",
    shortcuts: ["p"],
    run: () => openDialog("practice"),
    enabled: () => true,
  },
];
