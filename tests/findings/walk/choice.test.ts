/**
 * Which carriers are walked: read off each drawing. C/N that modes need: DVB-T QPSK 2/3 6.9 dB, 64 QAM 2/3 18.7 dB
 * (NorDig Unified 2.2, as quoted in a public table).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { carriersOffered, chosenCarriers } from "../../../src/findings/walk/choice.ts";
import { draw, type Sketch } from "../../draw.ts";
import { recordOf } from "../byHand.ts";

const QPSK = "dvbt-qpsk-2/3";
const QAM = "dvbt-64qam-2/3";

const at = (parts: Sketch, wires: string, part: string) => {
  const evaluation = evaluate(draw(parts, wires));
  return { evaluation, record: recordOf(evaluation, part) };
};

const aerial = (...channels: readonly { channel: number; mode: string; levelOffsetDb?: number }[]) =>
  ["aerial-uhf", { levelDbuv: 60, channels }] as const;

/** Names of those chosen at a part behind one aerial. */
function chosenNames(u: ReturnType<typeof aerial>, x: Sketch[string]) {
  const { evaluation, record } = at({ u, x }, "u.out > x.in", "x");
  return chosenCarriers(evaluation, record, { service: "tv" }).map((c) => c.planned.name);
}

describe("without being told, the lowest, the highest and the worst", () => {
  // C35 needs 18.7 dB of what comes at 60 dBµV; C40, 10 dB weaker, only 6.9: it has 1.8 dB more to spare.
  const mixed = aerial(
    { channel: 48, mode: QPSK },
    { channel: 40, mode: QPSK, levelOffsetDb: -10 },
    { channel: 35, mode: QAM },
    { channel: 21, mode: QPSK },
  );

  test("the worst has least to spare, at a plate and at a TV set", () => {
    expect(chosenNames(mixed, ["outlet-tv"])).toEqual(["C21", "C35", "C48"]);
    expect(chosenNames(mixed, ["receiver-tv"])).toEqual(["C21", "C35", "C48"]);
  });

  test("what the set cannot tune to is worse than what comes weak", () => {
    // Channels 45 and 48 lie at 666 and 690 MHz.
    const u = aerial(
      { channel: 21, mode: QPSK },
      { channel: 30, mode: QPSK, levelOffsetDb: -30 },
      { channel: 45, mode: QPSK },
      { channel: 48, mode: QPSK, levelOffsetDb: 5 },
    );
    expect(chosenNames(u, ["receiver-tv", { toMHz: 600 }])).toEqual(["C21", "C45", "C48"]);
  });
});

test("told which, those alone, in rising frequency", () => {
  const u = aerial({ channel: 21, mode: QAM }, { channel: 30, mode: QAM }, { channel: 40, mode: QAM });
  const { evaluation, record } = at({ u, x: ["outlet-tv"] }, "u.out > x.in", "x");
  const carriers = [
    { origin: "u", index: 2 },
    { origin: "u", index: 1 },
    { origin: "another", index: 0 },
  ];
  const chosen = chosenCarriers(evaluation, record, { service: "tv", carriers });
  expect(chosen.map((c) => c.planned.name)).toEqual(["C30", "C40"]);
});

describe("offered are", () => {
  const two = {
    v: aerial({ channel: 30, mode: QAM }),
    u: aerial({ channel: 21, mode: QAM }, { channel: 40, mode: QAM }),
    x: ["outlet-tv"],
  } as const satisfies Sketch;
  const offered = (wires: string) => {
    const { evaluation, record } = at(two, wires, "x");
    return carriersOffered(evaluation, record, { service: "tv" }).map((c) => `${c.source} ${c.planned.name}`);
  };

  test("those of the aerial that leads here", () => {
    expect(offered("u.out > x.in")).toEqual(["u C21", "u C40"]);
  });

  test("those of all aerials where none does", () => {
    expect(offered("")).toEqual(["u C21", "v C30", "u C40"]);
  });

  test("a transponder with its polarisation and what it needs", () => {
    // DVB-S QPSK 3/4 needs 6.7 dB (EN 300 421, as the table of modes quotes it).
    const { evaluation, record } = at(
      { k: ["dish"], m: ["lnb-universal"], x: ["outlet-sat"] },
      "k.sky > m.sky, m.out > x.in",
      "x",
    );
    const offers = carriersOffered(evaluation, record, { service: "satellite" });
    expect(offers).toHaveLength(80);
    expect(offers[0]).toMatchObject({
      planned: { airMHz: 10_729 },
      requiredDb: 6.7,
      source: "k",
      polarisation: "V",
      service: "satellite",
    });
    expect(offers[0]).not.toHaveProperty("result");
    expect(offers[1]).toMatchObject({ planned: { airMHz: 10_753 }, polarisation: "H" });
  });

  test("what no aerial sends is not offered", () => {
    const { evaluation, record } = at(two, "u.out > x.in", "x");
    expect(carriersOffered(evaluation, record, { service: "fm" })).toEqual([]);
  });
});

describe("what becomes of a carrier at a receiver", () => {
  const dish = { k: ["dish"] } as const satisfies Sketch;
  /** How 10 729 V, in V low, fares. */
  const lowest = (parts: Sketch, wires: string, part: string, port?: string) => {
    const { evaluation, record } = at({ ...dish, ...parts }, wires, part);
    const offers = carriersOffered(evaluation, record, {
      service: "satellite",
      ...(port === undefined ? {} : { port }),
    });
    return offers.find((c) => c.planned.airMHz === 10_729)?.result;
  };

  test("at one of two inputs it is what comes by that one", () => {
    // The lead of the first input has a block: no supply comes up, and nothing down that it could choose.
    const parts = {
      m: ["lnb-universal", { outputs: "2" }],
      b: ["dc-block"],
      x: ["receiver-sat-twin"],
    } as const satisfies Sketch;
    const wires = "k.sky > m.sky, m.out1 > b.in, b.out > x.sat1, m.out2 > x.sat2";
    expect(lowest(parts, wires, "x", "sat1")?.got).toBe(false);
    expect(lowest(parts, wires, "x", "sat2")).toMatchObject({ got: true, port: "sat2" });
    expect(lowest(parts, wires, "x")).toMatchObject({ got: true, port: "sat2" });
  });

  test("at an input whose line another one decides it cannot be had, whoever asks for that input", () => {
    const parts = {
      m: ["lnb-universal"],
      s: ["splitter"],
      x: ["receiver-sat", { polarisation: "V" }],
      strong: ["receiver-sat", { polarisation: "H" }],
    } as const satisfies Sketch;
    const wires = "k.sky > m.sky, m.out > s.in, s.out1 > x.sat, s.out2 > strong.sat";
    expect(lowest(parts, wires, "x", "sat")).toMatchObject({ got: false, why: "not selectable" });
  });

  test("what does not come at all is absent", () => {
    expect(lowest({ x: ["receiver-sat"] }, "", "x")).toMatchObject({ got: false, why: "absent" });
  });
});
