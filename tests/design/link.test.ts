import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fromBase64url, toBase64url } from "../../src/design/base64url.ts";
import { crc32 } from "../../src/design/crc32.ts";
import { EMPTY_DESIGN } from "../../src/design/design.ts";
import { COMFORTABLE_LINK_LENGTH, decodeLink, encodeLink } from "../../src/design/link.ts";
import { anyDesign } from "../arbitraries.ts";
import { cpuMs } from "../cpuTime.ts";
import { drawn, typicalHouse } from "./house.ts";

async function problemOf(link: string): Promise<string> {
  const reading = await decodeLink(link);
  if (reading.ok) throw new Error("the link was accepted");
  return reading.problem;
}

/** A link whose length and checksum are right, around any text. */
function sealed(text: string): string {
  const raw = new TextEncoder().encode(text);
  const packed = deflateRawSync(raw);
  const header = Buffer.alloc(7);
  header.writeUInt32BE(crc32(raw), 0);
  header.writeUIntBE(packed.length, 4, 3);
  return `d1.${Buffer.concat([header, packed]).toString("base64url")}`;
}

describe("The building blocks keep to their standards", () => {
  // Check values: RFC 4648, section 10 (base64 test vectors), without their padding.
  test.each([
    { text: "", code: "" },
    { text: "f", code: "Zg" },
    { text: "fo", code: "Zm8" },
    { text: "foo", code: "Zm9v" },
    { text: "foob", code: "Zm9vYg" },
    { text: "fooba", code: "Zm9vYmE" },
    { text: "foobar", code: "Zm9vYmFy" },
  ])("base64url of “$text” is “$code”", ({ text, code }) => {
    const bytes = new TextEncoder().encode(text);
    expect(toBase64url(bytes)).toBe(code);
    expect(fromBase64url(code)).toEqual(bytes);
  });

  test("base64url uses - and _ where base64 uses + and / (RFC 4648, table 2)", () => {
    expect(toBase64url(new Uint8Array([0xfb, 0xff, 0xbf]))).toBe("-_-_");
  });

  // The check value of CRC-32 as published in the catalogue of parametrised CRC algorithms: "123456789" gives CBF43926.
  test("CRC-32 of “123456789” is CBF43926", () => {
    expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
  });
});

describe("A link", () => {
  test("gives back exactly the design it was made from, for any design", async () => {
    await fc.assert(
      fc.asyncProperty(anyDesign({ loops: true }), async (design) => {
        expect(await decodeLink(await encodeLink(design))).toEqual({ ok: true, design, notes: [] });
      }),
      { numRuns: 200 },
    );
  });

  test("of a typical house stays below 2,000 characters", async () => {
    const house = typicalHouse();
    const link = await encodeLink(house);
    expect(house.parts.length).toBeGreaterThanOrEqual(30);
    expect(link.length).toBeLessThan(2_000);
    expect(await decodeLink(link)).toEqual({ ok: true, design: house, notes: [] });
  });

  test("holds only signs that no address, mail or chat changes", async () => {
    expect(await encodeLink(typicalHouse())).toMatch(/^d1\.[A-Za-z0-9_-]+$/);
  });

  test("of an empty design is short, and below the comfortable length", async () => {
    const link = await encodeLink(EMPTY_DESIGN);
    expect(link.length).toBeLessThan(Math.min(80, COMFORTABLE_LINK_LENGTH));
    expect(await decodeLink(link)).toMatchObject({ ok: true, design: EMPTY_DESIGN });
  });

  test.each([
    { name: "with #", wrap: (link: string) => `#${link}` },
    { name: "with a full stop behind it", wrap: (link: string) => `${link}.` },
    { name: "in angle brackets of a mail", wrap: (link: string) => `#${link}>` },
    { name: "with a line break behind it", wrap: (link: string) => `${link}\r\n` },
  ])("is read $name", async ({ wrap }) => {
    const design = drawn(["dish", "lnb-universal"], ["dish1/sky > lnb1/sky"]);
    expect(await decodeLink(wrap(await encodeLink(design)))).toEqual({ ok: true, design, notes: [] });
  });
});

describe("A link that cannot be read says why", () => {
  test("cut at any length: cut short, never opened as something smaller", async () => {
    const link = await encodeLink(drawn(["dish", "lnb-universal", "cable"], ["lnb1/out > cable1/in"]));
    for (let length = 3; length < link.length; length += 1) {
      // A cut that ends in "-" or "_" is cut there too.
      expect(await problemOf(link.slice(0, length))).toContain("was cut short");
    }
  });

  test.each([
    { name: "empty", link: "", says: "holds no design" },
    { name: "something else", link: "#section-2", says: "holds no design" },
    { name: "a mark cut off", link: "d", says: "holds no design" },
    { name: "from the future", link: "d9.AAAA", says: "made by a newer edition (mark “d9.”)" },
    { name: "mark of no edition", link: "d0.AAAA", says: "the mark “d0.” was never in use" },
    { name: "only a mark", link: "d1.", says: "cut short" },
    { name: "foreign signs", link: "d1.AAAA%20BBBB", says: "damaged: it holds signs that no link has" },
    { name: "longer than any", link: `d1.${"A".repeat(2_000_001)}`, says: "too long" },
  ])("$name", async ({ link, says }) => {
    expect(await problemOf(link)).toContain(says);
  });

  test("altered in one sign anywhere: damaged or cut short, never another design", async () => {
    const link = await encodeLink(typicalHouse());
    // The very last sign is spared: some of its bits are filling and say nothing.
    const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_".split("");
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 3, max: link.length - 2 }),
        fc.constantFrom(...signs),
        async (at, sign) => {
          fc.pre(link[at] !== sign);
          expect(await problemOf(link.slice(0, at) + sign + link.slice(at + 1))).toMatch(/damaged|cut short/);
        },
      ),
      { numRuns: 300 },
    );
  });

  test("with signs put in: damaged", async () => {
    const link = await encodeLink(typicalHouse());
    expect(await problemOf(`${link.slice(0, 100)}AbCd${link.slice(100)}`)).toContain("damaged");
    expect(await problemOf(`${link}AAAA`)).toContain("damaged");
  });
});

describe("A hostile link neither throws, nor freezes, nor fills the memory", () => {
  const part = (kind: number) => `[${kind},1,0,0]`;
  test.each([
    { name: "a bomb of 60 MB", text: () => "0".repeat(6e7), says: "unpacks to more than 2 MB" },
    { name: "no JSON", text: () => "[1,", says: "line 1, column 4" },
    { name: "deep nesting", text: () => "[".repeat(1e6), says: "nested more than 20 deep" },
    { name: "another shape", text: () => '{"a":1}', says: "holds no design" },
    {
      name: "a hundred thousand parts",
      text: () => `["",0,["cable"],[],[${Array(1e5).fill(part(0)).join()}],[]]`,
      says: "more parts or wires than a design can hold",
    },
    {
      name: "half a million wires",
      text: () => `["",0,[],[],[],[${Array(5e5).fill(0).join()}]]`,
      says: "more parts or wires than a design can hold",
    },
    {
      name: "unknown kind",
      text: () => `["",0,["magic"],[],[${part(0)}],[]]`,
      says: 'parts[0] "1": unknown kind "magic"',
    },
    {
      name: "a kind that isn't in the table",
      text: () => `["",0,[],[],[${part(7)}],[]]`,
      says: 'parts[0] "1": unknown kind ""',
    },
    {
      name: "two parts of one id",
      text: () => `["",0,["cable"],[],[${part(0)},${part(0)}],[]]`,
      says: 'parts[1] "cable1": another part has the same id',
    },
    {
      name: "wire to nowhere",
      text: () => `["",0,["cable"],["out","in"],[${part(0)}],[0,0,5,1]]`,
      says: "wires[0].to",
    },
    {
      name: "half a wire",
      text: () => `["",0,["cable"],["out","in"],[${part(0)}],[0,0]]`,
      says: "wires[0].to",
    },
    { name: "huge number", text: () => '["",0,["cable"],[],[[0,1,1e400,0]],[]]', says: "entry [4][0][2]" },
    {
      name: "option out of range",
      text: () => '["",0,["cable"],[],[[0,1,0,0,0,{"lengthM":-3}]],[]]',
      says: 'parts[0] "cable1": options.lengthM',
    },
    {
      name: "id __proto__",
      text: () => '["",0,["cable"],[],[[0,"__proto__",0,0]],[]]',
      says: 'parts[0] "__proto__": id',
    },
  ])("$name", async ({ text, says }) => {
    const link = sealed(text());
    const start = cpuMs();
    expect(await problemOf(link)).toContain(says);
    expect(cpuMs() - start).toBeLessThan(1000);
  });

  test("any text behind the mark is read or refused in a sentence", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string(),
          fc.base64String(),
          fc.jsonValue().map((v) => sealed(JSON.stringify(v)).slice(3)),
        ),
        async (body) => {
          expect(await problemOf(`d1.${body}`)).toMatch(/\S.*\.$/s);
        },
      ),
      { numRuns: 300 },
    );
  });
});
