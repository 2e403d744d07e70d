import { expect, test } from "@playwright/test";

test("the app opens with an example and without a word of complaint in the console", async ({ page }) => {
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });

  await page.goto("/?example=house-universal");
  await expect(page).toHaveTitle(/Downlead/);
  await expect(page.locator(".react-flow__node").first()).toBeVisible();
  await expect(page.locator(".react-flow__edge").first()).toBeAttached();
  // The example is the one that works: a verdict of all its receivers means that it was read and evaluated.
  await expect(page.getByText(/^All \d+ receivers work/)).toBeVisible();
  expect(complaints).toEqual([]);
});
