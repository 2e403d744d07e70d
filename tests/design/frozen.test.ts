import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { decodeLink } from "../../src/design/link.ts";

function frozen(name: string): string {
  return readFileSync(new URL(`./files/${name}`, import.meta.url), "utf8");
}

/** What a file of version 1 says, by plain JSON.parse: its own keys are the document's. */
function contentOf(text: string): unknown {
  const { format: _format, version: _version, ...content } = JSON.parse(text);
  return content;
}

describe("A file of version 1", () => {
  test.each(["v1-house.json", "v1-every-kind.json"])("opens as it was written: %s", (name) => {
    const text = frozen(name);
    expect(readDesign(text)).toEqual({ ok: true, design: contentOf(text), notes: [] });
  });

  test.each(["v1-house.json", "v1-every-kind.json"])("is written again sign by sign: %s", (name) => {
    const text = frozen(name);
    const reading = readDesign(text);
    expect(reading.ok && writeDesign(reading.design)).toBe(text);
  });
});

test("a link of the mark d1 opens as the house it was made from", async () => {
  const reading = await decodeLink(frozen("v1-house.link.txt"));
  expect(reading).toEqual({ ok: true, design: contentOf(frozen("v1-house.json")), notes: [] });
});
