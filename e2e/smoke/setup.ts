/** Builds the app once for all browsers, and says loudly which of them are missing. */
import { spawnSync } from "node:child_process";
import type { TestProject } from "vitest/node";
import { CHROMIUM, FIREFOX } from "./puppeteer.ts";
import { WEBKIT } from "./webkit.ts";

declare module "vitest" {
  // biome-ignore lint/style/useConsistentTypeDefinitions: what is provided can only be declared by adding to this.
  interface ProvidedContext {
    /** Folder of the built app. */
    app: string;
  }
}

export default function setup(project: TestProject): void {
  for (const { name, packages, isHere } of [CHROMIUM, FIREFOX, WEBKIT]) {
    if (!isHere())
      process.stderr.write(frame(`${name} is missing: nothing was tried in it. Install: ${packages}`));
  }
  const folder = `.cache/smoke-${process.env.DOWNLEAD_E2E_PORT ?? 4174}`;
  const built = spawnSync(
    "npx",
    ["vite", "build", "--logLevel", "warn", "--outDir", folder, "--emptyOutDir"],
    {
      stdio: "inherit",
      env: { ...process.env, NODE_ENV: "production" },
    },
  );
  if (built.status !== 0) throw new Error("The app could not be built.");
  project.provide("app", folder);
}

function frame(words: string): string {
  const line = "!".repeat(words.length + 4);
  return `\n${line}\n! ${words} !\n${line}\n\n`;
}
