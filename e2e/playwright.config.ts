import { defineConfig } from "@playwright/test";
import { findBrowser } from "./browser.ts";
import { HOSTED, PORT, SINGLE } from "./builds.ts";

const executablePath = findBrowser();

export default defineConfig({
  testDir: ".",
  snapshotPathTemplate: "{testDir}/pictures/examples/{arg}{ext}",
  outputDir: `../test-results/${PORT}`,
  forbidOnly: process.env.CI !== undefined,
  fullyParallel: true,
  workers: 2,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: "list",
  use: {
    baseURL: `http://127.0.0.1:${PORT}/`,
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
  // The tests drive what users get: the production builds, not the development server.
  webServer: {
    command:
      `npx vite build --logLevel warn --outDir "${HOSTED}" --emptyOutDir && ` +
      `npx vite build --logLevel warn --mode single --outDir "${SINGLE}" --emptyOutDir && ` +
      `npx vite preview --outDir "${HOSTED}" --host 127.0.0.1 --port ${PORT} --strictPort`,
    cwd: "..",
    url: `http://127.0.0.1:${PORT}/`,
    reuseExistingServer: false,
    timeout: 300_000,
    stdout: "ignore",
    stderr: "pipe",
  },
});
