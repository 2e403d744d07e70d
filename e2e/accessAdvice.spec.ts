/** For everyone: the panes that explain, advise and train, in both themes. */
import { card, findings, fromMenu, open } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

test("explanations, walks and cures have no barriers", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  await findings(page)
    .getByRole("button", { name: /^Why\?/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { name: "For the customer" })).toBeVisible();
  await expectNoBarriers(page, "explanation", "[data-region=side]");

  await page.getByRole("button", { name: "Services of TV living room" }).click();
  await page.getByRole("button", { name: "Walk the signal" }).first().click();
  await expect(page.getByText(/^Step \d+ of /).first()).toBeVisible();
  await expectNoBarriers(page, "walk of a signal", ".walk");
  await page.keyboard.press("Escape");

  await page.getByRole("button", { name: "Find cures", exact: true }).click();
  await expect(page.getByText(/^\d+ changes? tried, [1-9]\d* proved$/).first()).toBeVisible({
    timeout: 40_000,
  });
  await expectNoBarriers(page, "cures", "[data-region=side]");
  await page
    .getByRole("button", { name: /^Preview: / })
    .first()
    .click();
  await expect(page.getByRole("region", { name: "Preview" })).toBeVisible();
  await expectNoBarriers(page, "preview", ".canvas");
});

test("supply, levels, faults and swaps have no barriers", async ({ page }) => {
  await open(page, "/?example=split-switched-output");
  await page.getByRole("button", { name: "Services of Receiver living room" }).click();
  await page.getByRole("button", { name: "Walk the supply" }).first().click();
  await expect(page.getByRole("region", { name: "Commands" })).toBeVisible();
  await expectNoBarriers(page, "walk of a supply", ".walk");
  await page.keyboard.press("Escape");
  await page
    .getByRole("button", { name: /evel of Satellite: .*, how it came about$/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { name: "How this level came about" })).toBeVisible();
  await expectNoBarriers(page, "origin of a level", ".origin");
  await page.keyboard.press("Escape");

  await card(page, "LNB").click();
  await page.getByRole("button", { name: "What breaks if I swap this LNB?" }).click();
  await page.getByRole("combobox", { name: /^What breaks/ }).fill("wideband lnb");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("region", { name: /^What breaks: / })).toContainText(/loses? something/);
  await expectNoBarriers(page, "swap", "[data-region=side]");
  await page.getByRole("button", { name: "What if this one fails?" }).click();
  await page.getByRole("tabpanel").getByRole("listitem").getByRole("button").first().click();
  await expect(page.getByRole("region", { name: "Preview" })).toBeVisible();
  await expectNoBarriers(page, "what if it fails", "[data-region=side]");
  await page.keyboard.press("Escape");
  await fromMenu(page, "Find the fault…");
  await expect(page.getByText("Mark at least one service that fails.").first()).toBeVisible();
  await expectNoBarriers(page, "find the fault", "[data-region=side]");
});

test("a rule and a practice case have no barriers", async ({ page }) => {
  await page.goto("/?rules=band-cut");
  await expect(page.getByRole("article", { name: "Part of a band is cut off" })).toBeVisible();
  await expectNoBarriers(page, "rule book", "[role=dialog]");
  await page.goto("/#t1.lounge-dark");
  await page.reload();
  await expect(page.getByRole("heading", { level: 1, name: "No picture in the lounge" })).toBeVisible();
  await expectNoBarriers(page, "practice case");
});
