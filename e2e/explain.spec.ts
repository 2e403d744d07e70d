/** Why a finding is one: in two voices and for the meter; and the book of all rules. */
import { findings, fromMenu, open, ownDesign, titleOf } from "./app.ts";
import { expect, test } from "./test.ts";

test.use({ permissions: ["clipboard-read", "clipboard-write"] });

test("a finding explains itself to the customer, to the trade and to the meter, and leads into the rule book", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  // It follows from the wideband LNB, and lies folded beneath it.
  await findings(page)
    .getByText(/Because of this: 4 receivers/)
    .click();
  const finding = findings(page)
    .getByRole("listitem")
    .filter({ hasText: /share \d+ to \d+ MHz behind “Diplexer living room”\. 5 TV/ })
    .last();
  const why = finding.getByRole("button", { name: /^Why\?/ });
  await expect(why).toHaveAttribute("aria-expanded", "false");
  await why.click();
  await expect(why).toHaveAttribute("aria-expanded", "true");

  const below = (heading: string) =>
    finding.getByRole("heading", { name: heading }).locator("xpath=following-sibling::*[1]");
  const customer = (await below("For the customer").getByRole("paragraph").textContent()) ?? "";
  const trade = (await below("For the trade").textContent()) ?? "";
  const measure = (await below("To confirm it on site").textContent()) ?? "";
  // Whoever is not of the trade reads no units and no figures of it.
  expect(customer).not.toMatch(/MHz|dB|C\/N|multiplex|transponder/);
  expect(customer.length).toBeGreaterThan(40);
  expect(trade).toMatch(/\d dB/);
  expect(measure).toMatch(/meter|measure|spectrum/i);
  expect(new Set([customer, trade, measure]).size).toBe(3);
  await expect(finding.getByRole("figure")).toContainText("Behind “Diplexer living room”");
  await expect(finding.locator(".finding-mark").first()).toBeAttached();

  await finding.getByRole("button", { name: "Copy the sentence for the customer" }).click();
  await expect(page.getByText("The sentence is on the clipboard.").first()).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(customer);

  await finding.getByRole("button", { name: /^Rule: / }).click();
  const book = page.getByRole("dialog", { name: /Rule book/i });
  await expect(
    book.getByRole("article", { name: "Two signals share frequencies on one wire" }),
  ).toBeVisible();
  expect(new URL(page.url()).searchParams.get("rules")).toBe("shared-frequencies");
  await expect(book.getByText(/^In the open design: \d+ findings/)).toBeVisible();
  await book.getByRole("button", { name: "Close" }).click();
  expect(new URL(page.url()).searchParams.has("rules")).toBe(false);
});

test("an address opens the rule book at a rule, and an example of it opens beside the present design", async ({
  page,
}) => {
  await ownDesign(page, "Mine");
  await page.goto("/?rules=switched-output-shared");
  await expect(titleOf(page)).toHaveValue("Mine");
  const book = page.getByRole("dialog", { name: /Rule book/i });
  const rule = book.getByRole("article", { name: "A switched output is shared by two receivers" });
  await expect(rule).toBeVisible();
  await expect(rule.getByText("No finding from this rule in the open design.")).toBeVisible();
  await expect(rule.getByRole("heading", { name: /^An example that does not: / })).toBeVisible();

  await rule.getByRole("button", { name: "Open this example as a design of its own" }).first().click();
  await expect(book).toHaveCount(0);
  await expect(titleOf(page)).not.toHaveValue("Mine");
  const why = findings(page).getByRole("button", { name: /^Why\?/, expanded: true });
  await expect(why).toHaveCount(1);
  await expect(findings(page).getByRole("heading", { name: "For the customer" })).toBeVisible();

  // An example is not stored before it is changed; what was open before is still there, as it was.
  await expect(page.getByRole("banner").getByRole("status")).toHaveText("Not changed yet");
  await fromMenu(page, "Designs and examples…");
  await page
    .getByRole("dialog", { name: "Designs" })
    .getByRole("button", { name: /^Mine / })
    .click();
  await expect(titleOf(page)).toHaveValue("Mine");
  await expect(page.getByText("All 7 receivers work.", { exact: true }).first()).toBeVisible();
});

test("an address that names no rule says so and shows the book", async ({ page }) => {
  await open(page, "/?example=house-universal&rules=nonsense");
  const book = page.getByRole("dialog", { name: /Rule book/i });
  await expect(book.getByText("There is no rule “nonsense”.")).toBeVisible();
  await book.getByRole("button", { name: "A loop in the chain" }).click();
  await expect(book.getByRole("article", { name: "A loop in the chain" })).toBeVisible();
  await expect(book.getByText("There is no rule")).toHaveCount(0);
});
