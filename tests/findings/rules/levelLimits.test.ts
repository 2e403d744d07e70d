/** Levels beyond the limits: 45 to 74 dBµV for 64 QAM, 44 to 74 for DVB-T2 in 256 QAM (EN 60728-1, as quoted in a public table). */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";
import { judgedBy } from "./judged.ts";

type Row = readonly [channel: number, mode: string, levelOffsetDb: number];
const T = "dvbt-64qam-2/3";
const T2 = "dvbt2-256qam-2/3";

const aerial = (levelDbuv: number, ...rows: readonly Row[]): Sketch[string] => [
  "aerial-uhf",
  { levelDbuv, channels: rows.map(([channel, mode, levelOffsetDb]) => ({ channel, mode, levelOffsetDb })) },
];
const line = (...of: Parameters<typeof aerial>) =>
  draw({ z: ["receiver-tv"], a: aerial(...of) }, "a.out > z.in");
const found = (...of: Parameters<typeof aerial>) => foundBy("level-limits", line(...of));

describe("too little", () => {
  test("is told of the carrier furthest below its own limit, with how many there are", () => {
    // 43 and 39.5 dBµV in 64 QAM, 2 and 5.5 too little; 39 dBµV in 256 QAM of DVB-T2 5; 46 is enough.
    const [low, ...more] = found(40, [21, T, 3], [25, T, -0.5], [30, T2, -1], [35, T, 6]);
    expect(more).toEqual([]);
    expect(low).toMatchObject({
      severity: "warning",
      at: { part: "z", port: "in", service: "tv", side: "too little" },
      parts: ["a", "z"],
      wires: ["a.out>z.in"],
      value: 39.5,
      limit: 45,
      unit: "dBµV",
      source: "EN 60728-1 outlet levels, as quoted in a public table",
      // 25: 306 + 8·25 = 506 MHz.
      facts: {
        failing: 3,
        of: 4,
        worst: { origin: "a", index: 1, name: "C25", centreMHz: 506, levelDbuv: 39.5 },
        culprit: { part: "a", does: "weak source" },
      },
    });
    expect(low?.facts.worst).not.toHaveProperty("limits");
  });

  test("is none at the limit", () => {
    expect(found(45, [21, T, 0])).toEqual([]);
    expect(found(44.5, [21, T, 0])).toHaveLength(1);
    expect(found(44, [21, T2, 0])).toEqual([]);
  });
});

describe("too much", () => {
  test("is told of the carrier furthest above", () => {
    const [high, ...more] = found(75, [21, T, 0], [25, T, 5], [30, T, -2]);
    expect(more).toEqual([]);
    expect(high).toMatchObject({
      severity: "warning",
      at: { part: "z", port: "in", service: "tv", side: "too much" },
      parts: ["a", "z"],
      value: 80,
      limit: 74,
      facts: { failing: 2, of: 3, worst: { name: "C25", index: 1 }, culprit: { does: "strong source" } },
    });
  });

  test("is none at the limit", () => {
    expect(found(74, [21, T, 0])).toEqual([]);
    expect(found(74.5, [21, T, 0])).toHaveLength(1);
  });
});

test("a place that has too little of one and too much of another is told of both", () => {
  const both = found(60, [21, T, -20], [25, T, 20]);
  expect(both.map((f) => [f.at.side, f.value, f.limit, f.facts.failing])).toEqual([
    ["too little", 40, 45, 1],
    ["too much", 80, 74, 1],
  ]);
});

test("a socket is judged, and the set on it not once more", () => {
  const design = draw(
    { z: ["receiver-tv"], p: ["outlet-tv"], a: aerial(40, [21, T, 0]) },
    "a.out > p.in, p.tv > z.in",
  );
  expect(foundBy("level-limits", design)).toMatchObject([
    { at: { part: "p", port: "tv" }, parts: ["a", "p"], wires: ["p.tv>z.in"], value: 39 },
  ]);
});

// Royal Decree 346/2011, Annex I 4.5: 47 to 70 dBµV for TV; UK practice 45 to 65.
test("the limits are those of the design", () => {
  const at = (limits: "rd346" | "practice", levelDbuv: number) =>
    foundBy("level-limits", judgedBy(limits, line(levelDbuv, [21, T, 0])));
  expect(at("rd346", 46)).toMatchObject([
    { limit: 47, source: "Spanish Royal Decree 346/2011, Annex I 4.3 to 4.5" },
  ]);
  expect(at("practice", 46)).toEqual([]);
  expect(at("rd346", 68)).toEqual([]);
  expect(at("practice", 68)).toMatchObject([{ limit: 65 }]);
});
