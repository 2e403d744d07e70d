/** A phone, upright and on its side: the chain of one receiver, the house as cells, and every command within reach. */
import { readdirSync } from "node:fs";
import type { Locator, Page } from "@playwright/test";
import { exampleOf } from "../src/design/examples.ts";
import { encodeLink } from "../src/design/link.ts";
import { open, titleOf } from "./app.ts";
import { expectNoBarriers } from "./barriers.ts";
import { expect, test } from "./test.ts";

const EXAMPLES = readdirSync(new URL("../src/design/examples/", import.meta.url)).map((name) =>
  name.replace(".json", ""),
);

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

const way = (page: Page) => page.getByRole("list", { name: /^Way of the signal to/ });
const chips = (page: Page) => page.getByRole("radiogroup", { name: "Chain of" }).getByRole("radio");
const view = (page: Page, name: string) =>
  page.getByRole("radiogroup", { name: "View" }).getByRole("radio", { name });
const tab = (page: Page, name: RegExp) =>
  page.getByRole("navigation", { name: "Panes" }).getByRole("button", { name });
const result = (page: Page) => page.getByRole("complementary", { name: "Result" });
const strips = (page: Page) => way(page).getByRole("button", { name: /^Spectrum from/ });

/** Strips of cards are wide, those beside a name or a pill are small. */
const wideStrips = async (page: Page) => {
  const sizes = await strips(page).evaluateAll((all) =>
    all.map((one) => {
      const { width, height } = one.getBoundingClientRect();
      return { width, height };
    }),
  );
  return sizes.filter((size) => size.width > 200);
};

const beyond = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, scrollHeight } = document.scrollingElement ?? document.documentElement;
    return { beside: scrollWidth - innerWidth, below: scrollHeight - innerHeight };
  });

/** Texts smaller than 10 px on the screen, and what sticks out of the window to the side. */
const faults = (page: Page) =>
  page.evaluate(() => {
    const found: string[] = [];
    for (const element of document.querySelectorAll("main *")) {
      const text = [...element.childNodes].some(
        (n) => n.nodeType === Node.TEXT_NODE && n.textContent?.trim(),
      );
      const box = element.getBoundingClientRect();
      if (!text || box.width <= 1 || box.height <= 1) continue;
      const style = getComputedStyle(element);
      if (Number.parseFloat(style.fontSize) < 10) found.push(`small: ${element.textContent}`);
      // What scrolls sideways inside itself may stick out.
      if (!element.closest('[role="radiogroup"]') && box.right > innerWidth + 0.5)
        found.push(`beyond: ${element.textContent}`);
    }
    return found;
  });

async function inSight(button: Locator): Promise<void> {
  await button.scrollIntoViewIfNeeded();
  await expect(button).toBeInViewport({ ratio: 0.95 });
}

test("every example opens with a chain that is legible and stays within the screen", async ({ page }) => {
  for (const key of EXAMPLES) {
    await open(page, `/?example=${key}`);
    await expect(way(page)).toBeVisible();
    await expect(strips(page).first()).toBeVisible();
    // 390 px wide, less the edges: what the sketch of the chain showed to be excellent.
    for (const { width, height } of await wideStrips(page)) {
      expect(width, key).toBeGreaterThanOrEqual(350);
      expect(height, key).toBeGreaterThanOrEqual(60);
    }
    expect(await beyond(page), key).toEqual({ beside: 0, below: 0 });
    expect(await faults(page), key).toEqual([]);
  }
});

test("a failing receiver comes first, with its chain in red from where it is lost down to it", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await expect(chips(page).first()).toHaveAccessibleName(/^Fails: TV living room/);
  await expect(chips(page).first()).toBeChecked();
  await expect(chips(page)).toHaveCount(7);
  const steps = way(page).getByRole("listitem");
  await expect(steps.filter({ hasText: "lost here" })).toHaveCount(1);
  await expect(steps.filter({ hasText: "lost here" })).toContainText("Diplexer living room");
  await expect(steps.filter({ hasText: "16 m" })).toHaveCount(1);
  await expect(steps.last()).toContainText("TV living room");
  await expect(steps.last()).toContainText("1 of 6 TV");
  await expect(result(page).getByText("3 of 7 receivers work.", { exact: true }).first()).toBeInViewport({
    ratio: 1,
  });
  await expect(page.getByRole("button", { name: "Find cures", exact: true })).toBeInViewport({ ratio: 1 });
});

test("another receiver is chosen by its chip, by touch and by the arrow keys", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  await chips(page).nth(1).tap();
  await expect(way(page)).toHaveAccessibleName("Way of the signal to TV bedroom 1");
  await chips(page).nth(1).focus();
  await page.keyboard.press("ArrowRight");
  await expect(chips(page).nth(2)).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(way(page)).toHaveAccessibleName("Way of the signal to Wideband receiver living room");
  await expect(chips(page).nth(2)).toBeInViewport({ ratio: 0.9 });
});

test("a card opens its values and a strip its spectrum; closed, the focus goes to a button", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await way(page).getByRole("button", { name: "Loft amplifier", exact: true }).tap();
  const values = page.getByRole("region", { name: "Part", exact: true });
  await expect(values.getByRole("textbox").first()).toHaveValue("Loft amplifier");
  await values.getByRole("button", { name: "Close part" }).tap();
  await expect(values).toHaveCount(0);
  await expect(tab(page, /^Part$/)).toBeFocused();
  await page.getByRole("button", { name: /^Spectrum from UHF aerial to Loft amplifier: TV/ }).tap();
  await expect(page.getByRole("region", { name: "Spectrum" }).first()).toContainText("UHF aerial");
  await expect(result(page).getByText("3 of 7 receivers work.", { exact: true }).first()).toBeInViewport({
    ratio: 1,
  });
});

test("the house as cells: large enough, grouped under what feeds them, each leads to its chain", async ({
  page,
}) => {
  const block = exampleOf("block-multiswitch")?.load();
  if (!block) throw new Error("The example is gone.");
  // Flats by name, and the longest drop made so long that its flat fails.
  const named = {
    ...block,
    parts: block.parts.map((part) => {
      const [, plate, flat] = /^(plate|drop)(\d+)$/.exec(part.id) ?? [];
      if (plate === "plate") return { ...part, options: { ...part.options, dwelling: `Flat ${flat}` } };
      return plate === "drop" && flat === "6"
        ? { ...part, options: { ...part.options, lengthM: 250 } }
        : part;
    }),
  };
  await open(page, `/#${await encodeLink(named)}`);
  await view(page, "Overview").tap();
  const group = page.getByRole("region", { name: "Multiswitch" });
  await expect(group).toContainText("5 of 6 flats work");
  const cells = group.getByRole("toolbar", { name: "Places of Multiswitch" }).getByRole("button");
  await expect(cells).toHaveCount(6);
  for (const cell of await cells.all()) {
    const box = await cell.boundingBox();
    expect(box?.width).toBeGreaterThanOrEqual(44);
    expect(box?.height).toBeGreaterThanOrEqual(44);
  }
  await expect(cells.nth(0)).toHaveAccessibleName("Flat 1: works");
  await expect(cells.nth(5)).toHaveAccessibleName("Flat 6: fails");
  await expect(cells.nth(5)).toHaveText("6");
  expect(await beyond(page)).toEqual({ beside: 0, below: 0 });
  expect(await faults(page)).toEqual([]);
  await cells.nth(5).tap();
  await expect(way(page)).toHaveAccessibleName(/flat 6$/);
});

test("every command of the help is within reach of a thumb", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await page.getByRole("banner").getByRole("button", { name: "More" }).tap();
  await page.getByRole("menuitem", { name: "Help" }).tap();
  const table = page.getByRole("dialog").getByRole("table").last();
  await expect(table.getByRole("row").nth(30)).toBeAttached();
  const named = await table
    .getByRole("row")
    .evaluateAll((rows) =>
      rows.map((row) => row.querySelector("th[scope=row], td")?.textContent?.trim() ?? ""),
    );
  const commands = named.filter((name) => name !== "");
  expect(commands.length).toBeGreaterThan(30);
  await page.keyboard.press("Escape");
  await tab(page, /^More/).tap();
  const more = page.getByRole("region", { name: "More" });
  for (const name of commands) await inSight(more.getByRole("button", { name, exact: true }));
  for (const name of ["Cures", "Faults", "Spectrum", "Parts and wires"])
    await inSight(more.getByRole("button", { name, exact: true }));
  await more.getByRole("button", { name: "Faults", exact: true }).tap();
  await expect(page.getByRole("region", { name: "Faults", exact: true })).toBeVisible();
});

test("the drawing is one press away with all that fails in view, and so is the way back", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await view(page, "Drawing").tap();
  // Four of its seven receivers fail, by one LNB: a box and a cross for each of the four, an outline for the one.
  const boxes = (className: string) =>
    page.locator(className).evaluate((path) => (path.getAttribute("d") ?? "").split("M").length - 1);
  await expect.poll(() => boxes(".plan-failing")).toBe(4);
  expect(await boxes(".plan-cross")).toBe(4);
  expect(await boxes(".plan-culprit")).toBe(1);
  // Small as it is, its wires have their strips: those of the four sources among them, red where two signals meet.
  expect(await page.locator(".plan-layer .strip").count()).toBeGreaterThan(10);
  expect(await page.locator('.plan-layer .strip[data-worst="hit"]').count()).toBeGreaterThan(0);
  for (const shown of [".plan-failing", ".plan-culprit"])
    await expect(page.locator(shown)).toBeInViewport({ ratio: 0.99 });
  await tab(page, /^Chain$/).tap();
  await expect(way(page)).toBeVisible();
});

/** From the verdict of the receiver in the living room, which lacks TV. */
async function walkTheFailingSignal(page: Page): Promise<void> {
  await open(page, "/?example=house-wideband-fails");
  await tab(page, /^Verdict/).tap();
  await page.getByRole("button", { name: "Services of TV living room" }).tap();
  await page
    .getByRole("button", { name: /^Walk the signal/ })
    .first()
    .tap();
}

test("a walk of a signal keeps its buttons in one row and its choices legible", async ({ page }) => {
  await walkTheFailingSignal(page);
  const walk = page.getByRole("region", { name: "Walk" });
  const end = await walk.getByRole("button", { name: "End the walk" }).boundingBox();
  const first = await walk.getByRole("button", { name: "Signal" }).boundingBox();
  expect(Math.abs((end?.y ?? 0) - (first?.y ?? 99))).toBeLessThan(12);
  const clipped = await walk.getByRole("combobox").evaluateAll(
    (all) =>
      all.filter((one) => {
        if (!(one instanceof HTMLSelectElement)) return false;
        const words = document.createElement("canvas").getContext("2d");
        if (!words) return true;
        words.font = getComputedStyle(one).font;
        const text = one.selectedOptions[0]?.text ?? "";
        // Room for the edges and the arrow.
        return words.measureText(text).width > one.clientWidth - 34;
      }).length,
  );
  expect(clipped).toBe(0);
});

test("a walk is marked on the chain, and each step comes into view", async ({ page }) => {
  await walkTheFailingSignal(page);
  const here = way(page).locator('li[aria-current="step"]');
  const card = here.getByRole("button", { name: /Step \d, you are here/ });
  // It begins where the signal is lost.
  await expect(card).toHaveAccessibleName(/^Diplexer living room lost here Step 3, you are here$/);
  await expect(card).toBeInViewport({ ratio: 0.9 });
  const walk = page.getByRole("region", { name: "Walk" });
  await walk.getByRole("button", { name: "One step towards the receiver" }).tap();
  await expect(here).toHaveCount(1);
  await expect(card).toHaveAccessibleName(/Step 4, you are here$/);
  for (let n = 0; n < 3; n++) await walk.getByRole("button", { name: "One step towards the roof" }).tap();
  await expect(card).toHaveAccessibleName(/^UHF aerial Step 1, you are here$/);
  await expect(card).toBeInViewport({ ratio: 0.9 });
  await walk.getByRole("button", { name: "End the walk" }).tap();
  await expect(here).toHaveCount(0);
});

test("the house as cells by keyboard: one stop, the arrow keys reach headings and strips too", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await view(page, "Overview").tap();
  const stops = page.locator('main [data-item][tabindex="0"]');
  await expect(stops).toHaveCount(1);
  await expect(stops).toHaveAccessibleName(/: fails$/);
  await stops.focus();
  await page.keyboard.press("ArrowUp");
  await expect(page.getByRole("button", { name: /^Spectrum from Loft amplifier/ })).toBeFocused();
  await page.keyboard.press("ArrowUp");
  await expect(page.getByRole("button", { name: "Loft amplifier: 2 of 4 outlets work" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("region", { name: "Part", exact: true })).toBeVisible();
});

for (const size of [
  { width: 844, height: 390 },
  { width: 360, height: 740 },
  { width: 320, height: 640 },
]) {
  test(`at ${size.width} by ${size.height} nothing is lost`, async ({ page }) => {
    await page.setViewportSize(size);
    for (const key of EXAMPLES) {
      await open(page, `/?example=${key}`);
      await expect(strips(page).first()).toBeVisible();
      const least = Math.min(...(await wideStrips(page)).map((strip) => strip.width));
      expect(least, key).toBeGreaterThanOrEqual(size.width === 320 ? 280 : 300);
      expect(await beyond(page), key).toEqual({ beside: 0, below: 0 });
      expect(await faults(page), key).toEqual([]);
    }
    await view(page, "Overview").click();
    expect(await beyond(page)).toEqual({ beside: 0, below: 0 });
    expect(await faults(page)).toEqual([]);
  });
}

test("on its side the chain stands beside the verdict", async ({ page }) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await open(page, "/?example=house-wideband-fails");
  const chain = await way(page).boundingBox();
  const causes = await page.getByRole("region", { name: "Causes" }).boundingBox();
  expect((chain?.x ?? 0) + (chain?.width ?? 0)).toBeLessThanOrEqual(causes?.x ?? 0);
  await expect(result(page).getByText("3 of 7 receivers work.", { exact: true }).first()).toBeInViewport({
    ratio: 1,
  });
});

test("a machine finds no barriers in chain, overview and sheets, in either theme", async ({ page }) => {
  await open(page, "/?example=house-wideband-fails");
  await expect(strips(page).first()).toBeVisible();
  await expectNoBarriers(page, "chain");
  await view(page, "Overview").tap();
  await expectNoBarriers(page, "overview");
  await tab(page, /^More/).tap();
  await expectNoBarriers(page, "more", "[data-region=sheet]");
});

test("a design without a receiver, and none at all, say what is missing", async ({ page }) => {
  await open(page, "/?example=house-universal");
  await expect(titleOf(page)).not.toHaveValue("");
  await page.getByRole("banner").getByRole("button", { name: "Design", exact: false }).first().tap();
  await page.getByRole("menuitem", { name: "New design" }).tap();
  const first = page.getByRole("heading", { name: "Nothing here yet" });
  await expect(first).toHaveCount(1);
  await view(page, "Overview").tap();
  await expect(first).toHaveCount(1);
  await tab(page, /^Verdict/).tap();
  await expect(page.getByRole("heading", { name: "No receiver yet" })).toBeVisible();
  await expect(first).toHaveCount(1);
});
