/** Everything as one text and back. What must come back is what went in; nothing outside to compare with. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readDesign, writeDesign } from "../../../src/design/file.ts";
import { PLACEHOLDER_PRICES } from "../../../src/paperwork/prices.ts";
import { addHint, NO_PROGRESS } from "../../../src/remedies/training/progress.ts";
import {
  ARCHIVE_LIMITS,
  type Archive,
  packArchive,
  unpackArchive,
} from "../../../src/store/documents/archive.ts";
import type { ExportedDocument } from "../../../src/store/documents/documentCommands.ts";
import { anyVariants } from "../../arbitraries.ts";
import { typicalHouse } from "../../design/house.ts";

const house = writeDesign(typicalHouse());
const HOUSE_PARTS = typicalHouse().parts.length;
const document = (title: string, text = house): ExportedDocument => ({
  title,
  changed: 1_700_000_000_000,
  parts: HOUSE_PARTS,
  text,
  revisions: [],
});
const EMPTY: Archive = {
  documents: [],
  prices: PLACEHOLDER_PRICES,
  currency: "",
  practice: {},
  settings: {},
};
const packed = (documents: readonly ExportedDocument[]) => packArchive({ ...EMPTY, documents }, 5);

/** The JSON value of a packed archive, for putting damage into it. */
function jsonOf(
  documents: readonly ExportedDocument[],
): { documents: Record<string, unknown>[] } & Record<string, unknown> {
  return JSON.parse(packed(documents));
}

async function good(text: string) {
  const unpacked = await unpackArchive(text);
  if (!unpacked.ok) throw new Error(unpacked.problem);
  return unpacked;
}

describe("Everything", () => {
  test("comes back as it went in: any designs, revisions, prices, practice, settings", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(anyVariants({ maxParts: 6 }), fc.string({ maxLength: 30 }), fc.nat()), {
          maxLength: 4,
        }),
        async (designs) => {
          const archive: Archive = {
            documents: designs.map(([design, name, when]) => ({
              title: design.title,
              changed: when,
              parts: design.parts.length,
              text: writeDesign(design),
              revisions: [
                { when, name, by: "user", parts: design.parts.length, text: writeDesign(design) },
                { when: when + 1, by: "itself", parts: HOUSE_PARTS, text: house },
              ],
            })),
            prices: { ...PLACEHOLDER_PRICES, cable: { price: 1.25, workMinutes: 45 } },
            currency: "crowns",
            practice: { "lounge-dark": addHint(NO_PROGRESS, 3) },
            settings: { theme: "dark" },
          };
          expect(await unpackArchive(packArchive(archive, 77))).toEqual({
            ok: true,
            made: 77,
            archive,
            keptOut: [],
          });
        },
      ),
      { numRuns: 40 },
    );
  });

  test("is readable: each design stands in it as a file of its own", () => {
    const { documents } = jsonOf([document("Mine")]);
    const reading = readDesign(JSON.stringify(documents[0]?.file));
    expect(reading.ok && reading.design).toEqual(typicalHouse());
  });

  test("takes designs as they were written before, whatever white space stands around them", async () => {
    const { archive } = await good(
      packed([document("Mine", `\uFEFF\n${JSON.stringify(JSON.parse(house))}  `)]),
    );
    expect(archive.documents[0]?.text).toBe(house);
  });
});

describe("What cannot be read", () => {
  test.each([
    { name: "a text that is no file", text: "torn", why: /“Torn” cannot be read: .+/ },
    { name: "a file of no design", text: "{}", why: /“Torn” cannot be read: .+/ },
    { name: "a design of a newer edition", text: '{"format":"downlead","version":99}', why: /newer/ },
  ])("is kept out with a sentence, and the rest comes: $name", async ({ text, why }) => {
    const { archive, keptOut } = await good(
      packed([document("One"), document("Torn", text), document("Two")]),
    );
    expect(archive.documents).toHaveLength(2);
    expect(keptOut).toEqual([expect.stringMatching(why)]);
  });

  test("gives way to the latest revision that can be read", async () => {
    const revisions = [
      { when: 1, by: "itself", parts: HOUSE_PARTS, text: writeDesign({ ...typicalHouse(), title: "Old" }) },
      { when: 3, by: "itself", parts: HOUSE_PARTS, text: house },
      { when: 4, by: "itself", parts: 0, text: "torn too" },
    ] as const;
    const { archive, keptOut } = await good(packed([{ ...document("Torn", "torn"), revisions }]));
    expect(archive.documents).toEqual([
      { title: "Torn", changed: 3, parts: HOUSE_PARTS, text: house, revisions: revisions.slice(0, 2) },
    ]);
    expect(keptOut).toEqual([
      expect.stringMatching(/^“Torn” cannot be read/),
      "“Torn”: one revision cannot be read.",
    ]);
  });

  test("is counted where it is practice, and prices give way to placeholders", async () => {
    const value = {
      ...jsonOf([]),
      practice: { a: 7, b: NO_PROGRESS },
      prices: { cable: { price: "cheap" } },
    };
    const { archive, keptOut } = await good(JSON.stringify(value));
    expect(archive.practice).toEqual({ b: NO_PROGRESS });
    expect(archive.prices).toEqual(PLACEHOLDER_PRICES);
    expect(keptOut).toEqual(["Practice: the progress of one case is damaged."]);
  });

  test("says so where values of a design are not known here", async () => {
    const value = JSON.parse(house);
    value.parts[0].options = { ...value.parts[0].options, fromTheFuture: 1 };
    const { archive, keptOut } = await good(packed([document("Mine", JSON.stringify(value))]));
    expect(archive.documents).toHaveLength(1);
    expect(keptOut).toEqual(["“Mine”: values that this version does not know are left out."]);
  });
});

describe("A file that is no download of everything", () => {
  test.each([
    { name: "an empty text", text: "", why: /empty/ },
    { name: "a picture", text: "\u0089PNG", why: /a value should stand instead/ },
    { name: "a single design", text: house, why: /single design/ },
    { name: "some other JSON", text: "[1]", why: /something else/ },
    { name: "one of a newer version", text: '{"format":"downlead-archive","version":2}', why: /newer/ },
    { name: "brackets without end", text: "[".repeat(200_000), why: /deep/ },
    {
      name: "more designs than a storage can hold",
      text: JSON.stringify({
        format: "downlead-archive",
        version: 1,
        documents: Array.from({ length: ARCHIVE_LIMITS.documents + 1 }, () => 0),
      }),
      why: /5001 designs; at most 5000/,
    },
  ])("is refused with the reason: $name", async ({ text, why }) => {
    const unpacked = await unpackArchive(text);
    expect(unpacked.ok ? "taken" : unpacked.problem).toMatch(why);
  });

  test("never makes it throw, wherever it is damaged", async () => {
    const text = packed([
      document(
        "Mine",
        writeDesign({ ...typicalHouse(), parts: typicalHouse().parts.slice(0, 3), wires: [] }),
      ),
    ]);
    await fc.assert(
      fc.asyncProperty(
        fc.nat(text.length - 1),
        fc.nat(40),
        fc.string({ maxLength: 6 }),
        async (at, cut, put) => {
          const unpacked = await unpackArchive(text.slice(0, at) + put + text.slice(at + cut));
          // Damaged or not: what it hands out can be read.
          for (const { text: file } of unpacked.ok ? unpacked.archive.documents : [])
            expect(readDesign(file)).toMatchObject({ ok: true });
        },
      ),
      { numRuns: 500, seed: 7 },
    );
  });
});
