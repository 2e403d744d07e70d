/** A place in one line; what a tradesman would say of it. */
import { expect, test } from "vitest";
import type { Verdict } from "../../src/findings/finding.ts";
import { placeSentence, resultFigures } from "../../src/sentences/placeName.ts";

const verdict = (got: number, wanted: number): Verdict => ({
  part: "sat",
  role: "receiver",
  state: got < wanted ? "fails" : "works",
  services: [{ service: "satellite", got, wanted, missing: [] }],
  tuners: [],
});

test("says how a place stands, what it lacks, and how much cable leads to it", () => {
  expect(placeSentence({ label: "Flat 17", state: "fails", verdicts: [verdict(60, 80)], cableM: 160 })).toBe(
    "Flat 17, fails: 60 of 80 satellite transponders, 160 m of cable",
  );
  expect(placeSentence({ label: "Flat 3", state: "works", verdicts: [verdict(80, 80)], cableM: 0 })).toBe(
    "Flat 3, works",
  );
  expect(placeSentence({ label: "Attic", state: "idle", verdicts: [], cableM: 4.6 })).toBe(
    "Attic, not connected yet, 5 m of cable",
  );
});

test("figures are of the service that lacks most", () => {
  const both: Verdict = {
    ...verdict(60, 80),
    services: [
      { service: "tv", got: 6, wanted: 6, missing: [] },
      { service: "satellite", got: 60, wanted: 80, missing: [] },
    ],
  };
  expect(resultFigures(both)).toBe("60/80");
});
