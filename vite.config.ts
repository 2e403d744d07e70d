import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";
import { buildTargets } from "./supported.ts";

export default defineConfig({
  // Relative addresses: a build can be put into any folder of any web server, or opened offline.
  base: "./",
  plugins: [react()],
  build: { target: buildTargets(), chunkSizeWarningLimit: 1800 },
  server: { port: 5173 },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    environment: "node",
    testTimeout: 60_000,
  },
});
