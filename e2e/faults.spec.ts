/** Faults forwards and backwards: what one would do, and which one explains what is seen. */
import { card, download, fromMenu, open, showPane } from "./app.ts";
import { expect, test } from "./test.ts";

/** A loft amplifier without mains gives no gain to the rooms that hang on it; satellite goes past it. */
test("what would fail with one part is shown, and the design stays as it is", async ({ page }) => {
  await open(page, "/?example=house-universal");
  const before = await download(page);
  await card(page, "Loft amplifier").click();
  await page.getByRole("button", { name: "What if this one fails?" }).click();
  await expect(page.getByRole("combobox", { name: "What if something fails at" })).toHaveValue("amp");
  await page.getByRole("button", { name: /mains.*“Loft amplifier”|“Loft amplifier”.*mains/i }).click();
  const preview = page.getByRole("region", { name: "Preview" });
  await expect(preview).toContainText("What if: ");
  await expect(preview.getByRole("button", { name: "Apply" })).toHaveCount(0);
  const lost = page.getByRole("group", { name: "Who loses what" });
  await expect(lost.getByRole("rowheader", { name: "Receivers" })).toBeVisible();
  await expect(lost.getByRole("row", { name: /^TV living room Terrestrial TV/ })).toBeVisible();
  await expect(lost.getByRole("row", { name: /Satellite/ })).toHaveCount(0);
  await showPane(page, "Verdict");
  await expect(page.getByText("All 7 receivers work.", { exact: true })).toHaveCount(0);

  expect((await download(page)).text).toBe(before.text);
  await preview.getByRole("button", { name: /^Close/ }).click();
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
});

/** What works clears all that it shares with what fails: only the branch of that room is left to suspect. */
test("from one set that fails, while all others work, the search arrives at the branch of that set", async ({
  page,
}) => {
  await open(page, "/?example=house-universal");
  await fromMenu(page, "Find the fault…");
  await expect(page.getByText("Mark at least one service that fails.").first()).toBeVisible();
  const search = page.getByRole("tabpanel").getByRole("button", { name: "Find the fault", exact: true });
  await expect(search).toBeDisabled();
  await page.getByRole("button", { name: /^TV bedroom 2, .* fails$/ }).click();
  await page.getByRole("button", { name: "All other receivers work" }).click();
  await expect(page.getByText("What is seen: 1 fails, 6 work").first()).toBeVisible();
  await search.click();

  const suspected = page.getByRole("list", { name: "Suspected faults" }).locator(":scope > li");
  const titles = suspected.filter({ hasText: "explains all of it" }).locator("strong");
  await expect(page.getByRole("heading", { name: /^\d+ faults? would explain all of it/ })).toBeVisible({
    timeout: 40_000,
  });
  await expect(titles).not.toHaveCount(0);
  for (const title of await titles.allInnerTexts()) expect(title).toMatch(/bedroom 2/);

  // A reading rules some out, and can be taken back.
  const next = page.getByRole("region", { name: "Best next measurement" });
  await expect(next).toBeVisible({ timeout: 40_000 });
  const heading = page.getByRole("heading", { name: /would explain all of it/ });
  const count = async () => Number(/^(\d+) faults?/.exec(await heading.innerText())?.[1]);
  const many = await count();
  await next.getByRole("listitem").first().getByRole("button").click();
  await expect(page.getByRole("heading", { name: "Read so far" })).toBeVisible();
  await expect(search).toBeVisible({ timeout: 40_000 });
  await expect.poll(count).toBeLessThan(many);
  await page.getByRole("button", { name: /^Remove reading: / }).click();
  await expect.poll(count, { timeout: 40_000 }).toBe(many);
});
