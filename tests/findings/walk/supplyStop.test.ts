/**
 * What keeps the supply from a part: searched downwards, the surest and then the nearest first. Whether a kind passes
 * direct current is declared at the kind; whom a tradesman would name is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { type SupplyStop, supplyStop } from "../../../src/findings/walk/supplyStop.ts";
import { draw, type Sketch } from "../../draw.ts";

/** A UHF aerial and a masthead amplifier “b”, and what is drawn below it. */
const masthead = (below: Sketch, wires: string): SupplyStop =>
  supplyStop(
    evaluate(
      draw(
        { z: ["aerial-uhf"], b: ["amp-masthead"], ...below },
        wires === "" ? "z.out > b.in" : `z.out > b.in, ${wires}`,
      ),
    ),
    "b",
  );

const dish = { k: ["dish"] } as const satisfies Sketch;

/** Without a lead, another setting or anything else that could help. */
const BARE = { why: "blocks", isBroken: false, input: "in" } as const;

describe("an output by which a supply would come, with nothing on it", () => {
  test("is named at the part itself", () => {
    expect(masthead({}, "")).toStrictEqual({ why: "open", part: "b", port: "out" });
  });

  test("is named at a splitter that would pass the supply from there, not the output beside it", () => {
    expect(masthead({ s: ["splitter"], q: ["receiver-tv"] }, "b.out > s.in, s.out1 > q.in")).toStrictEqual({
      why: "open",
      part: "s",
      port: "out2",
    });
  });

  test("is not blamed where another output of the part is in use: nothing feeds it", () => {
    const twin = draw(
      { ...dish, m: ["lnb-universal", { outputs: "2" }], q: ["receiver-tv"] },
      "k.sky > m.sky, m.out1 > q.in",
    );
    expect(supplyStop(evaluate(twin), "m")).toStrictEqual({ why: "nothing feeds", part: "m" });
  });
});

describe("a supply that is blocked", () => {
  test("at a block: what arrives there, and no setting that helps", () => {
    // A receiver that asks for vertical gives 13 V.
    const design = draw(
      { ...dish, m: ["lnb-universal"], x: ["dc-block"], a: ["receiver-sat", { polarisation: "V" }] },
      "k.sky > m.sky, m.out > x.in, x.out > a.sat",
    );
    expect(supplyStop(evaluate(design), "m")).toStrictEqual({
      ...BARE,
      part: "x",
      port: "out",
      supply: "a",
      volts: 13,
    });
  });

  test("the setting is one that passes it from the output at which it arrives, not from another", () => {
    // Set to “from output 1 only” the splitter would still keep back what comes to output 2.
    const stop = masthead(
      { s: ["splitter", { dc: "none" }], q: ["receiver-tv"], p: ["power-inserter"], r: ["receiver-tv"] },
      "b.out > s.in, s.out1 > q.in, s.out2 > p.in, p.out > r.in",
    );
    expect(stop).toStrictEqual({
      ...BARE,
      part: "s",
      port: "out2",
      supply: "p",
      volts: 12,
      setting: { option: "dc", value: "all" },
    });
  });

  test("an amplifier that could feed but is not made to is a block for the inserter below it", () => {
    const stop = masthead(
      { g: ["amp-distribution"], p: ["power-inserter"], q: ["receiver-tv"] },
      "b.out > g.in, g.out > p.in, p.out > q.in",
    );
    expect(stop).toStrictEqual({ ...BARE, part: "g", port: "out", supply: "p", volts: 12 });
  });

  test("a TV socket passes none; the satellite sockets do, but are no way out: they pass no TV", () => {
    const stop = masthead(
      { plate: ["outlet-quad"], p: ["power-inserter"], q: ["receiver-tv"] },
      "b.out > plate.in, plate.tv > p.in, p.out > q.in",
    );
    expect(stop).toStrictEqual({
      ...BARE,
      part: "plate",
      port: "tv",
      supply: "p",
      volts: 12,
      // Such plates are also sold with DC through the TV socket.
      setting: { option: "tvDc", value: true },
    });
  });

  test("of two supplies that are blocked, the unit that feeds nobody yet was put in for this", () => {
    const stop = masthead(
      {
        ...dish,
        m: ["lnb-universal"],
        both: ["diplexer-combine"],
        apart: ["diplexer-split"],
        p: ["power-inserter"],
        q: ["receiver-tv"],
        a: ["receiver-sat"],
      },
      "b.out > both.tv, k.sky > m.sky, m.out > both.sat, both.out > apart.in, apart.tv > p.in, p.out > q.in, apart.sat > a.sat",
    );
    expect(stop).toMatchObject({ why: "blocks", part: "apart", port: "tv", supply: "p", volts: 12 });
  });

  /** A diplexer that passes the supply to its TV input, an LNB on the other one. */
  const diplexer = (above: Sketch, wires: string) =>
    supplyStop(
      evaluate(
        draw(
          {
            ...above,
            m: ["lnb-universal"],
            d: ["diplexer-combine", { dc: "tv" }],
            plate: ["outlet-sat"],
            a: ["receiver-sat"],
          },
          `${wires}, d.out > plate.in, plate.sat > a.sat`,
        ),
      ),
      "m",
    );

  test("where the other input is idle, that is said", () => {
    const stop = diplexer({ ...dish, u: ["aerial-uhf"] }, "k.sky > m.sky, m.out > d.sat, u.out > d.tv");
    expect(stop).toMatchObject({ why: "blocks", part: "d", input: "sat", feeds: "tv" });
  });

  test("where an amplifier on the other input lives on it, that input is not idle", () => {
    const stop = diplexer(
      { ...dish, u: ["aerial-uhf"], b: ["amp-masthead"] },
      "k.sky > m.sky, m.out > d.sat, u.out > b.in, b.out > d.tv",
    );
    expect(stop).toMatchObject({ why: "blocks", part: "d", input: "sat" });
    expect(stop).not.toHaveProperty("feeds");
  });

  test("a part with no signal that could tell where it belongs is not said to be on the wrong input", () => {
    const design = draw(
      {
        m: ["lnb-universal"],
        d: ["diplexer-combine", { dc: "sat" }],
        plate: ["outlet-sat"],
        a: ["receiver-sat"],
      },
      "m.out > d.tv, d.out > plate.in, plate.sat > a.sat",
    );
    expect(supplyStop(evaluate(design), "m")).toMatchObject({ why: "blocks", input: "tv", feeds: "sat" });
  });
});

describe("of several stops", () => {
  /** A twin LNB with a lead on each output. */
  const twin = (between: Sketch, wires: string) =>
    supplyStop(
      evaluate(
        draw(
          {
            ...dish,
            m: ["lnb-universal", { outputs: "2" }],
            ...between,
            a: ["receiver-sat"],
            b: ["receiver-sat"],
          },
          `k.sky > m.sky, ${wires}`,
        ),
      ),
      "m",
    );
  const blocks = { one: ["dc-block"], two: ["dc-block"], c: ["cable"] } as const satisfies Sketch;

  test("the nearer goes first, on whichever output it is", () => {
    const first = "m.out1 > one.in, one.out > a.sat, m.out2 > c.in, c.out > two.in, two.out > b.sat";
    const second = "m.out1 > c.in, c.out > one.in, one.out > a.sat, m.out2 > two.in, two.out > b.sat";
    expect(twin(blocks, first).part).toBe("one");
    expect(twin(blocks, second).part).toBe("two");
  });

  test("of two at the same distance the one on the first output", () => {
    expect(twin(blocks, "m.out1 > one.in, one.out > a.sat, m.out2 > two.in, two.out > b.sat").part).toBe(
      "one",
    );
  });

  test("what is certainly wrong goes before what is nearer: a short before a block", () => {
    const parts = { one: ["dc-block"], c: ["cable"], x: ["bad-joint", { fault: "shorted" }] } as const;
    const wires = "m.out1 > one.in, one.out > a.sat, m.out2 > c.in, c.out > x.in, x.out > b.sat";
    expect(twin(parts, wires)).toStrictEqual({ why: "short", part: "x", port: "out", supply: "b" });
  });
});

describe("a unit that feeds, or should", () => {
  const RECEIVER = { a: ["receiver-sat"] } as const satisfies Sketch;

  test("a multiswitch without mains is to blame, not for keeping the receivers' supply back", () => {
    const design = draw(
      { ...dish, m: ["lnb-quattro"], ms: ["multiswitch", { mainsOn: false }], ...RECEIVER },
      "k.sky > m.sky, m.vl > ms.vl, m.hl > ms.hl, ms.out1 > a.sat",
    );
    expect(supplyStop(evaluate(design), "m")).toStrictEqual({
      why: "mains off",
      part: "ms",
      setting: { option: "mainsOn", value: true },
    });
  });

  test("a dead unit of a cascade waits itself: the head unit without mains is to blame", () => {
    const design = draw(
      {
        ...dish,
        m: ["lnb-quattro"],
        ms: ["multiswitch", { supply: "trunk", cascade: true }],
        head: ["multiswitch", { mainsOn: false }],
        ...RECEIVER,
      },
      "k.sky > m.sky, m.vl > ms.vl, ms.vl-thru > head.vl, ms.out1 > a.sat",
    );
    expect(supplyStop(evaluate(design), "m")).toStrictEqual({
      why: "mains off",
      part: "head",
      setting: { option: "mainsOn", value: true },
    });
  });

  test("an amplifier that feeds its UHF input, with the masthead amplifier on its radio input", () => {
    const amplifier = ["amp-distribution", { inputs: "two", aerialSupply: "12" }] as const;
    expect(masthead({ g: amplifier, q: ["receiver-tv"] }, "b.out > g.radio, g.out > q.in")).toStrictEqual({
      why: "wrong input",
      part: "g",
      port: "radio",
      feeds: "in",
      supply: "g",
    });
  });

  test("not where another amplifier lives on that input: then nothing is left to feed this one", () => {
    const stop = masthead(
      {
        g: ["amp-distribution", { inputs: "two", aerialSupply: "12" }],
        q: ["receiver-tv"],
        u: ["aerial-uhf"],
        other: ["amp-masthead"],
      },
      "u.out > other.in, other.out > g.in, b.out > g.radio, g.out > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "g" });
  });

  test("nor where only some of its inputs are idle", () => {
    const stop = masthead(
      { ...dish, m: ["lnb-quattro"], ms: ["multiswitch"] },
      "k.sky > m.sky, m.vl > ms.vl, b.out > ms.ter",
    );
    // It could feed the masthead through its terrestrial input.
    const setting = { option: "aerialSupply", value: "12" };
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "ms", setting });
  });

  test("an inserter that feeds where it should is not told to be set otherwise", () => {
    // 5 V arrive where 10 are needed: nothing on the way is in the way.
    const stop = masthead(
      { p: ["power-inserter", { volts: 5 }], q: ["receiver-tv"] },
      "b.out > p.in, p.out > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "p" });
  });

  test("a meter that could feed the line has no mains to be switched on", () => {
    const stop = masthead({ t: ["meter"], q: ["receiver-tv"] }, "b.out > t.in, t.out > q.in");
    expect(stop).toStrictEqual({
      why: "nothing feeds",
      part: "b",
      nearest: "t",
      setting: { option: "supply", value: "13" },
    });
  });
});

describe("a unit elsewhere", () => {
  test("above, feeding an amplifier of its own, is on no wrong side", () => {
    const design = draw(
      {
        z: ["aerial-uhf"],
        up: ["amp-masthead"],
        p: ["power-inserter"],
        b: ["amp-masthead"],
        q: ["receiver-tv"],
      },
      "z.out > up.in, up.out > p.in, p.out > b.in, b.out > q.in",
    );
    expect(supplyStop(evaluate(design), "b")).toStrictEqual({
      why: "nothing feeds",
      part: "b",
      nearest: "p",
    });
  });

  test("beside, on another aerial's lead, is on no wrong side", () => {
    const stop = masthead(
      { v: ["aerial-uhf"], p: ["power-inserter"], j: ["combiner"], q: ["receiver-tv"] },
      "v.out > p.in, p.out > j.in2, b.out > j.in1, j.out > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "p" });
  });

  test("on a leg that passes no supply is not searched for its mains", () => {
    const stop = masthead(
      {
        s: ["splitter", { dc: "one" }],
        q: ["receiver-tv"],
        p: ["power-inserter", { switchedOn: false }],
        r: ["receiver-tv"],
      },
      "b.out > s.in, s.out1 > q.in, s.out2 > p.in, p.out > r.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "p" });
  });

  test("joined goes before one that stands apart", () => {
    const stop = masthead(
      {
        a: ["power-inserter"],
        g: ["amp-distribution"],
        u: ["aerial-uhf"],
        j: ["combiner"],
        q: ["receiver-tv"],
      },
      "b.out > j.in1, u.out > g.in, g.out > j.in2, j.out > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "g" });
  });

  test("standing apart: always the same one, however they are drawn; and never what could feed nothing", () => {
    const stop = masthead(
      { s: ["splitter", { dc: "one" }], q: ["receiver-tv"], w2: ["power-inserter"], w1: ["power-inserter"] },
      "b.out > s.in, s.out1 > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "w1" });
  });
});

describe("a loop below", () => {
  test("ends the search: what lies behind it could feed nothing", () => {
    const stop = masthead(
      {
        j: ["combiner"],
        s: ["splitter"],
        p: ["power-inserter", { switchedOn: false }],
        q: ["receiver-tv"],
      },
      "b.out > j.in1, j.out > s.in, s.out1 > j.in2, s.out2 > p.in, p.out > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "p" });
  });

  test("with a unit on it: no setting of that would help", () => {
    const stop = masthead(
      { g: ["amp-distribution", { inputs: "two" }], s: ["splitter"], q: ["receiver-tv"] },
      "b.out > g.in, g.out > s.in, s.out1 > g.radio, s.out2 > q.in",
    );
    expect(stop).toStrictEqual({ why: "nothing feeds", part: "b", nearest: "g" });
  });
});
