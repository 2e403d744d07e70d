/** The table of satellite planes: ticked on site, on the screen or on paper, it says what is seen. */
import { fromMenu, open } from "./app.ts";
import { expect, test } from "./test.ts";

test("ticks in the table of planes arrive in what is seen, and the table can be printed with them", async ({
  page,
}) => {
  await page.addInitScript(() => {
    // Paper stands in the page only while the browser prints: kept here as it was then.
    window.print = () => {
      window.dispatchEvent(new Event("beforeprint"));
      document.documentElement.dataset.printed = document.querySelector(".paper")?.textContent ?? "";
      window.dispatchEvent(new Event("afterprint"));
    };
  });
  await open(page, "/?example=block-multiswitch");
  await fromMenu(page, "Find the fault…");
  const search = page.getByRole("tabpanel").getByRole("button", { name: "Find the fault", exact: true });
  await expect(search).toBeDisabled();
  await page.getByText("Satellite planes, one transponder each").click();
  const table = page.getByRole("table").filter({ hasText: "Plane and transponder" });
  // Two polarisations in two halves of the band (EN 61319-1): four planes, each with a transponder to try.
  await expect(
    table.getByRole("rowheader", { name: /try 1[0-2]\s\d{3} MHz, (horizontal|vertical)$/ }),
  ).toHaveCount(4);

  const box = (state: string) =>
    table.getByRole("button", { name: `Satellite receiver flat 2, high horizontal: ${state}` });
  await box("not tried").click();
  await expect(page.getByText("What is seen: 1 works").first()).toBeVisible();
  await expect(search).toBeDisabled();
  await box("works").click();
  await expect(box("fails")).toHaveAttribute("aria-pressed", "true");
  await expect(page.getByText(/^What is seen: 1 fails/).first()).toBeVisible();
  await expect(search).toBeEnabled();
  // The arrow keys go from box to box.
  await box("fails").focus();
  await page.keyboard.press("ArrowRight");
  await expect(
    table.getByRole("button", { name: "Satellite receiver flat 3, high horizontal: not tried" }),
  ).toBeFocused();

  await page.getByRole("button", { name: "Print table" }).click();
  const paper = page.locator("html");
  await expect(paper).toHaveAttribute("data-printed", /✓ works, ✗ fails, ☐ not tried/);
  // One box is ticked; the sign stands once in the line above the table as well.
  const printed = (await paper.getAttribute("data-printed")) ?? "";
  expect(printed.match(/✗/g)).toHaveLength(2);
  expect(printed).toContain("Satellite receiver flat 2");

  await box("fails").click();
  await expect(box("not tried")).toHaveAttribute("aria-pressed", "false");
  await expect(search).toBeDisabled();
});
