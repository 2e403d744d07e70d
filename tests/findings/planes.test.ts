/** Planes by name: 13/18 V select the polarisation, the 22 kHz tone the half (EN 61319-1, as quoted). */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Plane } from "../../src/findings/missing.ts";
import { sourcesOf, wantedCarriers } from "../../src/findings/wanted.ts";
import { planesWords, quadrantOf } from "../../src/sentences/planes.ts";
import { draw } from "../draw.ts";

const one = evaluate(
  draw({ d: ["dish"], a: ["lnb-universal"], z: ["receiver-sat"] }, "d.sky > a.sky, a.out > z.sat"),
);
const two = evaluate(draw({ d: ["dish"], e: ["dish"] }, ""));

const plane = (source: string, polarisation: "V" | "H", half: "low" | "high"): Plane => ({
  source,
  polarisation,
  half,
});
const [vl, vh, hl, hh] = [
  plane("d", "V", "low"),
  plane("d", "V", "high"),
  plane("d", "H", "low"),
  plane("d", "H", "high"),
];

describe("planes", () => {
  // A universal converter changes over at 11 700 MHz (EN 61319-1).
  test("a transponder's plane follows from its polarisation and from 11 700 MHz", () => {
    const record = one.record("z");
    const wanted = record ? wantedCarriers(record, sourcesOf(one), "satellite") : [];
    expect(wanted.length).toBeGreaterThan(0);
    for (const { carrier, plane: own, origin } of wanted) {
      expect(own?.half).toBe(carrier.airMHz < 11_700 ? "low" : "high");
      expect(origin.endsWith(own?.polarisation ?? "none")).toBe(true);
    }
  });

  test.each([
    { planes: [hh], words: "high horizontal" },
    { planes: [vl], words: "low vertical" },
    { planes: [hh, hl], words: "all horizontal" },
    { planes: [vh, vl], words: "all vertical" },
    { planes: [hl, vl], words: "the low band" },
    { planes: [vh, hh], words: "the high band" },
    { planes: [hh, vl], words: "low vertical and high horizontal" },
    { planes: [vl, vh, hl, hh], words: "the whole satellite" },
  ])("$words", ({ planes, words }) => {
    expect(planesWords(planes, one)).toBe(words);
  });

  test("of several dishes the one concerned is named", () => {
    expect(planesWords([plane("e", "H", "high")], two)).toBe("high horizontal of ⟦e⟧");
  });

  test("a quadrant is written with two letters", () => {
    expect([vl, vh, hl, hh].map(quadrantOf)).toEqual(["VL", "VH", "HL", "HH"]);
  });
});
