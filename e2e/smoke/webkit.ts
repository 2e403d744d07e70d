/** WebKit as GTK has it, in its small browser, on a screen that only exists in memory; by plain WebDriver. */
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, readdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { Builder, Key, Origin, type WebDriver } from "selenium-webdriver";
import { type Engine, type Page, type Point, WINDOW } from "./engine.ts";

const DRIVER = "/usr/bin/WebKitWebDriver";
const SCREEN = "/usr/bin/Xvfb";

/** In a folder named after the library's edition, below one named after the processor. */
function findMiniBrowser(): string | undefined {
  const below = (folder: string) =>
    existsSync(folder) ? readdirSync(folder).map((name) => join(folder, name)) : [];
  return below("/usr/lib")
    .filter((folder) => /-linux-gnu/.test(folder))
    .flatMap(below)
    .filter((folder) => /webkit2?gtk-[\d.]+$/.test(folder))
    .map((folder) => join(folder, "MiniBrowser"))
    .find((path) => existsSync(path));
}

export const WEBKIT: Engine = {
  name: "WebKit",
  packages: "webkit2gtk-driver xvfb",
  isHere: () => existsSync(DRIVER) && existsSync(SCREEN) && findMiniBrowser() !== undefined,
  start: async () => {
    const screen = await startScreen();
    const drivers: ChildProcess[] = [];
    return {
      newPage: async () => {
        // A driver has one session, and a session is a profile.
        const port = await freePort();
        const driver = spawn(DRIVER, [`--port=${port}`], {
          stdio: "ignore",
          env: { ...process.env, DISPLAY: screen.display },
        });
        drivers.push(driver);
        return pageOf(await session(port), driver);
      },
      close: async () => {
        for (const driver of drivers) driver.kill();
        screen.process.kill();
      },
    };
  },
};

/** A screen under the first number that is free. */
function startScreen(): Promise<{ readonly display: string; readonly process: ChildProcess }> {
  const screen = spawn(SCREEN, ["-displayfd", "3", "-screen", "0", "1800x1400x24", "-nolisten", "tcp"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  return new Promise((resolve, reject) => {
    screen.once("error", reject);
    screen.once("exit", (code) => reject(new Error(`Xvfb ended with ${code}.`)));
    screen.stdio[3]?.once("data", (number: Buffer) =>
      resolve({ display: `:${number.toString().trim()}`, process: screen }),
    );
  });
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address ? address.port : 0));
    });
  });
}

async function session(port: number): Promise<WebDriver> {
  const browser = { binary: findMiniBrowser(), args: ["--automation"] };
  const until = Date.now() + 20_000;
  for (;;) {
    try {
      return await new Builder()
        .usingServer(`http://127.0.0.1:${port}`)
        .withCapabilities({ browserName: "MiniBrowser", "webkitgtk:browserOptions": browser })
        .build();
    } catch (problem) {
      // The driver takes a moment before it listens.
      if (!String(problem).includes("ECONNREFUSED") || Date.now() > until) throw problem;
      await new Promise((done) => setTimeout(done, 200));
    }
  }
}

async function pageOf(driver: WebDriver, program: ChildProcess): Promise<Page> {
  const hand = () => driver.actions({ async: true });
  const at = ({ x, y }: Point, duration = 0) => ({
    x: Math.round(x),
    y: Math.round(y),
    duration,
    origin: Origin.VIEWPORT,
  });
  const ask: Page["ask"] = (script, ...args) =>
    driver.executeScript(`return (${script}).apply(null, arguments)`, ...args);
  const page: Page = {
    open: (address) => driver.get(address),
    ask,
    click: (point) => hand().move(at(point)).press().release().perform(),
    drag: (from, to) =>
      hand()
        .move(at(from))
        .press()
        .move(at({ x: from.x + 10, y: from.y + 10 }))
        .move(at({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, 100))
        .move(at(to, 150))
        .release()
        .perform(),
    type: (text) => hand().sendKeys(text).perform(),
    press: (key) =>
      hand()
        .sendKeys(Key[key.toUpperCase() as "ENTER"])
        .perform(),
    resize: async (width, height) => {
      // The window has a frame, so that the page is smaller than what is asked for: ask twice.
      const window = driver.manage().window();
      await window.setRect({ x: 0, y: 0, width, height });
      const inner = await ask(() => ({ width: innerWidth, height: innerHeight }));
      await window.setRect({ x: 0, y: 0, width: 2 * width - inner.width, height: 2 * height - inner.height });
    },
    picture: async (path) => writeFileSync(path, await driver.takeScreenshot(), "base64"),
    close: async () => {
      await driver.quit();
      program.kill();
    },
  };
  await page.resize(WINDOW.width, WINDOW.height);
  return page;
}
