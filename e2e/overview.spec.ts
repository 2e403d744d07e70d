/**
 * The whole design at a glance: sizes as the drawing is to have them (115 × 45 px and names of 11 px for twelve
 * receivers, 125 × 50 for forty outlets at 1440 × 900, 114 × 40 at 1280 × 800), ways in and out, keyboard, barriers.
 */
import type { Locator, Page } from "@playwright/test";
import { writeDesign } from "../src/design/file.ts";
import { blockOfFlats } from "../tests/structures.ts";
import { card, open, titleOf, upload } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

const overview = (page: Page): Locator => page.getByRole("region", { name: "Overview of the design" });
const place = (page: Page, name: string): Locator =>
  overview(page).getByRole("button", { name: new RegExp(`^${name},`) });
const view = (page: Page, name: "Overview" | "Drawing"): Locator =>
  page.getByRole("group", { name: "View" }).getByRole("button", { name });

async function openBlock(page: Page): Promise<void> {
  await open(page, "/?example=block-multiswitch");
  await upload(
    page,
    "block.json",
    writeDesign(blockOfFlats({ switches: 2, flatsEach: 20, longDrops: [17] })),
  );
  await expect(titleOf(page)).toHaveValue("Block of 40 flats");
  await expect(overview(page)).toHaveAttribute("data-level", "facade");
}

/** The least strip and the least type of names, as they are on the screen. */
function sizes(page: Page) {
  return overview(page).evaluate((frame) => {
    const strips = [...frame.querySelectorAll(".place-strip")].map((strip) => strip.getBoundingClientRect());
    const names = [...frame.querySelectorAll<HTMLElement>(".place-name")].map(
      (name) =>
        (Number.parseFloat(getComputedStyle(name).fontSize) * name.getBoundingClientRect().width) /
        Math.max(1, name.offsetWidth),
    );
    const pane = frame.getBoundingClientRect();
    return {
      strips: strips.length,
      width: Math.min(...strips.map((s) => s.width)),
      height: Math.min(...strips.map((s) => s.height)),
      name: Math.min(...names),
      isInside: strips.every(
        (s) => s.left >= pane.left && s.right <= pane.right && s.top >= pane.top && s.bottom <= pane.bottom,
      ),
    };
  });
}

test("twelve receivers can be read at once", async ({ page }) => {
  await open(page, "/?example=block-multiswitch");
  await expect(overview(page)).toHaveAttribute("data-level", "boxes");
  const found = await sizes(page);
  expect(found.strips).toBe(6);
  expect(found.width).toBeGreaterThanOrEqual(115);
  expect(found.height).toBeGreaterThanOrEqual(45);
  expect(found.name).toBeGreaterThanOrEqual(10.95);
  expect(found.isInside).toBe(true);
});

for (const { size, least } of [
  { size: { width: 1440, height: 900 }, least: { width: 125, height: 50 } },
  { size: { width: 1280, height: 800 }, least: { width: 114, height: 40 } },
])
  test(`forty outlets can be read at once in ${size.width} px`, async ({ page }) => {
    await page.setViewportSize(size);
    await openBlock(page);
    const found = await sizes(page);
    expect(found.strips).toBe(40);
    expect(found.width).toBeGreaterThanOrEqual(least.width);
    expect(found.height).toBeGreaterThanOrEqual(least.height);
    expect(found.name).toBeGreaterThanOrEqual(10.95);
    expect(found.isInside).toBe(true);
    await expect(place(page, "Flat 17")).toHaveAccessibleName(
      /^Flat 17, fails: \d+ of \d+ .+, 240 m of cable$/,
    );
    await expect(overview(page).getByText("19 of 20 flats work")).toBeVisible();
    await expect(overview(page).getByText("All 20 flats work")).toBeVisible();
  });

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])
  test(`a thousand parts are cells in ${size.width} px: one for every flat, failing ones by shape too`, async ({
    page,
  }) => {
    test.slow();
    await page.setViewportSize(size);
    await open(page, "/?example=block-multiswitch");
    const block = blockOfFlats({ switches: 10, flatsEach: 25, longDrops: [7, 33] });
    expect(block.parts.length).toBeGreaterThan(1000);
    await upload(page, "block.json", writeDesign(block));
    await expect(titleOf(page)).toHaveValue("Block of 250 flats", { timeout: 60_000 });
    if (size.width < 600) await page.getByRole("radio", { name: "Overview" }).click();
    const cells = page.locator(".place-cell");
    await expect(cells).toHaveCount(250);
    await expect(cells.first()).toBeInViewport();
    const found = await page.locator(".overview-cells").evaluate((all) => {
      const marks = (cell: Element | null) => cell?.querySelector(".place-mark svg")?.innerHTML;
      const [failing, ...more] = all.querySelectorAll(".place-cell[data-state='fails']");
      const sound = all.querySelector(".place-cell[data-state='works']");
      const type = [...all.querySelectorAll(".place-name, .group-name, .group-count, .strip-tag")].map(
        (text) => Number.parseFloat(getComputedStyle(text).fontSize),
      );
      const cut = [...all.querySelectorAll<HTMLElement>(".group-name, .place-name")].filter(
        (name) => name.scrollWidth > name.clientWidth + 1,
      );
      return {
        failing: 1 + more.length,
        isRed: failing !== undefined && getComputedStyle(failing).backgroundColor,
        hasOwnShape: marks(failing ?? null) !== marks(sound),
        leastType: Math.min(...type),
        cut: cut.length,
      };
    });
    // The two long drops, of 240 m.
    expect(found).toMatchObject({ failing: 2, isRed: "rgb(187, 22, 38)", hasOwnShape: true, cut: 0 });
    expect(found.leastType).toBeGreaterThanOrEqual(10);
  });

test("with forced colours, what fails is the reverse of what works", async ({ page }) => {
  await page.emulateMedia({ forcedColors: "active" });
  await openBlock(page);
  const grounds = (name: string) =>
    place(page, name)
      .locator(".place-head")
      .evaluate((head) => [getComputedStyle(head).backgroundColor, getComputedStyle(head).color]);
  const [ground, ink] = await grounds("Flat 1");
  expect(await grounds("Flat 17")).toEqual([ink, ground]);
  await place(page, "Flat 1").click();
  const outline = (name: string) => place(page, name).evaluate((box) => getComputedStyle(box).outlineWidth);
  expect(Number.parseFloat(await outline("Flat 1"))).toBeGreaterThan(
    Number.parseFloat(await outline("Flat 2")),
  );
});

test("a double click goes into the drawing, the wheel comes back and goes in again", async ({ page }) => {
  await open(page, "/?example=block-multiswitch");
  await place(page, "Flat 4").dblclick();
  await expect(overview(page)).toBeHidden();
  await expect(card(page, "Outlet flat 4")).toBeInViewport();
  await expect(view(page, "Drawing")).toHaveAttribute("aria-pressed", "true");
  await card(page, "Outlet flat 4").hover();
  for (let n = 0; n < 12 && !(await overview(page).isVisible()); n++) await page.mouse.wheel(0, 240);
  await expect(overview(page)).toBeVisible();
  await place(page, "Flat 2").hover();
  await page.mouse.wheel(0, -240);
  await expect(overview(page)).toBeHidden();
  await expect(card(page, "Outlet flat 2")).toBeInViewport();
});

test("all of it by keyboard: one stop for Tab, arrow keys, Space selects, Enter goes in", async ({
  page,
}) => {
  await open(page, "/?example=block-multiswitch");
  await expect(overview(page).locator("[data-item][tabindex='0']")).toHaveCount(1);
  await place(page, "Flat 1").focus();
  await page.keyboard.press("ArrowDown");
  await expect(place(page, "Flat 2")).toBeFocused();
  await page.keyboard.press("Space");
  await expect(place(page, "Flat 2")).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("Home");
  await page.keyboard.press("End");
  await expect(place(page, "Flat 6")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(overview(page)).toBeHidden();
  await expect(card(page, "Outlet flat 6")).toBeFocused();
  await page.keyboard.press("f");
  await expect(overview(page)).toBeVisible();
  await expect(place(page, "Flat 6")).toBeFocused();
  await page.keyboard.press("+");
  await expect(card(page, "Outlet flat 6")).toBeFocused();
});

test("the switch says which of the two is shown; joining by presses is seen in the drawing", async ({
  page,
}) => {
  await open(page, "/?example=block-multiswitch");
  await expect(view(page, "Overview")).toHaveAttribute("aria-pressed", "true");
  await view(page, "Drawing").click();
  await expect(card(page, "Multiswitch")).toBeInViewport();
  await view(page, "Overview").click();
  await expect(overview(page)).toBeVisible();

  // A walk begins in the drawing; whoever turns to the overview sees each step there, and stays.
  await page.getByRole("button", { name: "Services of TV flat 4" }).click();
  await page.getByRole("button", { name: "Walk the signal" }).first().click();
  await expect(overview(page)).toBeHidden();
  await view(page, "Overview").click();
  const here = overview(page).locator("[aria-current=step]");
  await page.getByRole("group", { name: "Canvas", exact: true }).focus();
  await page.keyboard.press("Home");
  await expect(here).toHaveAccessibleName(/^UHF aerial.*Step 1, you are here$/);
  await expect(here.locator(".walk-mark svg")).toBeVisible();
  await page.keyboard.press("End");
  await expect(here).toHaveAccessibleName(/^Flat 4,.* you are here$/);
  await expect(here).toHaveCount(1);
  await page.keyboard.press("Escape");
  await expect(here).toHaveCount(0);
  await expect(overview(page)).toBeVisible();
  await open(page, "/?example=long-steel-drop");
  await expect(overview(page)).toBeHidden();
});

test("boxes have no barriers, nor have a façade and cells", async ({ page }) => {
  test.slow();
  await open(page, "/?example=block-multiswitch");
  await expect(overview(page)).toBeVisible();
  await expectNoBarriers(page, "boxes", ".canvas");
  await openBlock(page);
  await expectNoBarriers(page, "façade", ".canvas");
  await page.setViewportSize({ width: 820, height: 760 });
  await expect(overview(page)).toHaveAttribute("data-level", "cells");
  await expectNoBarriers(page, "cells", ".canvas");
});
