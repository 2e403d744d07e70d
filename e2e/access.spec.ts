/** For everyone: rules of WCAG that a machine can check, both themes, both layouts; and on paper. */
import { card, fromMenu, open, showAll, wire } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

test("a wide screen has no barriers", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  await expect(page.getByRole("region", { name: "Causes" })).toBeVisible();
  await expectNoBarriers(page, "verdict");
  await card(page, "UHF aerial").click();
  await expectNoBarriers(page, "part", "[data-region=side]");
  await page.getByRole("tab", { name: "Chain" }).click();
  await expectNoBarriers(page, "chain", "[data-region=side]");
  await showAll(page);
  await wire(page, "UHF aerial", "Loft amplifier").focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("region", { name: "Carriers" })).toBeVisible();
  await expectNoBarriers(page, "spectrum", ".spectrum");
});

test("dialogs and the empty canvas have no barriers", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "Designs and examples…");
  await expectNoBarriers(page, "designs", "[role=dialog]");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Share" }).click();
  await expect(page.getByText(/^\d+ characters/)).toBeVisible();
  await expectNoBarriers(page, "share", "[role=dialog]");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Help" }).click();
  await expectNoBarriers(page, "help", "[role=dialog]");
  await page.keyboard.press("Escape");
  await fromMenu(page, "New, empty");
  await expect(page.getByText("Nothing here yet")).toBeVisible();
  await expectNoBarriers(page, "empty");
});

test.describe("on a tablet", () => {
  test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });

  test("a narrow screen has no barriers", async ({ page }) => {
    await open(page, "/?example=house-wideband-fails");
    await expectNoBarriers(page, "canvas");
    for (const pane of ["Parts", "Verdict", "Part", "Chain", "Cures", "Faults", "Spectrum"]) {
      await page
        .getByRole("navigation", { name: "Panes" })
        .getByRole("button", { name: new RegExp(`^${pane}( \\d|$)`) })
        .tap();
      await expectNoBarriers(page, pane, "[data-region=sheet]");
    }
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
