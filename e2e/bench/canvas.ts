/**
 * How fast the canvas is, as ratios to the canvas library with default nodes, measured in turn in one
 * page. Exits with 1 where a ratio is over its limit.
 */
import { fileURLToPath } from "node:url";
import { chromium } from "@playwright/test";
import react from "@vitejs/plugin-react";
import { build, preview } from "vite";
import { median, printRatios } from "../../tests/bench/ratios.ts";
import { ensureBrowser } from "../browser.ts";
import type { CanvasTiming, Timing } from "./page/bench.tsx";

const PARTS = 1000;
const ROUNDS = 5;

const root = fileURLToPath(new URL("./page", import.meta.url));
const outDir = fileURLToPath(new URL("../../node_modules/.cache/canvas-bench", import.meta.url));
const shared = { root, configFile: false, logLevel: "warn" } as const;
await build({
  ...shared,
  plugins: [react()],
  build: { outDir, emptyOutDir: true, target: "es2022", chunkSizeWarningLimit: 5000 },
});
const server = await preview({ ...shared, build: { outDir }, preview: { port: 0, host: "127.0.0.1" } });
const browser = await chromium.launch({
  executablePath: ensureBrowser((line) => process.stdout.write(`${line}\n`)),
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--no-first-run",
    // A frame takes as long as it takes, not until the next tick of a screen.
    "--disable-frame-rate-limit",
    "--disable-gpu-vsync",
  ],
});

try {
  const page = await browser.newPage({ viewport: { width: 1320, height: 800 } });
  page.on("pageerror", (error) => process.stderr.write(`${error.message}\n`));
  await page.goto(server.resolvedUrls?.local[0] ?? "");
  const plain: Timing[] = [];
  const canvas: CanvasTiming[] = [];
  for (let round = 0; round <= ROUNDS; round++) {
    const p = await page.evaluate((n) => window.benchPlain(n), PARTS);
    const c = await page.evaluate((n) => window.benchCanvas(n), PARTS);
    // The first round warms the engine up.
    if (round === 0) continue;
    plain.push(p);
    canvas.push(c);
  }

  const plainMount = median(plain.map((t) => t.mountMs));
  const plainFrame = median(plain.flatMap((t) => t.frameMs));
  const mount = median(canvas.map((t) => t.mountMs));
  const frame = median(canvas.flatMap((t) => t.frameMs));
  const nearFrame = median(canvas.flatMap((t) => t.nearFrameMs));
  const jump = median(canvas.map((t) => t.jumpMs));
  process.stdout.write(
    `Canvas with ${PARTS} parts; medians of ${ROUNDS} rounds [ms]:\n` +
      `  plain library: mount ${plainMount.toFixed(0)}, frame of a pan ${plainFrame.toFixed(1)}\n` +
      `  this canvas: mount ${mount.toFixed(0)}, frame of a pan over the whole ${frame.toFixed(1)} ` +
      `(${canvas[0]?.shown.whole} cards), near ${nearFrame.toFixed(1)} (${canvas[0]?.shown.near} cards); ` +
      `longest frame of a jump ${jump.toFixed(0)}\n`,
  );
  const good = printRatios([
    { name: "mount / mount of the plain library", value: mount / plainMount, atMost: 1 / 4 },
    { name: "frame of a pan over the whole / plain", value: frame / plainFrame, atMost: 1.2 },
    { name: "frame of a pan near / plain", value: nearFrame / plainFrame, atMost: 1.2 },
    { name: "longest frame of a jump / mount of the plain library", value: jump / plainMount, atMost: 1 / 2 },
  ]);
  process.exitCode = good ? 0 : 1;
} finally {
  await browser.close();
  await server.close();
}
