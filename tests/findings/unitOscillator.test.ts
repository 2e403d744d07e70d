/** A wideband LNB of 10.41 GHz at what is set to 10.40 GHz, IF = RF − LO: all lies 10 MHz lower. Words read as a user reads them. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { messageOf } from "../../src/sentences/finding.ts";
import { draw, type Sketch } from "../draw.ts";

function told(parts: Sketch, wires: string) {
  const evaluation = evaluate(draw(parts, wires));
  const { verdicts, causes } = report(evaluation);
  const receiver = verdicts.find(({ part }) => part === "r");
  return {
    got: receiver?.services[0]?.got,
    words: causes.map(({ root }) => messageOf(root, evaluation)),
    culprits: causes.map(({ root }) => root.parts[0]),
  };
}

const lnb = (loMHz: number) => ({ d: ["dish"], lnb: ["lnb-wideband", { loMHz }] }) as const;
const PAD = ["attenuator", { lossDb: 12, dcPass: true }] as const;

/** A switched output, a user band of a multiswitch, and one of a stacking multiswitch. */
const UNITS = {
  switched: (widebandLoMHz: number) => ({
    parts: {
      ms: ["multiswitch", { feed: "wideband", terrestrial: false, widebandLoMHz }],
      r: ["receiver-sat"],
    },
    wires: "d.sky > lnb.sky, lnb.v > ms.v, lnb.h > ms.h, ms.out1 > r.sat",
  }),
  "user band": (widebandLoMHz: number) => ({
    parts: {
      ms: [
        "multiswitch",
        { feed: "wideband", terrestrial: false, widebandLoMHz, singleCable: [{ standard: "EN 50607" }] },
      ],
      pad: PAD,
      r: ["receiver-stacked"],
    },
    wires: "d.sky > lnb.sky, lnb.v > ms.v, lnb.h > ms.h, ms.sc1 > pad.in, pad.out > r.sat",
  }),
  "stacking multiswitch": (widebandLoMHz: number) => ({
    parts: {
      ms: ["stacking-converter", { feed: "wideband", terrestrial: false, widebandLoMHz }],
      pad: PAD,
      r: ["receiver-stacked"],
    },
    wires: "d.sky > lnb.sky, lnb.v > ms.v, lnb.h > ms.h, ms.out1 > pad.in, pad.out > r.sat",
  }),
} as const satisfies Record<string, (loMHz: number) => { parts: Sketch; wires: string }>;

describe.each(["switched", "user band", "stacking multiswitch"] as const)("behind a unit: %s", (unit) => {
  const with_ = (realMHz: number, setMHz: number) => {
    const { parts, wires } = UNITS[unit](setMHz);
    return told({ ...lnb(realMHz), ...parts }, wires);
  };

  test.each([10_400, 10_410])("set to the same %i MHz it works", (loMHz) => {
    expect(with_(loMHz, loMHz)).toEqual({ got: 80, words: [], culprits: [] });
  });

  test.each([
    { realMHz: 10_410, setMHz: 10_400, side: "below" },
    { realMHz: 10_400, setMHz: 10_410, side: "above" },
  ])("set to $setMHz for $realMHz all appears 10 MHz $side", ({ realMHz, setMHz, side }) => {
    const { got, words, culprits } = with_(realMHz, setMHz);
    expect(got).toBe(0);
    expect(culprits).toEqual(["ms"]);
    expect(words[0]).toContain(`10 MHz ${side} where the receiver looks`);
    expect(words[0]).toMatch(/“ms” is set for an LNB oscillator of 10\D?4[01]0 MHz, and the LNB has/);
  });
});

test("a wideband receiver of 10.40 GHz is told the same of its menu", () => {
  const wires = "d.sky > lnb.sky, lnb.v > r.v, lnb.h > r.h";
  const at = (oscillator: string) => told({ ...lnb(10_410), r: ["receiver-hybrid", { oscillator }] }, wires);
  expect(at("found")).toEqual({ got: 80, words: [], culprits: [] });
  expect(at("10410").words).toEqual([]);
  const { got, words } = at("10400");
  expect(got).toBe(0);
  expect(words[0]).toMatch(/^The menu of “r” says .* So all appears 10 MHz below where the receiver looks/);
});

// 11 000 MHz less 10 000 MHz is 1000 MHz; a universal menu looks for it at 1250 MHz.
describe("a menu of another oscillator than a universal LNB has", () => {
  const wires = "d.sky > lnb.sky, lnb.out > r.sat";
  const at = (options: Record<string, unknown>, lnbOptions: Record<string, unknown> = {}) =>
    told(
      { d: ["dish"], lnb: ["lnb-universal", { outputs: "1", ...lnbOptions }], r: ["receiver-sat", options] },
      wires,
    );

  test("is told with the half that it costs", () => {
    const { got, words, culprits } = at({ menuLowMHz: 10_000 });
    expect(got).toBe(40);
    expect(culprits).toEqual(["r"]);
    expect(words[0]).toMatch(/^The menu of “r” says 10\D?000 MHz, and the LNB has 9750 MHz\. /);
    expect(words[0]).toContain("250 MHz above where the receiver looks");
  });
});

// 13 V without tone is vertical low: a quarter of the sky band (EN 61319-1, from memory).
describe("a receiver that gives one voltage without tone", () => {
  const wires = "d.sky > lnb.sky, lnb.out > r.sat";
  const at = (gives: string) =>
    told({ d: ["dish"], lnb: ["lnb-universal", { outputs: "1" }], r: ["receiver-sat", { gives }] }, wires);

  test.each(["13", "18"])("of %s V gets one quadrant, and is the one to be set", (gives) => {
    const { got, words, culprits } = at(gives);
    expect(got).toBe(20);
    expect(new Set(culprits)).toEqual(new Set(["r"]));
    expect(words.join(" ")).toMatch(/fixed voltage/);
  });

  test("of 13/18 V and 22 kHz gets all", () => {
    expect(at("commands")).toEqual({ got: 80, words: [], culprits: [] });
  });
});
