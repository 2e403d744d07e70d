/** The way to the rule book. */
import { openRuleBook } from "../../kit/asked/book.ts";
import type { Command } from "../../kit/command.ts";

export const RULE_COMMANDS: readonly Command[] = [
  {
    id: "rules",
    label: "Rule book",
    group: "View",
    shortcuts: ["r"],
    run: () => openRuleBook(),
    enabled: () => true,
  },
];
