import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readDesign, readStoredDesign, writeDesign } from "../../src/design/file.ts";
import { decodeLink } from "../../src/design/link.ts";
import { prettyJson } from "../../src/design/prettyJson.ts";

function frozen(name: string): string {
  return readFileSync(new URL(`./files/${name}`, import.meta.url), "utf8");
}

const FEED = { skewErrorDeg: 0, crossPolarDb: 22, feedType: "linear", axialRatioDb: 1 };
/** Where an aerial looks, and whom each of its rows comes from. */
const AIM = {
  aim: "listed",
  bearingDeg: 0,
  polarisation: "H",
  pattern: "reference",
  beamWidthDeg: 45,
  frontToBackDb: 20,
};
const TRANSMITTER = { transmitter: "", bearingDeg: 0, polarisation: "like", wanted: true };

/**
 * What came after these files were written: absent, it means what stands here. By kind, the options; by kind and list,
 * the fields of each row. Whoever adds an option or a field of a row names it here.
 */
const ADDED: Added = {
  settings: {
    keepDb: 0,
    cascade: "in step",
    ownName: "",
    ownSource: "",
    ownIsolation: [
      { fromMHz: 47, toMHz: 300, db: 38 },
      { fromMHz: 300, toMHz: 862, db: 30 },
      { fromMHz: 950, toMHz: 2150, db: 20 },
    ],
    ownReserveDb: 3,
    judgeRain: true,
    rainPercent: 0.1,
    rainOf: "year",
    judgeLift: true,
    liftRiseDb: 15,
    liftFadeDb: 3,
    judgeMasts: true,
    judgeReceivers: true,
  },
  settingsRows: { ownLimits: { merDb: 0, differenceDb: 0 } },
  options: {
    "receiver-sat": { uncommitted: "none", burst: "none", motor: false },
    "receiver-sat-twin": {
      uncommitted1: "none",
      burst1: "none",
      uncommitted2: "none",
      burst2: "none",
      motor1: false,
      motor2: false,
    },
    "lnb-wideband": {
      ...FEED,
      rollOffDb: 25,
      switchedOutputs: "0",
      switchedMa: 35,
      lowLoMHz: 9_750,
      highLoMHz: 10_600,
    },
    multiswitch: {
      feed: "quattro",
      widebandLoMHz: 10_400,
      singleCable: [],
      stackDbuv: 80,
      stackNoiseDb: 8,
      inputLossDb: 3,
      stackLeastDbuv: 60,
      inputMostDbuv: 90,
      crosstalkDb: 30,
      trunkCrosstalkDb: 45,
    },
    "aerial-uhf": AIM,
    "aerial-dab": AIM,
    "aerial-fm": AIM,
    dish: {
      satelliteTiltDeg: 0,
      offAxisPattern: "home",
      neighbours: [
        { separationDeg: -3, eirpDifferenceDb: -8 },
        { separationDeg: 3, eirpDifferenceDb: -8 },
      ],
      obstacles: [],
      sideFeeds: [],
    },
    "lnb-universal": { ...FEED, rollOffDb: 25 },
    "lnb-quattro": { ...FEED, rollOffDb: 25 },
    "lnb-stacked": {
      ...FEED,
      rollOffDb: 25,
      oscillators: "two",
      singleLoMHz: 10_400,
      stackLeastDbuv: 60,
    },
    "stacking-converter": { crosstalkDb: 30, stackLeastDbuv: 60, inputMostDbuv: 90 },
    "position-switch": { crosstalkDb: 30, heeds: "committed" },
    tap: { upTo: "2400" },
    "outlet-sat": { upTo: "2400" },
    "outlet-sat-twin": { upTo: "2400" },
    "outlet-tv": { tvTo: "862" },
    "outlet-through": { tvTo: "862", upTo: "2400" },
    "outlet-end": { tvTo: "862", upTo: "2400" },
    "diplexer-combine": { flankMHz: 0 },
    "diplexer-split": { flankMHz: 0 },
  },
  rows: {
    "aerial-uhf": { channels: TRANSMITTER },
    "aerial-dab": { blocks: TRANSMITTER },
    "aerial-fm": { stations: TRANSMITTER },
    dish: { transponders: { feed: "1" } },
  },
};

type Values = Readonly<Record<string, unknown>>;

type Added = {
  readonly settings: Values;
  readonly settingsRows: Readonly<Record<string, Values>>;
  readonly options: Readonly<Record<string, Values>>;
  readonly rows: Readonly<Record<string, Readonly<Record<string, Values>>>>;
};

type Content = {
  readonly parts: readonly { readonly kind: string; readonly options?: Record<string, unknown> }[];
  readonly settings?: Values;
  readonly variants?: readonly Content[];
};

/** What a file of version 1 says, by plain JSON.parse, and what came later. */
function contentOf(text: string): unknown {
  const { format: _format, version: _version, ...content } = JSON.parse(text);
  return withAdded(content);
}

function withAdded(content: Content): Content {
  return {
    ...content,
    parts: content.parts.map((part) => ({
      ...part,
      options: optionsWithAdded(part.kind, part.options ?? {}),
    })),
    ...(content.settings ? { settings: settingsWithAdded(content.settings) } : {}),
    ...(content.variants ? { variants: content.variants.map(withAdded) } : {}),
  };
}

function settingsWithAdded(settings: Values): Values {
  return { ...settings, ...ADDED.settings, ...rowsWithAdded(settings, ADDED.settingsRows) };
}

function optionsWithAdded(kind: string, options: Record<string, unknown>): Record<string, unknown> {
  return { ...options, ...ADDED.options[kind], ...rowsWithAdded(options, ADDED.rows[kind] ?? {}) };
}

function rowsWithAdded(values: Values, added: Readonly<Record<string, Values>>): Values {
  const rows = Object.entries(added).map(([list, fields]) => [
    list,
    ((values[list] ?? []) as Values[]).map((row) => ({ ...row, ...fields })),
  ]);
  return Object.fromEntries(rows);
}

/** A file without what came later, in the order in which it is written. */
function asFirstWritten(text: string): string {
  const bare = JSON.parse(text);
  const strip = (content: Content) => {
    for (const key of Object.keys(ADDED.settings)) Reflect.deleteProperty(content.settings ?? {}, key);
    for (const [list, fields] of Object.entries(ADDED.settingsRows))
      for (const row of (content.settings?.[list] ?? []) as object[])
        for (const key of Object.keys(fields)) Reflect.deleteProperty(row, key);
    for (const { kind, options = {} } of content.parts) {
      for (const key of Object.keys(ADDED.options[kind] ?? {})) Reflect.deleteProperty(options, key);
      for (const [list, fields] of Object.entries(ADDED.rows[kind] ?? {}))
        for (const row of (options[list] ?? []) as object[])
          for (const key of Object.keys(fields)) Reflect.deleteProperty(row, key);
    }
    content.variants?.forEach(strip);
  };
  strip(bare);
  return `${prettyJson(bare)}\n`;
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
      expect(reading.ok && asFirstWritten(writeDesign(reading.design, { full: true }))).toBe(text);
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
      expect(reading.ok && asFirstWritten(writeDesign(reading.design))).toBe(text);
    },
  );
});

test("a link of the mark d1 opens as the house it was made from", async () => {
  const reading = await decodeLink(frozen("v1-house.link.txt"));
  expect(reading).toEqual({ ok: true, design: contentOf(frozen("v1-house.json")), notes: [] });
});
