/**
 * Files and links changed at random, ten thousand of them: each is read, or refused in a sentence that a user can
 * do something with. The seed stands in the name of each test; a failure prints what was read.
 */
import { isDeepStrictEqual } from "node:util";
import { deflateRawSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { compact } from "../../src/design/compact.ts";
import { crc32 } from "../../src/design/crc32.ts";
import type { Design } from "../../src/design/design.ts";
import { addVariant } from "../../src/design/edits/variants.ts";
import { EXAMPLES } from "../../src/design/examples.ts";
import { readDesign, writeDesign } from "../../src/design/file.ts";
import { decodeLink, encodeLink } from "../../src/design/link.ts";
import { SETTINGS } from "../../src/design/settings.ts";
import { cpuMs } from "../cpuTime.ts";
import { drawn, must, typicalHouse } from "./house.ts";
import { sentenceTrouble } from "./sentences.ts";

/** Of one reading; generous, since other work of the process counts along [ms of processor time]. */
const MOST_CPU_MS = 1_500;

/** A small generator of numbers in [0, 1) that gives the same for the same seed (mulberry32, public domain). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

type Random = () => number;

function oneOf<T>(random: Random, list: readonly T[]): T {
  const chosen = list[Math.floor(random() * list.length)];
  if (chosen === undefined) throw new Error("nothing to choose from");
  return chosen;
}

/** What is put in the place of any value: of every type, small and huge, friendly and hostile. */
const VALUES: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -0,
  -1,
  0.5,
  1e-12,
  -1e-12,
  4.5,
  1e9,
  -1e9,
  1e21,
  1e300,
  -1e300,
  2 ** 53,
  "",
  " ",
  "ten",
  "\u0000\u001b[31m",
  "\u202eabc\u200b",
  "C:\\new\\table",
  "\ud800",
  "ﬁ \u2028 \u0085",
  "__proto__",
  "constructor",
  "x".repeat(5_000),
  "“”",
  "👩‍👩‍👧‍👦".repeat(60),
  [],
  [[]],
  [0, 0],
  ["a", "b"],
  [null, null],
  Array(300).fill({}),
  Array(1_500).fill(7),
  {},
  { a: 1 },
  { length: 5 },
];

type Holder = Record<string, unknown> | unknown[];

/** Every list and group in a value, the value itself first. */
function holders(value: unknown): Holder[] {
  if (typeof value !== "object" || value === null) return [];
  const here = value as Holder;
  return [here, ...Object.values(here).flatMap(holders)];
}

/** Changes a parsed file in one place. */
function changeValue(file: unknown, random: Random): void {
  const holder = oneOf(
    random,
    holders(file).filter((each) => Object.keys(each).length > 0),
  );
  const key = oneOf(random, Object.keys(holder));
  const set = (value: unknown) => Reflect.set(holder, key, value);
  switch (Math.floor(random() * 7)) {
    case 0:
      Array.isArray(holder) ? holder.splice(Number(key), 1) : Reflect.deleteProperty(holder, key);
      break;
    case 1:
      if (Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
      else holder[`${key}${oneOf(random, ["", "2", "_proto__"])}`] = structuredClone(oneOf(random, VALUES));
      break;
    case 2:
      set(structuredClone(oneOf(random, holders(file))));
      break;
    case 3:
      Object.defineProperty(holder, oneOf(random, ["__proto__", "constructor", "toString"]), {
        value: structuredClone(oneOf(random, VALUES)),
        enumerable: true,
        configurable: true,
        writable: true,
      });
      break;
    case 4: {
      const old: unknown = Reflect.get(holder, key);
      set(typeof old === "number" ? old * oneOf(random, [-1, 1e3, 1e-3, 1e12]) : `${JSON.stringify(old)}x`);
      break;
    }
    default:
      set(structuredClone(oneOf(random, VALUES)));
  }
}

/** Changes a text in one place, as a broken disk, a careless hand or an evil one would. */
function changeText(text: string, random: Random): string {
  const at = Math.floor(random() * text.length);
  const long = Math.floor(random() * random() * 400);
  switch (Math.floor(random() * 10)) {
    case 0:
      return text.slice(0, at);
    case 1:
      return text.slice(0, at) + text.slice(at + 1 + long);
    case 2:
      return text.slice(0, at) + text.slice(at, at + long) + text.slice(at);
    case 3:
      return `${text.slice(0, at)}${String.fromCharCode(text.charCodeAt(at) ^ (1 << Math.floor(random() * 8)))}${text.slice(at + 1)}`;
    case 4:
      return (
        text.slice(0, at) +
        oneOf(random, ["{", "[", '"', "}", "]", ",", ":", "\\", "\u0000"]) +
        text.slice(at)
      );
    case 5:
      return text.slice(0, at) + text.slice(at).replace(/\d/, () => String(Math.floor(random() * 10)));
    case 6:
      return (
        text.slice(0, at) +
        text.slice(at).replace(/\d+/, oneOf(random, ["1e999", "-1e308", "00", "-0", "9".repeat(400)]))
      );
    case 7:
      return text.slice(0, at) + text.slice(at).replace(/"(\w+)":/, '"__proto__": {"polluted": 1}, "$1":');
    case 8:
      return text.slice(0, at) + text.slice(at).replace(/[[{]/, (open) => open.repeat(1 + long * 50));
    default:
      return text.slice(0, at) + text.slice(at).replace(/"(\w+)": [^,\n]+,/, "$&$&");
  }
}

const house: Design = {
  ...drawn(
    [
      "dish",
      ["lnb-universal", { outputs: "4" }],
      ["aerial-uhf", { channels: [{ channel: 30 }, { channel: 44 }] }],
      ["splitter", { ways: 4 }],
      ["cable", { lengthM: 31 }],
      "outlet-triplexed",
      "receiver-tv",
    ],
    ["dish1/sky > lnb1/sky", "aerial1/out > split1/in", "split1/out1 > cable1/in", "cable1/out > plate1/in"],
  ),
  settings: SETTINGS.parse({ limits: "own", derating: "beats" }),
};
const designs = [
  house,
  must(addVariant(house, "Plan A")),
  ...EXAMPLES.slice(0, 3).map((example) => example.load()),
];
const texts = [...designs.map((design) => writeDesign(design)), writeDesign(house, { full: true })];

/** A link whose length and checksum are right, around any value: only a hostile hand makes such a one. */
function sealed(text: string): string {
  const raw = Buffer.from(text);
  const packed = deflateRawSync(raw);
  const header = Buffer.alloc(7);
  header.writeUInt32BE(crc32(raw), 0);
  header.writeUIntBE(packed.length, 4, 3);
  return `d1.${Buffer.concat([header, packed]).toString("base64url")}`;
}

type Tally = { opened: number; refused: number; slowest: number; sentences: Set<string> };

/** Reads, and holds what comes out to all that must be true of it. */
async function judge(
  tally: Tally,
  read: () => ReturnType<typeof readDesign> | Promise<ReturnType<typeof readDesign>>,
  source: string,
): Promise<void> {
  const start = cpuMs();
  const reading = await read();
  tally.slowest = Math.max(tally.slowest, cpuMs() - start);
  const said = reading.ok ? reading.notes : [reading.problem];
  for (const sentence of said) {
    const trouble = sentenceTrouble(sentence);
    if (trouble !== null) throw new Error(`“${sentence}” ${trouble}. Read from: ${source.slice(0, 3_000)}`);
    tally.sentences.add(sentence.replace(/“[^”]*”|[\d,.]+/g, "#"));
  }
  if (!reading.ok) {
    tally.refused += 1;
    return;
  }
  tally.opened += 1;
  const again = readDesign(writeDesign(reading.design));
  // The platform's own comparison: ten thousand of the test runner's would take a minute.
  if (!isDeepStrictEqual(again, { ok: true, design: reading.design, notes: [] }))
    throw new Error(`What was read is written as something else. Read from: ${source.slice(0, 3_000)}`);
}

const fresh = (): Tally => ({ opened: 0, refused: 0, slowest: 0, sentences: new Set() });

/** Neither all nor nothing opens, many different things are said, and none of it takes long. */
function conclude(tally: Tally, count: number, kinds: number): void {
  expect(tally.opened + tally.refused).toBe(count);
  expect(tally.opened).toBeGreaterThan(count / 100);
  expect(tally.refused).toBeGreaterThan(count / 10);
  expect(tally.sentences.size).toBeGreaterThan(kinds);
  expect(tally.slowest).toBeLessThan(MOST_CPU_MS);
  expect("polluted" in {}).toBe(false);
}

describe("Ten thousand broken files and links", () => {
  test.each([20260101, 20260102])("2,000 files with one to three values exchanged, seed %i", async (seed) => {
    const random = chance(seed);
    const tally = fresh();
    for (let i = 0; i < 2_000; i++) {
      const file: unknown = JSON.parse(oneOf(random, texts));
      for (let n = 1 + Math.floor(random() * 3); n > 0; n--) changeValue(file, random);
      const text = JSON.stringify(file);
      await judge(tally, () => readDesign(text), text);
    }
    conclude(tally, 2_000, 40);
  });

  test("3,000 files with one to four places of their text changed, seed 20260202", async () => {
    const random = chance(20260202);
    const tally = fresh();
    for (let i = 0; i < 3_000; i++) {
      let text = oneOf(random, texts);
      for (let n = 1 + Math.floor(random() * 4); n > 0 && text !== ""; n--) text = changeText(text, random);
      await judge(tally, () => readDesign(text), text);
    }
    conclude(tally, 3_000, 15);
  });

  test("2,000 links with signs changed on the way, seed 20260303", async () => {
    const random = chance(20260303);
    const tally = fresh();
    const links = await Promise.all([...designs, typicalHouse()].map(encodeLink));
    for (let i = 0; i < 2_000; i++) {
      const link = oneOf(random, links);
      const at = Math.floor(random() * link.length);
      const text = oneOf(random, [
        () => link.slice(0, at),
        () => changeText(link, random),
        () =>
          link.slice(0, at) + oneOf(random, ["\r\n", " ", "%20", "=\n", "\u200b", ">", "+"]) + link.slice(at),
        () => link.toUpperCase(),
      ])();
      await judge(tally, () => decodeLink(text), text);
    }
    conclude(tally, 2_000, 4);
  });

  test("1,000 links sealed by a hostile hand, seed 20260404", async () => {
    const random = chance(20260404);
    const tally = fresh();
    for (let i = 0; i < 1_000; i++) {
      const short: unknown = structuredClone(compact(oneOf(random, designs)));
      for (let n = 1 + Math.floor(random() * 3); n > 0; n--) changeValue(short, random);
      const link = sealed(JSON.stringify(short));
      await judge(tally, () => decodeLink(link), JSON.stringify(short));
    }
    conclude(tally, 1_000, 15);
  });
});
