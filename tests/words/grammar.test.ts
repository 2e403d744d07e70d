/** Whatever a design holds, none, one, two or many of it: what is said of it is right in number and punctuation. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { faults } from "../../src/remedies/faults/list.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { faultSentence } from "../../src/sentences/faults/faultWords.ts";
import { anyDesign } from "../arbitraries.ts";
import { variedExample } from "../findings/varied.ts";
import { countedDesigns } from "./countedDesigns.ts";
import { wrongIn } from "./grammar.ts";
import { plainly, type Text, textsOf, verdictTexts } from "./sentences.ts";

const known = new Set<string>();

/** Everything that is wrong in the texts, with the text; each text is looked at once. */
function wrong(texts: Iterable<Text>): readonly string[] {
  const found: string[] = [];
  for (const text of texts) {
    const key = `${text.isSentence} ${text.words}`;
    if (known.has(key)) continue;
    known.add(key);
    for (const what of wrongIn(text)) found.push(`${what} (${text.of}): ${text.words}`);
  }
  return found;
}

/** The verdict of a design with each of its single faults. */
function* faultyTexts(design: Design): Generator<Text> {
  const plain = plainly(design);
  const sound = evaluate(plain);
  for (const fault of faults(plain)) {
    yield { of: "fault", words: faultSentence(plain, fault), isSentence: true };
    yield* verdictTexts(evaluate(fault.apply(plain), sound));
  }
}

const RULE_DESIGNS = RULE_EXAMPLES.flatMap(({ rule, speaks, silent, more }) => [
  ...more.map(({ title, load }) => ({ name: `${rule}, ${title}`, load })),
  { name: `${rule}, speaking`, load: speaks.load },
  { name: `${rule}, silent`, load: silent.load },
]);

describe("the words about", () => {
  test.each(EXAMPLES)("the example $key", ({ load }) => {
    expect(wrong(textsOf(load()))).toEqual([]);
  });

  test.each(RULE_DESIGNS)("the rule example $name", ({ load }) => {
    expect(wrong(textsOf(load()))).toEqual([]);
  });

  test.each(countedDesigns())("$name", ({ design }) => {
    expect(wrong(textsOf(design))).toEqual([]);
  });

  test.each(EXAMPLES)("every single fault of the example $key", ({ load }) => {
    expect(wrong(faultyTexts(load()))).toEqual([]);
  });

  test("every single fault of the rule examples and of the counted designs", () => {
    const designs = [...RULE_DESIGNS.map((e) => e.load()), ...countedDesigns().map((e) => e.design)];
    expect(designs.flatMap((design) => wrong(faultyTexts(design)))).toEqual([]);
  });

  test("any design, however odd, and any variation of an example", () => {
    const odd = fc.oneof(anyDesign({ maxParts: 12, loops: true }), variedExample());
    fc.assert(
      fc.property(odd, (design) => {
        expect(wrong(textsOf(design))).toEqual([]);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

// Right and wrong by the grammar of English alone.
describe("the grammar looked for", () => {
  test.each([
    "“L” gives 115 dBµV for each of 1 carriers.",
    "At the input, the one DAB block are too weak.",
    "At the input, the only DAB block are too weak.",
    "1 of 6 DAB blocks are too weak.",
    "“L” gets not the one TV channel.",
    "“L” gets none: 1 do not arrive here.",
    "“L” gets none: 3 does not arrive here.",
    "Its rated output, less 10·log10(1/2) for that many carriers.",
    "“L” has 2 tuner but is set to 1 user bands.",
    "Gets 1 of 1 carrier.",
    "Of 18 V, 1 V arrive.",
    "“L” has 3 output(s).",
    "“L” has  two spaces.",
    "“L” has a stop .",
    "“L” has two stops..",
    "“L” has undefined.",
    "“L” is ⟦L⟧.",
    "starts small.",
    "Ends without a stop",
    "Use an universal receiver.",
    "Use a amplifier.",
  ])("finds fault with: %s", (words) => {
    expect(wrongIn({ words, isSentence: true })).not.toEqual([]);
  });

  test.each([
    "“L” gives 115 dBµV for each of 6 carriers.",
    "At the input, 1 of 6 DAB blocks is too weak: it has 20 dBµV.",
    "At the input, the only DAB block is too weak.",
    "User band 3 is set for 2 tuners of “L”.",
    "1 is stopped by “L” and 3 are too weak.",
    "Of 11 carriers wanted 1 arrives usable at “L”.",
    "1.5 carriers are there; 0.1 dB are missing.",
    "Use a universal receiver, an amplifier or an 8-way splitter.",
  ])("lets pass: %s", (words) => {
    expect(wrongIn({ words, isSentence: true })).toEqual([]);
  });
});
