/** The tests of one area, for mutation testing only: `npm run unit` runs all tests by the configuration of the build. */
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";
import { AREA_VARIABLE, isArea, LEFT_OUT, TESTS_VARIABLE, WHOLE_DESIGNS } from "./areas.ts";

const area = process.env[AREA_VARIABLE] ?? "";
if (!isArea(area)) throw new Error(`${AREA_VARIABLE} names no area: “${area}”`);

/** Tests that were asked for; else all of the area but those that are left out. */
const asked = process.env[TESTS_VARIABLE]?.split(" ").filter((file) => file !== "") ?? [];

/** A mutant is done with at the first test that fails: those of single functions come first. */
class QuickestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isSlow = ({ moduleId }: TestSpecification) =>
      Number(WHOLE_DESIGNS.some((name) => moduleId.endsWith(`/${name}.test.ts`)));
    return [...files].sort((a, b) => isSlow(a) - isSlow(b));
  }
}

export default defineConfig({
  test: {
    include: asked.length > 0 ? asked : [`tests/${area}/**/*.test.ts`],
    exclude: asked.length > 0 ? [] : LEFT_OUT[area].map((name) => `tests/${area}/${name}.test.ts`),
    setupFiles: ["tests/mutation/shortProperties.ts"],
    environment: "node",
    // Test files of one run share their modules: loading them is what a mutant would cost most.
    isolate: false,
    sequence: { sequencer: QuickestFirst },
  },
});
