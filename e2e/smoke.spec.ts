import { expect, test } from "./test.ts";

test("the app opens with an example", async ({ page }) => {
  await page.goto("/?example=house-universal");
  await expect(page).toHaveTitle(/Downlead/);
  await expect(page.locator(".react-flow__node").first()).toBeVisible();
  await expect(page.locator(".react-flow__edge").first()).toBeAttached();
  // The example is the one that works: a verdict of all its receivers means that it was read and evaluated.
  await expect(page.getByText(/^All \d+ receivers work/)).toBeVisible();
});

test("the canvas library's name stands in the lower right corner and leads to a tab of its own", async ({
  page,
}) => {
  await page.goto("/?example=house-universal");
  const link = page.getByRole("link", { name: "React Flow attribution" });
  await expect(link).toHaveAttribute("target", "_blank");
  await expect(link).toHaveAttribute("rel", "noopener noreferrer");
  const [name, canvas] = [await link.boundingBox(), await page.locator(".react-flow").boundingBox()];
  const right = (box: typeof name) => (box ? box.x + box.width : Number.NaN);
  const bottom = (box: typeof name) => (box ? box.y + box.height : Number.NaN);
  expect(Math.abs(right(name) - right(canvas))).toBeLessThan(10);
  expect(Math.abs(bottom(name) - bottom(canvas))).toBeLessThan(10);
  expect(name?.height).toBeLessThan(20);
});
