import {
  Coins,
  CopyPlus,
  Download,
  Equal,
  FilePlus2,
  FileUp,
  FolderDown,
  FolderInput,
  FolderOpen,
  GitCompareArrows,
  GraduationCap,
  History,
  Layers,
  Menu,
  Printer,
  Ruler,
  Search,
  Unplug,
} from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { useApp } from "../../../store/app.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { chooseFile, downloadDesign, openEmpty } from "../../features/documents/actions.ts";
import { chooseDownload, downloadEverything } from "../../features/documents/downloadEverything.ts";
import { openComparison } from "../../kit/asked/compared.ts";
import { findCures } from "../../kit/asked/findCures.ts";
import { findFault } from "../../kit/asked/whatFails.ts";
import type { IconType } from "../../kit/IconButton.tsx";
import { openDialog } from "../../kit/panes.ts";

/** Everything that concerns the design as a whole. */
export function DesignMenu() {
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>
        <button type="button" className="button icon bare" aria-label="Design menu" title="Design menu">
          <Menu size={18} aria-hidden />
        </button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="menu" align="start" sideOffset={4} collisionPadding={8}>
          <Item icon={FilePlus2} name="New design" onPress={() => void openEmpty()} />
          <Item icon={FolderOpen} name="Designs and examples…" onPress={() => openDialog("designs")} />
          <Item icon={CopyPlus} name="Save a copy and work on it" onPress={() => void copyDesign()} />
          <DropdownMenu.Separator className="menu-line" />
          <Item icon={FileUp} name="Open a file…" onPress={() => void chooseFile()} />
          <Item icon={Download} name="Download as a file" onPress={() => downloadDesign()} />
          <Item icon={FolderDown} name="Download everything" onPress={() => void downloadEverything()} />
          <Item icon={FolderInput} name="Restore from a download…" onPress={() => void chooseDownload()} />
          <DropdownMenu.Separator className="menu-line" />
          <Item icon={Layers} name="Variants…" onPress={() => openDialog("variants")} />
          <Item icon={History} name="Revisions…" onPress={() => openDialog("revisions")} />
          <Item icon={GitCompareArrows} name="Before and after…" onPress={openComparison} />
          <Item icon={Search} name="Find cures" onPress={() => void findCures()} />
          <Item icon={Equal} name="Balance outlets…" onPress={() => openDialog("balance")} />
          <Item icon={Unplug} name="Find the fault…" onPress={findFault} />
          <Item icon={GraduationCap} name="Practice…" onPress={() => openDialog("practice")} />
          <DropdownMenu.Separator className="menu-line" />
          <Item icon={Ruler} name="Limits and derating…" onPress={() => openDialog("settings")} />
          <Item icon={Coins} name="Prices and times…" onPress={() => openDialog("prices")} />
          <Item icon={Printer} name="Print…" onPress={() => window.print()} />
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

function Item({
  icon: Icon,
  name,
  onPress,
}: {
  readonly icon: IconType;
  readonly name: string;
  readonly onPress: () => void;
}) {
  return (
    <DropdownMenu.Item className="menu-item" onSelect={onPress}>
      <Icon size={16} aria-hidden /> {name}
    </DropdownMenu.Item>
  );
}

/** The present state as a new document; the one before stays as it is. */
async function copyDesign(): Promise<void> {
  const { design, openDesign, notify } = useApp.getState();
  const copy = { ...design, title: `${design.title.slice(0, 190)} (copy)` };
  await useDocuments.getState().create(copy);
  openDesign(copy);
  void useDocuments.getState().cameUp(useDocuments.getState().current);
  notify(`Now working on “${copy.title}”.`);
}
