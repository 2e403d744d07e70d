import { type CommandGroup, shortcutWords } from "../../kit/command.ts";
import { Table } from "../../kit/Table.tsx";
import { COMMANDS } from "../commands.ts";

const GROUPS: readonly CommandGroup[] = ["Edit", "Select", "Connect", "Arrange", "View"];

/** The keys, from the list of commands itself. */
export function ShortcutTable() {
  return (
    <Table
      label="Commands and their keys"
      fits
      groups={GROUPS.map((group) => ({
        key: group,
        head: group,
        rows: COMMANDS.filter((command) => command.group === group && command.shortcuts.length > 0),
      }))}
      keyOf={({ id }) => id}
      columns={[
        { head: "Command", cell: ({ label }) => label },
        { head: "Keys", cell: (command) => <kbd>{shortcutWords(command)}</kbd> },
      ]}
    />
  );
}
