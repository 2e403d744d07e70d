import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readDesign } from "../../src/design/file.ts";
import { SETTINGS, USUAL_SETTINGS } from "../../src/design/settings.ts";
import { TYPICAL_SET, TYPICAL_SETS, typicalOptions, underSet } from "../../src/design/typical.ts";
import { CATALOGUE } from "../../src/parts/catalogue.ts";
import { fieldMeta } from "../../src/parts/fields.ts";

type Values = Record<string, unknown>;
type Table = {
  set: number;
  settings: Values;
  settingsRows: Values;
  options: Record<string, Values>;
  rows: Record<string, Values>;
};

const table: Table = JSON.parse(readFileSync(new URL("./files/typical-1.json", import.meta.url), "utf8"));

/** Typical values of a row in each list of a shape. */
function rowsOf(shape: Readonly<Record<string, unknown>>): Values {
  return Object.fromEntries(
    Object.entries(shape).flatMap(([key, field]) => {
      // The shape of a zod object is loosely typed; only schemas made by the field builders are described.
      const row = fieldMeta(field as Parameters<typeof fieldMeta>[0])?.row;
      return row ? [[key, row.parse({})]] : [];
    }),
  );
}

/**
 * The table was written once, when the set was released. A value that is new (a new kind, a new option) is added
 * to it; where one that stands in it is to change, that is another set: see "A typical value" in DEVELOPERS.md.
 */
describe("The typical values of set 1 are those of the frozen table", () => {
  test("it is the set that is written", () => {
    expect(table.set).toBe(TYPICAL_SET);
    expect([...TYPICAL_SETS.keys()]).toEqual([1]);
  });

  test("no kind is missing in the table or gone from the catalogue", () => {
    expect(Object.keys(table.options).sort()).toEqual(CATALOGUE.map(({ kind }) => kind).sort());
  });

  test.each(CATALOGUE.map((kind) => ({ name: kind.kind, kind })))("$name", ({ kind }) => {
    expect(typicalOptions(kind)).toEqual(table.options[kind.kind]);
    expect(rowsOf(kind.options.shape)).toEqual(table.rows[kind.kind] ?? {});
  });

  test("settings", () => {
    expect(USUAL_SETTINGS).toEqual(table.settings);
    expect(rowsOf(SETTINGS.shape)).toEqual(table.settingsRows);
  });
});

describe("A file means the values of its own set", () => {
  const file = (more: object) =>
    JSON.stringify({ format: "downlead", version: 2, title: "A", parts: [], wires: [], ...more });
  const reading = (more: object) => {
    const read = readDesign(file(more));
    return read.ok ? "opens" : read.problem;
  };

  test("of which set 1 is meant where none is named, as by hand", () => {
    expect(reading({})).toBe("opens");
    expect(reading({ defaults: 1 })).toBe("opens");
  });

  test("of a set that this edition does not know, a newer edition was the author", () => {
    expect(reading({ defaults: 2 })).toBe(
      "The file was written by a newer edition, with set 2 of the typical values; this edition knows up to set 1.",
    );
  });

  test.each([0, -1, 1.5, "1", null, [], true])("and %j is no set", (defaults) => {
    expect(reading({ defaults })).toMatch(/^The set of typical values is .*; allowed is a whole number\.$/);
  });

  test("a file of version 1 means set 1, whatever it says", () => {
    const text = file({ defaults: 7 }).replace('"version":2', '"version":1');
    expect(readDesign(text).ok).toBe(true);
  });

  /** As if a cable had once been 10 m by default, and limits had been others. */
  const former = { settings: { limits: "practice" }, options: new Map([["cable", { lengthM: 10 }]]) };
  const parts = [
    { id: "a", kind: "cable" },
    { id: "b", kind: "cable", options: { lengthM: 30 } },
    { id: "c", kind: "dish", options: {} },
    { id: "d", kind: "cable", options: 7 },
    "no part",
  ];

  test("an older set fills in what it meant, and nothing that was written", () => {
    const whole = underSet({ parts, variants: [{ name: "B", parts }, 5] }, former);
    const filled = [
      { id: "a", kind: "cable", options: { lengthM: 10 } },
      { id: "b", kind: "cable", options: { lengthM: 30 } },
      ...parts.slice(2),
    ];
    expect(whole).toEqual({
      parts: filled,
      variants: [{ name: "B", parts: filled }, 5],
      settings: { limits: "practice" },
    });
    expect(underSet({ settings: { limits: "own", derating: "power" } }, former)).toEqual({
      settings: { limits: "own", derating: "power" },
    });
  });

  test("a set without differences gives back the file itself", () => {
    const set = TYPICAL_SETS.get(TYPICAL_SET);
    const raw = { parts };
    expect(set && underSet(raw, set)).toBe(raw);
  });
});
