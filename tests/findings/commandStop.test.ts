/** Where commands and volts are lost between a receiver and its switch. Which kind passes direct current is its own. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import {
  commandStop,
  commandTurnedAway,
  meetingOfCommands,
  SURELY_HORIZONTAL_VOLTS,
  SURELY_VERTICAL_VOLTS,
  voltageStop,
} from "../../src/findings/commandStop.ts";
import type { Offer } from "../../src/signal/control.ts";
import { draw } from "../draw.ts";

type Parts = Parameters<typeof draw>[0];

const arrives = (offer: Offer) => offer.volts18 > 0;
const LINE = { receiver: "z", input: "sat", target: "a" };

const one: Parts = {
  z: ["receiver-sat"],
  low: ["cable", { lengthM: 5 }],
  b: ["dc-block"],
  up: ["cable", { lengthM: 5 }],
  a: ["lnb-universal"],
  d: ["dish"],
};
const sky = "d.sky > a.sky";

const stopOf = (parts: Parts, wires: string, has = arrives, line = LINE) =>
  commandStop(evaluate(draw(parts, `${sky}, ${wires}`)), line, has);

// EN 61319-1, from memory: up to 14 V are vertical, from 16 V on horizontal.
test("between 14 V and 16 V nobody knows what a converter takes", () => {
  expect([SURELY_VERTICAL_VOLTS, SURELY_HORIZONTAL_VOLTS]).toEqual([14, 16]);
});

describe("the part that passes a command no further", () => {
  test("is the block, by the output at which the command arrives", () => {
    const wires = "a.out > up.in, up.out > b.in, b.out > low.in, low.out > z.sat";
    expect(stopOf(one, wires)).toEqual({ part: "b", port: "out" });
  });

  test("is the leg of a splitter that has none for it", () => {
    const parts: Parts = { ...one, s: ["splitter", { dc: "one" }], tv: ["receiver-tv"] };
    const wires = "a.out > s.in, s.out1 > tv.in, s.out2 > low.in, low.out > z.sat";
    expect(stopOf(parts, wires)).toEqual({ part: "s", port: "out2" });
    expect(stopOf(parts, "a.out > s.in, s.out1 > low.in, low.out > z.sat")).toBeUndefined();
  });

  test("is none where the command arrives, and none where no way leads to the switch", () => {
    expect(stopOf(one, "a.out > up.in, up.out > low.in, low.out > z.sat")).toBeUndefined();
    expect(stopOf(one, "a.out > z.sat")).toBeUndefined();
    expect(stopOf(one, "b.out > z.sat")).toBeUndefined();
    expect(stopOf(one, "a.out > b.in")).toBeUndefined();
  });

  test("is the first above the receiver for what it does not give at all", () => {
    const wires = "a.out > up.in, up.out > low.in, low.out > z.sat";
    expect(stopOf(one, wires, (offer) => offer.volts18 > 40)).toEqual({ part: "low", port: "out" });
  });

  test("is asked of one lead of a receiver with two", () => {
    const parts: Parts = { ...one, z: ["receiver-sat-twin"], a: ["lnb-universal", { outputs: "2" }] };
    const wires = "a.out1 > b.in, b.out > z.sat1, a.out2 > up.in, up.out > z.sat2";
    expect(stopOf(parts, wires, arrives, { ...LINE, input: "sat1" })).toEqual({ part: "b", port: "out" });
    expect(stopOf(parts, wires, arrives, { ...LINE, input: "sat2" })).toBeUndefined();
  });
});

describe("a command that is sent another way", () => {
  const turned = (parts: Parts, wires: string) =>
    commandTurnedAway(evaluate(draw({ ...one, u: ["aerial-uhf"], ...parts }, `${sky}, ${wires}`)), LINE);

  test("by a diplexer to the aerial", () => {
    const wires = "u.out > x.tv, a.out > x.sat, x.out > low.in, low.out > z.sat";
    expect(turned({ x: ["diplexer-combine", { dc: "tv" }] }, wires)).toEqual({
      part: "x",
      wrongInput: { port: "sat", feeds: "tv", isMiswired: false },
    });
    expect(turned({ x: ["diplexer-combine", { dc: "sat" }] }, wires)).toBeUndefined();
  });

  // The LNB on the input for TV: not the setting is wrong, the leads are changed.
  test("because the leads are changed", () => {
    const wires = "a.out > x.tv, u.out > x.sat, x.out > z.sat";
    expect(turned({ x: ["diplexer-combine", { dc: "sat" }] }, wires)).toEqual({
      part: "x",
      wrongInput: { port: "tv", feeds: "sat", isMiswired: true },
    });
  });

  test("by a combiner that passes it to its first input", () => {
    const wires = "u.out > x.in1, a.out > x.in2, x.out > z.sat";
    expect(turned({ x: ["combiner", { dc: "one" }] }, wires)).toEqual({
      part: "x",
      wrongInput: { port: "in2", feeds: "in1", isMiswired: false },
    });
    expect(turned({ x: ["combiner", { dc: "all" }] }, wires)).toBeUndefined();
  });

  test("but not where that way is open, nor where it is merely stopped", () => {
    expect(turned({ x: ["combiner", { dc: "one" }] }, "a.out > x.in2, x.out > z.sat")).toBeUndefined();
    expect(turned({}, "a.out > b.in, b.out > z.sat")).toBeUndefined();
  });
});

describe("the part at which most of a voltage is lost", () => {
  const stop = (parts: Parts, wires: string, needs = SURELY_HORIZONTAL_VOLTS) =>
    voltageStop(evaluate(draw(parts, `${sky}, ${wires}`)), LINE, { given: (o) => o.volts18, needs });
  const wires = "a.out > up.in, up.out > low.in, low.out > z.sat";
  const long = ["cable", { lengthM: 60, grade: "clad-0.8" }] as const;

  test("is the longer of two cables, whichever comes first", () => {
    expect(stop({ ...one, up: long }, wires)).toEqual({ part: "up" });
    expect(stop({ ...one, low: long }, wires)).toEqual({ part: "low" });
  });

  // Two joints of 2 Ω and 6 Ω beside cables of a few tenths of an ohm.
  test("is the worse of two joints", () => {
    const joint = (ohms: number): Parts[string] => ["bad-joint", { fault: "corroded", ohms, lossDb: 0 }];
    const parts: Parts = { ...one, j: joint(2), i: joint(6) };
    expect(stop(parts, "a.out > i.in, i.out > up.in, up.out > j.in, j.out > z.sat")).toEqual({ part: "i" });
    expect(stop(parts, "a.out > j.in, j.out > up.in, up.out > i.in, i.out > z.sat")).toEqual({ part: "i" });
  });

  test("is the receiver where it gives too few itself, or nothing is lost on the way", () => {
    const weak: Parts = { ...one, z: ["receiver-sat", { volts18: 15.9 }], up: long };
    expect(stop(weak, wires)).toEqual({ part: "z" });
    expect(stop(weak, wires, 15.9)).toEqual({ part: "up" });
    expect(stop(one, "a.out > z.sat")).toEqual({ part: "z" });
  });
});

describe("the part at which the commands of two receivers come together", () => {
  const parts: Parts = { ...one, y: ["receiver-sat"], s: ["splitter", { dc: "all" }] };
  const meeting = (wires: string, other: string) =>
    meetingOfCommands(evaluate(draw(parts, `${sky}, ${wires}`)), LINE, other);
  const shared = "a.out > up.in, up.out > s.in, s.out1 > low.in, low.out > z.sat, s.out2 > y.sat";

  test("is the splitter between them", () => {
    expect(meeting(shared, "y")).toEqual({ part: "s" });
  });

  test("is none for a receiver that is not on the line, nor for one by itself", () => {
    expect(meeting(shared, "x")).toBeUndefined();
    expect(meeting(shared, "z")).toBeUndefined();
    expect(meeting("a.out > low.in, low.out > z.sat", "y")).toBeUndefined();
  });
});
