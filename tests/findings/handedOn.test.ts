/** What an outlet hands on, and what keeps receivers from asking for it: hand-made bands on its sockets. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { PartRecord } from "../../src/evaluate/evaluation.ts";
import { barrierOf, handedOn } from "../../src/findings/handedOn.ts";
import type { Band } from "../../src/signal/band.ts";
import type { Feed, Offer } from "../../src/signal/control.ts";
import { draw } from "../draw.ts";
import { bandOf, gridOf, switchAt } from "../signal/bands.ts";
import { recordOf, speaker, stackOf } from "./byHand.ts";

const plate = recordOf(evaluate(draw({ o: ["outlet-diplexed"] }, "")), "o");

/** The plate with these bands at its sockets, and these receivers behind them. */
const with_ = (
  outputs: Readonly<Record<string, readonly Band[]>>,
  feeds: PartRecord["feeds"] = {},
): PartRecord => ({
  ...plate,
  outputs: Object.fromEntries(Object.entries(outputs).map(([port, bands]) => [port, { bands }])),
  feeds,
});

const SOCKETS = [
  { port: "tv", services: ["tv", "dab"] },
  { port: "sat", services: ["satellite"] },
] as const;

/** Which carriers of which sockets. */
const on = (record: PartRecord, service: "tv" | "dab" | "satellite") =>
  handedOn(record, SOCKETS, service).map(({ port, i }) => `${port}${i}`);

describe("what an outlet hands on", () => {
  const three = gridOf([474, 482, 490]);

  test("are the carriers of a service, on the sockets that are meant for it", () => {
    const tv = bandOf({ grid: three });
    const dab = bandOf({ service: "dab" });
    expect(on(with_({ tv: [tv, dab] }), "tv")).toEqual(["tv0", "tv1", "tv2"]);
    expect(on(with_({ tv: [tv, dab] }), "dab")).toEqual(["tv0"]);
    // What leaks to the other socket is not meant to be received there.
    expect(on(with_({ sat: [tv] }), "tv")).toEqual([]);
    expect(on(with_({}), "tv")).toEqual([]);
  });

  test("are not those that a filter has stopped", () => {
    const cuts = [{ part: "filter", reason: "filter" }] as const;
    const band = bandOf({ grid: three, more: { cut: Uint16Array.of(0, 1, 0), cuts } });
    expect(on(with_({ tv: [band] }), "tv")).toEqual(["tv0", "tv2"]);
  });

  // 64 QAM 2/3 needs 18.7 dB: at 78.7 dBµV over a noise of 10⁶ (µV)² it has just that; a tuner's own noise is nothing beside it.
  test("have the C/N that they need, or just that", () => {
    const band = bandOf({ grid: three, level: [78.701, 78.69, 90], noise: 1e6 });
    expect(on(with_({ tv: [band] }), "tv")).toEqual(["tv0", "tv2"]);
  });

  test("are not those that are disturbed", () => {
    const band = bandOf({ grid: three, level: 60, noise: 1, interference: [0, 1e5, 0] });
    expect(on(with_({ tv: [band] }), "tv")).toEqual(["tv0", "tv2"]);
  });

  // k·290 K·7.6 MHz·75 Ω = 2.28 (µV)², or 3.6 dBµV; a tuner of 8 dB makes 11.6 dBµV of it, so that 30.3 dBµV are needed.
  test("are not those that a usual tuner loses in its own noise", () => {
    const band = bandOf({ grid: three, level: [31, 29.6, 60], noise: 2.28 });
    expect(on(with_({ tv: [band] }), "tv")).toEqual(["tv0", "tv2"]);
  });
});

describe("user bands on a socket", () => {
  const stack = stackOf([1, 2, 3]);
  const band = bandOf({ service: "satellite", grid: gridOf([1210, 1420, 1680], 46), more: { stack } });
  const behind = (userBands: readonly number[]): Feed => [
    speaker("rx", { request: { polarisation: "V", half: "low", userBands } }),
  ];

  test("are those that the receivers behind it are set to", () => {
    expect(on(with_({ sat: [band] }, { sat: behind([3, 1]) }), "satellite")).toEqual(["sat0", "sat2"]);
    expect(on(with_({ sat: [band] }, { sat: behind([2]) }), "satellite")).toEqual(["sat1"]);
  });

  test("are all of them where nobody behind it is set to one", () => {
    expect(on(with_({ sat: [band] }), "satellite")).toEqual(["sat0", "sat1", "sat2"]);
    expect(on(with_({ sat: [band] }, { tv: behind([2]) }), "satellite")).toEqual(["sat0", "sat1", "sat2"]);
  });
});

describe("what keeps receivers from a feed on a socket", () => {
  /** Horizontal behind a switch whose threshold is 15 V; the line loses volts on the way to it. */
  const feed = (offers: readonly Offer[]): Band => {
    const at = { ...switchAt("ms", "VL", offers) };
    const half = "low" as const;
    return bandOf({
      service: "satellite",
      conditions: [{ at, setting: "HL" }],
      more: {
        half,
        origin: { key: "d/H", service: "satellite", part: "d", polarisation: "H" },
        shifts: [9750],
      },
    });
  };
  // Of 18 V 14 are left at the switch: 4 V are lost.
  const weak = (part: string) => speaker(part, { volts18: 14, dropVolts: 4 });
  const at = (here: readonly Offer[], there: readonly Offer[]) =>
    barrierOf(with_({}, { sat: here }), "sat", feed(there));

  test("is told where none of them can have it", () => {
    const barrier = {
      why: "not selectable",
      count: 0,
      reason: { kind: "too few volts", part: "ms", volts: 14, thresholdVolts: 15 },
      culprit: { part: "ms" },
      planes: [],
    };
    expect(at([speaker("a")], [weak("a")])).toEqual(barrier);
    expect(at([speaker("a"), speaker("b")], [weak("a"), weak("b")])).toEqual(barrier);
  });

  test("is nothing where one of them can have it", () => {
    expect(at([speaker("a"), speaker("b")], [weak("a"), speaker("b")])).toBeUndefined();
    expect(at([speaker("b"), speaker("a")], [weak("a"), speaker("b")])).toBeUndefined();
    expect(at([speaker("a")], [speaker("a")])).toBeUndefined();
  });

  test("is nothing where nobody is there who could ask", () => {
    expect(at([], [weak("a")])).toBeUndefined();
    expect(at([speaker("a", { kind: "plain" })], [weak("a")])).toBeUndefined();
    expect(at([speaker("a", { dormant: true })], [weak("a")])).toBeUndefined();
    expect(barrierOf(with_({}), "sat", feed([weak("a")]))).toBeUndefined();
  });

  test("is nothing for those at another socket", () => {
    const record = with_({}, { sat2: [speaker("a")] });
    expect(barrierOf(record, "sat", feed([weak("a")]))).toBeUndefined();
  });
});
