import { expect, test } from "vitest";
import { QUADRANTS, SERVICE_NAMES, SERVICES, WANTED_SERVICES } from "../../src/signal/carrier.ts";

// 13 or 18 V, with or without 22 kHz: four combinations (EN 61319-1, as quoted in receiver manuals).
test("two polarisations and two halves make four quadrants", () => {
  const all = ["V", "H"].flatMap((polarisation) => ["L", "H"].map((half) => `${polarisation}${half}`));
  expect([...QUADRANTS].sort()).toEqual(all.sort());
});

test("phones are guests: every service has a name, and all but these may be wanted", () => {
  expect(SERVICES.filter((s) => !WANTED_SERVICES.some((w) => w === s))).toEqual([
    "distant",
    "mobile",
    "cordless",
  ]);
  expect(Object.keys(SERVICE_NAMES).sort()).toEqual([...SERVICES].sort());
});
