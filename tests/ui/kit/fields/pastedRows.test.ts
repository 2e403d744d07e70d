/** Lists from spreadsheets: separators as in RFC 4180 (comma) and text/tab-separated-values (tab, IANA). */
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { choice, number, text } from "../../../../src/parts/fields.ts";
import { readPastedRows } from "../../../../src/ui/kit/fields/pastedRows.ts";

const ROW = z.object({
  name: text({ label: "Name", maxLength: 20, default: "" }),
  frequencyMHz: number({ label: "Frequency", unit: "MHz", min: 5, max: 2400, default: 474 }),
  polarisation: choice({
    label: "Polarisation",
    choices: [
      { value: "V", label: "Vertical" },
      { value: "H", label: "Horizontal" },
    ],
    default: "V",
  }),
});

describe("a pasted list", () => {
  test.each([
    { name: "tabs, decimal comma", pasted: "A\t474,5\tH\nB\t482\tV" },
    { name: "semicolons, decimal comma", pasted: "A;474,5;H\r\nB;482;V\r\n" },
    { name: "commas, decimal point", pasted: "A,474.5,H\nB,482,V" },
    {
      name: "headings and words of the choices",
      pasted: "Name;MHz;Pol\n\nA;474.5;horizontal\nB;482;Vertical",
    },
  ])("is read: $name", ({ pasted }) => {
    expect(readPastedRows(pasted, ROW)).toEqual({
      ok: true,
      rows: [
        { name: "A", frequencyMHz: 474.5, polarisation: "H" },
        { name: "B", frequencyMHz: 482, polarisation: "V" },
      ],
    });
  });

  test("fills what a line leaves out with typical values", () => {
    expect(readPastedRows("A", ROW)).toEqual({
      ok: true,
      rows: [{ name: "A", frequencyMHz: 474, polarisation: "V" }],
    });
  });

  test.each([
    {
      name: "a value out of range",
      pasted: "A;474\nB;99999",
      says: /^Line 2: .* is 99\u202f999 MHz; allowed is .* to 2400 MHz\.$/,
    },
    { name: "a word for a number", pasted: "A;474\nB;high", says: /Line 2/ },
    { name: "an unknown choice", pasted: "A;474;left", says: /Line 1/ },
    { name: "too many values", pasted: "A;474;V;7", says: /Line 1 has 4 values/ },
    { name: "nothing", pasted: "  \n ", says: /no row/ },
  ])("is refused with its line: $name", ({ pasted, says }) => {
    const read = readPastedRows(pasted, ROW);
    expect(read.ok ? "" : read.problem).toMatch(says);
  });
});
