/** Step by step along the chain: the signal down to a socket, the supply up to the roof, a level back to its source. */
import type { Locator, Page } from "@playwright/test";
import { card, open, showAll } from "./app.ts";
import { expect, test } from "./test.ts";

const walk = (page: Page): Locator => page.getByRole("region", { name: "Walk", exact: true });
const steps = (page: Page): Locator => stepsIn(page, walk(page));

/** The rows of the table of steps: each names a part. */
function stepsIn(page: Page, pane: Locator): Locator {
  return pane.getByRole("row").filter({ has: page.getByRole("rowheader") });
}

/** Opens the services of a receiver in the verdict. */
async function servicesOf(page: Page, label: string): Promise<Locator> {
  await page.getByRole("button", { name: `Services of ${label}` }).click();
  return page
    .getByRole("region", { name: "Receivers" })
    .getByRole("listitem")
    .filter({ has: page.getByText(label, { exact: true }) });
}

/**
 * Television and the wideband feed meet in the diplexer, and from there on share frequencies (470 to 694 MHz lies
 * within 300 to 2350 MHz): common practice, no source.
 */
test("a signal is walked by keys from the roof to the socket, and the step where it is lost is marked", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await showAll(page);
  const own = await servicesOf(page, "TV living room");
  const start = own.getByRole("button", { name: "Walk the signal" });
  await start.click();
  await expect(walk(page).getByRole("combobox", { name: "To", exact: true })).toHaveValue(/tv1/);
  await expect(card(page, "Diplexer living room")).toContainText("Lost here");
  await expect(page.locator(".walk-trouble")).toHaveCount(1);
  await expect(walk(page).getByText(/Lost here: Behind “Diplexer living room”/)).toBeVisible();
  // Off the way nothing is numbered: another room, another signal.
  await expect(card(page, "Drop bedroom 2").locator(".walk-mark")).toHaveCount(0);
  await expect(card(page, "FM aerial").locator(".walk-mark")).toHaveCount(0);

  await page.keyboard.press("Home");
  await expect(walk(page).getByText(/^Step 1 of /)).toBeVisible();
  await expect(card(page, "UHF aerial")).toContainText("you are here");
  const places = [
    "UHF aerial",
    "Loft amplifier",
    "Diplexer living room",
    "Drop living room",
    "Outlet living room",
  ];
  for (const [i, place] of places.entries()) {
    await expect(card(page, place)).toContainText(`Step ${i + 1}, you are here`);
    await expect(steps(page).nth(i)).toHaveAttribute("aria-current", "step");
    await page.keyboard.press("ArrowRight");
  }
  await expect(card(page, "TV living room")).toContainText("you are here");
  await page.keyboard.press("ArrowRight");
  await expect(card(page, "TV living room")).toContainText("you are here");
  await page.keyboard.press("ArrowLeft");
  await expect(card(page, "Outlet living room")).toContainText("you are here");

  await page.keyboard.press("Escape");
  await expect(walk(page)).toHaveCount(0);
  await expect(page.locator(".walk-mark")).toHaveCount(0);
  await expect(start).toBeFocused();
});

/** Ohm's law, and the least voltage that selects horizontal: 15 V, nominal (EN 61319-1, from memory). */
test("a supply is walked from the receiver up to the roof with its volts", async ({ page }) => {
  await open(page, "/?example=long-steel-drop");
  const own = await servicesOf(page, "Receiver");
  await own.getByRole("button", { name: "Walk the supply" }).click();
  await expect(steps(page).first()).toBeVisible();
  const read = async (part: string) => {
    const cells = await steps(page)
      .filter({ has: page.getByRole("rowheader", { name: part }) })
      .getByRole("cell")
      .allInnerTexts();
    const [vertical, horizontal, , milliamps, takes, ohms] = cells.slice(1).map((text) => Number(text));
    return { vertical, horizontal, milliamps, takes, ohms };
  };
  const drop = await read("Long drop");
  const converter = await read("LNB");
  expect(Math.abs(Number(drop.milliamps) * 0.001 * Number(drop.ohms) - Number(drop.takes))).toBeLessThan(
    0.11,
  );
  expect(Number(drop.takes)).toBeGreaterThan(1);
  expect(Math.abs(Number(drop.horizontal) - Number(drop.takes) - Number(converter.horizontal))).toBeLessThan(
    0.4,
  );
  expect(Number(converter.horizontal)).toBeLessThan(15);
  expect(Number(converter.vertical)).toBeLessThan(Number(converter.horizontal));

  // On the canvas the roof is at the left: to the left is up.
  await page.keyboard.press("Home");
  await expect(card(page, "Receiver")).toContainText("Step 1, you are here");
  await page.keyboard.press("End");
  await expect(card(page, "LNB")).toContainText("you are here");
  await expect(walk(page).getByRole("region", { name: "Commands" })).toContainText("Not done");
  await walk(page).getByRole("button", { name: "Signal", exact: true }).click();
  await expect(walk(page).getByRole("combobox", { name: "To", exact: true })).toBeVisible();
});

test("a level in the verdict leads back to its source, step by step", async ({ page }) => {
  await open(page, "/?example=house-universal");
  const own = await servicesOf(page, "TV bedroom 2");
  const figure = own.getByRole("button", { name: /evel of .*, how it came about$/ }).first();
  const read = Number((await figure.innerText()).match(/[\d.]+/)?.[0]);
  await figure.click();
  const origin = page.getByRole("region", { name: "How this level came about" });
  await expect(origin.getByRole("heading", { name: "How this level came about" })).toBeFocused();
  const rows = stepsIn(page, origin);
  await expect(rows.first().getByRole("rowheader")).toHaveText("UHF aerial");

  // A cable only takes, an amplifier gives; and what arrives is what the verdict says.
  const level = async (part: string) =>
    Number(
      await rows
        .filter({ has: page.getByRole("rowheader", { name: part, exact: true }) })
        // Its number, what it does, and the level.
        .getByRole("cell")
        .nth(2)
        .innerText(),
    );
  const [source, amplified, dropped, arrives] = [
    await level("UHF aerial"),
    await level("Loft amplifier"),
    await level("Drop bedroom 2"),
    await level("Outlet bedroom 2"),
  ];
  expect(amplified).toBeGreaterThan(source);
  expect(dropped).toBeLessThan(amplified);
  expect(Math.abs(arrives - read)).toBeLessThanOrEqual(0.5);

  await rows.first().getByRole("button", { name: "UHF aerial" }).click();
  await expect(card(page, "UHF aerial")).toHaveClass(/selected/);
  await origin.getByRole("button", { name: /^Close/ }).click();
  await expect(origin).toHaveCount(0);
});
