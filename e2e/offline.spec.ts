/** After one visit the page needs no network; new versions are offered and taken only when asked for. */
import type { Page } from "@playwright/test";
import { open, retitle, titleOf, waitUntilSaved } from "./app.ts";
import { HOSTED } from "./builds.ts";
import { type Served, serve } from "./serve.ts";
import { test as base, expect } from "./test.ts";
import { expectWholeApp } from "./wholeApp.ts";

/** With a server of its own, which a test can stop or give another version. */
const test = base.extend<{ served: Served }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner asks for a pattern.
  served: async ({}, use) => {
    const served = await serve(HOSTED);
    await use(served);
    await served.stop();
  },
  baseURL: async ({ served }, use) => use(served.address),
});

test.use({ serviceWorkers: "allow" });

async function expectStored(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Help" }).click();
  await expect(page.getByText("This page is stored on this device.", { exact: false }).first()).toBeVisible();
  await page.getByRole("button", { name: "Close" }).click();
}

test("after one visit everything works without network", async ({ page, context, served }) => {
  test.setTimeout(120_000);
  await open(page, served.address);
  await expectStored(page);
  await served.stop();
  await context.setOffline(true);
  await page.reload();
  await expectWholeApp(page, served.address, /Worker|worker/);
});

test("a new version waits until it is asked for, and what is being typed comes along", async ({
  page,
  context,
  served,
}) => {
  test.setTimeout(120_000);
  const bar = (of: Page) => of.getByRole("status", { name: "New version" });
  const edition = (of: Page) => of.locator("meta[name=edition]");
  await open(page, served.address);
  await expectStored(page);
  await retitle(page, "House of the old version");
  await waitUntilSaved(page);

  await served.change("index.html", (text) =>
    text.replace("<title>", '<meta name="edition" content="2"><title>'),
  );
  await served.change("sw.js", (text) => {
    const newer = text.replace(/("?url"?:"index\.html","?revision"?:")[0-9a-f]+/, "$1edition2");
    const swapped = newer.replace(/("?revision"?:")[0-9a-f]+(","?url"?:"index\.html")/, "$1edition2$2");
    expect(swapped).not.toBe(text);
    return swapped;
  });
  await page.reload();
  // The browser looks for a new version when it has nothing better to do.
  await expect(bar(page)).toContainText("A new version is ready.", { timeout: 40_000 });
  const other = await context.newPage();
  await open(other, served.address);
  await expect(bar(other)).toContainText("A new version is ready.");
  await expect(edition(page)).toHaveCount(0);
  await expect(edition(other)).toHaveCount(0);

  // Pressed without taking the focus out of the field, as a finger would leave it.
  await titleOf(page).fill("Still being typed");
  await bar(page)
    .getByRole("button", { name: "Load it now" })
    .evaluate((button) => button instanceof HTMLElement && button.click());
  await expect(edition(page)).toHaveCount(1);
  await expect(titleOf(page)).toHaveValue("Still being typed");
  await expect(bar(page)).toBeEmpty();

  // The other window is told, and left alone.
  await expect(bar(other)).toContainText("Another window has loaded a new version.");
  await expect(edition(other)).toHaveCount(0);
  await bar(other).getByRole("button", { name: "Later" }).click();
  await expect(bar(other)).toBeEmpty();
});
