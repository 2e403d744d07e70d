/** For everyone: rules of WCAG that a machine can check, both themes, both layouts; and on paper. */
import type { Page } from "@playwright/test";
import { card, fromMenu, open, wire } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { DIALOGS, PANES } from "./dialogs.ts";
import { expect, test } from "./test.ts";

// Each look goes through a whole page or pane, twice.
test.describe.configure({ timeout: 360_000 });

test("the page has no barriers as it opens", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  await expect(page.getByRole("region", { name: "Causes" })).toBeVisible();
  await expectNoBarriers(page, "the page as it opens");
});

test("no pane has barriers", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  for (const [name, shown] of Object.entries(PANES)) {
    const item = name === "spectrum" ? wire(page, "UHF aerial", "Loft amplifier") : card(page, "UHF aerial");
    await item.focus();
    await page.keyboard.press("Enter");
    await expectNoBarriers(page, name, await shown(page));
  }
});

test("no dialog has barriers", async ({ page }) => {
  await open(page, "/?example=house-universal");
  for (const [name, opened] of Object.entries(DIALOGS)) {
    await opened(page);
    await expect(page.getByRole("dialog")).toBeVisible();
    await expectNoBarriers(page, name, "[role=dialog]");
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog")).toHaveCount(0);
  }
});

test("the empty canvas has no barriers", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "New design");
  await expect(page.getByText("Nothing here yet").first()).toBeVisible();
  await expectNoBarriers(page, "empty");
});

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });

  const panes = ["Parts", "Verdict", "Part", "Chain", "Cures", "Faults", "Spectrum"];

  test("no pane has barriers", async ({ page }) => {
    await open(page, "/?example=house-wideband-fails");
    for (const pane of panes) {
      await openInSheet(page, pane);
      await expectNoBarriers(page, pane, "[data-region=sheet]");
    }
  });

  test("the drawing has no barriers, and everything is as large as a fingertip", async ({ page }) => {
    await open(page, "/?example=house-wideband-fails");
    await expectNoBarriers(page, "canvas");
    await openInSheet(page, "Spectrum");
    const tooSmall = await page.locator("button:visible, [role=tab]:visible").evaluateAll((all) =>
      all
        .map((one) => {
          const { width, height } = one.getBoundingClientRect();
          return { name: one.getAttribute("aria-label") ?? one.textContent, width, height };
        })
        .filter(({ width, height }) => width < 43.5 || height < 43.5),
    );
    expect(tooSmall, "smaller than a fingertip").toEqual([]);
  });
});

/** On a tablet the verdict may stand open already: a second tap would close it. */
async function openInSheet(page: Page, pane: string): Promise<void> {
  const button = page
    .getByRole("navigation", { name: "Panes" })
    .getByRole("button", { name: new RegExp(`^${pane}( \\d|$)`) });
  if ((await button.getAttribute("aria-expanded")) !== "true") await button.tap();
  await expect(page.locator("[data-region=sheet]")).toBeVisible();
}

test("what goes to the printer is the drawing, the verdicts and the findings, and nothing of the tools", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  await page.emulateMedia({ media: "print" });
  const paper = page.locator(".paper");
  await expect(paper.getByRole("heading", { level: 1 })).toBeVisible();
  await expect(paper.getByRole("img")).toBeVisible();
  await expect(paper.locator(".strip-hit").first()).toBeVisible();
  await expect(paper).toContainText("TV living room: fails");
  await expect(paper).toContainText("share 4");
  await expect(paper).toContainText(/estimate/i);
  await expect(page.getByRole("button", { name: "Share" })).toBeHidden();
  await expect(page.getByRole("toolbar", { name: "Canvas" })).toBeHidden();
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await expect(paper).toHaveCount(0);

  // As the printer gets it: on paper of A4, the whole sheet takes a few pages.
  const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
  const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
  expect(pages).toBeGreaterThanOrEqual(1);
  expect(pages).toBeLessThanOrEqual(6);
});
