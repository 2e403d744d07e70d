import { BalanceForm } from "../features/balance/BalanceForm.tsx";
import { CompareForm } from "../features/compare/CompareForm.tsx";
import { DesignList } from "../features/documents/DesignList.tsx";
import { RestoreForm } from "../features/documents/RestoreForm.tsx";
import { ShareForm } from "../features/documents/ShareForm.tsx";
import { LicenceList } from "../features/licences/LicenceList.tsx";
import { PriceForm } from "../features/prices/PriceForm.tsx";
import { RevisionList } from "../features/revisions/RevisionList.tsx";
import { RuleBook } from "../features/rulebook/RuleBook.tsx";
import { SettingsForm } from "../features/settings/SettingsForm.tsx";
import { PracticeList } from "../features/training/PracticeList.tsx";
import { VariantList } from "../features/variants/VariantList.tsx";
import { openDialog, usePanes } from "../kit/panes.ts";
import { Sheet } from "../kit/Sheet.tsx";
import { HelpText } from "./menus/HelpText.tsx";

const close = () => openDialog(null);

/** The dialogs that menus and notices open. */
export function Dialogs() {
  const dialog = usePanes((s) => s.dialog);
  return (
    <>
      <Sheet title="Designs" open={dialog === "designs"} onClose={close}>
        <DesignList onDone={close} />
      </Sheet>
      <Sheet title="Restore from a download" open={dialog === "restore"} onClose={close}>
        <RestoreForm />
      </Sheet>
      <Sheet title="Share this design" open={dialog === "share"} onClose={close}>
        <ShareForm />
      </Sheet>
      <Sheet isWide title="Limits and derating" open={dialog === "settings"} onClose={close}>
        <SettingsForm />
      </Sheet>
      <Sheet title="Prices and times" open={dialog === "prices"} onClose={close}>
        <PriceForm />
      </Sheet>
      <Sheet title="Variants" open={dialog === "variants"} onClose={close}>
        <VariantList />
      </Sheet>
      <Sheet title="Revisions" open={dialog === "revisions"} onClose={close}>
        <RevisionList />
      </Sheet>
      <Sheet isWide title="Before and after" open={dialog === "compare"} onClose={close}>
        <CompareForm />
      </Sheet>
      <Sheet isWide title="Level all outlets" open={dialog === "balance"} onClose={close}>
        <BalanceForm onDone={close} />
      </Sheet>
      <Sheet isWide title="Practice" open={dialog === "practice"} onClose={close}>
        <PracticeList onDone={close} />
      </Sheet>
      <Sheet title="Help" open={dialog === "help"} onClose={close}>
        <HelpText />
      </Sheet>
      <Sheet isWide title="Rule book" open={dialog === "rules"} onClose={close}>
        <RuleBook />
      </Sheet>
      <Sheet title="Licences of others" open={dialog === "licences"} onClose={close}>
        <LicenceList />
      </Sheet>
    </>
  );
}
