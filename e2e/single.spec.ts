/** The build that is one file, opened from the disk. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { open } from "./app.ts";
import { SINGLE } from "./builds.ts";
import { expect, test } from "./test.ts";
import { expectWholeApp } from "./wholeApp.ts";

const ADDRESS = pathToFileURL(join(SINGLE, "downlead.html")).href;

test.use({ baseURL: ADDRESS });

test("one file from the disk does all that the page from a server does", async ({ page }) => {
  test.setTimeout(120_000);
  expect(readdirSync(SINGLE)).toEqual(["downlead.html"]);
  await open(page, ADDRESS);
  await expectWholeApp(page, ADDRESS, /^blob:/);

  // What was drawn is there again, and what it says of itself is true.
  await page.reload();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await page.getByRole("button", { name: "Help" }).click();
  await expect(
    page.getByText("This page is a file on this device. It needs no network.", { exact: true }),
  ).toBeVisible();
  await page.getByRole("button", { name: "Close" }).click();
  await page.getByRole("button", { name: "Share", exact: true }).click();
  await expect(page.getByText("This page was opened from a file", { exact: false }).first()).toBeVisible();
});
