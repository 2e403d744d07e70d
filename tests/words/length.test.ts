/** No sentence is longer than 25 words, whatever the design: the style of the house for texts read on a ladder. */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { TRADE_CASES } from "../trade/cases.ts";
import { MORE_CASES } from "../trade/moreCases.ts";
import { type Text, textsOf } from "./sentences.ts";
import { MOST_WORDS, sentencesIn, wordsIn } from "./style.ts";

const known = new Set<string>();

function tooLong(texts: Iterable<Text>): readonly string[] {
  const found: string[] = [];
  for (const { of, words, isSentence } of texts)
    for (const sentence of isSentence ? sentencesIn(words) : []) {
      if (known.has(sentence)) continue;
      known.add(sentence);
      const count = wordsIn(sentence);
      if (count > MOST_WORDS) found.push(`${count} words (${of}): ${sentence}`);
    }
  return found;
}

// By hand: eight words, then seven; a level and a port are words as well.
test("words and sentences are counted as a reader counts them", () => {
  const text = "At the TV socket, C30 has 46.3 dBµV. 5 of “Plate living room” are lost.";
  expect(sentencesIn(text).map(wordsIn)).toEqual([8, 7]);
});

const DESIGNS: readonly (readonly [name: string, load: () => Design])[] = [
  ...EXAMPLES.map(({ key, load }) => [`the example ${key}`, load] as const),
  ...RULE_EXAMPLES.map(({ rule, speaks }) => [`the example of ${rule}`, speaks.load] as const),
  ...RULE_EXAMPLES.flatMap(({ rule, more }) =>
    more.map(({ title, load }) => [`the example of ${rule}: ${title}`, load] as const),
  ),
  ...[...TRADE_CASES, ...MORE_CASES].map(({ fault, design }) => [fault, () => design] as const),
];

describe("no sentence has more than 25 words", () => {
  test.each(DESIGNS)("%s", (_, load) => {
    expect(tooLong(textsOf(load()))).toEqual([]);
  });
});
