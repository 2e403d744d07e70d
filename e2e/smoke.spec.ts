import { expect, test } from "./test.ts";

test("the app opens with an example", async ({ page }) => {
  await page.goto("/?example=house-universal");
  await expect(page).toHaveTitle(/Downlead/);
  await expect(page.locator(".react-flow__node").first()).toBeVisible();
  await expect(page.locator(".react-flow__edge").first()).toBeAttached();
  // The example is the one that works: a verdict of all its receivers means that it was read and evaluated.
  await expect(page.getByText(/^All \d+ receivers work/)).toBeVisible();
});
