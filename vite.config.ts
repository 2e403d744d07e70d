import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";
import { LISTED, notices } from "./src/build/notices.ts";
import { offline } from "./src/build/offline.ts";
import { policyBeside } from "./src/build/policy.ts";
import { singleFile } from "./src/build/singleFile.ts";
import { buildTargets } from "./src/build/supported.ts";

const STYLE_SHEET = fileURLToPath(new URL("src/ui/kit/styleSheet.ts", import.meta.url));

/** Tests of pure functions, by their folders. Those of words set the language of numbers, which all would share. */
const CORE = ["rf", "signal", "parts", "design", "evaluate", "findings", "remedies", "trade", "outside"];

/** `--mode single` makes one file that works from the disk; else a folder for a web server. */
export default defineConfig(({ mode }) => {
  const isSingle = mode === "single";
  return {
    // Relative addresses: a build can be put into any folder of any web server.
    base: "./",
    publicDir: "src/public",
    resolve: { alias: { "react-style-singleton": STYLE_SHEET } },
    plugins: [
      react(),
      offline({ isWanted: !isSingle }),
      notices({ hasServiceWorker: !isSingle }),
      isSingle ? singleFile("downlead.html") : policyBeside(),
    ],
    build: {
      target: buildTargets(),
      outDir: isSingle ? "dist-single" : "dist",
      copyPublicDir: !isSingle,
      license: { fileName: LISTED },
      rolldownOptions: {
        output: {
          // The list of licences is put in when the names are given already: its name must not promise its content.
          chunkFileNames: ({ name }) => (name === "packages" ? "licences.js" : "assets/[name]-[hash].js"),
        },
      },
      // Its substitute asks the network, which the content policy forbids; every supported browser has the real one
      // or does without.
      modulePreload: { polyfill: false },
      assetsInlineLimit: 0,
      // Styles are few, and some are shared across what is loaded later: in one file their order is sure.
      cssCodeSplit: false,
      chunkSizeWarningLimit: 1800,
    },
    server: { port: 5173 },
    test: {
      environment: "node",
      testTimeout: 60_000,
      // By itself the runner leaves one processor idle, which on a machine with two doubles the time.
      maxWorkers: "100%",
      projects: [
        {
          extends: true,
          // What keeps nothing from one file to the next shares its modules: loading them anew took half the time.
          test: { name: "core", include: CORE.map((layer) => `tests/${layer}/**/*.test.ts`), isolate: false },
        },
        {
          extends: true,
          test: {
            name: "page",
            include: ["tests/**/*.test.{ts,tsx}"],
            exclude: CORE.map((layer) => `tests/${layer}/**`),
          },
        },
      ],
    },
  };
});
