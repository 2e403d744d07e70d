/** The way to the revisions. */
import type { Command } from "../../kit/command.ts";
import { openDialog } from "../../kit/panes.ts";

export const REVISION_COMMANDS: readonly Command[] = [
  {
    id: "revisions",
    label: "Revisions",
    group: "View",
    shortcuts: ["v"],
    run: () => openDialog("revisions"),
    enabled: () => true,
  },
];
