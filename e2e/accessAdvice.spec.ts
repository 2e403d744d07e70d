/** For everyone: the panes that explain, advise and train, in both themes. */
import { expect } from "@playwright/test";
import { card, findings, fromMenu, open, test } from "./app.ts";
import { expectNoBarriersInBothThemes } from "./barriers.ts";

test("explanations, walks and cures have no barriers", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  await findings(page)
    .getByRole("button", { name: /^Why\?/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { name: "For the customer" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "explanation");

  await page.getByRole("button", { name: "Services of TV living room" }).click();
  await page.getByRole("button", { name: "Walk the signal" }).first().click();
  await expect(page.getByText(/^Step \d+ of /)).toBeVisible();
  await expectNoBarriersInBothThemes(page, "walk of a signal");
  await page.keyboard.press("Escape");

  await page.getByRole("button", { name: "Find cures", exact: true }).click();
  await expect(page.getByText(/^\d+ changes? tried, [1-9]\d* proved$/)).toBeVisible({ timeout: 40_000 });
  await expectNoBarriersInBothThemes(page, "cures");
  await page
    .getByRole("button", { name: /^Preview: / })
    .first()
    .click();
  await expect(page.getByRole("region", { name: "Preview" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "preview");
});

test("supply, levels, faults and swaps have no barriers", async ({ page }) => {
  await open(page, "/?example=long-steel-drop");
  await page.getByRole("button", { name: "Services of Receiver" }).click();
  await page.getByRole("button", { name: "Walk the supply" }).first().click();
  await expect(page.getByRole("region", { name: "Commands" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "walk of a supply");
  await page.keyboard.press("Escape");
  await page
    .getByRole("button", { name: /evel of Satellite: .*, how it came about$/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { name: "How this level came about" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "origin of a level");
  await page.keyboard.press("Escape");

  await card(page, "Converter").click();
  await page.getByRole("button", { name: "What breaks if I swap this converter?" }).click();
  await page.getByRole("combobox", { name: /^What breaks/ }).fill("wideband lnb");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("region", { name: /^What breaks: / })).toContainText("loses something");
  await expectNoBarriersInBothThemes(page, "swap");
  await page.getByRole("button", { name: "What if this one fails?" }).click();
  await page.getByRole("tabpanel").getByRole("listitem").getByRole("button").first().click();
  await expect(page.getByRole("region", { name: "Preview" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "what if it fails");
  await page.keyboard.press("Escape");
  await fromMenu(page, "Find the fault…");
  await expect(page.getByText("Mark at least one service that fails.")).toBeVisible();
  await expectNoBarriersInBothThemes(page, "find the fault");
});

test("dialogs of plans, limits and rules, and a practice case, have no barriers", async ({ page }) => {
  await open(page, "/?example=house-universal");
  for (const entry of [
    "Variants…",
    "Level all outlets…",
    "Limits and derating…",
    "Prices and times…",
    "Practice…",
  ]) {
    await fromMenu(page, entry);
    await expect(page.getByRole("dialog", { name: entry.replace("…", "") })).toBeVisible();
    await expectNoBarriersInBothThemes(page, entry);
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog")).toHaveCount(0);
  }
  await page.goto("/?rules=band-cut");
  await expect(page.getByRole("article", { name: "Part of a band is cut off" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "rule book");
  await page.goto("/#t1.lounge-dark");
  await page.reload();
  await expect(page.getByRole("heading", { level: 1, name: "No picture in the lounge" })).toBeVisible();
  await expectNoBarriersInBothThemes(page, "practice case");
});
