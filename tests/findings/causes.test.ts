/**
 * Faults as they are met in houses and blocks, drawn in odd order: how many causes there are, which part is to be taken
 * in hand, and who suffers. What a tradesman would say of each is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../src/design/design.ts";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import type { Cause } from "../../src/findings/finding.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";

type Of = Readonly<Record<string, unknown>>;
type Expected = {
  /** Any of these parts may be named. */
  readonly culprits: string;
  /** What its first line says, where only one rule can say it. */
  readonly rule?: string;
  readonly receivers: string;
};
type FaultCase = readonly [fault: string, design: Design, causes: readonly Expected[]];

const cable = (lengthM: number, options: Of = {}): readonly [string, Of] => [
  "cable",
  { lengthM, ...options },
];
const rx = (options: Of = {}): readonly [string, Of] => ["receiver-sat", options];
const DISH = ["dish", { diameterM: 0.9 }] as const;

/** Six flats on a multiswitch for one satellite and TV. `ms` is self-powered and feeds the converter. */
function block(o: { trunks?: string; ms?: Of; parts?: Sketch; tvPlates?: readonly number[] } = {}): Design {
  const flats = [6, 2, 4, 1, 3, 5];
  const isTv = (n: number) => o.tvPlates?.includes(n);
  const parts: Record<string, Sketch[string]> = {};
  for (const n of flats) {
    parts[`z${n}`] = rx({ polarisation: n % 2 ? "V" : "H", half: n > 3 ? "high" : "low" });
    parts[`o${n}`] = [isTv(n) ? "outlet-tv" : "outlet-sat"];
    parts[`d${n}`] = cable(10 + 3 * n);
  }
  const drops = flats.map(
    (n) => `ms.out${n} > d${n}.in, d${n}.out > o${n}.in, o${n}.${isTv(n) ? "tv" : "sat"} > z${n}.sat`,
  );
  const trunks = o.trunks ?? "q.vl > ms.vl, q.vh > ms.vh, q.hl > ms.hl, q.hh > ms.hh";
  return draw(
    {
      ...parts,
      ms: ["multiswitch", { outputs: 8, terrestrial: false, ...o.ms }],
      q: ["lnb-quattro"],
      dish: DISH,
      ...o.parts,
    },
    [...drops, "dish.sky > q.sky", trunks].join(", "),
  );
}

const ALL = "z1 z2 z3 z4 z5 z6";

/** Aerial, distribution amplifier, three rooms. */
function rooms(o: { parts?: Sketch; wires?: string; amp?: Of; uhf?: Of } = {}): Design {
  return draw(
    {
      t2: ["receiver-tv"],
      p2: ["outlet-tv"],
      c2: cable(14),
      t1: ["receiver-tv"],
      p1: ["outlet-tv"],
      c1: cable(9),
      t3: ["receiver-tv"],
      p3: ["outlet-tv"],
      c3: cable(19),
      amp: ["amp-distribution", { outputs: 4, gainDb: 12, ...o.amp }],
      lead: cable(8),
      uhf: ["aerial-uhf", { levelDbuv: 60, ...o.uhf }],
      ...o.parts,
    },
    `amp.out > c1.in, c1.out > p1.in, p1.tv > t1.in, amp.out2 > c2.in, c2.out > p2.in, p2.tv > t2.in, amp.out3 > c3.in, c3.out > p3.in, p3.tv > t3.in, ${o.wires ?? "uhf.out > lead.in, lead.out > amp.tv"}`,
  );
}

/** A single-cable converter, a splitter, three receivers. */
function single(o: { bands: readonly number[]; parts?: Sketch; wires?: string; split?: Of }): Design {
  const CENTRES = [1210, 1420, 1680, 2040];
  const receivers = Object.fromEntries(
    o.bands.map((number, n): [string, Sketch[string]] => [
      `r${n + 1}`,
      ["receiver-stacked", { tuners: 1, userBands: [{ number, centreMHz: CENTRES[number - 1] ?? 0 }] }],
    ]),
  );
  return draw(
    {
      ...receivers,
      split: ["splitter", { ways: 4, dc: "all", ...o.split }],
      dish: DISH,
      s: ["lnb-stacked"],
      ...o.parts,
    },
    o.wires ??
      `dish.sky > s.sky, s.out > split.in, ${o.bands.map((_, n) => `split.out${n + 1} > r${n + 1}.sat`).join(", ")}`,
  );
}

const together = (...designs: readonly Design[]): Design => ({
  title: "Both",
  parts: designs.flatMap((d) => d.parts),
  wires: designs.flatMap((d) => d.wires),
});

/** The wires of a block with something in one drop, before the outlet. */
const within = (design: Design, from: string, part: string, to: string): Design => {
  const [a = "", b = ""] = from.split(".");
  const [c = "", d = ""] = to.split(".");
  const isThere = (w: Design["wires"][number]) => w.from[0] === a && w.from[1] === b && w.to[0] === c;
  return {
    ...design,
    wires: [
      ...design.wires.filter((w) => !isThere(w)),
      { from: [a, b], to: [part, "in"] },
      { from: [part, "out"], to: [c, d] },
    ],
  };
};

const CASES: readonly FaultCase[] = [
  [
    "the multiswitch of a block has no mains",
    block({ ms: { mainsOn: false } }),
    [{ rule: "no-supply", culprits: "ms", receivers: ALL }],
  ],
  [
    "the multiswitch does not feed its converter",
    block({ ms: { feedsLnb: false } }),
    [{ rule: "no-supply", culprits: "ms", receivers: ALL }],
  ],
  [
    "two trunks of a block are swapped",
    block({ trunks: "q.vl > ms.hl, q.hl > ms.vl, q.vh > ms.vh, q.hh > ms.hh" }),
    [{ rule: "wrong-quadrant", culprits: "ms", receivers: ALL }],
  ],
  [
    "one trunk of a block is not plugged in",
    block({ trunks: "q.vl > ms.vl, q.vh > ms.vh, q.hh > ms.hh" }),
    [{ culprits: "ms q", receivers: ALL }],
  ],
  [
    "a quad stands where a quattro belongs",
    block({
      parts: { q: ["lnb-universal", { outputs: "4" }] },
      trunks: "q.out1 > ms.vl, q.out2 > ms.vh, q.out3 > ms.hl, q.out4 > ms.hh",
    }),
    [{ rule: "wrong-quadrant", culprits: "q", receivers: ALL }],
  ],
  [
    "a shorted joint in one trunk",
    block({
      parts: { bad: ["bad-joint", { fault: "shorted" }] },
      trunks: "q.vl > bad.in, bad.out > ms.vl, q.vh > ms.vh, q.hl > ms.hl, q.hh > ms.hh",
    }),
    [{ rule: "supply-overloaded", culprits: "bad", receivers: ALL }],
  ],
  [
    "a broken joint in one drop of a block",
    within(
      block({ parts: { bad: ["bad-joint", { fault: "corroded", lossDb: 40 }] } }),
      "d4.out",
      "bad",
      "o4.in",
    ),
    [{ culprits: "bad", receivers: "z4" }],
  ],
  [
    "a plate for TV at the end of a satellite drop",
    block({ tvPlates: [5] }),
    [{ culprits: "o5", receivers: "z5" }],
  ],
  [
    "a diplexer that passes no direct current to the satellite leg",
    draw(
      {
        z: rx(),
        t: ["receiver-tv"],
        plate: ["outlet-diplexed"],
        run: cable(22),
        join: ["diplexer-combine", { dc: "tv" }],
        mast: ["aerial-uhf"],
        u: ["lnb-universal"],
        dish: DISH,
      },
      "join.out > run.in, run.out > plate.in, plate.tv > t.in, plate.sat > z.sat, mast.out > join.tv, u.out > join.sat, dish.sky > u.sky",
    ),
    [{ rule: "no-supply", culprits: "join", receivers: "z" }],
  ],
  [
    "the amplifier of a house is off",
    rooms({ amp: { switchedOn: false }, uhf: { levelDbuv: 48 } }),
    [{ culprits: "amp", receivers: "t1 t2 t3" }],
  ],
  [
    "the aerial is not plugged in",
    rooms({ wires: "lead.out > amp.in" }),
    [{ culprits: "uhf lead", receivers: "t1 t2 t3" }],
  ],
  [
    "phone masts overdrive the amplifier",
    rooms({
      parts: { masts: ["pick-up", { mastDbuv: 112 }] },
      amp: { gainDb: 24 },
      wires: "uhf.out > masts.in, masts.out > lead.in, lead.out > amp.in",
    }),
    [{ rule: "overload", culprits: "amp masts", receivers: "t1 t2 t3" }],
  ],
  [
    "a masthead amplifier without its supply",
    rooms({
      parts: { head: ["amp-masthead", { gainDb: 22 }] },
      uhf: { levelDbuv: 38 },
      wires: "uhf.out > head.in, head.out > lead.in, lead.out > amp.in",
    }),
    [{ rule: "no-supply", culprits: "head amp", receivers: "t1 t2 t3" }],
  ],
  [
    "a filter between the masthead amplifier and its supply",
    rooms({
      parts: {
        notch: ["filter", { dcPass: false }],
        head: ["amp-masthead", { gainDb: 22 }],
        psu: ["power-inserter"],
      },
      uhf: { levelDbuv: 38 },
      wires:
        "uhf.out > head.in, head.out > notch.in, notch.out > lead.in, lead.out > psu.in, psu.out > amp.in",
    }),
    [{ rule: "no-supply", culprits: "notch", receivers: "t1 t2 t3" }],
  ],
  [
    "a filter for FM in the lead of the TV aerial",
    rooms({
      parts: { wrong: ["filter", { mode: "pass", fromMHz: 87.5, toMHz: 108 }] },
      wires: "uhf.out > wrong.in, wrong.out > lead.in, lead.out > amp.in",
    }),
    [{ culprits: "wrong", receivers: "t1 t2 t3" }],
  ],
  [
    "two receivers on one user band",
    single({ bands: [1, 3, 3] }),
    [{ rule: "user-band-conflict", culprits: "r2 r3", receivers: "r2 r3" }],
  ],
  [
    "a splitter that feeds one leg only",
    single({ bands: [1, 2, 3], split: { dc: "one" } }),
    [{ culprits: "split", receivers: "r2 r3" }],
  ],
  [
    "a receiver in universal mode holds the single-cable line",
    single({
      bands: [1, 2],
      parts: { hold: ["receiver-stacked", { mode: "universal" }] },
      wires:
        "dish.sky > s.sky, s.out > split.in, split.out1 > r1.sat, split.out2 > r2.sat, split.out3 > hold.sat",
    }),
    [{ rule: "user-band-conflict", culprits: "hold", receivers: "hold r1 r2" }],
  ],
  [
    "a circle from the amplifier back to its input",
    draw(
      {
        t: ["receiver-tv"],
        part: ["splitter", { ways: 2 }],
        amp: ["amp-distribution", { gainDb: 12 }],
        join: ["combiner"],
        mast: ["aerial-uhf"],
      },
      "mast.out > join.in1, join.out > amp.in, amp.out > part.in, part.out1 > t.in, part.out2 > join.in2",
    ),
    [{ rule: "loop", culprits: "amp part join", receivers: "t" }],
  ],
  [
    "a dish far off its aim",
    block({ parts: { dish: ["dish", { diameterM: 0.6, pointingLossDb: 14 }] } }),
    [{ rule: "low-carrier-to-noise", culprits: "dish", receivers: ALL }],
  ],
  [
    "a dead amplifier in the house and two receivers on one user band beside it",
    together(rooms({ amp: { switchedOn: false }, uhf: { levelDbuv: 48 } }), single({ bands: [2, 2, 4] })),
    [
      { culprits: "amp", receivers: "t1 t2 t3" },
      { rule: "user-band-conflict", culprits: "r1 r2", receivers: "r1 r2" },
    ],
  ],
  [
    "a multiswitch without mains, and in the house beside it no aerial",
    together(block({ ms: { mainsOn: false } }), rooms({ wires: "lead.out > amp.in" })),
    [
      { rule: "no-supply", culprits: "ms", receivers: ALL },
      { culprits: "uhf lead", receivers: "t1 t2 t3" },
    ],
  ],
  [
    "two trunks swapped, and a broken joint in one drop",
    within(
      block({
        trunks: "q.vl > ms.hl, q.hl > ms.vl, q.vh > ms.vh, q.hh > ms.hh",
        parts: { bad: ["bad-joint", { fault: "corroded", lossDb: 40 }] },
      }),
      "d4.out",
      "bad",
      "o4.in",
    ),
    [
      { rule: "wrong-quadrant", culprits: "ms", receivers: ALL },
      { culprits: "bad", receivers: "z4" },
    ],
  ],
  [
    "a broken joint in one drop and a plate for TV at another",
    within(
      block({
        tvPlates: [5],
        parts: { bad: ["bad-joint", { fault: "corroded", lossDb: 40 }] },
      }),
      "d2.out",
      "bad",
      "o2.in",
    ),
    [
      { culprits: "o5 bad", receivers: expect.stringMatching(/^z[25]$/) },
      { culprits: "o5 bad", receivers: expect.stringMatching(/^z[25]$/) },
    ],
  ],
  [
    // 950 to 2150 MHz is what the amplifier was made for; the wideband feed comes down at 290 to 2340 MHz.
    "a wideband LNB before a line amplifier and a universal receiver: nothing is wrong with the amplifier",
    draw(
      {
        z1: rx(),
        o1: ["outlet-sat"],
        d2: cable(20),
        line: ["amp-if"],
        d1: cable(20),
        w: ["lnb-wideband"],
        dish: DISH,
      },
      "dish.sky > w.sky, w.v > d1.in, d1.out > line.in, line.out > d2.in, d2.out > o1.in, o1.sat > z1.sat",
    ),
    [{ rule: "wrong-feed", culprits: "w", receivers: "z1" }],
  ],
  [
    "a quattro LNB before a twin receiver: the plate only passes its two lines",
    draw(
      {
        z1: ["receiver-sat-twin"],
        o1: ["outlet-sat-twin"],
        d2: cable(20),
        d1: cable(20),
        q: ["lnb-quattro"],
        dish: DISH,
      },
      "dish.sky > q.sky, q.vl > d1.in, q.vh > d2.in, d1.out > o1.in, d2.out > o1.in2, o1.sat > z1.sat1, o1.sat2 > z1.sat2",
    ),
    [{ rule: "plane-missing", culprits: "q", receivers: "z1" }],
  ],
  [
    "a joint that takes the volts in the second of two lines",
    draw(
      {
        z1: ["receiver-sat-twin"],
        o1: ["outlet-sat-twin"],
        d2: cable(20),
        bad: ["bad-joint", { fault: "corroded", ohms: 40, lossDb: 0 }],
        d1: cable(20),
        u: ["lnb-universal", { outputs: "2" }],
        dish: DISH,
      },
      "dish.sky > u.sky, u.out1 > d1.in, u.out2 > bad.in, bad.out > d2.in, d1.out > o1.in, d2.out > o1.in2, o1.sat > z1.sat1, o1.sat2 > z1.sat2",
    ),
    [{ culprits: "bad", receivers: "z1" }],
  ],
];

function grave(design: Design): readonly Cause[] {
  return report(evaluate(design)).causes.filter((cause) => cause.severity === "error");
}

describe("one fault, one cause", () => {
  test.each(CASES)("%s", (_, design, expected) => {
    const causes = grave(design);
    const told = causes.map(({ root, receivers }) => ({
      rule: root.rule,
      culprit: root.parts[0],
      receivers: [...receivers].sort().join(" "),
    }));
    expect(told).toEqual(
      expected.map(({ culprits, rule, receivers }) => ({
        rule: rule ?? expect.any(String),
        culprit: expect.toSatisfy((part: string) => culprits.split(" ").includes(part)),
        receivers,
      })),
    );
  });
});
