/** What a case of the trade is, and the installations that its faults are drawn into. */
import type { Design } from "../../src/design/design.ts";
import { draw, type Sketch } from "../draw.ts";

export type TradeCase = {
  readonly fault: string;
  readonly design: Design;
  /** Any of these is the part to name; none where nothing is wrong. */
  readonly culprits: readonly string[];
  /** Parts to name for a second fault, where there are two that have nothing to do with each other. */
  readonly also?: readonly string[];
  /** A right cure changes, removes, or rewires one of these; or puts something beside one of them. */
  readonly mend: readonly string[];
};

export const one = (
  fault: string,
  culprits: string,
  parts: Sketch,
  wires: string,
  mend: string = culprits,
): TradeCase => ({ fault, design: draw(parts, wires), culprits: culprits.split(" "), mend: mend.split(" ") });

/** Two faults at once, each to be named. */
export const two = (
  fault: string,
  [first, second]: readonly [string, string],
  parts: Sketch,
  wires: string,
): TradeCase => ({
  fault,
  design: draw(parts, wires),
  culprits: first.split(" "),
  also: second.split(" "),
  mend: `${first} ${second}`.split(" "),
});

/** An installation in which everything is in order. */
export const sound = (what: string, parts: Sketch, wires: string): TradeCase => ({
  fault: what,
  design: draw(parts, wires),
  culprits: [],
  mend: [],
});

type Of = Readonly<Record<string, unknown>>;
export const rx = (options: Of = {}): readonly [string, Of] => ["receiver-sat", options];
export const c = (lengthM: number, options: Of = {}): readonly [string, Of] => [
  "cable",
  { lengthM, ...options },
];
export const dish = ["dish", { diameterM: 0.8 }] as const;
export const bands = (...numbers: readonly number[]): Of => ({
  tuners: numbers.length,
  userBands: numbers.map((number) => ({ number, centreMHz: [1210, 1420, 1680, 2040][number - 1] ?? 0 })),
});

/** Four receivers behind a quattro and a multiswitch; `trunks` joins them. */
export const block = (trunks: string, extra: Sketch = {}, ms: Of = {}): readonly [Sketch, string] => [
  {
    r3: rx({ polarisation: "H", half: "high" }),
    o3: ["outlet-sat"],
    r1: rx(),
    ms: ["multiswitch", { terrestrial: false, ...ms }],
    o1: ["outlet-sat"],
    d1: c(18),
    lnb: ["lnb-quattro"],
    d3: c(27),
    dish,
    r2: rx({ polarisation: "H" }),
    d2: c(22),
    o2: ["outlet-sat"],
    ...extra,
  },
  `ms.out1 > d1.in, d1.out > o1.in, o1.sat > r1.sat, ms.out2 > d2.in, d2.out > o2.in, o2.sat > r2.sat, ms.out3 > d3.in, d3.out > o3.in, o3.sat > r3.sat, dish.sky > lnb.sky, ${trunks}`,
];
export const TRUNKS = "lnb.vl > ms.vl, lnb.vh > ms.vh, lnb.hl > ms.hl, lnb.hh > ms.hh";

/** One converter, a cable, a plate and a receiver, with something in the line. */
export const line = (
  extra: Sketch,
  wires: string,
  receiver: Of = {},
  lnb: Of = {},
): readonly [Sketch, string] => [
  { rx: rx(receiver), plate: ["outlet-sat"], lnb: ["lnb-universal", lnb], dish, ...extra },
  `plate.sat > rx.sat, dish.sky > lnb.sky, ${wires}`,
];

/** UHF aerial, distribution amplifier with four outputs, three sets. */
export const house = (
  wires: string,
  extra: Sketch = {},
  amp: Of = {},
  aerial: Of = {},
): readonly [Sketch, string] => [
  {
    tv1: ["receiver-tv"],
    tv2: ["receiver-tv"],
    tv3: ["receiver-tv"],
    p1: ["outlet-tv"],
    p2: ["outlet-tv"],
    p3: ["outlet-tv"],
    c1: c(12),
    c2: c(16),
    c3: c(20),
    down: c(10),
    amp: ["amp-distribution", { outputs: 4, gainDb: 12, ...amp }],
    uhf: ["aerial-uhf", { levelDbuv: 60, ...aerial }],
    ...extra,
  },
  `amp.out > c1.in, c1.out > p1.in, p1.tv > tv1.in, amp.out2 > c2.in, c2.out > p2.in, p2.tv > tv2.in, amp.out3 > c3.in, c3.out > p3.in, p3.tv > tv3.in, ${wires}`,
];

/** A riser of through plates behind a launch amplifier. */
export const riser = (
  losses: readonly number[],
  gainDb: number,
  last: "end" | "open" = "end",
): readonly [Sketch, string] => [
  {
    uhf: ["aerial-uhf", { levelDbuv: 62 }],
    launch: ["amp-distribution", { gainDb, outputDbuv: 112 }],
    a: ["outlet-through", { tapLossDb: losses[0] ?? 14 }],
    ca: c(12),
    b: ["outlet-through", { tapLossDb: losses[1] ?? 12 }],
    cb: c(12),
    z: last === "end" ? ["outlet-end"] : ["outlet-through", { tapLossDb: 10 }],
    ta: ["receiver-tv"],
    tb: ["receiver-tv"],
    tz: ["receiver-tv"],
  },
  "uhf.out > launch.in, launch.out > a.in, a.out > ca.in, ca.out > b.in, b.out > cb.in, cb.out > z.in, a.tv > ta.in, b.tv > tb.in, z.tv > tz.in",
];

/** A single-cable converter, a splitter and two receivers. */
export const scr = (
  first: Of,
  second: Of,
  split: Of = {},
  extra: Sketch = {},
  wires?: string,
): readonly [Sketch, string] => [
  {
    r2: ["receiver-stacked", second],
    r1: ["receiver-stacked", first],
    split: ["splitter", { dc: "all", ...split }],
    lnb: ["lnb-stacked"],
    dish,
    ...extra,
  },
  wires ?? "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat",
];
