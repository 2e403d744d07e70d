import { CircleHelp, Ellipsis, FolderOpen, Redo2, Share2 } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { redoStep } from "../../../store/steps.ts";
import type { IconType } from "../../kit/IconButton.tsx";
import { openDialog } from "../../kit/panes.ts";
import { ThemeChoices } from "./ThemeMenu.tsx";

/** What a narrow bar cannot hold. */
export function MoreMenu({ canRedo }: { readonly canRedo: boolean }) {
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>
        <button type="button" className="button icon bare" aria-label="More" title="More">
          <Ellipsis size={18} aria-hidden />
        </button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="menu" align="end" sideOffset={4} collisionPadding={8}>
          <Item icon={Redo2} name="Redo" disabled={!canRedo} onPress={redoStep} />
          <Item icon={FolderOpen} name="Designs and examples…" onPress={() => openDialog("designs")} />
          <Item icon={Share2} name="Share…" onPress={() => openDialog("share")} />
          <Item icon={CircleHelp} name="Help" onPress={() => openDialog("help")} />
          <DropdownMenu.Separator className="menu-line" />
          <DropdownMenu.Label className="menu-heading">Theme</DropdownMenu.Label>
          <ThemeChoices />
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

function Item(props: {
  readonly icon: IconType;
  readonly name: string;
  readonly onPress: () => void;
  readonly disabled?: boolean;
}) {
  const Icon = props.icon;
  return (
    <DropdownMenu.Item className="menu-item" disabled={props.disabled ?? false} onSelect={props.onPress}>
      <Icon size={16} aria-hidden /> {props.name}
    </DropdownMenu.Item>
  );
}
