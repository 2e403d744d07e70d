import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readDesign, readStoredDesign, writeDesign } from "../../src/design/file.ts";
import { decodeLink } from "../../src/design/link.ts";
import { prettyJson } from "../../src/design/prettyJson.ts";
import { isObject } from "../../src/design/raw.ts";

function frozen(name: string): string {
  return readFileSync(new URL(`./files/${name}`, import.meta.url), "utf8");
}

type Values = Readonly<Record<string, unknown>>;

/** Typical values of set 1, as they were written down: what a file leaves out means these. */
const typical: {
  readonly settings: Values;
  readonly settingsRows: Readonly<Record<string, Values>>;
  readonly options: Readonly<Record<string, Values>>;
  readonly rows: Readonly<Record<string, Readonly<Record<string, Values>>>>;
} = JSON.parse(frozen("typical-1.json"));

type Content = {
  readonly parts: readonly { readonly kind: string; readonly options?: Values }[];
  readonly settings?: Values;
  readonly variants?: readonly Content[];
};

/** What a file of version 1 says, by plain JSON.parse. It named every value of its time: what it lacks came later. */
function contentOf(text: string): unknown {
  const { format: _format, version: _version, ...content } = JSON.parse(text);
  return withLater(content);
}

function withLater(content: Content): Content {
  const { settings, variants } = content;
  return {
    ...content,
    parts: content.parts.map(({ kind, options = {}, ...part }) => ({
      ...part,
      kind,
      options: over(typical.options[kind] ?? {}, options, (list) => typical.rows[kind]?.[list]),
    })),
    ...(settings ? { settings: over(typical.settings, settings, (list) => typical.settingsRows[list]) } : {}),
    ...(variants ? { variants: variants.map(withLater) } : {}),
  };
}

/** What is written lies over what is meant; each row of a list as well. */
function over(meant: Values, written: Values, rowOf: (list: string) => Values | undefined): Values {
  const lists = Object.entries(written).flatMap(([key, value]) => {
    const row = rowOf(key);
    return row && Array.isArray(value) ? [[key, value.map((each) => ({ ...row, ...each }))]] : [];
  });
  return { ...meant, ...written, ...Object.fromEntries(lists) };
}

/** A file without what came later than the first, in the order in which it is written. */
function asFirstWritten(written: string, first: string): string {
  return `${prettyJson(keptAsIn(JSON.parse(first), JSON.parse(written)))}\n`;
}

/** Of a value only what a former one has too. */
function keptAsIn(former: unknown, now: unknown): unknown {
  if (Array.isArray(former) && Array.isArray(now)) return now.map((each, i) => keptAsIn(former[i], each));
  if (!isObject(former) || !isObject(now)) return now;
  return Object.fromEntries(
    Object.entries(now)
      .filter(([key]) => Object.hasOwn(former, key))
      .map(([key, value]) => [key, keptAsIn(former[key], value)]),
  );
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
      expect(reading.ok && asFirstWritten(writeDesign(reading.design, { full: true }), text)).toBe(text);
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
      expect(reading.ok && asFirstWritten(writeDesign(reading.design), text)).toBe(text);
    },
  );
});

test("a link of the mark d1 opens as the house it was made from", async () => {
  const reading = await decodeLink(frozen("v1-house.link.txt"));
  expect(reading).toEqual({ ok: true, design: contentOf(frozen("v1-house.json")), notes: [] });
});
