/** The frame of the page: it never scrolls, gives the drawing its room, and is gone through by keys in few steps. */
import { readdirSync } from "node:fs";
import type { Page } from "@playwright/test";
import { cards, download, drag, open, titleOf } from "./app.ts";
import { expect, test } from "./test.ts";

const EXAMPLES = readdirSync(new URL("../src/design/examples/", import.meta.url)).map((name) =>
  name.replace(".json", ""),
);

const SIZES = [
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

const scrolled = (page: Page) =>
  page.evaluate(() => {
    const { scrollHeight, scrollWidth, scrollTop } = document.scrollingElement ?? document.documentElement;
    return {
      beyond: scrollHeight - innerHeight,
      beside: scrollWidth - innerWidth,
      scrollTop,
      frameTop: document.querySelector("header")?.getBoundingClientRect().top,
    };
  });

for (const viewport of SIZES) {
  test(`no example makes the page scroll at ${viewport.width} by ${viewport.height}`, async ({ page }) => {
    // Opens every example.
    test.slow();
    await page.setViewportSize(viewport);
    for (const key of EXAMPLES) {
      await open(page, `/?example=${key}`);
      await expect(page.getByRole("main")).not.toBeEmpty();
      expect(await scrolled(page), key).toEqual({ beyond: 0, beside: 0, scrollTop: 0, frameTop: 0 });
    }
    await page.mouse.move(viewport.width / 2, 20);
    await page.mouse.wheel(0, 600);
    await page.keyboard.press("End");
    await page.waitForTimeout(200);
    expect(await scrolled(page)).toEqual({ beyond: 0, beside: 0, scrollTop: 0, frameTop: 0 });
  });
}

test("the drawing gets the room", async ({ page }) => {
  await open(page, "/?example=house-universal");
  const canvas = await page.locator(".canvas").boundingBox();
  expect(canvas?.width).toBeGreaterThanOrEqual(1090);
  expect(canvas?.height).toBeGreaterThanOrEqual(800);
});

test("dividers move by keys and by a press, and the sizes are kept", async ({ page }) => {
  await open(page, "/?example=house-universal");
  const side = page.getByRole("complementary", { name: "Verdict, part and chain" });
  const width = async () => Math.round((await side.boundingBox())?.width ?? 0);
  expect(await width()).toBe(300);
  const divider = page.getByRole("separator", { name: "Width of the side pane" });
  await divider.focus();
  await page.keyboard.press("ArrowLeft");
  await expect.poll(width).toBeGreaterThan(300);
  const byKeys = await width();
  const box = await divider.boundingBox();
  if (!box) throw new Error("The divider is not in view.");
  await page.mouse.click(box.x, box.y + 100);
  await expect.poll(width).toBeGreaterThan(byKeys);
  const byPress = await width();
  await page.reload();
  await expect(titleOf(page)).not.toHaveValue("");
  await expect.poll(width).toBe(byPress);

  await page.getByRole("button", { name: "Fold this pane away" }).click();
  await expect.poll(width).toBeLessThan(60);
  await page.reload();
  await expect.poll(width).toBeLessThan(60);
  await page.getByRole("button", { name: "Cures" }).click();
  await expect(page.getByRole("tab", { name: "Cures" })).toHaveAttribute("aria-selected", "true");
});

test("skip links lead to the drawing and to the verdict", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Skip to the drawing" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main", { name: "Drawing" })).toBeFocused();
  await page.keyboard.press("Tab");
  await expect(page.locator(".canvas :focus")).toHaveCount(1);

  await page.reload();
  await expect(cards(page).first()).toBeVisible();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Skip to the verdict" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.locator("[data-region=side]")).toBeFocused();
});

test("F6 goes from region to region and comes back to where the focus was", async ({ page }) => {
  await open(page, "/?example=house-universal");
  const region = () =>
    page.evaluate(() => document.activeElement?.closest("[data-region]")?.getAttribute("data-region"));
  const help = page.getByRole("button", { name: "Help" });
  await help.focus();
  const seen = [];
  for (let i = 0; i < 3; i++) {
    await page.keyboard.press("F6");
    seen.push(await region());
  }
  expect(seen).toEqual(["tray", "drawing", "side"]);
  await page.keyboard.press("F6");
  await expect(help).toBeFocused();

  // Opened, the pane below is one of them; closed again, the focus is back at what opened it.
  const spectrum = page.getByRole("button", { name: /^Spectrum of the selected wire/ });
  await spectrum.focus();
  await page.keyboard.press("Enter");
  await help.focus();
  await page.keyboard.press("Shift+F6");
  expect(await region()).toBe("below");
  await page.getByRole("button", { name: "Close the spectrum" }).press("Enter");
  await expect(spectrum).toBeFocused();
});

test("the rail opens a family over the drawing, by keys too, and a part is dragged out of it", async ({
  page,
}) => {
  await open(page, "/?example=house-universal");
  const kinds = async () => (await download(page)).file.parts.map((part) => part.kind).sort();
  const before = await kinds();
  const rail = page.getByRole("toolbar", { name: "Families of parts" });
  await rail.getByRole("button", { name: "All parts" }).focus();
  await page.keyboard.press("ArrowDown");
  await expect(rail.getByRole("button", { name: "Receive", exact: true })).toBeFocused();
  await page.keyboard.press("Enter");
  const parts = page.getByRole("region", { name: "Receive", exact: true });
  await expect(parts.getByRole("button", { name: "Dish", exact: true })).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(parts).toHaveCount(0);
  await expect(rail.getByRole("button", { name: "Receive", exact: true })).toBeFocused();

  const width = (await page.getByRole("main", { name: "Drawing" }).boundingBox())?.width;
  await rail.getByRole("button", { name: "Receive", exact: true }).click();
  expect((await page.getByRole("main", { name: "Drawing" }).boundingBox())?.width).toBe(width);
  await drag(page, parts.getByRole("button", { name: "Dish", exact: true }), { x: 160, y: 820 });
  // Let go below the open parts, it would lie hidden: they fold away.
  await expect(parts).toHaveCount(0);
  await expect.poll(kinds).toEqual([...before, "dish"].sort());
});

for (const viewport of [
  { width: 390, height: 844 },
  { width: 844, height: 390 },
  { width: 320, height: 640 },
]) {
  test(`the bar is one row and holds every command at ${viewport.width} by ${viewport.height}`, async ({
    page,
  }) => {
    await page.setViewportSize(viewport);
    await open(page, "/?example=house-universal");
    const bar = page.getByRole("banner");
    // One row: all that is pressed in it lies on one line, within the window.
    const boxes = await bar.getByRole("button").evaluateAll((buttons) =>
      buttons.map((button) => {
        const { top, right, height } = button.getBoundingClientRect();
        return { middle: Math.round(top + height / 2), right };
      }),
    );
    expect(new Set(boxes.map((box) => box.middle)).size).toBe(1);
    expect(Math.max(...boxes.map((box) => box.right))).toBeLessThanOrEqual(viewport.width);
    expect((await bar.boundingBox())?.height).toBeLessThanOrEqual(48);
    const more = bar.getByRole("button", { name: "More" });
    for (const name of ["Redo", "Designs and examples", "Share", "Help"]) {
      if ((await more.count()) === 0) {
        await expect(bar.getByRole("button", { name })).toBeInViewport({ ratio: 1 });
        continue;
      }
      await more.click();
      await expect(page.getByRole("menuitem", { name })).toBeInViewport({ ratio: 1 });
      await page.keyboard.press("Escape");
    }
    await ((await more.count()) ? more : bar.getByRole("button", { name: "Theme" })).click();
    await page.getByRole("menuitemradio", { name: "Dark" }).click();
    await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");
  });
}
