/**
 * The whole walk of a carrier, and what stands at its end. Noise by hand: k·T·B·75 Ω of 7.61 MHz (DVB-T, EN 300 744) at
 * 290 K is 3.59 dBµV; a tuner's noise figure of 8 dB makes 11.59 of it. The mode needs 18.7 dB (NorDig Unified 2.2, as
 * quoted in a public table); limits of EN 60728-1, as quoted.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { type SignalQuestion, walkSignal } from "../../../src/findings/walk/signal.ts";
import { draw, type Sketch } from "../../draw.ts";
import { MODE } from "../../signal/bands.ts";

const walk = (parts: Sketch, wires: string, question: Omit<SignalQuestion, "part">, part = "x") =>
  walkSignal(evaluate(draw(parts, wires)), { part, ...question });

const TV = { service: "tv" } as const;
const u = ["aerial-uhf", { levelDbuv: 60, channels: [{ channel: 21, mode: MODE }] }] as const;

describe("at an outlet", () => {
  // 16 channels, twelve of 110 dBµV and four 6 dB lower: 10·log10(12 + 4/4) = 11.1 dB more in all, far above what a usual tuner takes (98.75 dBµV).
  test("what no usual tuner could take is not got, and says so", () => {
    const ways = walk({ n: ["cable-entry", { levelDbuv: 110 }], x: ["outlet-tv"] }, "n.out > x.in", TV);
    expect(ways.map(({ got }) => got)).not.toContain(true);
    for (const { loss } of ways)
      expect(loss).toMatchObject({
        part: "x",
        why: "not for this receiver",
        reason: { kind: "blocked", by: "total" },
      });
  });

  // By hand: 24 dBµV less 2 dB in the plate; 11.59 dBµV of tuner noise leave 10.4 dB of C/N, and 18.7 are needed.
  test("what a usual tuner would not receive is not got, though it comes out clean", () => {
    const weak = ["aerial-uhf", { levelDbuv: 24, channels: [{ channel: 21, mode: MODE }] }] as const;
    const [way] = walk({ u: [...weak], x: ["outlet-tv"] }, "u.out > x.in", TV);
    expect(way).toMatchObject({ got: false });
    expect(way?.loss).toBeDefined();
  });
});

describe("the end of the way", () => {
  test("at a TV set C/N counts its tuner's noise", () => {
    const [way] = walk({ u, x: ["receiver-tv"] }, "u.out > x.in", TV);
    expect(way).toMatchObject({
      name: "C21",
      airMHz: 474,
      port: "in",
      needs: [],
      requiredDb: 18.7,
      limits: { minDbuv: 45, maxDbuv: 74 },
      got: true,
      end: { levelDbuv: 60 },
    });
    expect(way?.end?.cniDb).toBeCloseTo(48.41, 2);
    expect(way?.end?.marginDb).toBeCloseTo(29.71, 2);
    expect(way).not.toHaveProperty("userBand");
    expect(way).not.toHaveProperty("loss");
  });

  test("at a plate only what the network adds", () => {
    const [way] = walk({ u, x: ["outlet-tv", { lossDb: 2 }] }, "u.out > x.in", TV);
    expect(way).toMatchObject({ port: "tv", got: true, end: { levelDbuv: 58 } });
    expect(way?.end?.cniDb).toBeCloseTo(54.41, 2);
  });

  test("a carrier that a filter cuts is not received there, however clean its rest is", () => {
    // 10 729 V less 10 400 MHz comes at 329 MHz; the satellite socket starts at 950.
    const [way] = walk(
      {
        k: ["dish", { diameterM: 1.2 }],
        m: ["lnb-wideband"],
        x: ["outlet-diplexed"],
        h: ["receiver-hybrid"],
      },
      "k.sky > m.sky, m.v > x.in, x.sat > h.v",
      { service: "satellite" },
    );
    expect(way).toMatchObject({ airMHz: 10_729, port: "sat", got: false, loss: { why: "cut", part: "x" } });
  });

  test("one that does not come has no end, and no step where it has no way", () => {
    const [way] = walk({ u, x: ["receiver-tv"] }, "", TV);
    expect(way).toMatchObject({ port: null, steps: [], needs: [], got: false });
    expect(way).not.toHaveProperty("end");
  });

  test("one that does not come to a plate is not got there either", () => {
    const [way] = walk({ u, x: ["outlet-tv"] }, "", TV);
    expect(way).toMatchObject({ port: "tv", steps: [], got: false, loss: { why: "no way", part: "u" } });
  });

  test("a part that is gone is asked in vain", () => {
    expect(walk({ u }, "", TV, "nobody")).toEqual([]);
  });
});

test("on a switched output it says how the switch must stand, and how it stands", () => {
  const question = { service: "satellite" } as const;
  const [way] = walk(
    { k: ["dish"], m: ["lnb-universal"], x: ["receiver-sat", { polarisation: "H", half: "high" }] },
    "k.sky > m.sky, m.out > x.sat",
    question,
  );
  expect(way).toMatchObject({
    airMHz: 10_729,
    needs: [{ part: "m", port: "out", setting: "VL", now: "HH" }],
    got: true,
  });
});
