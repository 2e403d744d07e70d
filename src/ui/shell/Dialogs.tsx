import type { ComponentType } from "react";
import { BalanceForm } from "../features/balance/BalanceForm.tsx";
import { CompareForm } from "../features/compare/CompareForm.tsx";
import { DesignList } from "../features/documents/DesignList.tsx";
import { RestoreForm } from "../features/documents/RestoreForm.tsx";
import { ShareForm } from "../features/documents/ShareForm.tsx";
import { GlossaryList } from "../features/glossary/GlossaryList.tsx";
import { LicenceList } from "../features/licences/LicenceList.tsx";
import { PriceForm } from "../features/prices/PriceForm.tsx";
import { RevisionList } from "../features/revisions/RevisionList.tsx";
import { RuleBook } from "../features/rulebook/RuleBook.tsx";
import { SettingsForm } from "../features/settings/SettingsForm.tsx";
import { PracticeList } from "../features/training/PracticeList.tsx";
import { VariantList } from "../features/variants/VariantList.tsx";
import type { ListedDialog } from "../kit/dialogs.ts";
import { openDialog, usePanes } from "../kit/panes.ts";
import { Sheet } from "../kit/Sheet.tsx";
import { HelpText } from "./help/HelpText.tsx";

type Listed = {
  readonly title: string;
  /** For tables. */
  readonly isWide?: boolean;
  readonly component: ComponentType<{ readonly onDone: () => void }>;
};

/** Every dialog that menus, commands and notices open. */
const DIALOGS: Readonly<Record<ListedDialog, Listed>> = {
  designs: { title: "Designs", component: DesignList },
  restore: { title: "Restore from a download", component: RestoreForm },
  share: { title: "Share this design", component: ShareForm },
  settings: { title: "Limits and derating", isWide: true, component: SettingsForm },
  prices: { title: "Prices and times", component: PriceForm },
  variants: { title: "Variants", component: VariantList },
  revisions: { title: "Revisions", component: RevisionList },
  compare: { title: "Before and after", isWide: true, component: CompareForm },
  balance: { title: "Balance outlets", isWide: true, component: BalanceForm },
  practice: { title: "Practice", isWide: true, component: PracticeList },
  help: { title: "Help", component: HelpText },
  rules: { title: "Rule book", isWide: true, component: RuleBook },
  glossary: { title: "Glossary", component: GlossaryList },
  licences: { title: "Licences of others", component: LicenceList },
};

const close = () => openDialog(null);

/** The dialog that is open. All stand ready, closed, so that each closes in its own way before the next opens. */
export function Dialogs() {
  const open = usePanes((s) => s.dialog);
  return Object.entries(DIALOGS).map(([id, { title, isWide, component: Body }]) => (
    <Sheet key={id} title={title} open={open === id} onClose={close} isWide={isWide ?? false}>
      <Body onDone={close} />
    </Sheet>
  ));
}
