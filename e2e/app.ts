/** The few gestures that the end-to-end tests make over and over. */
import { readFile } from "node:fs/promises";
import { expect, type Locator, type Page } from "@playwright/test";

/** Opens the app and waits until the design that it begins with has come: until then an empty one stands there. */
export async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(titleOf(page)).not.toHaveValue(/^(Untitled design)?$/);
}

export const titleOf = (page: Page): Locator => page.getByLabel("Title of the design", { exact: true });
export const messages = (page: Page): Locator => page.getByRole("region", { name: "Messages" });
export const cards = (page: Page): Locator => page.locator(".react-flow__node");
export const wires = (page: Page): Locator => page.locator(".react-flow__edge");
export const findings = (page: Page): Locator => page.getByRole("region", { name: "Causes" });

/** The card of a part on the canvas, by its name. */
export function card(page: Page, label: string): Locator {
  return cards(page).filter({ has: page.locator(`[id$="-name"]:text-is("${label}")`) });
}

/** A port of a card: "Output out 1", "Input feed". */
export function port(page: Page, label: string, name: string): Locator {
  return card(page, label).getByRole("button", { name: new RegExp(`^${name}, `) });
}

/** A wire by what it joins. */
export function wire(page: Page, from: string, to: string): Locator {
  return page.getByRole("group", { name: new RegExp(`^From ${from} to ${to}(:|$)`) });
}

/** The strip of a wire, docked to the card where it begins. */
export async function stripOf(page: Page, from: string, to: string): Promise<Locator> {
  const id = await wire(page, from, to).getAttribute("data-id");
  return page.locator(`.strip[data-wire="${id}"]`);
}

/** A place on a wire, half way along it. */
export async function onWire(
  page: Page,
  from: string,
  to: string,
): Promise<{ readonly x: number; readonly y: number }> {
  return wire(page, from, to)
    .locator("path.wire-line")
    .evaluate((path) => {
      const line = path as SVGPathElement;
      const matrix = line.getScreenCTM();
      if (!matrix) throw new Error("The wire is not drawn.");
      const { x, y } = line.getPointAtLength(line.getTotalLength() / 2).matrixTransform(matrix);
      return { x, y };
    });
}

/** A receiver in the verdict, by its name. */
export function verdict(page: Page, label: string): Locator {
  return page.getByRole("region", { name: "Receivers" }).getByRole("button", {
    name: new RegExp(`^(Works|Fails): ${label} `),
  });
}

export async function showPane(page: Page, name: "Verdict" | "Part" | "Chain"): Promise<void> {
  await page.getByRole("tab", { name: new RegExp(`^${name}`) }).click();
}

export async function showAll(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Show everything" }).click();
}

/** Opens the menu of the design and takes one entry. */
export async function fromMenu(page: Page, entry: string): Promise<void> {
  await page.getByRole("button", { name: "Design menu" }).click();
  await page.getByRole("menuitem", { name: entry }).click();
}

export type File = {
  readonly title: string;
  readonly parts: readonly {
    readonly id: string;
    readonly kind: string;
    readonly label?: string;
    readonly options: Readonly<Record<string, unknown>>;
    readonly at: readonly [number, number];
  }[];
  readonly wires: readonly {
    readonly from: readonly [string, string];
    readonly to: readonly [string, string];
  }[];
};

/** The open design as the user can have it: the file that the app hands out. */
export async function download(page: Page): Promise<{ readonly text: string; readonly file: File }> {
  const started = page.waitForEvent("download");
  await fromMenu(page, "Download as a file");
  const text = await readFile(await (await started).path(), "utf8");
  return { text, file: JSON.parse(text) };
}

/** Gives a file to the app the way a user does; `name` is what it is called. */
export async function upload(page: Page, name: string, text: string): Promise<void> {
  const asked = page.waitForEvent("filechooser");
  await fromMenu(page, "Open a file…");
  await (await asked).setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

/** Presses at one place, moves in steps that a hand would make, and lets go at another. */
export async function drag(
  page: Page,
  from: Locator,
  to: { readonly x: number; readonly y: number },
): Promise<void> {
  const start = await middle(from);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(start.x + 10, start.y + 10);
  await page.mouse.move((start.x + to.x) / 2, (start.y + to.y) / 2, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
}

/** The middle of what is on the screen, once it rests: the view may still glide to what was added last. */
export async function middle(of: Locator): Promise<{ readonly x: number; readonly y: number }> {
  let box = await boxOf(of);
  let alike = 1;
  for (let reading = 0; alike < 3 && reading < 60; reading++) {
    await of.page().waitForTimeout(50);
    const now = await boxOf(of);
    alike = now.x === box.x && now.y === box.y ? alike + 1 : 1;
    box = now;
  }
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function boxOf(of: Locator) {
  const box = await of.boundingBox();
  if (!box) throw new Error(`Not on the screen: ${of}`);
  return box;
}

/** No card covers another; a pixel is left to rounding. */
export async function expectApart(page: Page): Promise<void> {
  const boxes = await cards(page).evaluateAll((all) =>
    all.map((each) => {
      const { left, top, right, bottom } = each.getBoundingClientRect();
      return { left, top, right, bottom };
    }),
  );
  const covering = boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (b) => a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1,
      ),
  );
  expect(covering).toEqual([]);
}

export async function waitUntilSaved(page: Page): Promise<void> {
  await expect(page.getByRole("banner").getByRole("status")).toHaveText("Saved");
}

/** An own design to work on: the example, under a title of its own. */
export async function ownDesign(page: Page, title: string): Promise<void> {
  await open(page, "/?example=house-universal");
  await retitle(page, title);
  await waitUntilSaved(page);
}

export async function retitle(page: Page, title: string): Promise<void> {
  await titleOf(page).fill(title);
  await titleOf(page).press("Enter");
}
