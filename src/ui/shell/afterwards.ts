/**
 * What the first drawing does without: dialogs, practice, and panes that are asked for. One file of the build, which
 * follows by itself a moment later. Reached through `later.ts` only.
 */
import type { ComponentType } from "react";
import { BalanceForm } from "../features/balance/BalanceForm.tsx";
import { CompareForm } from "../features/compare/CompareForm.tsx";
import { ConditionsForm } from "../features/conditions/ConditionsForm.tsx";
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
import { HelpText } from "./help/HelpText.tsx";

export { CuresPane } from "../features/cures/CuresPane.tsx";
export { FaultsPane } from "../features/faults/FaultsPane.tsx";
export { openTraining } from "../features/training/actions.ts";
export { PracticeScreen } from "../features/training/PracticeScreen.tsx";

type Body = ComponentType<{ readonly onDone: () => void }>;

/** What stands in each dialog. */
export const DIALOG_BODIES: Readonly<Record<ListedDialog, Body>> = {
  designs: DesignList,
  restore: RestoreForm,
  share: ShareForm,
  settings: SettingsForm,
  prices: PriceForm,
  variants: VariantList,
  revisions: RevisionList,
  compare: CompareForm,
  balance: BalanceForm,
  conditions: ConditionsForm,
  practice: PracticeList,
  help: HelpText,
  rules: RuleBook,
  glossary: GlossaryList,
  licences: LicenceList,
};
