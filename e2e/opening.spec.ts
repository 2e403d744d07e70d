/** Designs that are slow, hostile or cannot be read: the page stays alive, says so, and offers ways on. */
import type { Locator, Page } from "@playwright/test";
import { writeDesign } from "../src/design/file.ts";
import { encodeLink } from "../src/design/link.ts";
import { largeDesign } from "../tests/bench/largeDesign.ts";
import { aerialLadder } from "../tests/structures.ts";
import { cards, download, open, ownDesign, titleOf, upload, waitUntilSaved } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

const gate = (page: Page): Locator => page.getByRole("alertdialog");

/**
 * A worker that gets no further with designs of more parts than this, and finds that smaller ones fit; or one that
 * dies on the way.
 */
async function slowWorker(page: Page, o: { readonly fits: number; readonly dies?: boolean }): Promise<void> {
  await page.addInitScript(({ fits, dies }) => {
    class SlowWorker {
      onmessage: ((event: { data: unknown }) => void) | null = null;
      onerror: ((event: { message: string; preventDefault: () => void }) => void) | null = null;
      timer: ReturnType<typeof setInterval> | undefined;
      postMessage({ task }: { task: { design: { parts: unknown[] } } }) {
        let done = 0;
        const total = task.design.parts.length;
        this.timer = setInterval(() => {
          const isDone = total <= fits;
          done = Math.min(total - 1, done + 1);
          const progress = { stage: "signals", done, total, isTooLarge: false };
          this.onmessage?.({ data: { type: isDone ? "done" : "progress", progress } });
          if (dies) this.onerror?.({ message: "out of memory", preventDefault: () => undefined });
        }, 50);
      }
      terminate() {
        clearInterval(this.timer);
      }
    }
    Object.assign(window, { Worker: SlowWorker });
  }, o);
}

/** Notes the longest time for which the page did nothing at all [ms]. */
async function watchStops(page: Page): Promise<() => Promise<number>> {
  await page.addInitScript(() => {
    let last = performance.now();
    Object.assign(window, { longestStop: 0 });
    setInterval(() => {
      const now = performance.now();
      const watched: { longestStop?: number } = window as never;
      watched.longestStop = Math.max(watched.longestStop ?? 0, now - last);
      last = now;
    }, 20);
  });
  return () => page.evaluate(() => (window as { longestStop?: number }).longestStop ?? Number.NaN);
}

for (const { stages, ways } of [
  { stages: 12, ways: 2 },
  { stages: 40, ways: 2 },
  { stages: 6, ways: 8 },
])
  test(`a link with ${stages} stages of ${ways}-way splitters on combiners neither stops the page nor later visits`, async ({
    page,
  }) => {
    const longestStop = await watchStops(page);
    const link = await encodeLink(aerialLadder(stages, ways));
    await page.goto(`/#${link}`);
    const isUp = titleOf(page).and(page.locator(`[value="Ladder of ${stages} stages"]`));
    await expect(isUp.or(gate(page))).toBeVisible({ timeout: 45_000 });
    // Evaluated in one go on the page, twelve stages take minutes and all memory.
    expect(await longestStop()).toBeLessThan(4000);
    if (await gate(page).isVisible())
      await expect(gate(page)).toContainText(/too large to calculate|longer than 20 seconds/);
    await page.goto("about:blank");
    await open(page, "/");
    await expect(cards(page).or(page.locator(".overview")).first()).toBeVisible();
  });

test("a slow design shows how far it is, is stopped by Escape, and is made smaller as a list", async ({
  page,
}) => {
  await slowWorker(page, { fits: 5 });
  await page.goto(`/#${await encodeLink(aerialLadder(4))}`);
  const bar = page.getByRole("progressbar");
  await expect(bar).toHaveAttribute("aria-valuetext", /^[1-9] of 10 parts$/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Opening “Ladder of 4 stages”");
  await expect(page.getByRole("button", { name: "Stop" })).toBeFocused();
  await expectNoBarriers(page, "while a design is worked out");
  await page.keyboard.press("Escape");

  await expect(gate(page)).toContainText("You stopped its calculation.");
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
  await expectNoBarriers(page, "a design that was stopped");
  await gate(page).getByRole("button", { name: "Open as a list" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "“Ladder of 4 stages” as a list" })).toBeFocused();
  const rows = page.locator(".plain-row");
  await expect(rows).toHaveCount(10);
  await expect(rows.filter({ hasText: /^“split2”/ })).toContainText(
    "Wires: from “join1”, out; to “join2”, in 1; to “join2”, in 2.",
  );
  await expectNoBarriers(page, "a design as a list");

  await page.getByRole("searchbox").fill("combiner");
  await expect(rows).toHaveCount(4);
  await page.getByRole("checkbox", { name: "Select all 4" }).check();
  await page.getByRole("button", { name: "Delete 4 parts" }).click();
  await page.getByRole("searchbox").fill("");
  await expect(rows).toHaveCount(6);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(rows).toHaveCount(10);
  await page.getByRole("searchbox").fill("combiner");
  await page.getByRole("checkbox", { name: "Select all 4" }).check();
  await page.getByRole("button", { name: "Delete 4 parts" }).click();
  await page.getByRole("searchbox").fill("aerial");
  await page.getByRole("checkbox", { name: "Select all 1" }).check();
  await page.getByRole("button", { name: "Delete 1 part" }).click();
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(titleOf(page)).toHaveValue("Ladder of 4 stages");
  await waitUntilSaved(page);
  expect((await download(page)).file.parts.map((p) => p.id)).toEqual([
    "split1",
    "split2",
    "split3",
    "split4",
    "tv",
  ]);
  expect(new URL(page.url()).hash).toBe("");
});

test("a worker that dies is said, and the file can be had", async ({ page }) => {
  await slowWorker(page, { fits: 0, dies: true });
  await page.goto(`/#${await encodeLink(aerialLadder(3))}`);
  await expect(gate(page)).toContainText("The calculation stopped.");
  const file = page.waitForEvent("download");
  await gate(page).getByRole("button", { name: "Download the file" }).click();
  expect((await file).suggestedFilename()).toBe("Ladder-of-3-stages.json");
});

test("a design that did not come up at the last start is not simply tried again", async ({
  page,
  context,
}) => {
  await open(page, "/?example=house-universal");
  await upload(page, "block.json", writeDesign({ ...largeDesign(320), title: "Large block" }));
  await expect(titleOf(page)).toHaveValue("Large block");
  await waitUntilSaved(page);
  await page.close();

  const stuck = await context.newPage();
  await slowWorker(stuck, { fits: 0 });
  await stuck.goto("/");
  await expect(stuck.getByRole("heading", { name: "Opening “Large block”" })).toBeVisible();
  // Whoever leaves within three seconds has only changed their mind.
  await stuck.waitForTimeout(3500);
  await stuck.close();

  const next = await context.newPage();
  await next.goto("/");
  await expect(gate(next)).toContainText("“Large block” did not open last time");
  // Reloading is no way round it.
  await next.reload();
  await expect(gate(next)).toContainText("“Large block” did not open last time");
  await expectNoBarriers(next, "after a start that did not come up");
  await gate(next).getByRole("button", { name: "Open as a list" }).click();
  await expect(next.locator(".plain-row")).toHaveCount(100);
  await next.getByRole("button", { name: "Close the list" }).click();
  await gate(next).getByRole("button", { name: "Try again" }).click();
  await expect(titleOf(next)).toHaveValue("Large block");
  await next.reload();
  await expect(titleOf(next)).toHaveValue("Large block");
});

test("a link that was cut short cannot be overlooked, and the whole one opens by the keyboard alone", async ({
  page,
}) => {
  const whole = await encodeLink(aerialLadder(2));
  await page.goto(`/#${whole.slice(0, 100)}`);
  await expect(gate(page)).toHaveAccessibleName("The link did not open");
  await expect(gate(page)).toContainText("This link was cut short");
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
  await expect(cards(page)).toHaveCount(0);
  await expectNoBarriers(page, "a link that did not open");
  // The address keeps the link: a reload tries it again.
  await page.reload();
  await expect(gate(page)).toContainText("This link was cut short");
  expect(new URL(page.url()).hash).toBe(`#${whole.slice(0, 100)}`);

  await page.keyboard.press("Tab");
  await expect(page.getByLabel("Paste the full link here")).toBeFocused();
  await page.keyboard.type("see the attached plan");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert")).toContainText("This is no link to a design");
  await page.keyboard.press("Control+A");
  await page.keyboard.insertText(`${page.url().split("#")[0]}#${whole}`);
  await page.keyboard.press("Enter");
  await expect(titleOf(page)).toHaveValue("Ladder of 2 stages");
  expect(new URL(page.url()).hash).toBe("");
});

test("after a bad link in an open page Escape leads back to the design, untouched", async ({ page }) => {
  await ownDesign(page, "Untouched");
  const before = await download(page);
  await page.evaluate(() => {
    window.location.hash = "#d1.AAAA";
  });
  await expect(gate(page)).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(titleOf(page)).toHaveValue("Untouched");
  expect(new URL(page.url()).hash).toBe("");
  expect((await download(page)).text).toBe(before.text);
});

test("a practice link with a slow design is stopped like any other", async ({ page }) => {
  await slowWorker(page, { fits: 0 });
  await page.goto(`/#t1.5&${await encodeLink(aerialLadder(4))}`);
  await page.getByRole("button", { name: "Stop" }).click();
  await expect(gate(page)).toContainText("You stopped its calculation.");
});

test("mutated links open, or say why not, and the page lives on", async ({ page }) => {
  test.setTimeout(120_000);
  const link = await encodeLink(aerialLadder(3));
  // A fixed row of pseudo-random numbers (Numerical Recipes' congruence), so that a failure can be repeated.
  let seed = 7;
  const random = (below: number) => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed % below;
  };
  await open(page, "/?example=house-universal");
  for (let n = 0; n < 25; n++) {
    const at = 3 + random(link.length - 3);
    const letter = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_%. &"[random(68)] ?? "A";
    const mutated = [
      `${link.slice(0, at)}${letter}${link.slice(at + 1)}`,
      `${link.slice(0, at)}${link.slice(at + 1 + random(9))}`,
      `${link.slice(0, at)}${letter.repeat(1 + random(900))}${link.slice(at)}`,
    ][n % 3];
    await page.evaluate(
      (to) => {
        window.location.hash = to;
      },
      `#${mutated ?? ""}&${n}`,
    );
    await expect(gate(page).or(page.locator('[value="Ladder of 3 stages"]')).first(), mutated).toBeVisible();
    if (await gate(page).isVisible()) await page.keyboard.press("Escape");
    await expect(titleOf(page)).toBeVisible();
  }
});

test("on a phone everything can be reached by touch and nothing hangs over the edge", async ({ browser }) => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  const page = await context.newPage();
  await slowWorker(page, { fits: 0 });
  await page.goto(`/#${await encodeLink(aerialLadder(4))}`);
  const noSideways = () =>
    page.evaluate(() => document.documentElement.scrollWidth <= document.documentElement.clientWidth);
  await page.getByRole("button", { name: "Stop" }).tap();
  expect(await noSideways()).toBe(true);
  for (const button of await gate(page).getByRole("button").all())
    expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await gate(page).getByRole("button", { name: "Open as a list" }).tap();
  await expect(page.locator(".plain-row")).toHaveCount(10);
  expect(await noSideways()).toBe(true);
  await page.getByRole("button", { name: "Close the list" }).tap();
  await page.getByRole("button", { name: /^House with three bedrooms/ }).tap();
  await expect(titleOf(page)).toHaveValue(/House with three bedrooms/);
  await context.close();
});
