import { CircleHelp, Ellipsis, FolderOpen, Redo2, Share2 } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { redoStep } from "../../../store/steps.ts";
import { openDialog } from "../../kit/panes.ts";
import { MenuEntry } from "./MenuEntry.tsx";
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
          <MenuEntry icon={Redo2} name="Redo" command="redo" disabled={!canRedo} onPress={redoStep} />
          <MenuEntry icon={FolderOpen} name="Designs and examples…" onPress={() => openDialog("designs")} />
          <MenuEntry icon={Share2} name="Share…" onPress={() => openDialog("share")} />
          <MenuEntry icon={CircleHelp} name="Help" onPress={() => openDialog("help")} />
          <DropdownMenu.Separator className="menu-line" />
          <DropdownMenu.Label className="menu-heading">Theme</DropdownMenu.Label>
          <ThemeChoices />
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}
