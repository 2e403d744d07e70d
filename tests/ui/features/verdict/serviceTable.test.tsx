// @vitest-environment happy-dom
/** The services of a receiver in a table; steps of FM as in tests/rf/fmQuality.test.ts. */
import { cleanup, render, screen } from "@testing-library/react";
import { afterEach, describe, expect, test } from "vitest";
import type { ServiceVerdict } from "../../../../src/findings/finding.ts";
import { ServiceTable } from "../../../../src/ui/features/verdict/ServiceTable.tsx";

afterEach(cleanup);

const FM: ServiceVerdict = {
  service: "fm",
  wanted: 3,
  got: 3,
  levelMin: 40,
  levelMax: 52,
  cnMin: 44.2,
  missing: [],
};
const TV: ServiceVerdict = { ...FM, service: "tv", cnMin: 33 };

const quality = (service: ServiceVerdict) => {
  render(<ServiceTable services={[service]} />);
  return screen.getAllByRole("cell").at(-1)?.textContent;
};

describe("the C/N of a service on paper", () => {
  test.each(["heard", "good", "clean"] as const)("of FM says how it sounds: %s", (step) => {
    expect(quality({ ...FM, sound: { step, count: 1 } })).toBe(`44.2 dB, ${step}`);
  });

  test("of digital TV is a figure alone", () => {
    expect(quality(TV)).toBe("33.0 dB");
  });

  test("of FM that is not there is left out", () => {
    expect(quality({ service: "fm", wanted: 3, got: 0, missing: [] })).toBe("–");
  });
});
