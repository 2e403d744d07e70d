import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readDesign, readStoredDesign, writeDesign } from "../../src/design/file.ts";
import { decodeLink } from "../../src/design/link.ts";

function frozen(name: string): string {
  return readFileSync(new URL(`./files/${name}`, import.meta.url), "utf8");
}

/** What a file of version 1 says, by plain JSON.parse: its own keys are the document's. */
function contentOf(text: string): unknown {
  const { format: _format, version: _version, ...content } = JSON.parse(text);
  return content.settings ? { ...content, settings: { ...content.settings, ...ADDED_SETTINGS } } : content;
}

/** Settings that came after these files were written: absent, they mean what they did before. */
const ADDED_SETTINGS = { keepDb: 0 };

/** A file of version 1 as it is written now: with the settings that came later. */
function withAdded(text: string): string {
  return text.replace(/^( *)"derating"/m, '$1"keepDb": 0,\n$1"derating"');
}

describe("A file of version 1", () => {
  test.each(["v1-house.json", "v1-every-kind.json", "v1-variants.json"])(
    "opens as it was written: %s",
    (name) => {
      const text = frozen(name);
      const whole = { ok: true, design: contentOf(text), notes: [] };
      expect(readDesign(text)).toEqual(whole);
      expect(readStoredDesign(text)).toEqual(whole);
    },
  );

  test.each(["v1-house.json", "v1-every-kind.json", "v1-variants.json"])(
    "is written again sign by sign on request: %s",
    (name) => {
      const text = frozen(name);
      const reading = readDesign(text);
      expect(reading.ok && writeDesign(reading.design, { full: true })).toBe(withAdded(text));
    },
  );
});

describe("A file of version 2", () => {
  test.each(["house", "every-kind", "variants"])(
    "opens as the same design that version 1 names in full: %s",
    (name) => {
      const whole = { ok: true, design: contentOf(frozen(`v1-${name}.json`)), notes: [] };
      expect(readDesign(frozen(`v2-${name}.json`))).toEqual(whole);
    },
  );

  test.each(["v2-house.json", "v2-every-kind.json", "v2-variants.json"])(
    "is written again sign by sign: %s",
    (name) => {
      const text = frozen(name);
      const reading = readDesign(text);
      expect(reading.ok && writeDesign(reading.design)).toBe(text);
    },
  );
});

test("a link of the mark d1 opens as the house it was made from", async () => {
  const reading = await decodeLink(frozen("v1-house.link.txt"));
  expect(reading).toEqual({ ok: true, design: contentOf(frozen("v1-house.json")), notes: [] });
});
