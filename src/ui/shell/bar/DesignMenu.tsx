import {
  CloudRain,
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
import { openDialog } from "../../kit/panes.ts";
import { MenuEntry } from "./MenuEntry.tsx";

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
          <MenuEntry icon={FilePlus2} name="New design" onPress={() => void openEmpty()} />
          <MenuEntry icon={FolderOpen} name="Designs and examples…" onPress={() => openDialog("designs")} />
          <MenuEntry icon={CopyPlus} name="Save a copy and work on it" onPress={() => void copyDesign()} />
          <DropdownMenu.Separator className="menu-line" />
          <MenuEntry icon={FileUp} name="Open a file…" onPress={() => void chooseFile()} />
          <MenuEntry icon={Download} name="Download as a file" onPress={() => downloadDesign()} />
          <MenuEntry icon={FolderDown} name="Download everything" onPress={() => void downloadEverything()} />
          <MenuEntry
            icon={FolderInput}
            name="Restore from a download…"
            onPress={() => void chooseDownload()}
          />
          <DropdownMenu.Separator className="menu-line" />
          <MenuEntry icon={Layers} name="Variants…" onPress={() => openDialog("variants")} />
          <MenuEntry
            icon={History}
            name="Revisions…"
            command="revisions"
            onPress={() => openDialog("revisions")}
          />
          <MenuEntry icon={GitCompareArrows} name="Before and after…" onPress={openComparison} />
          <MenuEntry icon={Search} name="Find cures" command="cures" onPress={() => void findCures()} />
          <MenuEntry icon={Equal} name="Balance outlets…" onPress={() => openDialog("balance")} />
          <MenuEntry
            icon={CloudRain}
            name="Conditions…"
            command="conditions"
            onPress={() => openDialog("conditions")}
          />
          <MenuEntry icon={Unplug} name="Find the fault…" command="find-fault" onPress={findFault} />
          <MenuEntry
            icon={GraduationCap}
            name="Practice…"
            command="practice"
            onPress={() => openDialog("practice")}
          />
          <DropdownMenu.Separator className="menu-line" />
          <MenuEntry
            icon={Ruler}
            name="Limits, conditions, derating…"
            onPress={() => openDialog("settings")}
          />
          <MenuEntry icon={Coins} name="Prices and times…" onPress={() => openDialog("prices")} />
          <MenuEntry icon={Printer} name="Print…" onPress={() => window.print()} />
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
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
