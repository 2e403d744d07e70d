/** What is typed, reckoned with and practised stays, whichever window it was done in; and all of it can be taken along. */
import { readFile } from "node:fs/promises";
import type { Locator, Page } from "@playwright/test";
import {
  card,
  download,
  fromMenu,
  messages,
  open,
  ownDesign,
  retitle,
  titleOf,
  waitUntilSaved,
} from "./app.ts";
import { expect, test, watch } from "./test.ts";

const name = (page: Page): Locator => page.getByRole("textbox", { name: "Name of this part" });
const length = (page: Page): Locator => page.getByRole("spinbutton", { name: "Length" });

/** From the typing to the closed page [ms]: two seconds until it counts, one until it is stored. */
const TYPED_AND_STORED_MS = 3000;

async function reopened(page: Page): Promise<Page> {
  const context = page.context();
  await page.close();
  const next = await context.newPage();
  await open(next, "/");
  return next;
}

test("names that were typed and never confirmed survive closing the page", async ({ page }) => {
  await ownDesign(page, "House");
  await titleOf(page).fill("House with a loft");
  await page.waitForTimeout(TYPED_AND_STORED_MS);
  // Still at it: what was typed counts without an end of the editing.
  await expect(titleOf(page)).toBeFocused();
  const second = await reopened(page);
  await expect(titleOf(second)).toHaveValue("House with a loft");

  await card(second, "Drop living room").click();
  await name(second).fill("Loft run");
  await length(second).fill("33");
  await second.waitForTimeout(TYPED_AND_STORED_MS);
  await expect(length(second)).toBeFocused();
  const third = await reopened(second);
  const { file } = await download(third);
  expect(file.parts.find((part) => part.label === "Loft run")?.options).toMatchObject({ lengthM: 33 });
});

test("a title that is still being typed survives leaving the page at once", async ({ page }) => {
  await ownDesign(page, "House");
  await titleOf(page).press("End");
  await titleOf(page).pressSequentially(" with a loft");
  await page.reload();
  await expect(titleOf(page)).toHaveValue("House with a loft");
});

test("one visit to a field is one step back, and Escape takes it back as a whole", async ({ page }) => {
  await ownDesign(page, "House");
  await card(page, "Drop living room").click();
  const before = await download(page);
  await name(page).click();
  for (const text of ["L", "Lo", "Loft"]) {
    await name(page).fill(text);
    await page.waitForTimeout(1300);
  }
  await page.getByRole("button", { name: "Undo", exact: true }).first().click();
  expect((await download(page)).text).toBe(before.text);

  await length(page).fill("400");
  await length(page).fill("none");
  await expect(page.getByRole("alert")).toContainText("Not taken yet: still 400 m.");
  await length(page).press("Escape");
  await expect(length(page)).toHaveValue("16");
  expect((await download(page)).text).toBe(before.text);
});

test("in a dialog the first Escape is the field's and the next one the dialog's", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "Prices and times…");
  const dialog = page.getByRole("dialog", { name: "Prices and times" });
  const price = dialog.getByRole("textbox", { name: "Price of Cable, per m" });
  await price.fill("7");
  await price.press("Escape");
  await expect(price).toHaveValue("0.5");
  await expect(dialog).toBeVisible();
  await price.press("Escape");
  await expect(dialog).toHaveCount(0);
});

test("prices typed in two windows are all kept, and each shows those of the other", async ({
  page,
  context,
}) => {
  const second = await context.newPage();
  for (const each of [page, second]) {
    await open(each, "/?example=house-universal");
    await fromMenu(each, "Prices and times…");
  }
  const price = (of: Page, kind: string) => of.getByRole("textbox", { name: `Price of ${kind}` });
  await price(page, "Cable, per m").fill("0.8");
  await price(second, "DC block").fill("9");
  await expect(price(second, "Cable, per m")).toHaveValue("0.8");
  await expect(price(page, "DC block")).toHaveValue("9");
  await page.close();
  await second.reload();
  await fromMenu(second, "Prices and times…");
  await expect(price(second, "Cable, per m")).toHaveValue("0.8");
  await expect(price(second, "DC block")).toHaveValue("9");
});

test("cases finished in two windows are both kept, and a theme chosen in one shows in the other", async ({
  page,
  context,
}) => {
  const second = await context.newPage();
  await page.goto("/#t1.lounge-dark");
  await second.goto("/#t1.one-strand");
  for (const each of [page, second]) {
    await each.getByRole("button", { name: "Give up" }).click();
    await each.getByRole("button", { name: "Show the fault, without points" }).click();
    await expect(each.getByRole("region", { name: "Outcome" })).toBeVisible();
  }
  for (const each of [page, second]) {
    await each.getByRole("button", { name: "Leave" }).click();
    await fromMenu(each, "Practice…");
    await expect(each.getByRole("dialog").getByText("Shown", { exact: true })).toHaveCount(2);
    await each.keyboard.press("Escape");
  }
  await page.getByRole("button", { name: "Theme" }).click();
  await page.getByRole("menuitemradio", { name: "Dark" }).click();
  await expect(second.locator("html")).toHaveAttribute("data-theme", "dark");
});

test("everything is downloaded as one file, and comes back in a browser that has nothing", async ({
  page,
  browser,
  baseURL,
}) => {
  await ownDesign(page, "First");
  const first = await download(page);
  await fromMenu(page, "New design");
  await retitle(page, "Second");
  await waitUntilSaved(page);
  await fromMenu(page, "Prices and times…");
  await page.getByRole("textbox", { name: "Price of Cable, per m" }).fill("0.8");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Escape");
  const started = page.waitForEvent("download");
  await fromMenu(page, "Download everything");
  const saved = await started;
  expect(saved.suggestedFilename()).toMatch(/^downlead-everything-\d{4}-\d\d-\d\d\.json$/);
  const path = await saved.path();
  const titles = JSON.parse(await readFile(path, "utf8")).documents.map(
    (each: { title: string }) => each.title,
  );
  expect(titles.sort()).toEqual(["First", "Second"]);

  const elsewhere = await browser.newContext();
  const complaints = await watch(elsewhere, baseURL);
  const other = await elsewhere.newPage();
  await ownDesign(other, "First");
  const asked = other.waitForEvent("filechooser");
  await fromMenu(other, "Restore from a download…");
  await (await asked).setFiles(path);
  const dialog = other.getByRole("dialog", { name: "Restore from a download" });
  await expect(dialog).toContainText("It adds: 2 designs and prices of 1 kind of part.");
  await dialog.getByRole("button", { name: "Add to this browser" }).click();
  const designs = other.getByRole("dialog", { name: "Designs" });
  // The one of the same title stays beside the one that came in.
  await expect(designs.getByRole("button", { name: "Rename “First”" })).toHaveCount(2);
  await expect(designs.getByRole("button", { name: "Rename “Second”" })).toHaveCount(1);
  await designs.getByRole("button", { name: /^Second / }).click();
  await expect(titleOf(other)).toHaveValue("Second");
  await fromMenu(other, "Designs and examples…");
  await designs
    .locator(".design-row")
    .filter({ hasText: "First" })
    .last()
    .getByRole("button")
    .first()
    .click();
  await expect(titleOf(other)).toHaveValue("First");
  expect((await download(other)).file).toEqual(first.file);
  await fromMenu(other, "Prices and times…");
  await expect(other.getByRole("textbox", { name: "Price of Cable, per m" })).toHaveValue("0.8");
  expect(complaints).toEqual([]);
  await elsewhere.close();
});

test("a single design is no download of everything: it is refused with the reason", async ({ page }) => {
  await ownDesign(page, "Mine");
  const { text } = await download(page);
  const asked = page.waitForEvent("filechooser");
  await fromMenu(page, "Restore from a download…");
  await (await asked).setFiles({ name: "one.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await expect(messages(page)).toContainText("it is a single design; open it with “Open a file”");
  await expect(page.getByRole("dialog")).toHaveCount(0);
});

test("Escape gives up a renaming, and leaves the list of designs open", async ({ page }) => {
  await ownDesign(page, "House");
  await fromMenu(page, "Designs and examples…");
  await page.getByRole("button", { name: "Rename “House”" }).click();
  await page.getByRole("textbox", { name: "New title" }).press("Escape");
  await expect(page.getByRole("button", { name: "Rename “House”" })).toBeVisible();
});
