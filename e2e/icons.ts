/** Draws the icons for home screens from the one of the page: `npm run icons`. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import { ensureBrowser } from "./browser.ts";

const target = (name: string) => fileURLToPath(new URL(`../src/public/${name}`, import.meta.url));
const drawing = readFileSync(target("icon.svg"), "utf8");

/** Cut to a shape by the system: the ground goes to the edges, and the drawing stays within the middle 80 %. */
const filled = drawing
  .replace(' rx="7"', "")
  .replace("<path ", '<path transform="translate(16 16) scale(0.8) translate(-16 -16.5)" ');

const browser = await chromium.launch({
  executablePath: ensureBrowser((line) => process.stdout.write(`${line}\n`)),
  args: ["--no-sandbox", "--disable-gpu"],
});
try {
  await draw("icon-192.png", drawing, 192);
  await draw("icon-512.png", drawing, 512);
  await draw("icon-maskable-512.png", filled, 512);
  await draw("apple-touch-icon.png", filled, 180);
} finally {
  await browser.close();
}

async function draw(name: string, svg: string, sizePx: number): Promise<void> {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${svg}`);
  await page.screenshot({ path: target(name), omitBackground: true });
  await page.close();
}
