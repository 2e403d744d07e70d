/** The glossary of the app: what it must hold comes from the texts of the app and from the style sheet. */

import { describe, expect, test } from "vitest";
import { EMPTY_DESIGN } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { ruleBook } from "../../src/sentences/explain/ruleBook.ts";
import { explainFinding } from "../../src/sentences/finding.ts";
import { GLOSSARY, glossaryTermsOf } from "../../src/sentences/glossary.ts";
import { RULE_IDS } from "../../src/sentences/rules/index.ts";
import { foundTerms } from "../../src/ui/features/glossary/found.ts";
import { allPhrases } from "../words/phrases.ts";
import { MOST_WORDS, sentencesIn, TRADE_WORDS, wordsIn } from "../words/style.ts";

const OTHERS = allPhrases().filter(({ file }) => file !== "src/sentences/glossary.ts");
const TERMS: readonly string[] = GLOSSARY.flatMap(({ terms }) => [...terms]);

/** A term as it may stand in a text: at the beginning of a word, in any case, in the plural as well. */
const standsIn = (term: string) => {
  const plain = term.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const found = new RegExp(`(?<![\\p{L}\\d])${plain}(?:s|es)?(?!\\p{L})`, "iu");
  return (words: string) => found.test(words);
};

test("a term is found at the beginning of a word only", () => {
  expect(["user bands", "User band 3"].every(standsIn("User band"))).toBe(true);
  expect(["a metal strap", "trapped"].some(standsIn("Trap"))).toBe(false);
});

test.each(TERMS)("“%s” occurs in the texts of the app", (term) => {
  expect(OTHERS.some(({ words }) => standsIn(term)(words))).toBe(true);
});

test("no word of the trade that the app uses is missing", () => {
  const used = TRADE_WORDS.filter((word) => OTHERS.some(({ words }) => standsIn(word)(words)));
  // The terms that the style sheet asks for on labels; fewer, and the search would have gone blind.
  expect(used.length).toBeGreaterThan(40);
  expect(used.filter((word) => !TERMS.some((term) => term.toLowerCase() === word.toLowerCase()))).toEqual([]);
});

test("every term stands once, by the alphabet", () => {
  expect(new Set(TERMS.map((term) => term.toLowerCase())).size).toBe(TERMS.length);
  const first = GLOSSARY.map(({ terms: [term] }) => term);
  // The order of ISO/IEC 14651, as the platform has it.
  expect(first).toEqual(first.toSorted(new Intl.Collator("en").compare));
});

test("every meaning is one or two sentences of at most 25 words", () => {
  for (const { terms, meaning } of GLOSSARY) {
    const sentences = sentencesIn(meaning);
    expect(sentences.length, terms[0]).toBeLessThanOrEqual(2);
    expect(Math.max(...sentences.map(wordsIn)), terms[0]).toBeLessThanOrEqual(MOST_WORDS);
    expect(meaning, terms[0]).toMatch(/^[\p{Lu}\d].*\.$/u);
  }
});

describe("what a rule points to in the glossary", () => {
  test.each(RULE_IDS)("is said of %s", (rule) => {
    const example = RULE_EXAMPLES.find((each) => each.rule === rule);
    const evaluation = evaluate(example?.speaks.load() ?? EMPTY_DESIGN);
    const finding = report(evaluation).findings.find((each) => each.rule === rule);
    const explained = finding && explainFinding(finding, evaluation);
    const entry = ruleBook().find(({ id }) => id === rule);
    const said = [entry?.title, entry?.explain, explained?.trade, explained?.measure].join(" ");
    expect(glossaryTermsOf(rule).filter((term) => !standsIn(term)(said))).toEqual([]);
  });

  test("leads to an entry of the glossary first of all", () => {
    const named = RULE_IDS.flatMap(glossaryTermsOf);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((term) => foundTerms(term)[0]?.terms[0] !== term)).toEqual([]);
  });
});
