import { defineConfig } from "@playwright/test";
import { findBrowser } from "./browser.ts";

/** Another port lets two runs on one machine keep out of each other's way; each has its own build. */
const port = Number(process.env.DOWNLEAD_E2E_PORT ?? 4174);
const build = `.cache/e2e-${port}`;
const executablePath = findBrowser();

export default defineConfig({
  testDir: ".",
  outputDir: `../test-results/${port}`,
  forbidOnly: process.env.CI !== undefined,
  fullyParallel: true,
  workers: 2,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: "list",
  use: {
    baseURL: `http://127.0.0.1:${port}/`,
    viewport: { width: 1440, height: 900 },
    locale: "en-GB",
    screenshot: "only-on-failure",
    // A service worker stores the whole app for each new visitor: only the tests of that allow it.
    serviceWorkers: "block",
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      args: [
        "--no-sandbox", // a root user in a container has no sandbox to offer
        "--disable-gpu",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--disable-quic",
      ],
    },
  },
  // The tests drive what users get: the production build, not the development server.
  webServer: {
    command:
      `npx vite build --logLevel warn --outDir ${build} --emptyOutDir && ` +
      `npx vite preview --outDir ${build} --host 127.0.0.1 --port ${port} --strictPort`,
    cwd: "..",
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
    timeout: 180_000,
    stdout: "ignore",
    stderr: "pipe",
  },
});
