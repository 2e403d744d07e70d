/** The small picture of a finding: the axis is that of the strips, cut out. */
import { describe, expect, test } from "vitest";
import type { Mark } from "../../../../src/sentences/explain/picture.ts";
import { COAX_FROM_MHZ, COAX_TO_MHZ, coaxScale } from "../../../../src/ui/canvas/axis.ts";
import {
  cutOutScale,
  isSkyStretch,
  markGroups,
  ticksOf,
} from "../../../../src/ui/features/explain/picture.ts";

const edges = { left: 46, right: 346 };

describe("the axis of a finding's picture", () => {
  test.each([
    { name: "UHF television, channels 21 to 48", fromMHz: 470, toMHz: 694 },
    { name: "across the gap between UHF and satellite IF", fromMHz: 600, toMHz: 1100 },
    { name: "satellite IF of a universal converter", fromMHz: 950, toMHz: 2150 },
    { name: "the sky band", fromMHz: 10_700, toMHz: 12_750 },
  ])("begins and ends with the stretch concerned: $name", (stretch) => {
    const x = cutOutScale(stretch, edges);
    expect(x(stretch.fromMHz)).toBeCloseTo(edges.left, 6);
    expect(x(stretch.toMHz)).toBeCloseTo(edges.right, 6);
  });

  test("is bent as on the strips: of the whole coaxial range nothing moves but by the margin", () => {
    const x = cutOutScale({ fromMHz: COAX_FROM_MHZ, toMHz: COAX_TO_MHZ }, { left: 0, right: 300 });
    const strip = coaxScale(300);
    for (const mhz of [98, 226, 474, 690, 1100, 2000]) expect(x(mhz)).toBeCloseTo(strip(mhz), 6);
  });

  // Frequencies of the services: FM 87.5 to 108, UHF from 470 (ITU Region 1); sky band EN 61319-1, as quoted.
  test.each([
    { name: "a single multiplex", fromMHz: 540, toMHz: 600 },
    { name: "UHF and the lower satellite IF", fromMHz: 460, toMHz: 1300 },
    { name: "the sky band", fromMHz: 10_575, toMHz: 12_879 },
  ])("has at least two ticks, all of them inside and apart from the right edge: $name", (stretch) => {
    const x = cutOutScale(stretch, edges);
    const ticks = ticksOf(stretch, x, 6);
    expect(ticks.length).toBeGreaterThanOrEqual(2);
    for (const mhz of ticks) {
      expect(x(mhz)).toBeGreaterThanOrEqual(edges.left);
      expect(x(mhz)).toBeLessThan(edges.right - 10);
    }
  });

  test("knows a dish's wire from a cable by its frequencies", () => {
    expect(isSkyStretch({ fromMHz: 10_575, toMHz: 12_879 })).toBe(true);
    expect(isSkyStretch({ fromMHz: 884, toMHz: 2150 })).toBe(false);
  });
});

describe("marks that mean the same", () => {
  const mark = (fromMHz: number, more: Partial<Mark> = {}): Mark => ({
    kind: "strong",
    label: "74 dBµV at most",
    fromMHz,
    toMHz: fromMHz + 8,
    ...more,
  });

  test("are told in one line, with how many they are and where they reach", () => {
    expect(markGroups([mark(486), mark(510), mark(662)]).map((g) => g.where)).toEqual([
      "3 places from 486 to 670 MHz",
    ]);
    expect(markGroups([mark(486)])[0]?.where).toBe("486 to 494 MHz");
  });

  test("stay apart from those of another kind or meaning", () => {
    const groups = markGroups([mark(486), mark(510, { kind: "weak" }), mark(534, { label: "20 dB apart" })]);
    expect(groups).toHaveLength(3);
  });
});
