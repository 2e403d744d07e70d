/** Earlier states of a design: kept under a name, looked at, compared, gone back to. */
import type { Locator, Page } from "@playwright/test";
import { card, fromMenu, messages, open, ownDesign, titleOf, waitUntilSaved } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

async function revisions(page: Page): Promise<Locator> {
  await fromMenu(page, "Revisions…");
  return page.getByRole("dialog", { name: "Revisions" });
}

async function keep(page: Page, name: string): Promise<Locator> {
  const dialog = await revisions(page);
  await dialog.getByRole("textbox", { name: "Keep this state as" }).fill(name);
  await page.keyboard.press("Enter");
  await expect(dialog.getByText(`Kept as “${name}”.`)).toBeVisible();
  return dialog;
}

async function remove(page: Page, label: string): Promise<void> {
  await card(page, label).click();
  await page.keyboard.press("Delete");
  await expect(card(page, label)).toHaveCount(0);
}

test("a state is kept under a name, compared with now, looked at, restored, and that undone", async ({
  page,
}) => {
  await ownDesign(page, "House");
  await keep(page, "With UHF");
  await page.keyboard.press("Escape");
  await remove(page, "UHF aerial");
  await waitUntilSaved(page);

  await (await revisions(page)).getByRole("button", { name: "Compare with now" }).click();
  const comparison = page.getByRole("dialog", { name: "Before and after" });
  await expect(comparison.getByRole("combobox").first()).toContainText("With UHF (");
  await expect(comparison.getByRole("listitem").filter({ hasText: "UHF aerial" }).first()).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("button", { name: "Design menu" })).toBeFocused();

  await (await revisions(page)).getByRole("button", { name: "Look at it" }).click();
  const preview = page.getByRole("region", { name: "Preview" });
  await expect(preview).toContainText("With UHF (");
  await expect(card(page, "UHF aerial")).toBeVisible();
  await expect(preview).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(card(page, "UHF aerial")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Design menu" })).toBeFocused();

  await (await revisions(page)).getByRole("button", { name: "Restore" }).click();
  await expect(card(page, "UHF aerial")).toBeVisible();
  await expect(messages(page)).toContainText("Restored: With UHF (");
  await waitUntilSaved(page);
  await messages(page).getByRole("button", { name: "Undo" }).click();
  await expect(card(page, "UHF aerial")).toHaveCount(0);
  await waitUntilSaved(page);
});

test("applying what is looked at restores it, and keeps what was there before", async ({ page }) => {
  await ownDesign(page, "House");
  await keep(page, "With UHF");
  await page.keyboard.press("Escape");
  await remove(page, "UHF aerial");
  await waitUntilSaved(page);
  await (await revisions(page)).getByRole("button", { name: "Look at it" }).click();
  await page.getByRole("region", { name: "Preview" }).getByRole("button", { name: "Apply" }).click();
  await expect(messages(page)).toContainText("Restored: With UHF (");
  await expect(card(page, "UHF aerial")).toBeVisible();
  await expect(page.getByRole("region", { name: "Preview" })).toHaveCount(0);
  await waitUntilSaved(page);

  const dialog = await revisions(page);
  await expect(dialog.getByRole("heading", { level: 4 })).toHaveCount(2);
  // The latest is folded out.
  await expect(dialog.getByRole("button", { name: /^Kept by itself/ })).toHaveAttribute(
    "aria-expanded",
    "true",
  );
  await dialog.getByRole("button", { name: "Restore" }).click();
  await expect(card(page, "UHF aerial")).toHaveCount(0);
});

test("revisions survive a reload, are renamed and deleted, and deleting is undone", async ({ page }) => {
  await ownDesign(page, "House");
  await keep(page, "Offer");
  await page.reload();
  await expect(titleOf(page)).toHaveValue("House");
  const dialog = await revisions(page);
  await expect(dialog.getByRole("heading", { name: "Today" })).toBeVisible();
  await expect(dialog.getByRole("button", { name: /^Offer/ })).toBeVisible();

  await dialog.getByRole("button", { name: "Rename “Offer”" }).click();
  await dialog.getByRole("textbox", { name: "New name of “Offer”" }).fill("Offer of May");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("button", { name: /^Offer of May/ })).toBeFocused();

  // Giving up the renaming leaves name and dialog as they are.
  await dialog.getByRole("button", { name: "Rename “Offer of May”" }).click();
  await dialog.getByRole("textbox", { name: "New name of “Offer of May”" }).fill("Other");
  await page.keyboard.press("Escape");
  await expect(dialog.getByRole("button", { name: /^Offer of May/ })).toBeFocused();

  await dialog.getByRole("button", { name: "Delete “Offer of May”" }).click();
  await expect(dialog.getByText("None yet.")).toBeVisible();
  await dialog.getByRole("button", { name: "Undo" }).click();
  await expect(dialog.getByRole("button", { name: /^Offer of May/ })).toBeVisible();
});

test("the keys suffice: opened by V, walked by arrows, folded out by Enter, and back where it came from", async ({
  page,
}) => {
  await ownDesign(page, "House");
  const from = card(page, "UHF aerial");
  await from.focus();
  await page.keyboard.press("v");
  const dialog = page.getByRole("dialog", { name: "Revisions" });
  await expect(dialog).toBeFocused();
  await dialog.getByRole("textbox").focus();
  for (const name of ["First", "Second"]) {
    await page.keyboard.type(name);
    await page.keyboard.press("Enter");
    await expect(dialog.getByText(`Kept as “${name}”.`)).toBeVisible();
  }
  const [first, second] = ["First", "Second"].map((name) =>
    dialog.getByRole("button", { name: new RegExp(`^${name}`) }),
  );
  if (!first || !second) throw new Error("both were kept");
  await expect(second).toHaveAttribute("aria-expanded", "true");
  await second.focus();
  await page.keyboard.press("ArrowDown");
  await expect(first).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(first).toHaveAttribute("aria-expanded", "true");
  await page.keyboard.press("Tab");
  await expect(dialog.getByRole("button", { name: "Look at it" })).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await expect(from).toBeFocused();
});

test("a design that is not an own one, and a storage that refuses, are said in words", async ({ page }) => {
  await open(page, "/?example=house-universal");
  const dialog = await revisions(page);
  await expect(dialog.getByText(/^This design is not yet one of your own/)).toBeVisible();
  await expect(dialog.getByRole("textbox")).toHaveCount(0);
  await page.keyboard.press("Escape");

  await remove(page, "UHF aerial");
  await waitUntilSaved(page);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await (await revisions(page)).getByRole("textbox").fill("No room");
  await page.keyboard.press("Enter");
  await expect(
    dialog.getByText(/Until that is repaired, no revision can be kept or restored\./),
  ).toBeVisible();
});

test("what browsers keep is said in the list of designs and in the help", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "Designs and examples…");
  await expect(
    page.getByRole("dialog", { name: "Designs" }).getByText(/nearly full|until you delete them/),
  ).toBeVisible();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Help" }).click();
  await expect(page.getByRole("heading", { name: "Where your work is kept" })).toBeVisible();
});

test("the dialog has no barriers, empty and filled", async ({ page }) => {
  await ownDesign(page, "House");
  await revisions(page);
  await expectNoBarriers(page, "no revisions yet", "[role=dialog]");
  await page.keyboard.press("Escape");
  const dialog = await keep(page, "Offer");
  await expect(dialog.getByRole("button", { name: "Restore" })).toBeVisible();
  await expectNoBarriers(page, "revisions", "[role=dialog]");
  await dialog.getByRole("button", { name: "Delete “Offer”" }).click();
  await expect(dialog.getByRole("button", { name: "Undo" })).toBeFocused();
  await expectNoBarriers(page, "a revision deleted", "[role=dialog]");
});

test.describe("on a telephone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("all fits, and every button is large enough for a finger", async ({ page }) => {
    await ownDesign(page, "House");
    const dialog = await keep(page, "The state before the amplifier was moved to the attic");
    await expect(dialog.getByRole("button", { name: "Restore" })).toBeVisible();
    const { clientWidth, scrollWidth } = await dialog.evaluate((one) => {
      const body = one.querySelector(".dialog-body") ?? one;
      return { clientWidth: body.clientWidth, scrollWidth: body.scrollWidth };
    });
    expect(scrollWidth).toBeLessThanOrEqual(clientWidth);
    const tooSmall = await dialog.locator("button:visible, input:visible").evaluateAll((all) =>
      all
        .map((one) => {
          const { width, height } = one.getBoundingClientRect();
          return { name: one.getAttribute("aria-label") ?? one.textContent, width, height };
        })
        // WCAG 2.5.5: 44 px; half a pixel for rounding.
        .filter(({ width, height }) => width < 43.5 || height < 43.5),
    );
    expect(tooSmall).toEqual([]);
  });
});
