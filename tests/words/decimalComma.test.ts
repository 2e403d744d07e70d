/** In a language with a decimal comma no figure has a point: neither in what is made of a design nor in fixed texts. */
import "./writtenWithComma.ts";
import { describe, expect, test } from "vitest";
import { EXAMPLES } from "../../src/design/examples.ts";
import { SETTINGS } from "../../src/design/settings.ts";
import { KNOWN_LIMITS } from "../../src/findings/knownLimits.ts";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { fieldMeta } from "../../src/parts/fields.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { ruleBook } from "../../src/sentences/explain/ruleBook.ts";
import { allPhrases } from "./phrases.ts";
import { textsOf } from "./sentences.ts";

/** Clauses of standards and laws, and names of FM stations and satellites, which are names and no figures. */
const NAME =
  /\d+\.\d°[EW]|P\.\d+|EN [\d-]+|\b(?:8[7-9]|9\d|10[0-8])\.\d(?= MHz|,)|Annex I \d\.\d(?: to \d\.\d)?|cl\. [\d.]+/g;

const pointed = (words: string) => /\d\.\d/.test(words.replace(NAME, ""));

describe("what is made of a design", () => {
  const designs = [
    ...EXAMPLES.map(({ key, load }) => [key, load] as const),
    ...RULE_EXAMPLES.map(({ rule, speaks }) => [rule, speaks.load] as const),
  ];
  test.each(designs)("%s", (_, load) => {
    const found = [...textsOf(load())].filter(({ words }) => pointed(words));
    expect(found.map(({ of, words }) => `${of}: ${words}`)).toEqual([]);
  });
});

test("names, choices and help of every value", () => {
  const found = [...CATALOGUE, { kind: "settings", options: SETTINGS }].flatMap(({ kind, options }) =>
    Object.entries(options.shape).flatMap(([key, schema]) => {
      const meta = fieldMeta(schema);
      const words = [meta?.label, meta?.help, ...(meta?.choices ?? []).map(({ label }) => label)];
      return words
        .filter((each) => each !== undefined && pointed(each))
        .map((each) => `${kind} ${key}: ${each}`);
    }),
  );
  expect(found).toEqual([]);
});

test("the rule book and the known limits", () => {
  const words = [
    ...ruleBook().flatMap(({ title, explain }) => [title, explain]),
    ...KNOWN_LIMITS.flatMap(({ title, text }) => [title, text]),
  ];
  expect(words.filter(pointed)).toEqual([]);
});

/** What a source says is quoted as it stands there. */
const QUOTED =
  /from memory|as quoted|Royal Decree|Unified|validation sites|service manual|no source|Licen[cs]e/;

/** Path data of symbols, and short names of licences, which nobody reads as figures. */
const FILES_WITHOUT_FIGURES = /^src\/(?:build\/|parts\/symbols\.ts)/;

test("no text in the source holds a figure with a point, written by hand", () => {
  const found = allPhrases().filter(
    ({ file, words }) => !FILES_WITHOUT_FIGURES.test(file) && !QUOTED.test(words) && pointed(words),
  );
  expect(found.map(({ file, line, words }) => `${file}:${line} “${words}”`)).toEqual([]);
});
