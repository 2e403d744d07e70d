/**
 * The drawing is the product: what one sees when an example opens. Sizes: what can be read across a room, from the
 * project's own drawing guide. Pictures of all examples are kept beside and compared for gross breakage only;
 * `npm run pictures:examples` takes them anew.
 */
import { readdirSync } from "node:fs";
import type { Page } from "@playwright/test";
import { open, verdict } from "./app.ts";
import { expect, test } from "./test.ts";

type Wanted = {
  readonly window: { readonly width: number; readonly height: number };
  /** Least width and height of every strip, and least size of every name [px on the screen]. */
  readonly strip: readonly [number, number];
  readonly name: number;
};

const HOUSE: readonly Wanted[] = [
  { window: { width: 1920, height: 1080 }, strip: [200, 80], name: 12.5 },
  { window: { width: 1440, height: 900 }, strip: [140, 58], name: 12.5 },
  { window: { width: 1280, height: 800 }, strip: [120, 50], name: 11 },
  { window: { width: 820, height: 1180 }, strip: [110, 45], name: 11 },
];

const THEMES = ["light", "dark"] as const;

for (const { window, strip, name } of HOUSE)
  for (const theme of THEMES)
    test(`a house opens whole and legible at ${window.width} × ${window.height}, ${theme}`, async ({
      page,
    }) => {
      await page.setViewportSize(window);
      await page.emulateMedia({ colorScheme: theme });
      await open(page, "/?example=house-wideband-fails");
      await settled(page);
      const seen = await measured(page);
      expect(seen.strips.length).toBeGreaterThanOrEqual(15);
      for (const [width, height] of seen.strips) {
        expect(width).toBeGreaterThanOrEqual(strip[0]);
        expect(height).toBeGreaterThanOrEqual(strip[1]);
      }
      expect(Math.min(...seen.names)).toBeGreaterThanOrEqual(name);
      expect(seen.outside).toEqual([]);
      expect(seen.smallest).toBeGreaterThanOrEqual(10);
      // The verdict is beside it, without a press.
      await expect(page.getByText("3 of 7 receivers work.", { exact: true }).first()).toBeVisible();
    });

for (const theme of THEMES)
  test(`red that cannot be missed: 3 % of the drawing of a house that fails, none of one that works, ${theme}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme: theme });
    await open(page, "/?example=house-wideband-fails");
    await settled(page);
    expect(await redShare(page)).toBeGreaterThanOrEqual(0.03);
    await open(page, "/?example=house-universal");
    await settled(page);
    expect(await redShare(page)).toBe(0);
  });

test("the failing way runs in red from its culprit to each receiver that fails, and to no other", async ({
  page,
}) => {
  await open(page, "/?example=house-wideband-fails");
  await settled(page);
  await expect(verdict(page, "TV living room")).toHaveText(/^Fails/);
  const ways = page.locator(".react-flow__edge:has(.wire[data-failing=true])");
  const ends = await ways.evaluateAll((all) => all.map((e) => e.querySelector("title")?.textContent ?? ""));
  const into = (label: string) => ends.filter((text) => text.includes(` to ${label}:`)).length;
  expect(into("TV living room")).toBe(1);
  expect(into("TV bedroom 1")).toBe(1);
  expect(into("DAB radio living room")).toBe(0);
  expect(into("TV bedroom 2")).toBe(0);
});

const folder = new URL("../src/design/examples/", import.meta.url);
for (const file of readdirSync(folder)) {
  const key = file.replace(/\.json$/, "");
  test(`${key} looks as it did`, async ({ page }) => {
    await open(page, `/?example=${key}`);
    await settled(page);
    await expect(page.locator(".canvas")).toHaveScreenshot(`${key}.png`, {
      maxDiffPixelRatio: 0.08,
      animations: "disabled",
    });
  });
}

/** Typeface loaded, view at rest. */
async function settled(page: Page): Promise<void> {
  await expect(page.locator(".canvas")).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(undefined)))),
  );
}

/** Sizes on the screen of what is drawn on the canvas [px]. */
async function measured(page: Page) {
  return page.evaluate(() => {
    const canvas = document.querySelector(".canvas");
    if (!canvas) throw new Error("no canvas");
    const pane = canvas.getBoundingClientRect();
    const zoomOf = (element: Element) => {
      const laidOut = (element as HTMLElement).offsetWidth;
      return laidOut > 0 ? element.getBoundingClientRect().width / laidOut : 1;
    };
    const nodes = [...canvas.querySelectorAll(".react-flow__node")];
    const zoom = nodes[0] ? zoomOf(nodes[0]) : 1;
    const size = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize) * zoom;
    const texts = [...canvas.querySelectorAll(".react-flow__node *")].filter(
      (e) =>
        [...e.childNodes].some((c) => c.nodeType === Node.TEXT_NODE && (c.textContent ?? "").trim() !== "") &&
        !e.closest(".unseen") &&
        !e.closest("title") &&
        e.getClientRects().length > 0,
    );
    return {
      strips: [...canvas.querySelectorAll(".docked-strip")].map((e) => {
        const { width, height } = e.getBoundingClientRect();
        return [width, height] as const;
      }),
      names: [...canvas.querySelectorAll(".node-card-name")].map(size),
      smallest: Math.min(...texts.map(size)),
      outside: nodes
        .filter((e) => {
          const box = e.getBoundingClientRect();
          return (
            box.left < pane.left || box.right > pane.right || box.top < pane.top || box.bottom > pane.bottom
          );
        })
        .map((e) => e.getAttribute("data-id")),
    };
  });
}

/** How much of the drawing is in the colour of what fails. */
async function redShare(page: Page): Promise<number> {
  const danger = await page.evaluate(() => {
    const probe = document.createElement("i");
    probe.style.color = "var(--danger)";
    document.body.append(probe);
    const colour = getComputedStyle(probe).color;
    probe.remove();
    return (colour.match(/\d+/g) ?? []).slice(0, 3).map(Number);
  });
  const picture = (await page.locator(".canvas").screenshot()).toString("base64");
  // Decoded in a page of its own: the app's content policy lets no picture in from elsewhere.
  const decoder = await page.context().newPage();
  const share = await decoder.evaluate(
    async ([data, red]) => {
      const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob());
      const surface = new OffscreenCanvas(image.width, image.height);
      const context = surface.getContext("2d");
      if (!context) throw new Error("no surface");
      context.drawImage(image, 0, 0);
      const { data: pixels } = context.getImageData(0, 0, image.width, image.height);
      let count = 0;
      for (let i = 0; i < pixels.length; i += 4) {
        const apart = red.reduce((sum, value, n) => sum + Math.abs((pixels[i + n] ?? 0) - value), 0);
        if (apart < 24) count++;
      }
      return count / (image.width * image.height);
    },
    [picture, danger] as const,
  );
  await decoder.close();
  return share;
}
