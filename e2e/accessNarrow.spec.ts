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

// Axe goes through each view and pane, twice.
test.slow();

for (const spaced of [false, true])
  test.describe(spaced ? "with the spacing of WCAG" : "with the usual spacing", () => {
    test("every view and pane can be read and used at 320 px", async ({ page }) => {
      await open(page, "/?example=house-wideband-fails");
      if (spaced) await page.evaluate(widen, SPACED);
      for (const view of await page.getByRole("radiogroup", { name: "View" }).getByRole("radio").all()) {
        await view.click();
        await look(page, await view.innerText(), "main");
      }
      // The last view is the drawing: the buttons over it are all within reach.
      const buttons = await page.getByRole("toolbar", { name: "Canvas" }).getByRole("button").all();
      expect(buttons.length).toBeGreaterThan(5);
      for (const button of buttons) await expect(button).toBeInViewport({ ratio: 1 });
      const panes = page.getByRole("navigation", { name: "Panes" }).getByRole("button");
      for (const button of await panes.all()) {
        await button.click();
        await look(page, await button.innerText(), "nav[aria-label=Panes]");
      }
      // The last of them holds the way to all other panes.
      const more = page.locator("[data-region=sheet]");
      const others = await more.locator("[data-pane-body] button:has(svg)").allInnerTexts();
      expect(others.length).toBeGreaterThan(2);
      for (const other of others) {
        await panes.last().click();
        if (!(await more.getByRole("button", { name: other.trim(), exact: true }).isVisible()))
          await panes.last().click();
        await more.getByRole("button", { name: other.trim(), exact: true }).click();
        await look(page, other, "[data-region=sheet]");
      }
    });

    test("every entry of the menus opens what fits on 320 px", async ({ page }) => {
      await open(page, "/?example=house-wideband-fails");
      if (spaced) await page.evaluate(widen, SPACED);
      for (const menu of ["Design menu", "More"]) {
        const button = page.getByRole("banner").getByRole("button", { name: menu, exact: true });
        await button.click();
        await expect(page.getByRole("menuitem").first()).toBeVisible();
        const entries = await page.getByRole("menuitem").allInnerTexts();
        expect(await beyond(page), menu).toEqual([]);
        await page.keyboard.press("Escape");
        // Below its name an entry has its keys.
        const names = entries.map((words) => words.trim().split("\n")[0] ?? "");
        for (const entry of names.filter((name) => OPENS.test(name))) {
          await button.click();
          await page.getByRole("menuitem", { name: entry }).click();
          await expect(page.getByRole("dialog"), entry).toBeVisible();
          expect(await beyond(page), entry).toEqual([]);
          await page.keyboard.press("Escape");
          await expect(page.getByRole("dialog"), entry).toHaveCount(0);
        }
      }
    });

    /** Nothing is cut off; axe looks where only the width is another than at a desk. */
    async function look(page: Page, where: string, within: string): Promise<void> {
      await expect(page.locator(within).first(), where).toBeVisible();
      expect(await beyond(page), where).toEqual([]);
      if (!spaced) await expectNoBarriers(page, where, within);
    }
  });

/** Entries that open a dialog of the page; the others ask for a file, print, or turn to a pane. */
const OPENS = /^(?!Open a file|Restore|Print|Find the fault)(.*…|Help)$/;

/** Runs in the page; its policy takes no style elements. */
function widen(css: string): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets.push(sheet);
}

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
      const isCut =
        element.matches("button, [role=tab]") &&
        element.textContent !== "" &&
        element.scrollWidth > element.clientWidth + 2;
      if (box.left < -1 || box.right > innerWidth + 1 || isCut)
        found.push(
          `${element.tagName} ${element.getAttribute("aria-label") ?? element.textContent?.slice(0, 40)}`,
        );
    }
    return found;
  });
}
