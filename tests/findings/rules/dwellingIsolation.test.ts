/**
 * Isolation between flats: 38 dB from 47 to 300 MHz, 30 dB to 862, 20 dB from 950 to 2150 (Spanish Royal Decree 346/2011, Annex I
 * 4.4). Reckoned as the loss of a plate, the decoupling of the splitter, and the loss of the other plate.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";
import { judgedBy } from "./judged.ts";

const plate = (dwelling: string, lossDb = 1): Sketch[string] => ["outlet-tv", { dwelling, lossDb }];

const flats = (isolationDb: number, p: Sketch[string], q: Sketch[string], source = "aerial-uhf") =>
  foundBy(
    "dwelling-isolation",
    draw(
      { q, p, s: ["splitter", { isolationDb }], a: [source] },
      "a.out > s.in, s.out1 > p.in, s.out2 > q.in",
    ),
  );

describe("of two flats behind one splitter", () => {
  // 1 + 22 + 3 = 26 dB.
  test("is told where the ways part, with the plates and the flats in the order of its outputs", () => {
    const [found, ...more] = flats(22, plate("left"), plate("right", 3));
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      severity: "warning",
      at: { part: "s", band: "300" },
      parts: ["s", "p", "q"],
      wires: [],
      limit: 30,
      unit: "dB",
      facts: { outlets: ["p", "q"], dwellings: ["left", "right"], fromMHz: 300, toMHz: 862 },
    });
    expect(found?.value).toBeCloseTo(26, 6);
  });

  // 1 + 28 + 1 = 30 dB is enough, 29 are not.
  test("is enough at the limit", () => {
    expect(flats(28, plate("left"), plate("right"))).toEqual([]);
    expect(flats(27, plate("left"), plate("right"))).toHaveLength(1);
  });

  // 1 + 28 + 1 = 30 dB meets the law and misses a distance of 2 dB; German trade rule: about 40 dB from 47 to 862 MHz.
  test("counts with the distance to be kept, and by the isolation of the chosen profile", () => {
    const house = (isolationDb: number) =>
      draw(
        { q: plate("right"), p: plate("left"), s: ["splitter", { isolationDb }], a: ["aerial-uhf"] },
        "a.out > s.in, s.out1 > p.in, s.out2 > q.in",
      );
    const by = (...[limits, isolationDb, keepDb]: [Parameters<typeof judgedBy>[0], number, number]) =>
      foundBy("dwelling-isolation", judgedBy(limits, house(isolationDb), { keepDb }));
    expect(by("rd346", 28, 2)).toMatchObject([
      { limit: 32, source: expect.stringMatching(/2 dB kept from it/) },
    ]);
    expect(by("rd346", 30, 2)).toEqual([]);
    expect(by("germany", 37, 0)).toMatchObject([
      { limit: 40, source: expect.stringMatching(/German cable trade/) },
    ]);
    expect(by("germany", 38, 0)).toEqual([]);
  });

  // FM, 88 to 108 MHz; then 36 dB are asked for another range, and nothing is there above 300 MHz.
  test("is asked for where something is received only", () => {
    const radio = flats(35, plate("left"), plate("right"), "aerial-fm");
    expect(radio).toMatchObject([
      { at: { part: "s", band: "47" }, limit: 38, facts: { fromMHz: 47, toMHz: 300 } },
    ]);
    expect(radio[0]?.value).toBeCloseTo(37, 6);
    expect(flats(36, plate("left"), plate("right"), "aerial-fm")).toEqual([]);
    expect(flats(35, plate("left"), plate("right"))).toEqual([]);
  });

  test("is asked for in each range by itself", () => {
    const both = foundBy(
      "dwelling-isolation",
      draw(
        {
          q: plate("right"),
          p: plate("left"),
          s: ["splitter", { isolationDb: 22 }],
          j: ["combiner"],
          b: ["aerial-fm"],
          a: ["aerial-uhf"],
        },
        "a.out > j.in1, b.out > j.in2, j.out > s.in, s.out1 > p.in, s.out2 > q.in",
      ),
    );
    expect(both.map((f) => f.limit).sort()).toEqual([30, 38]);
  });
});

test("is no matter within one flat, nor where no flat is named", () => {
  expect(flats(22, plate("left"), plate("left"))).toEqual([]);
  expect(flats(22, plate(""), plate(""))).toEqual([]);
  expect(flats(22, plate("left"), plate("  "))).toEqual([]);
});

/** Cable loses least at the lowest channel that is there. */
test("is told at the frequency where it is least of those that are there", () => {
  const [found] = foundBy(
    "dwelling-isolation",
    draw(
      {
        a: ["aerial-uhf", { channels: [{ channel: 30 }, { channel: 45 }] }],
        s: ["splitter", { isolationDb: 22 }],
        c: ["cable", { lengthM: 10 }],
        p: plate("left"),
        q: plate("right"),
      },
      "a.out > s.in, s.out1 > c.in, c.out > p.in, s.out2 > q.in",
    ),
  );
  // Channel n is centred on 306 + 8·n MHz: 30 on 546 MHz.
  expect(found?.facts.frequencyMHz).toBe(546);
  expect(found?.facts).toMatchObject({ fromMHz: 300, toMHz: 862 });
});

// A socket of the plate lies 25 dB from the line behind it, the last plate 4 dB from its own: 29 of 30 dB.
test("is asked for between the flats of one riser", () => {
  const riser = (lossDb: number) =>
    foundBy(
      "dwelling-isolation",
      draw(
        {
          a: ["aerial-uhf"],
          x: ["outlet-through", { dwelling: "first", isolationDb: 25 }],
          y: ["outlet-end", { dwelling: "second", lossDb }],
        },
        "a.out > x.in, x.out > y.in",
      ),
    );
  expect(riser(4)).toMatchObject([
    { at: { part: "x", band: "300" }, parts: ["x", "y"], value: 29, limit: 30 },
  ]);
  expect(riser(5)).toEqual([]);
});
