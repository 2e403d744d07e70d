/** The layers that mutation testing knows, and the tests that each is tried with. */

export const AREAS = ["rf", "signal", "evaluate", "findings"] as const;
export type Area = (typeof AREAS)[number];

/** Tells the test runner's processes which area it is. */
export const AREA_VARIABLE = "DOWNLEAD_MUTATION_AREA";

/** Tells them which tests to try, if not those of the whole area: file names with spaces between. */
export const TESTS_VARIABLE = "DOWNLEAD_MUTATION_TESTS";

export function isArea(word: string): word is Area {
  return AREAS.some((area) => area === word);
}

/**
 * Tests of an area that are left out: they evaluate many or large designs, take longer than all others of the area
 * together, and would be run for nearly every mutant.
 */
export const LEFT_OUT: Readonly<Record<Area, readonly string[]>> = {
  rf: [],
  signal: [],
  evaluate: ["bounded", "floor", "incremental", "interference", "physics", "steps", "trace"],
  findings: [
    "causeOrder",
    "examples",
    "explain",
    "identity",
    "longLine",
    "rules",
    "structures",
    "verdictAgrees",
    "walksOfAny",
    "words",
  ],
};

/** Tests that evaluate whole designs: they load the catalogue, and are tried last. */
export const WHOLE_DESIGNS: readonly string[] = ["causes", "culprits", "walkSignal", "sweep", "traceValues"];
