/** The tests of one area, for mutation testing only: `npm run unit` runs all tests by the configuration of the build. */
import { defineConfig } from "vitest/config";
import { AREA_VARIABLE, isArea, LEFT_OUT } from "./areas.ts";

const area = process.env[AREA_VARIABLE] ?? "";
if (!isArea(area)) throw new Error(`${AREA_VARIABLE} names no area: “${area}”`);

export default defineConfig({
  test: {
    include: [`tests/${area}/**/*.test.ts`],
    exclude: LEFT_OUT[area].map((name) => `tests/${area}/${name}.test.ts`),
    setupFiles: ["tests/mutation/shortProperties.ts"],
    environment: "node",
    // Test files of one run share their modules: loading them is what a mutant would cost most.
    isolate: false,
  },
});
