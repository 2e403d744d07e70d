/** For everyone: where the focus is (WCAG 2.2, 2.4.3, 2.4.7), and what is read out (4.1.3). */
import type { Page } from "@playwright/test";
import { card, cards, open, showPane, verdict } from "./app.ts";
import { DIALOGS } from "./dialogs.ts";
import { expect, test } from "./test.ts";

const HOUSE = "/?example=house-wideband-fails";

/** What has the focus, by its role or tag; "body" where nothing has it. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return "body";
    return at.getAttribute("role") ?? at.tagName.toLowerCase();
  });
}

/** What is on the drawing, by the number of its cards in the store of the page: those in view. */
async function expectFocus(page: Page): Promise<void> {
  await expect.poll(() => focused(page), { message: "the focus rests on the bare page" }).not.toBe("body");
}

test("after every dialog the focus is back where it came from, and no key deletes anything", async ({
  page,
}) => {
  test.slow();
  await open(page, HOUSE);
  await card(page, "Outlet bedroom 2").click({ position: { x: 40, y: 8 } });
  const before = await cards(page).count();
  for (const [name, opened] of Object.entries(DIALOGS)) {
    await opened(page);
    await expect(page.getByRole("dialog"), name).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog"), name).toHaveCount(0);
    await expect.poll(() => focused(page), { message: name }).toBe("button");
    await page.keyboard.press("Backspace");
    await page.keyboard.press("Delete");
    await expect(cards(page), name).toHaveCount(before);
  }
});

test("every command can be taken and given up by keys without losing the focus", async ({ page }) => {
  test.slow();
  await open(page, HOUSE);
  await page.getByRole("button", { name: "Help" }).click();
  const printed = page.getByRole("dialog").getByRole("table").locator("kbd");
  await expect(printed.first()).toBeVisible();
  const keys = await printed.allInnerTexts();
  expect(keys.length).toBeGreaterThan(20);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  for (const key of keys) {
    await page.getByRole("group", { name: "Canvas", exact: true }).focus();
    await page.keyboard.press(asPressed(key));
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog"), key).toHaveCount(0);
    await expect.poll(() => focused(page), { message: key }).not.toBe("body");
  }
});

/** As the help prints it, in the words of the driver. */
function asPressed(printed: string): string {
  const names: Readonly<Record<string, string>> = {
    "←": "ArrowLeft",
    "→": "ArrowRight",
    "↑": "ArrowUp",
    "↓": "ArrowDown",
    Esc: "Escape",
    Del: "Delete",
    Ctrl: "Control",
    "+": "+",
  };
  return printed
    .split(/(?<=\w)\+/)
    .map((key) => names[key] ?? (key.length === 1 ? key.toLowerCase() : key))
    .join("+");
}

test("deleting leaves the focus at what fed the part, also at the end of all", async ({ page }) => {
  await open(page, HOUSE);
  await card(page, "TV bedroom 3").click({ position: { x: 30, y: 12 } });
  await page.keyboard.press("Delete");
  await expect(page.locator(":focus")).toHaveAccessibleName(/^Outlet bedroom 3/);
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("Delete");
  await expect(cards(page)).toHaveCount(0);
  await expectFocus(page);
});

test("what folds away or is pressed beside hands the focus on", async ({ page }) => {
  await open(page, HOUSE);
  await showPane(page, "Verdict");
  await verdict(page, "TV bedroom 1").click();
  await page.keyboard.press("Delete");
  await expect(verdict(page, "TV bedroom 1")).toHaveCount(0);
  await expectFocus(page);
  await page.getByRole("heading", { name: "Receivers" }).click();
  await expectFocus(page);
  await page.keyboard.press("ControlOrMeta+z");
  await expect(verdict(page, "TV bedroom 1")).toBeVisible();
});

test("keys go along the wires, and to cards that lie out of view", async ({ page }) => {
  await open(page, HOUSE);
  await card(page, "Dish").focus();
  await page.keyboard.press("Alt+ArrowRight");
  await expect(page.locator(":focus")).toHaveAccessibleName(/^From Dish to LNB: /);
  await page.keyboard.press("Alt+ArrowRight");
  await expect(page.locator(":focus")).toHaveAccessibleName(/^LNB, /);
  await page.keyboard.press("Alt+ArrowLeft");
  await expect(page.locator(":focus")).toHaveAccessibleName(/^From Dish to LNB: /);

  for (let times = 0; times < 8; times++) await page.keyboard.press("+");
  await page.getByRole("group", { name: "Canvas", exact: true }).focus();
  await page.keyboard.press("Alt+ArrowRight");
  const met = new Set<string>();
  // What lies out of view is brought into it first, and takes the focus some frames later.
  for (
    let id = await focusedNext(page, null);
    id !== null && !met.has(id);
    id = await focusedNext(page, id)
  ) {
    met.add(id);
    await expect(page.locator(":focus")).toBeInViewport();
    await page.keyboard.press("Alt+ArrowDown");
  }
  // The example has 21 parts.
  expect(met.size).toBeGreaterThanOrEqual(20);
});

test("an edit is read out once, with what became of the receivers", async ({ page }) => {
  await page.addInitScript(listen);
  await open(page, HOUSE);
  await card(page, "Outlet bedroom 2").click({ position: { x: 40, y: 8 } });
  await heard(page);

  await page.keyboard.press("Delete");
  expect(await heard(page)).toEqual([
    expect.stringMatching(/^“Outlet bedroom 2” deleted\..* receivers? works?; lost: “TV bedroom 2”\.$/),
  ]);
  await page.keyboard.press("ControlOrMeta+z");
  expect(await heard(page)).toEqual([
    expect.stringMatching(
      /^Undone: “Outlet bedroom 2” deleted\. 3 of 7 receivers work; gained: “TV bedroom 2”\.$/,
    ),
  ]);
  await page.keyboard.press("ControlOrMeta+Shift+z");
  expect(await heard(page)).toEqual([expect.stringMatching(/^Redone: “Outlet bedroom 2” deleted\./)]);
  await page.keyboard.press("ControlOrMeta+z");
  await heard(page);

  // A key on a selected card: the library’s own words in pixels are not heard beside ours.
  await card(page, "Outlet bedroom 2").click({ position: { x: 40, y: 8 } });
  await page.keyboard.press("ArrowDown");
  expect(await heard(page)).toEqual(["“Outlet bedroom 2” moved."]);

  // Also from another pane.
  await showPane(page, "Part");
  const name = page.locator("[data-region=side]").getByRole("textbox").first();
  await name.fill("Outlet back room");
  await name.press("Enter");
  expect(await heard(page)).toEqual(["“Outlet bedroom 2” renamed to “Outlet back room”."]);
});

declare global {
  // biome-ignore lint/style/useConsistentTypeDefinitions: only an interface adds to one that exists
  interface Window {
    heard: string[];
  }
}

/** Runs in the page: writes down what a screen reader would be told by live regions (WAI-ARIA 1.2). */
function listen(): void {
  window.heard = [];
  const regionOf = (node: Node | null): Element | null => {
    for (let at = node instanceof Element ? node : (node?.parentElement ?? null); at; at = at.parentElement) {
      const live = at.getAttribute("aria-live");
      if (live === "off") return null;
      if (live !== null || ["status", "alert", "log"].includes(at.getAttribute("role") ?? "")) return at;
    }
    return null;
  };
  const watch = () =>
    new MutationObserver((changes) => {
      const regions = new Set(changes.map(({ target }) => regionOf(target)));
      for (const region of regions) if (region?.textContent) window.heard.push(region.textContent);
    }).observe(document.body, { childList: true, subtree: true, characterData: true });
  document.addEventListener("DOMContentLoaded", watch);
}

/** What was read out since the last time; waits until nothing more comes. */
async function heard(page: Page): Promise<readonly string[]> {
  await page.waitForTimeout(1200);
  const said = await page.evaluate(() => window.heard.splice(0));
  // The browser may speak of its storage at the first edit: that is another matter.
  const own = said.map((text) => text.replace(/ ?This browser .*? matters\./, ""));
  return own.filter((text) => text !== "");
}

/** The card or wire that has the focus once it has moved on; null where it stays for three seconds. */
async function focusedNext(page: Page, before: string | null): Promise<string | null> {
  for (const end = Date.now() + 3000; Date.now() < end; await page.waitForTimeout(50)) {
    const id = await page.locator(":focus").getAttribute("data-id");
    if (id !== null && id !== before) return id;
  }
  return null;
}
