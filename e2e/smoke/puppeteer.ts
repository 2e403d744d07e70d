/** Chromium and Firefox, by the same driver: WebDriver BiDi for Firefox, the browser's own protocol for Chromium. */
import { existsSync } from "node:fs";
import { launch, type Page as Tab } from "puppeteer-core";
import { findBrowser } from "../browser.ts";
import { type Engine, type Page, WINDOW } from "./engine.ts";

const FIREFOXES = [
  "/usr/bin/firefox-esr",
  "/usr/bin/firefox",
  "/Applications/Firefox.app/Contents/MacOS/firefox",
];

const findFirefox = (): string | undefined =>
  process.env.DOWNLEAD_FIREFOX ?? FIREFOXES.find((p) => existsSync(p));

export const CHROMIUM: Engine = {
  name: "Chromium",
  packages: "chromium",
  isHere: () => findBrowser() !== undefined,
  start: () =>
    started("chrome", findBrowser(), [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-background-networking",
      "--no-first-run",
    ]),
};

export const FIREFOX: Engine = {
  name: "Firefox",
  packages: "firefox-esr",
  isHere: () => findFirefox() !== undefined,
  start: () => started("firefox", findFirefox(), []),
};

async function started(browser: "chrome" | "firefox", path: string | undefined, args: string[]) {
  if (path === undefined) throw new Error(`No ${browser} on this machine.`);
  const running = await launch({
    browser,
    executablePath: path,
    args,
    headless: true,
    defaultViewport: WINDOW,
  });
  return {
    newPage: async () => {
      const profile = await running.createBrowserContext();
      return pageOf(await profile.newPage(), () => profile.close());
    },
    close: () => running.close(),
  };
}

function pageOf(tab: Tab, close: () => Promise<void>): Page {
  return {
    open: async (address) => {
      await tab.goto(address, { waitUntil: "load" });
    },
    ask: (script, ...args) => tab.evaluate(script as never, ...(args as unknown as never[])),
    click: ({ x, y }) => tab.mouse.click(x, y),
    drag: async (from, to) => {
      const { mouse } = tab;
      await mouse.move(from.x, from.y);
      await mouse.down();
      await mouse.move(from.x + 10, from.y + 10);
      await mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 4 });
      await mouse.move(to.x, to.y, { steps: 6 });
      await mouse.up();
    },
    type: (text) => tab.keyboard.type(text),
    press: (key) => tab.keyboard.press(key),
    resize: (width, height) => tab.setViewport({ width, height }),
    picture: async (path) => {
      await tab.screenshot({ path: path as `${string}.png` });
    },
    close,
  };
}
