/**
 * Mutation testing of the layers where the arithmetic lives: changes the code a little, one place at a time, and counts
 * how many of the changes its tests notice.
 *
 * `npm run mutation -- AREA [FILE …]` for one area, or for some of its files; without an area all of them, one by one.
 * Test files among them are the only ones that are tried then: those of a single file are done much sooner than all.
 * What was found before is kept in `.cache/mutation/`, and only what has changed since is tried again.
 */
import { mkdirSync } from "node:fs";
import { setPriority } from "node:os";
import { Stryker } from "@stryker-mutator/core";
import { AREA_VARIABLE, AREAS, type Area, isArea, TESTS_VARIABLE } from "./areas.ts";

const CACHE = ".cache/mutation";

const wanted = process.argv.slice(2);
const isTest = (word: string) => word.startsWith("tests/");
const files = wanted.filter((word) => !isArea(word) && !isTest(word));
const named = wanted.filter(isArea);
const areas = named.length > 0 ? named : AREAS;
const foreign = files.filter((file) => !areas.some((area) => file.startsWith(`src/${area}/`)));
if (foreign.length > 0) {
  process.stderr.write(`Neither an area (${AREAS.join(", ")}) nor a file of one: ${foreign.join(", ")}\n`);
  process.exit(2);
}

// It takes long: whatever else the machine does goes first.
setPriority(15);
process.env[TESTS_VARIABLE] = wanted.filter(isTest).join(" ");
mkdirSync(CACHE, { recursive: true });
for (const area of areas) await mutate(area);

async function mutate(area: Area): Promise<void> {
  const own = files.filter((file) => file.startsWith(`src/${area}/`));
  if (files.length > 0 && own.length === 0) return;
  // The test runner's processes read it (`vitest.config.ts`).
  process.env[AREA_VARIABLE] = area;
  const stryker = new Stryker({
    mutate: own.length > 0 ? own : [`src/${area}/**/*.ts`],
    testRunner: "vitest",
    // Which tests a mutant needs is known from what they cover; looking through all imports for it is slow.
    vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
    plugins: ["@stryker-mutator/vitest-runner"],
    coverageAnalysis: "perTest",
    // A constant that is worked out when a module is loaded has no test of its own to be tried with.
    ignoreStatic: true,
    incremental: true,
    incrementalFile: `${CACHE}/${area}.incremental.json`,
    tempDirName: `${CACHE}/work`,
    reporters: ["progress-append-only", "clear-text", "json"],
    clearTextReporter: { allowColor: false, logTests: false, reportScoreTable: true },
    jsonReporter: { fileName: `${CACHE}/${area}.json` },
    concurrency: 1,
    timeoutMS: 8000,
    // The compiler that Stryker would read this with knows no such version of it; no checker is used.
    tsconfigFile: `${CACHE}/none.json`,
    ignorePatterns: ["dist", "dist-single", "e2e", "test-results", "playwright-report", ".cache"],
    allowEmpty: false,
    disableTypeChecks: false,
  });
  await stryker.runMutationTest();
}
