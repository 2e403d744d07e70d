/** TV channels above 694 MHz that are still in a list: off air in most of Europe (Decision (EU) 2017/899, from memory). */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";
import { foundBy } from "./rules/foundBy.ts";

const house = (formerOnAir: boolean, more: Sketch = {}) =>
  draw(
    {
      a: ["aerial-uhf", { formerOnAir, channels: [{ channel: 30 }, { channel: 40 }, { channel: 55 }] }],
      amp: ["amp-distribution", { gainDb: 8, uhfTo: "694" }],
      o: ["outlet-tv"],
      tv: ["receiver-tv"],
      ...more,
    },
    "a.out > amp.in, amp.out > o.in, o.tv > tv.in",
  );

const verdicts = (design: ReturnType<typeof draw>) =>
  Object.fromEntries(
    report(evaluate(design)).verdicts.map(({ part, state, services }) => [
      part,
      `${state} ${services[0]?.got} of ${services[0]?.wanted}`,
    ]),
  );

describe("a former channel in the list of an aerial", () => {
  test("is noted, and nobody misses it behind an amplifier that ends below it", () => {
    expect(foundBy("above-band-edge", house(false))).toHaveLength(1);
    expect(verdicts(house(false))).toEqual({ o: "works 2 of 2", tv: "works 2 of 2" });
    expect(foundBy("band-cut", house(false))).toEqual([]);
  });

  test("does not count where it gets through either, whatever its level", () => {
    const wide = house(false, { amp: ["amp-distribution", { gainDb: 8, uhfTo: "862" }] });
    expect(verdicts(wide)).toEqual({ o: "works 2 of 2", tv: "works 2 of 2" });
  });

  test("is missed where it is said to be on air", () => {
    expect(foundBy("above-band-edge", house(true))).toEqual([]);
    expect(foundBy("band-cut", house(true))).toHaveLength(1);
    expect(verdicts(house(true)).tv).toBe("fails 2 of 3");
  });

  test("is none of a cable network or a modulator, which use these frequencies in their own wires", () => {
    const wired = draw(
      {
        hp: ["cable-entry", { channels: [{ frequencyMHz: 330 }, { frequencyMHz: 842 }] }],
        md: ["modulator", { channel: "60" }],
        c: ["combiner", { range: "tv" }],
        tv: ["receiver-tv"],
      },
      "hp.out > c.in1, md.out > c.in2, c.out > tv.in",
    );
    expect(foundBy("above-band-edge", wired)).toEqual([]);
    expect(verdicts(wired).tv).toMatch(/3 of 3$/);
  });
});
