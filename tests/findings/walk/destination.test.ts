/**
 * Where the walk of a carrier ends: by which socket or input it comes, on which user band, or how far it gets. Read off
 * each drawing; what a plate passes to which socket is declared at its kind.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { carriersOffered } from "../../../src/findings/walk/choice.ts";
import { destinationOf } from "../../../src/findings/walk/destination.ts";
import type { Service } from "../../../src/signal/carrier.ts";
import { draw, type Sketch } from "../../draw.ts";
import { recordOf } from "../byHand.ts";

/** The destination at “x” of the lowest carrier of a service, or of one at a frequency on air. */
function destination(
  parts: Sketch,
  wires: string,
  o: { readonly service: Service; readonly airMHz?: number; readonly port?: string },
) {
  const evaluation = evaluate(draw(parts, wires));
  const record = recordOf(evaluation, "x");
  const { service, airMHz, port } = o;
  const choice = carriersOffered(evaluation, record, { service }).find(
    (c) => airMHz === undefined || c.planned.airMHz === airMHz,
  );
  if (!choice) throw new Error("no such carrier");
  return destinationOf(evaluation, record, choice, port);
}

const SATELLITE = { service: "satellite" } as const;

describe("at a receiver with two inputs", () => {
  // The first asks for V low, the second for H high: the lowest carrier there is 11 752 H.
  const twin = {
    k: ["dish"],
    m: ["lnb-universal", { outputs: "2" }],
    x: ["receiver-sat-twin"],
  } as const satisfies Sketch;
  const leads = "k.sky > m.sky, m.out1 > x.sat1, m.out2 > x.sat2";

  test("asked for one input, it is that one, whoever could have it", () => {
    for (const port of ["sat1", "sat2"])
      expect(destination(twin, leads, { ...SATELLITE, airMHz: 11_752, port })).toMatchObject({
        port,
        arrives: { at: { part: "m", port: port === "sat1" ? "out1" : "out2" } },
        seen: null,
      });
  });

  test("not asked for one, it is the input that gets it", () => {
    const bare = "k.sky > m.sky, m.out2 > b.in, b.out > x.sat1, m.out1 > x.sat2";
    // The block on the first lead lets no commands and no supply through.
    const { port } = destination({ ...twin, b: ["dc-block"] }, bare, { ...SATELLITE, airMHz: 11_752 });
    expect(port).toBe("sat2");
  });

  test("an input for another service is none of its ways", () => {
    // Nothing comes to the aerial input either, but that is where it should.
    const found = destination(
      {
        u: ["aerial-uhf"],
        k: ["dish"],
        m: ["lnb-wideband"],
        c: ["cable"],
        x: ["receiver-hybrid", { aerial: true }],
      },
      "k.sky > m.sky, m.v > x.v, c.out > x.ter",
      { service: "tv" },
    );
    expect(found).toStrictEqual({ port: "ter", arrives: null, seen: null });
  });
});

describe("on a single-cable feed", () => {
  const line = { k: ["dish"], m: ["lnb-stacked"] } as const satisfies Sketch;
  const bands = (...numbers: [number, number][]) => ({
    userBands: numbers.map(([number, centreMHz]) => ({ number, centreMHz })),
  });

  test("by the user band on which it is got, where another receiver has taken the first", () => {
    const found = destination(
      {
        ...line,
        s: ["splitter"],
        x: ["receiver-stacked", bands([1, 1210], [2, 1420])],
        b: ["receiver-stacked", bands([1, 1210])],
      },
      "k.sky > m.sky, m.out > s.in, s.out1 > x.sat, s.out2 > b.sat",
      SATELLITE,
    );
    expect(found).toMatchObject({ port: "sat", userBand: 2 });
  });

  test("not got, by the first of the receiver's own that exists, beside what else is on the cable", () => {
    // Band 9 does not exist among four, and band 3 lies at 1680 MHz: the receiver looks for it elsewhere.
    const found = destination(
      {
        k: ["dish"],
        m: ["lnb-quattro"],
        u: ["aerial-uhf"],
        st: ["stacking-converter", { standard: "EN 50494", bandSet: "four" }],
        x: ["receiver-stacked", bands([9, 1100], [3, 1600])],
      },
      "k.sky > m.sky, m.vl > st.vl, m.vh > st.vh, m.hl > st.hl, m.hh > st.hh, u.out > st.ter, st.out1 > x.sat",
      SATELLITE,
    );
    expect(found).toMatchObject({ port: "sat", userBand: 3, arrives: { i: 2 } });
  });

  test("at a plate, by the user band that a receiver behind it is set to, or else the first", () => {
    const plate = { ...line, x: ["outlet-end", { satellite: true }] } as const satisfies Sketch;
    const behind = destination(
      { ...plate, b: ["receiver-stacked", bands([4, 2040])] },
      "k.sky > m.sky, m.out > x.in, x.sat > b.sat",
      SATELLITE,
    );
    expect(behind).toMatchObject({ port: "sat", userBand: 4 });
    const open = destination(
      // Nobody is behind it; a meter on the line keeps the converter alive.
      { ...plate, t: ["meter", { supply: "13" }] },
      "k.sky > m.sky, m.out > t.in, t.out > x.in",
      SATELLITE,
    );
    expect(open).toMatchObject({ port: "sat", userBand: 1 });
  });
});

describe("at a plate", () => {
  test("a service comes by its own socket, without any user band", () => {
    const found = destination({ u: ["aerial-fm"], x: ["outlet-triplexed"] }, "u.out > x.in", {
      service: "fm",
    });
    expect(found).toMatchObject({ port: "radio", arrives: { at: { part: "x", port: "radio" } }, seen: null });
    expect(found).not.toHaveProperty("userBand");
  });

  test("and should come by that one where it does not", () => {
    const found = destination({ u: ["aerial-fm"], x: ["outlet-triplexed"] }, "", { service: "fm" });
    expect(found).toStrictEqual({ port: "radio", arrives: null, seen: null });
  });

  /** 10 729 V less the oscillator's 10 400 MHz comes at 329 MHz. */
  const wideband = { k: ["dish"], m: ["lnb-wideband"], h: ["receiver-hybrid"] } as const satisfies Sketch;

  test("of two sockets the one that lets it through alive", () => {
    // The first satellite socket starts at 950 MHz, the second lets all through.
    const found = destination(
      { ...wideband, s: ["splitter", { range: "sat" }], x: ["outlet-quad"] },
      "k.sky > m.sky, m.v > s.in, s.out1 > x.in, s.out2 > x.in2, x.sat2 > h.v",
      SATELLITE,
    );
    expect(found.port).toBe("sat2");
  });

  test("cut at the only socket, it still ends there", () => {
    const found = destination(
      { ...wideband, x: ["outlet-diplexed"] },
      "k.sky > m.sky, m.v > x.in, x.sat > h.v",
      SATELLITE,
    );
    expect(found).toMatchObject({ port: "sat", arrives: { at: { part: "x", port: "sat" } }, seen: null });
  });
});

describe("a carrier that does not come", () => {
  test("has no input to come by where none is joined", () => {
    const found = destination({ u: ["aerial-uhf"], x: ["receiver-tv"] }, "", { service: "tv" });
    expect(found).toStrictEqual({ port: null, arrives: null, seen: null });
  });

  test("is followed up to the last output that has it, and the part behind that", () => {
    const found = destination(
      { k: ["dish"], m: ["lnb-universal"], b: ["dc-block"], c: ["cable"], x: ["receiver-sat"] },
      "k.sky > m.sky, m.out > c.in, c.out > b.in, b.out > x.sat",
      SATELLITE,
    );
    expect(found).toStrictEqual({
      port: "sat",
      arrives: null,
      seen: { at: { part: "k", port: "sky" }, next: "m" },
    });
  });

  test("before a loop it is seen at the door; one that has no way to the loop is seen nowhere", () => {
    const loop = { j: ["combiner"], s: ["splitter"], u: ["aerial-uhf"], x: ["receiver-tv"] } as const;
    const wires = "j.out > s.in, s.out1 > j.in2, s.out2 > x.in";
    expect(destination(loop, `u.out > j.in1, ${wires}`, { service: "tv" })).toStrictEqual({
      port: "in",
      arrives: null,
      seen: { at: { part: "u", port: "out" }, next: "j" },
    });
    expect(destination(loop, wires, { service: "tv" })).toStrictEqual({
      port: "in",
      arrives: null,
      seen: null,
    });
  });
});
