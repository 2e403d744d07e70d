/** The way to the conditions. */
import { useApp } from "../../../store/app.ts";
import type { Command } from "../../kit/command.ts";
import { openDialog } from "../../kit/panes.ts";

export const CONDITION_COMMANDS: readonly Command[] = [
  {
    id: "conditions",
    label: "Conditions",
    group: "View",
    shortcuts: ["u"],
    run: () => openDialog("conditions"),
    enabled: () => useApp.getState().design.parts.length > 0,
  },
];
