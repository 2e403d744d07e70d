import { type CommandGroup, shortcutWords } from "../../kit/command.ts";
import { COMMANDS } from "../commands.ts";

const GROUPS: readonly CommandGroup[] = ["Edit", "Select", "Connect", "Arrange", "View"];

/** The keys, from the list of commands itself. */
export function ShortcutTable() {
  return (
    <table className="shortcuts">
      <tbody>
        {GROUPS.flatMap((group) =>
          COMMANDS.filter((command) => command.group === group && command.shortcuts.length > 0).map(
            (command) => (
              <tr key={command.id}>
                <th scope="row">{command.label}</th>
                <td>
                  <kbd>{shortcutWords(command)}</kbd>
                </td>
              </tr>
            ),
          ),
        )}
      </tbody>
    </table>
  );
}
