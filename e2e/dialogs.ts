/** How each dialog and each pane is opened by hand; one that is added to the app is missed here by the compiler. */
import { expect, type Page } from "@playwright/test";
import type { ListedDialog } from "../src/ui/kit/dialogs.ts";
import type { SheetPane } from "../src/ui/kit/panes.ts";
import { fromMenu } from "./app.ts";

type Opener = (page: Page) => Promise<void>;

const entry =
  (name: string): Opener =>
  (page) =>
    fromMenu(page, name);

const inHelp =
  (name: string): Opener =>
  async (page) => {
    await page.getByRole("button", { name: "Help" }).click();
    await page.getByRole("dialog").getByRole("button", { name }).click();
  };

/** `restore` asks for a file of its own and is left to the test of that. */
export const DIALOGS: Readonly<Record<Exclude<ListedDialog, "restore">, Opener>> = {
  designs: entry("Designs and examples…"),
  share: async (page) => {
    await page.getByRole("button", { name: "Share", exact: true }).click();
    await expect(page.getByText(/^\d+ characters/).first()).toBeVisible();
  },
  settings: entry("Limits, conditions, derating…"),
  conditions: entry("Conditions…"),
  help: (page) => page.getByRole("button", { name: "Help" }).click(),
  rules: inHelp("Rule book"),
  prices: entry("Prices and times…"),
  variants: entry("Variants…"),
  revisions: entry("Revisions…"),
  compare: entry("Before and after…"),
  balance: entry("Balance outlets…"),
  practice: entry("Practice…"),
  glossary: inHelp("Open the glossary"),
  licences: inHelp("Licences of others"),
};

/** Brings a pane into view at a desk; yields the selector of what holds it. */
export const PANES: Readonly<Record<SheetPane, (page: Page) => Promise<string>>> = {
  tray: async () => "[data-region=tray]",
  verdict: (page) => side(page, "Verdict"),
  part: (page) => side(page, "Part"),
  chain: (page) => side(page, "Chain"),
  cures: (page) => side(page, "Cures"),
  faults: (page) => side(page, "Faults"),
  spectrum: async () => "[data-region=below]",
};

async function side(page: Page, name: string): Promise<string> {
  await page.getByRole("tab", { name: new RegExp(`^${name}`) }).click();
  return "[data-region=side]";
}
