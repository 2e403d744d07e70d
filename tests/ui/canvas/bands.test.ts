/** Settings of switched outputs: 13/18 V and 22 kHz select four quadrants (EN 61319-1). */
import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../../src/design/examples.ts";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { alternatives, bandWords, settingWords } from "../../../src/ui/canvas/bands.ts";

function wiresOf(key: string, fromKind: string) {
  const design = EXAMPLES.find((e) => e.key === key)?.load();
  if (!design) throw new Error(`no example ${key}`);
  const evaluation = evaluate(design);
  return design.wires
    .filter((w) => evaluation.record(w.from[0])?.kind.kind === fromKind)
    .map((w) => evaluation.spectrum(w));
}

describe("a switched output", () => {
  test("offers its four quadrants as alternatives, of which one stands now and comes first", () => {
    const wires = wiresOf("house-universal", "lnb-universal");
    expect(wires.length).toBeGreaterThan(0);
    for (const spectrum of wires) {
      const groups = alternatives(spectrum);
      expect(groups.map((g) => g.words).toSorted()).toEqual(["H high", "H low", "V high", "V low"]);
      expect(groups.map((g) => g.selected)).toEqual([true, false, false, false]);
    }
  });
});

describe("words", () => {
  test.each([
    { setting: "HL", words: "H low" },
    { setting: "2:VH", words: "position 2, V high" },
    { setting: "3", words: "position 3" },
  ])("setting $setting reads “$words”", ({ setting, words }) => {
    expect(settingWords(setting)).toBe(words);
  });

  test("of a band say how much is left and at which levels, never NaN or Infinity", () => {
    for (const { load } of EXAMPLES) {
      const design = load();
      const evaluation = evaluate(design);
      for (const wire of design.wires) {
        for (const band of evaluation.spectrum(wire).bands) {
          expect(bandWords(band)).toMatch(
            // A stacked feed is called by the number of its user bands and need not give it again.
            /^[^:]+: (nothing left of \d+|\d+ (of \d+ )?(carriers?|user bands))|^\d+ user bands, /,
          );
          expect(bandWords(band)).not.toMatch(/NaN|Infinity|undefined/);
        }
      }
    }
  });
});
