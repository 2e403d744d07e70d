/** The parts that a carrier has come through, in the order of the signal. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import {
  type Arriving,
  arrivingKey,
  carrierOf,
  outputBefore,
  stageAt,
  stagesTo,
} from "../../../src/findings/blame/stages.ts";
import { draw } from "../../draw.ts";
import { aerial } from "./missed.ts";

const house = evaluate(
  draw(
    {
      y: ["receiver-tv"],
      z: ["receiver-tv"],
      p: ["outlet-tv"],
      s: ["splitter", { loss: "own", ownTvDb: 4 }],
      f: ["filter", { fromMHz: 600, toMHz: 694 }],
      b: aerial(50),
      c: ["cable"],
      a: aerial(60, { channels: [{ channel: 30 }, { channel: 40 }] }),
    },
    "a.out > c.in, c.out > s.in, s.out1 > p.in, p.tv > z.in, s.out2 > f.in, f.out > y.in",
  ),
);
const first = { origin: "a", index: 0 };
const way = (part: string, port: string, arriving: Arriving = first) =>
  stagesTo(house, { part, port }, arriving).map(({ step }) => `${step.part}.${step.to}`);

describe("the way of a carrier", () => {
  test("begins at its source and ends before a receiver, or at a socket", () => {
    expect(way("z", "in")).toEqual(["a.out", "c.out", "s.out1", "p.tv"]);
    expect(way("p", "tv")).toEqual(["a.out", "c.out", "s.out1", "p.tv"]);
    expect(way("s", "in")).toEqual(["a.out", "c.out"]);
    expect(way("a", "out")).toEqual(["a.out"]);
  });

  test("is told for each carrier and each output by itself, whatever was asked before", () => {
    expect(way("s", "out2", { origin: "a", index: 1 })).toEqual(["a.out", "c.out", "s.out2"]);
    const stages = stagesTo(house, { part: "s", port: "out2" }, { origin: "a", index: 1 });
    expect(stages.map((stage) => [stage.carrier.index, stage.record.part.id])).toEqual([
      [1, "a"],
      [1, "c"],
      [1, "s"],
    ]);
    // Channel 40: 306 + 8·40 = 626 MHz.
    expect(stages.map((stage) => stage.step.centreMHz)).toEqual([626, 626, 626]);
    expect(stages.map((stage) => stage.step.from)).toEqual([null, "in", "in"]);
    expect(stages[2]?.step.gainDb).toBeCloseTo(-4, 6);
  });

  test("is none where it does not come", () => {
    expect(way("y", "in", { origin: "b", index: 0 })).toEqual([]);
    expect(way("z", "in", { origin: "a", index: 2 })).toEqual([]);
    expect(way("nobody", "in")).toEqual([]);
    const open = evaluate(draw({ z: ["receiver-tv"], a: aerial(60) }, ""));
    expect(stagesTo(open, { part: "z", port: "in" }, first)).toEqual([]);
  });
});

test("the output at a spot is that which feeds an input, or it itself", () => {
  expect(outputBefore(house, { part: "z", port: "in" })).toEqual({ part: "p", port: "tv" });
  expect(outputBefore(house, { part: "p", port: "tv" })).toEqual({ part: "p", port: "tv" });
  expect(outputBefore(house, { part: "b", port: "out" })).toEqual({ part: "b", port: "out" });
  expect(outputBefore(house, { part: "a", port: "in" })).toBeUndefined();
  expect(outputBefore(house, { part: "nobody", port: "in" })).toBeUndefined();
});

describe("the stage at one output", () => {
  test("tells the output before it, at the source none", () => {
    expect(stageAt(house, { part: "p", port: "tv" }, first, undefined)?.before).toEqual({
      part: "s",
      port: "out1",
    });
    expect(stageAt(house, { part: "a", port: "out" }, first, undefined)?.before).toBeNull();
  });

  test("is none where the carrier is not there", () => {
    expect(stageAt(house, { part: "b", port: "out" }, first, undefined)).toBeUndefined();
    expect(stageAt(house, { part: "nobody", port: "out" }, first, undefined)).toBeUndefined();
  });

  // Asked for one after the other, at the same output.
  test("is not that of another carrier", () => {
    const centre = (index: number) =>
      stageAt(house, { part: "c", port: "out" }, { origin: "a", index }, undefined)?.stage.step.centreMHz;
    expect([centre(0), centre(1)]).toEqual([546, 626]);
  });
});

describe("a carrier on a user band", () => {
  // Three transponders of one half; the second is 3 dB weaker than the first, the third 6 dB.
  const row = (frequencyMHz: number, eirpOffsetDb: number, polarisation = "V") => ({
    frequencyMHz,
    polarisation,
    mode: "dvbs2-8psk-2/3",
    eirpOffsetDb,
  });
  const sky = (offsets: readonly number[]) =>
    evaluate(
      draw(
        {
          r: ["receiver-stacked"],
          c: ["cable"],
          l: ["lnb-stacked"],
          d: ["dish", { transponders: offsets.map((db, n) => row(10_800 + 100 * n, db)) }],
        },
        "d.sky > l.sky, l.out > c.in, c.out > r.sat",
      ),
    );
  const arriving = { origin: "l/out", index: 1, userBand: 2 };
  const output = { part: "c", port: "out" };

  test("is the worst of those that it can hold", () => {
    expect(carrierOf(sky([0, -3, -6]), output, arriving)).toMatchObject({ origin: "d/V", index: 2 });
    expect(carrierOf(sky([0, -6, -3]), output, arriving)).toMatchObject({ origin: "d/V", index: 1 });
  });

  test("is followed through the stage that makes the user bands, by its number", () => {
    const stages = stagesTo(sky([0, -3, -6]), { part: "r", port: "sat" }, arriving);
    expect(stages.map(({ step }) => [step.part, step.userBand])).toEqual([
      ["d", undefined],
      ["l", 2],
      ["c", 2],
    ]);
    // Second of the usual set of four.
    expect(stages[2]?.step.centreMHz).toBe(1420);
  });

  test("is itself where it is on none", () => {
    expect(carrierOf(sky([0]), output, first)).toEqual(first);
  });

  test("is none where no such feed arrives", () => {
    expect(carrierOf(sky([0]), output, { ...arriving, origin: "x/out" })).toBeUndefined();
    expect(carrierOf(sky([0]), { part: "d", port: "sky" }, arriving)).toBeUndefined();
  });
});

test("a carrier on a user band has another key than on another one, or on none", () => {
  expect(arrivingKey({ origin: "d/V", index: 3 }, 2)).toBe("d/V#3 2");
  expect(arrivingKey({ origin: "d/V", index: 3 }, undefined)).toBe("d/V#3 ");
});
