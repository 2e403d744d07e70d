/** Takes the pictures of the README anew, from the built app: `npm run pictures`. */
import { fileURLToPath } from "node:url";
import { type BrowserContextOptions, chromium, type Page } from "@playwright/test";
import { build, preview } from "vite";
import { card, open, showAll, stripOf } from "./app.ts";
import { ensureBrowser } from "./browser.ts";

const root = fileURLToPath(new URL("..", import.meta.url));
const outDir = fileURLToPath(new URL("../.cache/pictures", import.meta.url));
const target = (name: string) => fileURLToPath(new URL(`./pictures/${name}.png`, import.meta.url));

await build({ root, logLevel: "warn", build: { outDir, emptyOutDir: true } });
const server = await preview({
  root,
  logLevel: "warn",
  build: { outDir },
  preview: { port: 0, host: "127.0.0.1" },
});
const browser = await chromium.launch({
  executablePath: ensureBrowser((line) => process.stdout.write(`${line}\n`)),
  args: ["--no-sandbox", "--disable-gpu"],
});
try {
  await picture("house-universal", { viewport: { width: 1600, height: 800 } }, wholeHouse);
  await picture("house-universal", { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 2 }, cable);
  await picture(
    "house-wideband-fails",
    { viewport: { width: 1440, height: 900 }, colorScheme: "dark" },
    spectrum,
  );
  await picture("house-wideband-fails", { viewport: { width: 1440, height: 900 } }, cures);
  await picture("house-wideband-fails", { viewport: { width: 1440, height: 900 } }, walk);
  await picture(
    "long-steel-drop",
    { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true },
    tablet,
  );
} finally {
  await browser.close();
  await server.close();
}

/** Opens an example in a browser of its own and has its picture taken. */
async function picture(
  example: string,
  options: BrowserContextOptions,
  take: (page: Page) => Promise<void>,
): Promise<void> {
  const context = await browser.newContext({ colorScheme: "light", ...options });
  const page = await context.newPage();
  await open(page, `${server.resolvedUrls?.local[0] ?? ""}?example=${example}`);
  await take(page);
  await context.close();
}

/** The house that works, from the aerials to the sockets. */
async function wholeHouse(page: Page): Promise<void> {
  await showAll(page);
  await settle(page);
  await paintAnew(page);
  await page.screenshot({ path: target("house-light") });
}

/** The strip of one shared cable, with the universal converter and with a wideband one in its place. */
async function cable(page: Page): Promise<void> {
  await strip(page, "cable-before");
  await card(page, "LNB").click();
  await page.getByRole("button", { name: "Replace with…" }).click();
  await page.getByRole("combobox", { name: "Replace with" }).fill("wideband lnb");
  await page.keyboard.press("Enter");
  await strip(page, "cable-after");
}

async function strip(page: Page, name: string): Promise<void> {
  await showAll(page);
  await card(page, "Drop living room").click();
  await page.getByRole("button", { name: "Zoom to selection" }).click();
  for (let i = 0; i < 2; i++) await page.getByRole("button", { name: "Zoom in" }).click();
  await settle(page);
  const plate = await stripOf(page, "Diplexer living room", "Drop living room");
  const box = await plate.boundingBox();
  if (!box) throw new Error("The shared cable is not in view.");
  const clip = { x: box.x - 24, y: box.y - 24, width: box.width + 48, height: box.height + 48 };
  await page.screenshot({ path: target(name), clip });
  await showAll(page);
}

/** What is on that cable in full. */
async function spectrum(page: Page): Promise<void> {
  await showAll(page);
  await card(page, "Drop living room").click();
  await page.getByRole("button", { name: "Zoom to selection" }).click();
  await settle(page);
  await (await stripOf(page, "Diplexer living room", "Drop living room")).dblclick();
  await page.getByRole("region", { name: "Carriers" }).waitFor();
  await page.getByRole("tab", { name: /^Verdict/ }).click();
  await page.mouse.move(700, 80);
  await settle(page);
  await page.screenshot({ path: target("wideband-dark") });
}

/** What would cure the house, with one of it on the canvas. */
async function cures(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Find cures", exact: true }).click();
  await page.getByText(/^\d+ changes? tried, \d+ proved$/).waitFor();
  await page
    .getByRole("button", { name: /^Preview: / })
    .first()
    .click();
  await showAll(page);
  await settle(page);
  await paintAnew(page);
  await page.screenshot({ path: target("cures") });
}

/** Down to the set that loses its channels. */
async function walk(page: Page): Promise<void> {
  await showAll(page);
  await card(page, "TV living room").click();
  await page.getByRole("button", { name: "Walk the signal" }).click();
  await settle(page);
  await page.screenshot({ path: target("walk") });
}

async function tablet(page: Page): Promise<void> {
  const panes = page.getByRole("navigation", { name: "Panes" });
  await panes.getByRole("button", { name: /^Verdict/ }).tap();
  await showAll(page);
  await settle(page);
  await paintAnew(page);
  await page.screenshot({ path: target("tablet") });
}

/** A new size has everything painted: moving the view leaves traces behind where there is no graphics card. */
async function paintAnew(page: Page): Promise<void> {
  const size = page.viewportSize();
  if (size) await page.setViewportSize({ ...size, height: size.height - 10 });
  await settle(page);
}

/** Until the view has come to rest. */
async function settle(page: Page): Promise<void> {
  await page.waitForTimeout(2000);
}
