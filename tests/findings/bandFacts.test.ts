/** A signal as a finding names it: hand-made bands. */
import { expect, test } from "vitest";
import { bandFactsOf } from "../../src/findings/bandFacts.ts";
import { bandOf } from "../signal/bands.ts";
import { stackOf } from "./byHand.ts";

const stack = stackOf([1]);

test("a terrestrial signal is told by its service and its source alone", () => {
  expect(bandFactsOf(bandOf({ from: "roof", service: "dab" }))).toEqual({ service: "dab", part: "roof" });
});

test("a satellite's is told by polarisation and half as well, where it has them", () => {
  const origin = { key: "d/V", service: "satellite", part: "d", polarisation: "V" } as const;
  expect(bandFactsOf(bandOf({ more: { origin } }))).toEqual({
    service: "satellite",
    part: "d",
    polarisation: "V",
  });
  expect(bandFactsOf(bandOf({ more: { origin, half: "high" } }))).toEqual({
    service: "satellite",
    part: "d",
    polarisation: "V",
    half: "high",
  });
});

test("user bands and a converter's own noise are called so", () => {
  const sortOf = (more: Parameters<typeof bandOf>[0]) => bandFactsOf(bandOf(more)).sort;
  expect(sortOf({ more: { stack } })).toBe("user bands");
  expect(sortOf({ more: { isFloor: true } })).toBe("noise");
  // The noise of a converter of user bands is still noise.
  expect(sortOf({ more: { isFloor: true, stack } })).toBe("noise");
});
