/**
 * For everyone: large text on a small screen. 320 px wide is what is left of 1280 px at 400 % (WCAG 2.2, 1.4.10), with
 * the spacing of text that 1.4.12 names.
 */
import type { Page } from "@playwright/test";
import { open } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

test.use({ viewport: { width: 320, height: 640 } });

/** The figures of WCAG 2.2, 1.4.12. */
const SPACED = `* {
  line-height: 1.5 !important;
  letter-spacing: 0.12em !important;
  word-spacing: 0.16em !important;
}
p { margin-bottom: 2em !important; }`;

const PANES = ["Parts", "Verdict", "Part", "Chain", "Cures", "Faults", "Spectrum"];

test("every pane can be read and used at 320 px, also with wide spacing", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  for (const spaced of [false, true]) {
    if (spaced) await page.addStyleTag({ content: SPACED });
    expect(await beyond(page), "bar and drawing").toEqual([]);
    for (const name of PANES) {
      const button = page
        .getByRole("navigation", { name: "Panes" })
        .getByRole("button", { name: new RegExp(`^${name}( \\d|$)`) });
      await button.click();
      await expect(page.locator("[data-region=sheet]"), name).toBeVisible();
      expect(await beyond(page), `${name}${spaced ? ", spaced" : ""}`).toEqual([]);
      if (!spaced) await expectNoBarriers(page, name, "[data-region=sheet]");
    }
  }
});

test("every entry of the menus opens what fits on 320 px", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  for (const spaced of [false, true]) {
    if (spaced) await page.addStyleTag({ content: SPACED });
    for (const menu of ["Design menu", "More"]) {
      await page.getByRole("button", { name: menu, exact: true }).click();
      const entries = await page.getByRole("menuitem").allInnerTexts();
      expect(await beyond(page), menu).toEqual([]);
      await page.keyboard.press("Escape");
      for (const entry of entries.filter((words) => /…$|^Help$/.test(words.trim()))) {
        if (/^(Open a file|Restore|Print|Find the fault)/.test(entry.trim())) continue;
        await page.getByRole("button", { name: menu, exact: true }).click();
        await page.getByRole("menuitem", { name: entry.trim() }).click();
        await expect(page.getByRole("dialog"), entry).toBeVisible();
        expect(await beyond(page), `${entry}${spaced ? ", spaced" : ""}`).toEqual([]);
        await page.keyboard.press("Escape");
        await expect(page.getByRole("dialog"), entry).toHaveCount(0);
      }
    }
  }
});

/** What reaches beyond the edge of the screen, or of the words it holds, where no scrolling brings it back. */
function beyond(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const scrolls = (element: Element) => {
      for (let at: Element | null = element; at && at !== document.body; at = at.parentElement) {
        const { overflowX } = getComputedStyle(at);
        if ((overflowX === "auto" || overflowX === "scroll") && at.scrollWidth > at.clientWidth) return true;
        if (at.matches(".canvas, svg")) return true;
      }
      return false;
    };
    const found: string[] = [];
    if (document.documentElement.scrollWidth > innerWidth) found.push("the page itself");
    for (const element of document.querySelectorAll(
      "button, input, select, a[href], p, h1, h2, h3, li, [role=tab]",
    )) {
      const box = element.getBoundingClientRect();
      const isSeen = element.checkVisibility({ visibilityProperty: true }) && box.width > 1 && box.height > 1;
      if (!isSeen || element.closest(".unseen, .canvas") || scrolls(element)) continue;
      const isCut = element.matches("button, [role=tab]") && element.scrollWidth > element.clientWidth + 2;
      if (box.left < -1 || box.right > innerWidth + 1 || isCut)
        found.push(
          `${element.tagName} ${element.getAttribute("aria-label") ?? element.textContent?.slice(0, 40)}`,
        );
    }
    return found;
  });
}
