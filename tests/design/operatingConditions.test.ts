/** OC: the conditions that a design is judged under are edits of its options, and never of the document. */
import { describe, expect, test } from "vitest";
import {
  designUnder,
  type OperatingCondition,
  operatingConditions,
} from "../../src/design/operatingConditions.ts";
import { SETTINGS, type Settings } from "../../src/design/settings.ts";
import { yearPercentOfWorstMonth } from "../../src/rf/rain.ts";
import { draw, type Sketch } from "../draw.ts";

const types = (parts: Sketch, wires: string, settings: Partial<Settings> = {}) =>
  operatingConditions({ ...draw(parts, wires), settings: SETTINGS.parse(settings) }).map(({ type }) => type);

const optionOf = (parts: Sketch, wires: string, condition: OperatingCondition, part: string, key: string) =>
  designUnder(draw(parts, wires), condition).parts.find(({ id }) => id === part)?.options[key];

const LONE_AERIAL = { z: ["receiver-tv"], a: ["aerial-uhf"] } satisfies Sketch;
const TV = [LONE_AERIAL, "a.out > z.in"] as const;

/** Central London to a satellite at 28.2° east, one transponder: rain rate and height of the ITU-R validation site. */
const london = (polarisation: "V" | "H", frequencyMHz: number): Sketch[string] => [
  "dish",
  {
    orbitalPositionDegE: 28.2,
    siteLatitudeDeg: 51.5,
    siteLongitudeDeg: -0.1,
    siteHeightM: 31,
    rainHeightKm: 2.4527,
    rainRateMmPerH: 26.48,
    transponders: [{ frequencyMHz, polarisation }],
  },
];

describe("which conditions there are", () => {
  test("OC1: as drawn comes first, and only what changes the design is there besides", () => {
    expect(types({ z: ["receiver-tv"] }, "")).toEqual(["as drawn"]);
    expect(types(...TV)).toEqual(["as drawn", "lift"]);
    const sky = { z: ["receiver-sat"], l: ["lnb-universal"], d: ["dish"] } satisfies Sketch;
    expect(types(sky, "d.sky > l.sky, l.out > z.sat")).toEqual(["as drawn", "rain"]);
    const off = { ...sky, z: ["receiver-sat", { state: "standby" }] } satisfies Sketch;
    expect(types(off, "d.sky > l.sky, l.out > z.sat")).toEqual(["as drawn", "rain", "all on"]);
    const rainy = { ...sky, d: ["dish", { rainLossDb: 9 }] } satisfies Sketch;
    expect(types(rainy, "d.sky > l.sky, l.out > z.sat")).toEqual(["as drawn", "dry", "rain"]);
    expect(types({ p: ["pick-up"] }, "")).toEqual(["as drawn", "masts off"]);
    const quiet = { p: ["pick-up", { mast700: false, mast800: false }] } satisfies Sketch;
    expect(types(quiet, "")).toEqual(["as drawn", "masts on"]);
  });

  test("OC1b: a mast that the settings name is off with the masts, and as drawn with them on", () => {
    expect(types({ z: ["receiver-tv"] }, "", { mastBand: "800" })).toEqual(["as drawn", "masts off"]);
    const design = { ...draw({ z: ["receiver-tv"] }, ""), settings: SETTINGS.parse({ mastBand: "800" }) };
    expect(designUnder(design, { type: "masts off" }).settings?.mastBand).toBe("none");
    expect(designUnder(design, { type: "masts on" })).toBe(design);
  });

  test("OC2: two receivers are tried all on and each alone", () => {
    const two = { y: ["receiver-sat"], z: ["receiver-sat", { state: "unplugged" }] } satisfies Sketch;
    const found = operatingConditions(draw(two, ""));
    // The first alone is what is drawn: the second is unplugged.
    expect(found).toEqual([{ type: "as drawn" }, { type: "all on" }, { type: "one on", receiver: "z" }]);
  });

  test("OC3: the settings leave conditions out", () => {
    const all = {
      d: ["dish"],
      a: ["aerial-uhf"],
      p: ["pick-up"],
      y: ["receiver-sat"],
      z: ["receiver-sat"],
    } satisfies Sketch;
    const none = { judgeRain: false, judgeLift: false, judgeMasts: false, judgeReceivers: false };
    expect(types(all, "", none)).toEqual(["as drawn"]);
    expect(types(all, "", { ...none, judgeLift: true })).toEqual(["as drawn", "lift"]);
  });
});

describe("rain", () => {
  // ITU-R P.618-13 with P.838-3 for London to 28.2° east, by validated code: 12.5 GHz 1.84 dB (H) and 1.67 dB (V) for 0.1 % of a
  // year, 5.80 dB (H) for 0.01 %; 11.7 GHz 1.56 dB (H).
  test.each([
    { polarisation: "H" as const, frequencyMHz: 12_500, yearPercent: 0.1, db: 1.84 },
    { polarisation: "V" as const, frequencyMHz: 12_500, yearPercent: 0.1, db: 1.67 },
    { polarisation: "H" as const, frequencyMHz: 12_500, yearPercent: 0.01, db: 5.8 },
    { polarisation: "H" as const, frequencyMHz: 11_700, yearPercent: 0.1, db: 1.56 },
  ])(
    "OC4: $frequencyMHz MHz $polarisation, $yearPercent % of a year: $db dB",
    ({ db, yearPercent, ...row }) => {
      const parts = { d: london(row.polarisation, row.frequencyMHz) } satisfies Sketch;
      expect(optionOf(parts, "", { type: "rain", yearPercent }, "d", "rainLossDb")).toBeCloseTo(db, 1);
    },
  );

  // P.841-4 as quoted: Q = 5.19, 3.85 and 2.85 for 0.01, 0.1 and 1 % of a year; the worst month has so many times more.
  test.each([
    { year: 0.01, q: 5.19 },
    { year: 0.1, q: 3.85 },
    { year: 1, q: 2.85 },
  ])("OC5: $year % of a year are $q times as much of the worst month", ({ year, q }) => {
    expect(yearPercentOfWorstMonth(q * year) / year).toBeCloseTo(1, 2);
  });

  test("OC9: the settings may speak of the worst month", () => {
    const design = {
      ...draw({ d: ["dish"] }, ""),
      settings: SETTINGS.parse({ rainPercent: 0.385, rainOf: "worst month" }),
    };
    const rain = operatingConditions(design).find(({ type }) => type === "rain");
    expect(rain?.type === "rain" && rain.yearPercent).toBeCloseTo(0.1, 3);
  });
});

describe("a lift", () => {
  const lift = { type: "lift", riseDb: 15, fadeDb: 3 } as const;

  test("OC6: what is wanted fades, by whichever figure its level is stated", () => {
    const field = { a: ["aerial-uhf", { levelFrom: "field", fieldDbuvPerM: 70 }] } satisfies Sketch;
    expect(optionOf({ a: ["aerial-uhf", { levelDbuv: 60 }] }, "", lift, "a", "levelDbuv")).toBe(57);
    expect(optionOf(field, "", lift, "a", "fieldDbuvPerM")).toBe(67);
    expect(optionOf(field, "", lift, "a", "levelDbuv")).toBe(62);
  });

  // 3 dB less for all, 15 dB more for those that nobody wants: their offset grows by 18 dB.
  test("OC11: what nobody wants here rises, by its offset from the common level", () => {
    const channels = [{ channel: 30 }, { channel: 31, wanted: false, levelOffsetDb: -20 }];
    const rows = optionOf({ a: ["aerial-uhf", { channels }] }, "", lift, "a", "channels");
    expect(rows).toMatchObject([{ levelOffsetDb: 0 }, { levelOffsetDb: -2 }]);
    expect(optionOf({ a: ["aerial-uhf", { channels }] }, "", lift, "a", "levelDbuv")).toBe(59);
  });

  test("OC10: masts near by are no distant transmitters", () => {
    const design = draw({ p: ["pick-up"] }, "");
    expect(designUnder(design, lift)).toBe(design);
  });
});

describe("an edit of options alone", () => {
  test("OC7: the document is left as it is, and unchanged parts stay the same objects", () => {
    const design = draw(
      { z: ["receiver-tv"], c: ["cable"], a: ["aerial-uhf"] },
      "a.out > c.in, c.out > z.in",
    );
    const before = structuredClone(design);
    const under = designUnder(design, { type: "lift", riseDb: 15, fadeDb: 3 });
    expect(design).toEqual(before);
    expect(under.wires).toBe(design.wires);
    expect(under.parts.filter((part, i) => part !== design.parts[i]).map(({ id }) => id)).toEqual(["a"]);
  });

  test("OC8: levels stay within what the option allows", () => {
    const weak = { a: ["aerial-uhf", { levelDbuv: 2 }] } satisfies Sketch;
    expect(optionOf(weak, "", { type: "lift", riseDb: 15, fadeDb: 30 }, "a", "levelDbuv")).toBe(0);
  });
});
