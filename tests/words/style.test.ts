/** Every text in the source keeps to the style sheet; and a text that does not is noticed. */
import { describe, expect, test } from "vitest";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { COMMANDS } from "../../src/ui/shell/commands.ts";
import { allPhrases, phrasesIn } from "./phrases.ts";
import { against } from "./style.ts";

describe("the style sheet", () => {
  const phrases = allPhrases();

  test("is kept by every text in the source", () => {
    // As many as a page of this size has at least; fewer, and the texts would not be found any more.
    expect(phrases.length).toBeGreaterThan(2_000);
    expect(phrases.flatMap(against)).toEqual([]);
  });

  test("names commands by verb and object, in three words at most", () => {
    const words = (label: string) => label.replace("…", "").split(" ").length;
    expect(COMMANDS.map(({ label }) => label).filter((label) => words(label) > 3)).toEqual([]);
    expect(new Set(COMMANDS.map(({ label }) => label)).size).toBe(COMMANDS.length);
  });

  test("gives every kind of part a name of its own, of the trade", () => {
    const names = CATALOGUE.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(
      expect.arrayContaining([
        "SCR/dSCR LNB",
        "SCR/dSCR multiswitch",
        "Outlet, loop-through",
        "Outlet, terminated",
        "Terminator",
        "In-line IF amplifier",
        "4G/5G filter",
        "Ingress",
        "Faulty joint",
      ]),
    );
  });
});

// Planted texts: each offends one rule, wherever a text can stand in the source.
describe("what offends it is found", () => {
  // "#{" stands for the mark of a value in a template.
  const found = (source: string) =>
    phrasesIn("src/planted.tsx", source.replaceAll("#{", "${")).flatMap(against);

  test.each([
    { what: "an old word in a string", source: 'const a = "Join two parts";', says: /connect/ },
    { what: "an old word in an element", source: "const a = <p>Take the converter down.</p>;", says: /LNB/ },
    {
      what: "an old word in an attribute",
      source: 'const a = <b title="Let go of all" />;',
      says: /deselect/,
    },
    { what: "an old word around a value", source: "const a = `The #{n} plates stay.`;", says: /outlet/ },
    {
      what: "an old word in a text inside a text",
      source: "const a = `#{b ? `Cut the pad out` : x}`;",
      says: /attenuator/,
    },
    { what: "a straight quotation mark", source: "const a = 'Press \"Undo\" now';", says: /curly quotation/ },
    { what: "a straight apostrophe", source: 'const a = "The dish\'s beam";', says: /curly apostrophe/ },
    { what: "a contraction", source: 'const a = "It isn’t there.";', says: /contraction/ },
    {
      what: "a sentence that is too long",
      source: `const a = "Long ${"word ".repeat(25)}.";`,
      says: /26 words/,
    },
  ])("$what", ({ source, says }) => {
    expect(found(source).join("\n")).toMatch(says);
  });

  test.each([
    { what: "imports and types", source: 'import { a } from "./converter feed.ts"; type T = "Join two";' },
    { what: "names of classes", source: 'const a = <p className="Join plate" />;' },
    { what: "keys of objects", source: 'const a = { "Join two parts": 1 };' },
    { what: "a sketch of a design", source: 'const a = "dish.sky > join.in1, join.out > plate.in";' },
    { what: "a clean text", source: 'const a = "Connect two parts: “LNB” and “Outlet”.";' },
  ])("but not $what", ({ source }) => {
    expect(found(source)).toEqual([]);
  });
});
