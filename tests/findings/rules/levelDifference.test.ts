/** Carriers too far apart: 12 dB for TV (EN 60728-1, from memory); none is asked for FM, nor by Royal Decree 346/2011. */
import { expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";
import { judgedBy } from "./judged.ts";

const aerial = (...offsets: readonly number[]): Sketch[string] => [
  "aerial-uhf",
  {
    levelDbuv: 65,
    channels: offsets.map((levelOffsetDb, n) => ({
      channel: 21 + 2 * n,
      mode: "dvbt-64qam-2/3",
      levelOffsetDb,
    })),
  },
];
const line = (...offsets: readonly number[]) =>
  draw({ z: ["receiver-tv"], a: aerial(...offsets) }, "a.out > z.in");
const found = (...offsets: readonly number[]) => foundBy("level-difference", line(...offsets));

test("the strongest and the weakest are told, and the source that is uneven", () => {
  const [wide, ...more] = found(0, -9, 4, -5);
  expect(more).toEqual([]);
  expect(wide).toMatchObject({
    severity: "warning",
    at: { part: "z", port: "in", service: "tv" },
    parts: ["a", "z"],
    wires: ["a.out>z.in"],
    value: 13,
    limit: 12,
    unit: "dB",
    source: "EN 60728-1, from memory",
    facts: {
      strongest: { name: "C25", index: 2, levelDbuv: 69 },
      weakest: { name: "C23", index: 1, levelDbuv: 56 },
      culprit: { part: "a", does: "uneven source" },
    },
  });
  expect(wide?.facts.culprit?.excessDb).toBeCloseTo(13, 6);
  expect(wide?.facts.strongest).not.toHaveProperty("limits");
  expect(wide?.facts.weakest).not.toHaveProperty("limits");
});

test("12 dB are still well", () => {
  expect(found(0, -12)).toEqual([]);
  expect(found(0, -12.5)).toHaveLength(1);
  expect(found(0)).toEqual([]);
});

// 12 dB less the 3 dB that are to be kept leave 9 dB.
test("the distance to be kept makes the limit tighter, and the source says so", () => {
  const kept = (...offsets: readonly number[]) =>
    foundBy("level-difference", judgedBy("en60728", line(...offsets), { keepDb: 3 }));
  expect(kept(0, -9)).toEqual([]);
  expect(kept(0, -10)).toMatchObject([
    { value: 10, limit: 9, source: expect.stringMatching(/; 3 dB kept from it/) },
  ]);
});

test("where the profile sets no difference nothing is said", () => {
  expect(foundBy("level-difference", judgedBy("rd346", line(0, -20)))).toEqual([]);
  const stations = [0, -20].map((levelOffsetDb, n) => ({ frequencyMHz: 90 + 5 * n, levelOffsetDb }));
  const radio = draw({ z: ["receiver-fm"], a: ["aerial-fm", { levelDbuv: 70, stations }] }, "a.out > z.in");
  expect(foundBy("level-difference", radio)).toEqual([]);
});

// A pad of 20 dB before the second aerial alone.
test("a part in the way of the weaker one is named first, at the socket where it is seen", () => {
  const one = (channel: number): Sketch[string] => ["aerial-uhf", { levelDbuv: 65, channels: [{ channel }] }];
  const design = draw(
    {
      p: ["outlet-tv"],
      j: ["combiner"],
      x: ["attenuator", { lossDb: 20 }],
      b: one(40),
      a: one(30),
    },
    "a.out > j.in1, b.out > x.in, x.out > j.in2, j.out > p.in",
  );
  const [wide] = foundBy("level-difference", design);
  expect(wide).toMatchObject({
    at: { part: "p", port: "tv" },
    parts: ["x", "p"],
    wires: [],
    facts: {
      strongest: { origin: "a" },
      weakest: { origin: "b" },
      culprit: { part: "x", does: "attenuates" },
    },
  });
});
