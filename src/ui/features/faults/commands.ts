/** What the keys and menus ask of the search for faults. */
import { useApp } from "../../../store/app.ts";
import { findFault } from "../../kit/asked/whatFails.ts";
import type { Command } from "../../kit/command.ts";

export const FAULT_COMMANDS: readonly Command[] = [
  {
    id: "find-fault",
    label: "Find the fault",
    group: "View",
    shortcuts: ["x"],
    run: findFault,
    enabled: () => useApp.getState().design.parts.length > 0,
  },
];
