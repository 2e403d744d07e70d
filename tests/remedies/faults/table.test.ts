/**
 * FA: single faults known in the trade. For each: the rule that must speak, who loses something and who must not.
 * What each fault does is common practice, no source, unless a row says otherwise.
 */
import { describe, expect, test } from "vitest";
import type { Design } from "../../../src/design/design.ts";
import { faultOf, faults, faultsAt } from "../../../src/remedies/faults/list.ts";
import { evaluated } from "../../../src/remedies/faults/symptoms.ts";
import { whatFails } from "../../../src/remedies/faults/whatFails.ts";
import { designOf } from "../../../src/remedies/training/case.ts";
import { faultSentence } from "../../../src/sentences/faults/faultWords.ts";
import { draw } from "../../draw.ts";

const TERMINATED = draw(
  { uhf: ["aerial-uhf"], tap: ["tap", { tapLossDb: 10 }], tv: ["receiver-tv"], end: ["load"] },
  "uhf.out > tap.in, tap.tap1 > tv.in, tap.out > end.in",
);

const PADDED = draw(
  {
    uhf: ["aerial-uhf", { levelDbuv: 97 }],
    pad: ["attenuator", { lossDb: 24, dcPass: true }],
    amp: ["amp-distribution", { gainDb: 20, outputDbuv: 100 }],
    split: ["splitter", { ways: 8, range: "tv" }],
    tv: ["receiver-tv"],
  },
  "uhf.out > pad.in, pad.out > amp.in, amp.out > split.in, split.out1 > tv.in",
);

type Row = {
  readonly name: string;
  readonly design: string | Design;
  readonly fault: string;
  readonly rule: string;
  /** The part that the finding must name first. */
  readonly at?: string;
  /** Receivers that lose something, and nobody else; absent where the rule alone is the point. */
  readonly loses?: readonly string[];
};

const ROWS: readonly Row[] = [
  {
    name: "a plug off before one plate darkens that room only",
    design: "house-universal",
    fault: "plug-off:drop3.out>plate3.in",
    rule: "not-connected",
    at: "plate3",
    loses: ["tv3"],
  },
  {
    name: "a broken inner conductor below the masthead takes its supply",
    design: "masthead-house",
    fault: "open-joint:head.out>down.in",
    rule: "no-supply",
    at: "joint1",
    loses: ["tv1", "tv2"],
  },
  {
    name: "a strand of braid shorts the inserter",
    design: "masthead-house",
    fault: "short-joint:down.out>psu.in",
    rule: "supply-overloaded",
    loses: ["tv1", "tv2"],
  },
  {
    name: "the mains of the inserter is off",
    design: "masthead-house",
    fault: "mains-off:psu",
    rule: "no-supply",
    at: "psu",
    loses: ["tv1", "tv2"],
  },
  {
    name: "a set whose menu no longer feeds the active aerial darkens the other set too",
    design: "set-fed-aerial",
    fault: "aerial-supply-off:tv1",
    rule: "no-supply",
    loses: ["tv1", "tv2"],
  },
  {
    // 2 · 200 mA of the motor are the receiver's 400 mA alone; the LNB has nothing left.
    name: "a jammed dish motor takes the supply of the LNB",
    design: "motor-dish",
    fault: "motor-jammed:motor",
    rule: "supply-overloaded",
    loses: ["sat"],
  },
  {
    name: "an isolator between inserter and masthead",
    design: "masthead-house",
    fault: "supply-blocked:down.out>psu.in",
    rule: "no-supply",
    at: "block1",
    loses: ["tv1", "tv2"],
  },
  {
    name: "the mast filter was never put in",
    design: "masthead-house",
    fault: "filter-missing:filter",
    rule: "overload",
    at: "head",
    loses: ["tv1", "tv2"],
  },
  {
    name: "the aerial has turned",
    design: "masthead-house",
    fault: "aerial-off:uhf",
    rule: "low-carrier-to-noise",
    loses: ["tv1", "tv2"],
  },
  {
    name: "the gain of a riser amplifier turned up by 25 dB",
    design: "riser-block",
    fault: "gain-high:amp",
    rule: "overload",
    at: "amp",
    loses: ["tv1", "tv2", "tv3", "tv4", "tv5"],
  },
  {
    name: "an end plate in the middle of a riser",
    design: "riser-block",
    fault: "wrong-plate:plate3=outlet-end",
    rule: "receiver-misses",
    loses: ["tv1", "tv2"],
  },
  {
    name: "too low a tap value: too strong there",
    design: "riser-block",
    fault: "wrong-tap:plate2=6",
    rule: "level-limits",
    at: "plate2",
    loses: [],
  },
  {
    name: "a wideband converter on universal receivers: wrong feed",
    design: "house-universal",
    fault: "wrong-converter:lnb=lnb-wideband",
    rule: "wrong-feed",
    loses: ["sat1", "sat2", "tv1", "tv2"],
  },
  {
    name: "a wideband converter on a cable shared with UHF: it lies over it",
    design: "house-universal",
    fault: "wrong-converter:lnb=lnb-wideband",
    rule: "shared-frequencies",
    loses: ["sat1", "sat2", "tv1", "tv2"],
  },
  {
    name: "a quattro where a twin belongs: each output is one quadrant",
    design: "house-universal",
    fault: "wrong-converter:lnb=lnb-quattro",
    rule: "plane-missing",
    loses: ["sat1", "sat2"],
  },
  {
    name: "a quad where a quattro belongs",
    design: "block-multiswitch",
    fault: "wrong-converter:lnb=lnb-universal",
    rule: "wrong-quadrant",
    at: "lnb",
    loses: ["sat1", "sat2", "sat3", "sat4", "sat5", "sat6"],
  },
  {
    name: "the multiswitch has no mains",
    design: "block-multiswitch",
    fault: "mains-off:ms",
    rule: "no-supply",
    loses: ["sat1", "sat2", "sat3", "sat4", "sat5", "sat6"],
  },
  {
    name: "a tired receiver delivers 15 V for horizontal",
    design: "block-multiswitch",
    fault: "weak-supply:sat4",
    rule: "command-lost",
    loses: ["sat4"],
  },
  {
    name: "copper-clad steel on a long run: 18 V arrives too low",
    design: "long-copper-drop",
    fault: "steel-cable:drop",
    rule: "command-lost",
    at: "drop",
    loses: ["sat"],
  },
  {
    name: "a corroded joint before one of two converters",
    design: "two-satellites",
    fault: "corroded-joint:lnb1.out>short1.in",
    rule: "command-lost",
    at: "joint1",
    loses: ["sat"],
  },
  {
    name: "water in a satellite line: the top goes first",
    design: "barn-line",
    fault: "wet-cable:second",
    rule: "level-difference",
    loses: ["sat"],
  },
  {
    name: "an isolator in a satellite line with a line amplifier",
    design: "barn-line",
    fault: "supply-blocked:amp.out>second.in",
    rule: "no-supply",
    loses: ["sat"],
  },
  {
    name: "one user band used twice",
    design: "single-cable-house",
    fault: "wrong-user-band:sat2=sat1",
    rule: "user-band-conflict",
    loses: ["sat1", "sat2"],
  },
  {
    name: "a receiver left in universal mode holds its own line and no other",
    design: "block-stacked",
    fault: "wrong-mode:sat22",
    rule: "user-band-conflict",
    loses: ["sat21", "sat22"],
  },
  {
    name: "a splitter that passes no supply on a channel-stacked line",
    design: "single-cable-house",
    fault: "wrong-leg:split=none",
    rule: "no-supply",
    at: "split",
    loses: ["sat1", "sat2"],
  },
  {
    name: "a switched converter where a channel-stacking one belongs",
    design: "single-cable-house",
    fault: "wrong-converter:lnb=lnb-universal",
    rule: "wrong-feed",
    loses: ["sat1", "sat2"],
  },
  {
    name: "the leads of a wideband pair swapped",
    design: "house-separate-cables",
    fault: "swapped:splate1.in+in2",
    rule: "wrong-feed",
    at: "sat1",
    loses: ["sat1"],
  },
  {
    name: "a separating plate on a wideband pair",
    design: "house-separate-cables",
    fault: "wrong-plate:splate2=outlet-quad",
    rule: "band-cut",
    at: "splate2",
    loses: ["sat2"],
  },
  {
    name: "two trunks of a quattro swapped",
    design: "block-multiswitch",
    fault: "swapped:ms.vl+hh",
    rule: "wrong-quadrant",
    at: "ms",
  },
  {
    name: "the load at the end of a tap line is missing",
    design: TERMINATED,
    fault: "load-missing:end",
    rule: "open-end",
    at: "tap",
    loses: [],
  },
  {
    // A quarter of a wave at 615 MHz: 299.79 · 0.82 / (4 · 0.1); C39 lies at 614 to 622 MHz.
    name: "ten centimetres of dead cable at one plate take a channel there, and nothing in the other room",
    design: "masthead-house",
    fault: "dead-cable:drop1.out>plate1.in",
    rule: "dead-stub",
    at: "tee1",
    loses: ["tv1"],
  },
  {
    // Two equal signals 3 dB apart leave a C/I of 3 dB; 8PSK 2/3 needs 6.6 dB (EN 302 307-1 Table 13, as quoted).
    name: "a position switch that mixes its inputs spoils what it is asked for",
    design: "two-satellites",
    fault: "switch-leaks:pos",
    rule: "receiver-misses",
    at: "pos",
    loses: ["sat"],
  },
  {
    name: "the pad before an amplifier is missing",
    design: PADDED,
    fault: "pad-missing:pad",
    rule: "overload",
    at: "amp",
    loses: ["tv"],
  },
];

test.each(ROWS)("FA1: $name", ({ design, fault, rule, at, loses }) => {
  const drawn = typeof design === "string" ? designOf(design) : design;
  const found = faultOf(drawn, fault);
  if (!found) throw new Error(`no fault ${fault}`);
  const { lost, findings } = whatFails(drawn, found);
  const said = findings.filter((f) => f.rule === rule);
  expect(said.length, findings.map((f) => f.rule).join()).toBeGreaterThan(0);
  if (at) expect(said.map((f) => f.parts[0])).toContain(at);
  const losers = new Set(lost.filter((s) => s.role === "receiver").map((s) => s.part));
  if (loses) expect([...losers].sort()).toEqual([...loses].sort());
});

const EVERY = [
  "house-universal",
  "house-stacked",
  "split-switched-output",
  "block-multiswitch",
  "masthead-house",
  "single-cable-house",
];

describe.each(EVERY)("faults of %s", (key) => {
  const design = designOf(key);
  const all = faults(design);

  test("FA2: have ids of their own, a title that is a sentence, and parts of the design", () => {
    const ids = new Set(design.parts.map((p) => p.id));
    expect(new Set(all.map((f) => f.id)).size).toBe(all.length);
    expect(all.map((f) => faultSentence(design, f)).filter((s) => !/^[A-Z“].*\.$/.test(s))).toEqual([]);
    expect(all.filter((f) => f.parts.some((id) => !ids.has(id)) || f.parts[0] !== f.part)).toEqual([]);
  });

  test("FA3: change the design, leave the drawn one alone, and evaluate without NaN", () => {
    const before = JSON.stringify(design);
    const sound = evaluated(design);
    // Every third of them: all sorts are among these.
    for (const fault of all.filter((_, i) => i % 3 === 0)) {
      const faulty = fault.apply(design);
      expect(faulty, fault.id).not.toBe(design);
      for (const { services } of evaluated(faulty, sound).report.verdicts)
        for (const s of services)
          for (const value of [s.levelMin, s.levelMax, s.cnMin])
            expect(value === undefined || !Number.isNaN(value), fault.id).toBe(true);
    }
    expect(JSON.stringify(design)).toBe(before);
  });
});

test("FA4: a design that fails already loses only what it had", () => {
  const design = designOf("split-switched-output");
  const unplugged = faultOf(design, "plug-off:drop2.out>sat2.sat");
  if (!unplugged) throw new Error("no such fault");
  const { lost } = whatFails(design, unplugged);
  // Alone on the line the other receiver gets everything: it loses nothing.
  expect(lost.map((s) => s.part)).toEqual(["sat2"]);
});

test("FA5: the faults at one part are its own and those of its plugs", () => {
  const here = faultsAt(designOf("masthead-house"), "psu").map((f) => f.id);
  expect(here).toEqual(
    expect.arrayContaining(["mains-off:psu", "plug-off:down.out>psu.in", "plug-off:psu.out>split.in"]),
  );
  expect(here).not.toContain("aerial-off:uhf");
  expect(faultOf(designOf("masthead-house"), "plug-off:no.such>wire.in")).toBeUndefined();
});
