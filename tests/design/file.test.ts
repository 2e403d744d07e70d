import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { anyDesign } from "../arbitraries.ts";
import { cpuMs } from "../cpuTime.ts";
import { drawn, typicalHouse } from "./house.ts";

/** The sentence a file is refused with; fails where it is accepted. */
function problemOf(text: string): string {
  const reading = readDesign(text);
  if (reading.ok) throw new Error("the file was accepted");
  return reading.problem;
}

/** A valid file of a dish, a converter and a cable, changed by the test. */
function file(
  change: (file: Record<string, unknown> & { parts: unknown[]; wires: unknown[] }) => void,
): string {
  const value = {
    format: "downlead",
    version: 1,
    title: "House",
    parts: [
      { id: "dish1", kind: "dish", label: "Dish", options: {}, at: [0, 0] },
      { id: "lnb1", kind: "lnb-universal", label: "Converter", options: {}, at: [200, 0] },
      { id: "cable1", kind: "cable", label: "Downlead", options: { lengthM: 25 }, at: [400, 0] },
    ] as unknown[],
    wires: [
      { from: ["dish1", "sky"], to: ["lnb1", "sky"] },
      { from: ["lnb1", "out"], to: ["cable1", "in"] },
    ] as unknown[],
  };
  change(value);
  return JSON.stringify(value);
}

describe("A design file", () => {
  test("reads back exactly what was written, for any design", () => {
    fc.assert(
      fc.property(anyDesign({ loops: true }), (design) => {
        expect(readDesign(writeDesign(design))).toEqual({ ok: true, design, notes: [] });
      }),
      { numRuns: 200 },
    );
  });

  test("reads back the longest texts it allows", () => {
    const [label, title, lesson] = ["é".repeat(200), "ß".repeat(200), 'a "quoted" line\n'.repeat(31)];
    const house = drawn(["cable"]);
    const design = { title, lesson, parts: house.parts.map((part) => ({ ...part, label })), wires: [] };
    expect(readDesign(writeDesign(design))).toEqual({ ok: true, design, notes: [] });
  });

  test("is the same text for the same design, and plain JSON", () => {
    fc.assert(
      fc.property(anyDesign({ loops: true }), (design) => {
        const text = writeDesign(design);
        const reading = readDesign(text);
        expect(reading.ok && writeDesign(reading.design)).toBe(text);
        expect(JSON.parse(text)).toMatchObject({
          format: "downlead",
          version: 2,
          defaults: 1,
          title: design.title,
        });
      }),
      { numRuns: 100 },
    );
  });

  test("begins a new line for each wire, so that two versions compare line by line", () => {
    const text = writeDesign(drawn(["dish", "lnb-universal"], ["dish1/sky > lnb1/sky"]));
    expect(text.split("\n")).toContain('    { "from": ["dish1", "sky"], "to": ["lnb1", "sky"] }');
  });

  test("with a byte order mark, as some editors write it, is read", () => {
    expect(readDesign(`\uFEFF${file(() => {})}`).ok).toBe(true);
  });

  test("may leave out what has an obvious value: options, label, place, title", () => {
    const text = JSON.stringify({
      format: "downlead",
      version: 1,
      parts: [{ id: "cable1", kind: "cable" }],
      wires: [],
    });
    const reading = readDesign(text);
    expect(reading).toMatchObject({
      ok: true,
      design: { title: "Untitled design", parts: [{ label: "cable1" }] },
    });
    expect(reading.ok && reading.design.parts[0]?.options.lengthM).toBeTypeOf("number");
  });

  test("takes minus zero for zero", () => {
    const reading = readDesign(file(() => {}).replace("[200,0]", "[-0,-0.0]"));
    const at = reading.ok ? reading.design.parts[1]?.at : undefined;
    expect(at).toStrictEqual([0, 0]);
  });

  test("may hold a loop: the design opens, and is marked where it is worked out", () => {
    const text = file((f) => {
      f.parts.push({ id: "cable2", kind: "cable", label: "", options: {}, at: [0, 0] });
      f.wires = [
        { from: ["cable1", "out"], to: ["cable2", "in"] },
        { from: ["cable2", "out"], to: ["cable1", "in"] },
      ];
    });
    expect(readDesign(text)).toMatchObject({ ok: true, design: { wires: { length: 2 } } });
  });

  test("with keys nobody knows still opens, and says which option was left out", () => {
    const text = file((f) => {
      f.colour = "green";
      f.parts[2] = { id: "cable1", kind: "cable", options: { lenghtM: 3 }, at: [0, 0], extra: 1 };
    });
    const reading = readDesign(text);
    expect(reading.ok && reading.notes).toEqual([
      "This edition does not know the value “lenghtM” of “cable1” and left it out.",
    ]);
    expect(reading.ok && Object.keys(reading.design)).not.toContain("colour");
  });
});

describe("A file that is no design is refused, with the place and the reason", () => {
  test.each([
    { name: "empty", text: "", says: "line 1, column 1, the text is empty" },
    {
      name: "cut short",
      text: '{"format": "downlead",\n "parts": [',
      says: "line 2, column 12, the text ends where a value or a closing bracket should follow",
    },
    {
      name: "a comma too many",
      text: '{"a": 1,\n}',
      says: "line 2, column 1, a name in quotes should stand instead of “}”",
    },
    {
      name: "a comma missing",
      text: '{"a": 1\n  "b": 2}',
      says: "line 2, column 3, a comma or a closing bracket should stand",
    },
    {
      name: "wrong bracket",
      text: '{"a": [1}',
      says: "line 1, column 9, a comma or a closing bracket should stand instead of “}”",
    },
    {
      name: "quotes never closed",
      text: '{"a": "b',
      says: "line 1, column 7, a text in quotes is never closed",
    },
    { name: "a line break in quotes", text: '{"a": "b\n"}', says: "line 1, column 9, a line break" },
    { name: "unknown escape", text: '{"a": "\\x"}', says: "line 1, column 8, an unknown escape" },
    {
      name: "not a number",
      text: '{"a": NaN}',
      says: "line 1, column 7, a value should stand instead of “N”",
    },
    { name: "a leading zero", text: "[01]", says: "line 1, column 3, a comma" },
    { name: "two values", text: "{} {}", says: "line 1, column 4, the end of the text should stand" },
    {
      name: "another kind of file",
      text: "<svg/>",
      says: "line 1, column 1, a value should stand instead of “<”",
    },
  ])("not JSON: $name", ({ text, says }) => {
    expect(problemOf(text)).toContain(`This is not a design file: at ${says}`);
  });

  test.each([
    { name: "a list", text: "[]", says: "This is not a design: another program may have written the file." },
    { name: "null", text: "null", says: "This is not a design: another program may have written the file." },
    {
      name: "another format",
      text: '{"format": "drawing"}',
      says: "This is not a design: another program may have written the file.",
    },
    {
      name: "no version",
      text: '{"format": "downlead"}',
      says: "its version should be a whole number from 1 to 2",
    },
    {
      name: "version in words",
      text: '{"format": "downlead", "version": "1"}',
      says: "its version should be a whole number from 1 to 2",
    },
    {
      name: "version 0",
      text: '{"format": "downlead", "version": 0}',
      says: "its version should be a whole number from 1 to 2",
    },
    {
      name: "from the future",
      text: '{"format": "downlead", "version": 7}',
      says: "written by a newer edition, as version 7; this edition reads up to version 2.",
    },
    {
      name: "no parts",
      text: '{"format": "downlead", "version": 1}',
      says: "The list of parts is missing.",
    },
    {
      name: "no wires",
      text: '{"format": "downlead", "version": 1, "parts": []}',
      says: "The list of wires is missing.",
    },
  ])("not a design: $name", ({ text, says }) => {
    expect(problemOf(text)).toContain(says);
  });

  test.each([
    {
      name: "unknown kind",
      change: { id: "lnb1", kind: "lnb-magic", label: "", options: {}, at: [0, 0] },
      says: "“lnb1”: this edition does not know the kind of part “lnb-magic”.",
    },
    {
      name: "kind named like a built-in of the language",
      change: { id: "lnb1", kind: "__proto__", label: "", options: {}, at: [0, 0] },
      says: "“lnb1”: this edition does not know the kind of part “__proto__”.",
    },
    {
      name: "option out of range",
      change: { id: "lnb1", kind: "cable", label: "", options: { lengthM: 1e9 }, at: [0, 0] },
      says: "“lnb1”: Length is 1\u202f000\u202f000\u202f000 m; allowed is 0.1 to 500 m.",
    },
    {
      name: "option of the wrong type",
      change: { id: "lnb1", kind: "cable", label: "", options: { lengthM: "ten" }, at: [0, 0] },
      says: "“lnb1”: Length is “ten”; allowed is 0.1 to 500 m.",
    },
    {
      name: "option within a row",
      change: {
        id: "lnb1",
        kind: "aerial-uhf",
        label: "",
        options: { channels: [{}, { channel: 4 }] },
        at: [0, 0],
      },
      says: "“lnb1”, Channels, row 2: Channel is 4; allowed is 14 to 69.",
    },
    {
      name: "options that are a list",
      change: { id: "lnb1", kind: "cable", label: "", options: [], at: [0, 0] },
      says: "“lnb1”: the group of options is a list; allowed is a group of named values.",
    },
    {
      name: "duplicate id",
      change: { id: "dish1", kind: "cable", label: "", options: {}, at: [0, 0] },
      says: "“dish1”: the id “dish1” belongs to “Dish” already; each part needs its own.",
    },
    {
      name: "id with a space",
      change: { id: "lnb 1", kind: "cable", label: "", options: {}, at: [0, 0] },
      says: "“lnb 1”: the id is “lnb 1”; allowed is 1 to 40 letters, digits, hyphens and underscores.",
    },
    {
      name: "id that every object answers to",
      change: { id: "constructor", kind: "cable", label: "", options: {}, at: [0, 0] },
      says: "“constructor”: the id is “constructor”; allowed is",
    },
    {
      name: "id too long",
      change: { id: "x".repeat(41), kind: "cable", label: "", options: {}, at: [0, 0] },
      says: `the id is “${"x".repeat(40)}…”; allowed is`,
    },
    {
      name: "label too long",
      change: { id: "lnb1", kind: "cable", label: "x".repeat(201), options: {}, at: [0, 0] },
      says: "the name has 201 characters; at most 200 are allowed.",
    },
    {
      name: "place out of reach",
      change: { id: "lnb1", kind: "cable", label: "", options: {}, at: [0, -2e6] },
      says: "“lnb1”: the place down is −2\u202f000\u202f000; allowed is −1\u202f000\u202f000 to 1\u202f000\u202f000.",
    },
    {
      name: "place with one number",
      change: { id: "lnb1", kind: "cable", label: "", options: {}, at: [0] },
      says: "“lnb1”: the place is a list; allowed is a pair of numbers, across and down.",
    },
    { name: "no object", change: 7, says: "Part 2 is 7; allowed is a group of named values." },
  ])("part: $name", ({ change, says }) => {
    expect(problemOf(file((f) => f.parts.splice(1, 1, change)))).toContain(says);
  });

  test.each([
    {
      name: "part missing",
      wire: { from: ["lnb9", "out"], to: ["cable1", "in"] },
      says: "Wire 2: it starts at the part “lnb9”, which is not in the design.",
    },
    {
      name: "port missing",
      wire: { from: ["lnb1", "out7"], to: ["cable1", "in"] },
      says: "“Converter” has no output “out7”; its only output is “out”.",
    },
    {
      name: "port written as the drawing calls it",
      wire: { from: ["cable1", "out"], to: ["lnb1", "feed"] },
      says: "“Converter” has no input “feed”; its only input is “sky”.",
    },
    {
      name: "port named like a built-in",
      wire: { from: ["lnb1", "__proto__"], to: ["cable1", "in"] },
      says: "“Converter” has no output “__proto__”",
    },
    {
      name: "starts at an input",
      wire: { from: ["cable1", "in"], to: ["lnb1", "sky"] },
      says: "Wire 2: it starts at the input of “Downlead”; a wire starts at an output.",
    },
    {
      name: "ends at an output",
      wire: { from: ["lnb1", "out"], to: ["cable1", "out"] },
      says: "Wire 2: it ends at the output of “Downlead”; a wire ends at an input.",
    },
    {
      name: "two on one port",
      wire: { from: ["dish1", "sky"], to: ["cable1", "in"] },
      says: "Two wires start at the output of “Dish”; an output takes one wire.",
    },
    { name: "no end", wire: { from: ["lnb1", "out"] }, says: "Wire 2: its end is missing." },
    { name: "no object", wire: null, says: "Wire 2 is empty; allowed is a group of named values." },
  ])("wire: $name", ({ wire, says }) => {
    expect(problemOf(file((f) => f.wires.splice(1, 1, wire)))).toContain(says);
  });

  test("wire: a beam into a coaxial input", () => {
    const text = file((f) => f.wires.splice(0, 2, { from: ["dish1", "sky"], to: ["cable1", "in"] }));
    expect(problemOf(text)).toBe(
      "Wire 1: it leads the beam of “Dish” to “Downlead”, which takes a coaxial cable there.",
    );
  });

  test("a number too large for the machine", () => {
    const text = file(() => {}).replace('"lengthM":25', '"lengthM":1e999');
    expect(problemOf(text)).toContain("“Downlead”: Length is a number far too large; allowed is");
    const place = file(() => {}).replace("[200,0]", "[200,1e400]");
    expect(problemOf(place)).toContain("“Converter”: the place down is a number far too large");
  });
});

describe("A hostile file neither throws, nor freezes, nor reaches beyond itself", () => {
  const cases = [
    {
      name: "a million parts",
      text: () => `{"format":"downlead","version":1,"parts":[${"{},".repeat(1e6)}{}],"wires":[]}`,
      says: "There are 1\u202f000\u202f001 parts; a design holds at most 5000.",
    },
    {
      name: "a million wires",
      text: () => `{"format":"downlead","version":1,"parts":[],"wires":[${"0,".repeat(1e6)}0]}`,
      says: "There are 1\u202f000\u202f001 wires; a design holds at most 20\u202f000.",
    },
    {
      name: "a million rows in one option",
      text: () =>
        `{"format":"downlead","version":1,"parts":[{"id":"a","kind":"aerial-uhf","options":{"channels":[${"{},".repeat(1e6)}{}]}}],"wires":[]}`,
      says: "“a”: 1\u202f000\u202f001 rows in Channels are too many; at most 1000 are allowed.",
    },
    {
      name: "lists a million deep",
      text: () => "[".repeat(1e6),
      says: "line 1, column 21, brackets are nested more than 20 deep",
    },
    {
      name: "objects a hundred thousand deep",
      text: () => '{"a":'.repeat(1e5),
      says: "nested more than 20 deep",
    },
    {
      name: "31 megabytes",
      text: () => " ".repeat(31e6),
      says: "The file is too large: 31.0 MB; at most 30.0 MB can be opened.",
    },
    { name: "five megabytes in quotes", text: () => `"${"\\n".repeat(2_499_000)}`, says: "never closed" },
    { name: "five megabytes of one number", text: () => "1".repeat(4_999_999), says: "This is not a design" },
    {
      name: "a million line breaks",
      text: () => `${"\n".repeat(1e6)}x`,
      says: "line 1\u202f000\u202f001, column 1",
    },
    {
      name: "5,000 parts, each wrong",
      text: () =>
        `{"format":"downlead","version":1,"parts":[${Array(5000).fill('{"id":"a b","kind":3,"at":7}').join()}],"wires":[]}`,
      says: "“a b”: the id is “a b”",
    },
    {
      name: "20,000 wires of nothing",
      text: () =>
        `{"format":"downlead","version":1,"parts":[],"wires":[${Array(20000).fill('{"from":["a","b"],"to":["c","d"]}').join()}]}`,
      says: "Wire 1: it starts at the part “a”, which is not in the design.",
    },
    {
      name: "a hundred thousand unknown options",
      text: () =>
        `{"format":"downlead","version":1,"parts":[{"id":"a","kind":"x","options":{${Array.from({ length: 1e5 }, (_, i) => `"o${i}":1`).join()}}}],"wires":[]}`,
      says: "does not know the kind of part “x”",
    },
  ];
  test.each(cases)("$name", ({ text, says }) => {
    const hostile = text();
    const start = cpuMs();
    expect(problemOf(hostile)).toContain(says);
    expect(cpuMs() - start).toBeLessThan(1000);
  });

  test("`__proto__` and `constructor` as keys change nothing outside the file", () => {
    const text = `{"format":"downlead","version":1,"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},
      "parts":[{"id":"cable1","kind":"cable","__proto__":{"polluted":1},"options":{"__proto__":{"polluted":1},"lengthM":5}}],"wires":[]}`;
    const reading = readDesign(text);
    expect(reading.ok && reading.design.parts[0]?.options.lengthM).toBe(5);
    expect(reading.ok && "polluted" in (reading.design.parts[0]?.options ?? {})).toBe(false);
    expect("polluted" in {}).toBe(false);
  });

  test("a hundred thousand options that nobody knows are left out with one note, not as many", () => {
    const options = Array.from({ length: 1e5 }, (_, i) => `"o${i}":1`).join();
    const text = `{"format":"downlead","version":1,"parts":[{"id":"a","kind":"cable","options":{${options}}}],"wires":[]}`;
    const reading = readDesign(text);
    expect(reading.ok && reading.notes).toEqual([
      "This edition does not know these values and left them out: “o0” of “a”, “o1” of “a”, “o2” of “a” and 99\u202f997 more.",
    ]);
  });

  test("cut at any place, a file is refused in one sentence with a line and a column", () => {
    const text = writeDesign(drawn(["dish", "lnb-universal", "cable"], ["lnb1/out > cable1/in"])).trimEnd();
    for (let length = 0; length < text.length; length += length < 300 ? 1 : 17) {
      expect(problemOf(text.slice(0, length))).toMatch(/line \d+, column \d+, .+\.$/);
    }
  });

  test("with any signs overwritten, a file is read or refused in a sentence", () => {
    const text = writeDesign(
      drawn(["aerial-uhf", "cable", "receiver-tv"], ["aerial1/out > cable1/in", "cable1/out > tv1/in"]),
    );
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.string({ unit: "binary", maxLength: 3 }), (at, signs) => {
        const reading = readDesign(text.slice(0, at) + signs + text.slice(at + signs.length));
        if (!reading.ok) expect(reading.problem).toMatch(/\S.*\.$/s);
      }),
      { numRuns: 500 },
    );
  });

  test("any JSON at all is read or refused in a sentence", () => {
    const shaped = fc.record(
      {
        format: fc.constant("downlead"),
        version: fc.constant(1),
        parts: fc.array(fc.jsonValue()),
        wires: fc.array(fc.jsonValue()),
      },
      { requiredKeys: ["format", "version"] },
    );
    fc.assert(
      fc.property(fc.oneof(fc.jsonValue(), shaped), (value) => {
        const reading = readDesign(JSON.stringify(value));
        if (!reading.ok) expect(reading.problem).toMatch(/\S.*\.$/s);
      }),
      { numRuns: 500 },
    );
  });

  test("our own scanner and the engine's parser agree on what is JSON", () => {
    const broken = fc
      .tuple(
        fc.json({ maxDepth: 4 }),
        fc.nat(),
        fc.constantFrom("", ",", "}", "]", '"', "0", "-", "e", "\\", ":", "null", "\t"),
      )
      .map(([text, at, signs]) => {
        const place = at % (text.length + 1);
        return text.slice(0, place) + signs + text.slice(place + (at % 2));
      });
    fc.assert(
      fc.property(broken, (text) => {
        let isJson = true;
        try {
          JSON.parse(text);
        } catch {
          isJson = false;
        }
        const reading = readDesign(text);
        expect(reading.ok || !reading.problem.startsWith("This is not a design file: ")).toBe(isJson);
      }),
      { numRuns: 2000 },
    );
  });
});

test("a typical house of some forty parts is below 60 kB", () => {
  const house = typicalHouse();
  expect(house.parts.length).toBeGreaterThanOrEqual(30);
  expect(writeDesign(house).length).toBeLessThan(60_000);
});
