import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["e2e/smoke/*.smoke.ts"],
    globalSetup: "e2e/smoke/setup.ts",
    // Two at a time, as there are cores; the longest begins first.
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 60_000,
    reporters: ["verbose"],
  },
});
