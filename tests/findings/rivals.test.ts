/**
 * Two terrestrial signals on one frequency: outlets count them as receivers do, the stronger alone. Common practice, no source.
 * And what is too much for any tuner is not delivered: −10 dBm at most, 98.75 dBµV (facts of tuners, from memory).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";
import { backwards, foundBy } from "./rules/foundBy.ts";

const BOTH: Sketch = {
  a: ["aerial-uhf", { levelDbuv: 66 }],
  b: ["aerial-uhf", { levelDbuv: 60 }],
  j: ["combiner", { range: "tv" }],
  o: ["outlet-tv"],
  tv: ["receiver-tv"],
};
const WIRES = "a.out > j.in1, b.out > j.in2, j.out > o.in, o.tv > tv.in";

const tvOf = (design: ReturnType<typeof draw>, part: string) => {
  const verdict = report(evaluate(design)).verdicts.find((v) => v.part === part);
  return { state: verdict?.state, tv: verdict?.services.find((s) => s.service === "tv") };
};

describe("two aerials with the same six channels", () => {
  const design = draw(BOTH, WIRES);

  test("are six channels at the outlet as at the set, however they are drawn", () => {
    for (const drawn of [design, backwards(design)]) {
      expect(tvOf(drawn, "o").tv).toMatchObject({ wanted: 6, got: 0 });
      expect(tvOf(drawn, "tv").tv).toMatchObject({ wanted: 6, got: 0 });
    }
  });

  // The weaker aerial alone would be 60 − 4 − 1 dB at the socket, in order; nobody asks for its level.
  test("are counted once by the rules for levels and C/N", () => {
    const [found, ...more] = foundBy("low-carrier-to-noise", design);
    expect(more).toEqual([]);
    // 66 against 60 dBµV.
    expect(found).toMatchObject({ at: { part: "o" }, facts: { failing: 6, of: 6 } });
    expect(found?.value).toBeCloseTo(6, 1);
  });

  test("stay two services where they are on different channels", () => {
    const apart = draw(
      {
        ...BOTH,
        a: ["aerial-uhf", { levelDbuv: 66, channels: [{ channel: 22 }] }],
        b: ["aerial-uhf", { levelDbuv: 66, channels: [{ channel: 40 }] }],
      },
      WIRES,
    );
    expect(tvOf(apart, "o")).toMatchObject({ state: "works", tv: { wanted: 2, got: 2 } });
  });
});

describe("a socket with more than a tuner takes", () => {
  const at = (levelDbuv: number) =>
    draw({ a: ["aerial-uhf", { levelDbuv }], o: ["outlet-tv", { lossDb: 1 }] }, "a.out > o.in");

  // Six channels are 7.8 dB more than one: 93 − 1 + 7.8 = 99.8 dBµV; 90 − 1 + 7.8 = 96.8 dBµV.
  test("delivers nothing, and 3 dB less is received beyond the limit", () => {
    expect(tvOf(at(93), "o")).toMatchObject({
      state: "fails",
      tv: {
        wanted: 6,
        got: 0,
        missing: [{ why: "blocked", count: 6, reason: { kind: "blocked", by: "total" } }],
      },
    });
    expect(tvOf(at(90), "o")).toMatchObject({ state: "edge", tv: { wanted: 6, got: 6 } });
  });

  test("counts a strong FM transmitter at the FM tuner, which takes 110 dBµV, and not at a set", () => {
    const design = draw(
      { f: ["aerial-fm", { levelDbuv: 104 }], o: ["outlet-triplexed", { radioLossDb: 0 }] },
      "f.out > o.in",
    );
    // Twelve stations: 104 + 10.8 = 114.8 dBµV.
    const verdict = report(evaluate(design)).verdicts.find((v) => v.part === "o");
    expect(verdict?.services.find((s) => s.service === "fm")).toMatchObject({ wanted: 12, got: 0 });
  });
});
