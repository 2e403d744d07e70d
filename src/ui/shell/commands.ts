/**
 * Everything that can be done without pointing: keys, buttons, menus and the help read this one list, to which the
 * canvas and each feature add their own.
 */
import { CANVAS_COMMANDS } from "../canvas/commands.ts";
import { CONDITION_COMMANDS } from "../features/conditions/commands.ts";
import { CURE_COMMANDS } from "../features/cures/commands.ts";
import { FAULT_COMMANDS } from "../features/faults/commands.ts";
import { GLOSSARY_COMMANDS } from "../features/glossary/commands.ts";
import { REVISION_COMMANDS } from "../features/revisions/commands.ts";
import { RULE_COMMANDS } from "../features/rulebook/commands.ts";
import { PRACTICE_COMMANDS } from "../features/training/commands.ts";
import { WALK_COMMANDS } from "../features/walk/commands.ts";
import { type Command, runIfEnabled } from "../kit/command.ts";
import { SHELL_COMMANDS } from "./shellCommands.ts";

export const COMMANDS: readonly Command[] = [
  ...CANVAS_COMMANDS,
  ...CURE_COMMANDS,
  ...CONDITION_COMMANDS,
  ...FAULT_COMMANDS,
  ...PRACTICE_COMMANDS,
  ...REVISION_COMMANDS,
  ...WALK_COMMANDS,
  ...RULE_COMMANDS,
  ...GLOSSARY_COMMANDS,
  ...SHELL_COMMANDS,
];

export function commandOf(id: string): Command | undefined {
  return COMMANDS.find((c) => c.id === id);
}

/** Runs a command by its id, if it makes sense now. */
export function runCommand(id: string): void {
  runIfEnabled(commandOf(id));
}
