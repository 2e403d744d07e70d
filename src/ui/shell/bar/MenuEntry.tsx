import { DropdownMenu } from "radix-ui";
import { spokenKeys } from "../../kit/command.ts";
import type { IconType } from "../../kit/IconButton.tsx";
import { Keys } from "../../kit/Keys.tsx";
import { commandOf } from "../commands.ts";

/** An entry of a menu of the bar, with the keys of the command that does the same. */
export function MenuEntry(props: {
  readonly icon: IconType;
  readonly name: string;
  readonly onPress: () => void;
  readonly command?: string;
  readonly disabled?: boolean;
}) {
  const Icon = props.icon;
  const command = props.command === undefined ? undefined : commandOf(props.command);
  return (
    <DropdownMenu.Item
      className="menu-item"
      disabled={props.disabled ?? false}
      aria-keyshortcuts={spokenKeys(command)}
      onSelect={props.onPress}
    >
      <Icon size={16} aria-hidden /> {props.name}
      <Keys command={command} />
    </DropdownMenu.Item>
  );
}
