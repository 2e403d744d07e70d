/** Own designs in the browser’s storage: nothing is lost, whatever becomes of the page. */
import type { Locator, Page } from "@playwright/test";
import {
  card,
  cards,
  download,
  fromMenu,
  open,
  ownDesign,
  retitle,
  showPane,
  titleOf,
  waitUntilSaved,
} from "./app.ts";
import { expect, test } from "./test.ts";

async function designs(page: Page): Promise<Locator> {
  await fromMenu(page, "Designs and examples…");
  return page.getByRole("dialog", { name: "Designs" });
}

test("work survives a reload and a closed tab", async ({ page, context }) => {
  await ownDesign(page, "Kept");
  await card(page, "Drop living room").click();
  await page.keyboard.press("Delete");
  await expect(card(page, "Drop living room")).toHaveCount(0);
  // At once, before the usual moment of saving has come.
  await page.reload();
  await expect(titleOf(page)).toHaveValue("Kept");
  await expect(card(page, "Drop living room")).toHaveCount(0);
  const before = await download(page);

  await retitle(page, "Kept to the end");
  await waitUntilSaved(page);
  await page.close();
  const next = await context.newPage();
  await open(next, "/");
  await expect(titleOf(next)).toHaveValue("Kept to the end");
  expect((await download(next)).file.parts).toEqual(before.file.parts);
});

test("two tabs that change the same value overwrite nothing of each other", async ({ page, context }) => {
  // This page tells nobody what it saves, as one does that is just being frozen.
  await page.addInitScript(() => {
    BroadcastChannel.prototype.postMessage = () => undefined;
  });
  await ownDesign(page, "Shared");
  const second = await context.newPage();
  await open(second, "/");
  await expect(titleOf(second)).toHaveValue("Shared");

  await retitle(page, "Shared by one");
  await waitUntilSaved(page);
  await retitle(second, "Shared by two");
  await expect(titleOf(second)).toHaveValue("Shared by two (copy)");
  await waitUntilSaved(second);
  await expect(
    second.getByText(/Both changed the title\. Yours continues as “Shared by two \(copy\)”/).first(),
  ).toBeVisible();
  await expect(titleOf(page)).toHaveValue("Shared by one");

  await page.reload();
  const dialog = await designs(page);
  await expect(dialog.getByRole("button", { name: "Rename “Shared by one”" })).toBeVisible();
  await expect(dialog.getByRole("button", { name: "Rename “Shared by two (copy)”" })).toBeVisible();
});

test("own designs are renamed, duplicated, deleted, and deleting can be undone", async ({ page }) => {
  await ownDesign(page, "First");
  const first = await download(page);
  await fromMenu(page, "New design");
  await retitle(page, "Second");
  await waitUntilSaved(page);

  const dialog = await designs(page);
  await dialog.getByRole("button", { name: "Duplicate “First”" }).click();
  await expect(dialog.getByRole("button", { name: /^First \(copy\) / })).toBeVisible();
  await dialog.getByRole("button", { name: "Rename “First”" }).click();
  await dialog.getByRole("textbox", { name: "New title" }).fill("Renamed");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("button", { name: /^Renamed / })).toBeVisible();

  await dialog.getByRole("button", { name: "Delete “Renamed”" }).click();
  await expect(dialog.getByRole("button", { name: /^Renamed / })).toHaveCount(0);
  await dialog.getByRole("button", { name: "Undo" }).click();
  await dialog.getByRole("button", { name: /^Renamed / }).click();
  await expect(titleOf(page)).toHaveValue("Renamed");
  const restored = await download(page);
  expect(restored.file).toEqual({ ...first.file, title: "Renamed" });

  // The copy is one of its own: what is done to it leaves the original alone.
  await (await designs(page)).getByRole("button", { name: /^First \(copy\) / }).click();
  await expect(titleOf(page)).toHaveValue("First (copy)");
  await page.locator(".react-flow__pane").click({ position: { x: 400, y: 60 } });
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("Delete");
  await expect(cards(page)).toHaveCount(0);
  await waitUntilSaved(page);
  await (await designs(page)).getByRole("button", { name: /^Renamed / }).click();
  await expect(titleOf(page)).toHaveValue("Renamed");
  expect((await download(page)).file.parts).toEqual(first.file.parts);
});

test("where storage is denied, it says so, keeps working and offers the file", async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("denied", "SecurityError");
    };
  });
  await open(page, "/?example=house-universal");
  await card(page, "UHF aerial").click();
  await page.keyboard.press("Delete");
  await expect(card(page, "UHF aerial")).toHaveCount(0);
  await expect(
    page.getByText(/^Not saved: this browser does not let the page store anything/).first(),
  ).toBeVisible();

  const started = page.waitForEvent("download");
  await page.getByRole("button", { name: "Download the file" }).click();
  expect((await started).suggestedFilename()).toMatch(/\.json$/);
  await page.getByRole("button", { name: "Undo", exact: true }).first().click();
  await expect(card(page, "UHF aerial")).toBeVisible();
  await showPane(page, "Verdict");
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
});

test("where the storage is full, it says so, and saves once there is room again", async ({ page }) => {
  await ownDesign(page, "Much");
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    Object.assign(window, {
      makeRoom: () => {
        IDBObjectStore.prototype.put = put;
      },
    });
  });
  await retitle(page, "More");
  await expect(
    page.getByText(/^Not saved: the browser’s storage for this page is full/).first(),
  ).toBeVisible();
  await page.evaluate("makeRoom()");
  await retitle(page, "Room again");
  await waitUntilSaved(page);
  await page.reload();
  await expect(titleOf(page)).toHaveValue("Room again");
});
