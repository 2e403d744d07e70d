/** What a sweep visits after an edit, counted by hand on one small house; and that nothing else changes. */
import { isDeepStrictEqual } from "node:util";
import { describe, expect, test } from "vitest";
import type { Design, Part, Wire } from "../../src/design/design.ts";
import { type Settings, USUAL_SETTINGS } from "../../src/design/settings.ts";
import { evaluate, evaluateInSteps } from "../../src/evaluate/evaluate.ts";
import type { Evaluation } from "../../src/evaluate/evaluation.ts";
import { type EvaluationProgress, withinBudget } from "../../src/evaluate/steps.ts";
import { SILENCE } from "../../src/signal/band.ts";
import { draw, withOptions } from "../draw.ts";

/**
 * Two TV sets behind an amplifier, two satellite receivers on an LNB, one of them behind a splitter that nobody else
 * uses; a radio that is joined to nothing.
 */
const HOUSE = draw(
  {
    uhf: ["aerial-uhf"],
    amp: ["amp-distribution", { gainDb: 15 }],
    split: ["splitter", { dc: "all" }],
    run1: ["cable", { lengthM: 10 }],
    run2: ["cable", { lengthM: 20 }],
    tv1: ["receiver-tv"],
    tv2: ["receiver-tv"],
    dish: ["dish"],
    lnb: ["lnb-universal", { outputs: "2" }],
    drop1: ["cable", { lengthM: 10 }],
    drop2: ["cable", { lengthM: 10 }],
    sat1: ["receiver-sat"],
    sat2: ["receiver-sat"],
    radio: ["receiver-fm"],
  },
  `uhf.out > amp.in, amp.out > split.in, split.out1 > run1.in, split.out2 > run2.in, run1.out > tv1.in,
   run2.out > tv2.in, dish.sky > lnb.sky, lnb.out1 > drop1.in, lnb.out2 > drop2.in, drop1.out > sat1.sat,
   drop2.out > sat2.sat`,
);

const wire = (from: string, to: string): Wire => {
  const [a = "", b = ""] = from.split(".");
  const [c = "", d = ""] = to.split(".");
  return { from: [a, b], to: [c, d] };
};
const isWire = (w: Wire, text: string) => `${w.from.join(".")} > ${w.to.join(".")}` === text;
const without = (design: Design, ...gone: string[]): Design => ({
  ...design,
  wires: design.wires.filter((w) => !gone.some((text) => isWire(w, text))),
});
const joined = (design: Design, from: string, to: string): Design => ({
  ...design,
  wires: [...design.wires, wire(from, to)],
});
const withPart = (design: Design, id: string, change: (part: Part) => Part): Design => ({
  ...design,
  parts: design.parts.map((part) => (part.id === id ? change(part) : part)),
});

/** Everything a record says, as plain values. */
const plain = (evaluation: Evaluation) => evaluation.records.map((r) => ({ ...r, kind: r.kind.kind }));

/** Evaluates the edit on top of the house, holds it against an evaluation from scratch, and tells what is another. */
function edited(after: Design, before: Design = HOUSE) {
  const former = evaluate(before);
  const evaluation = evaluate(after, former);
  expect(plain(evaluation)).toEqual(plain(evaluate(after)));
  const ids = (isSame: (id: string) => boolean) => after.parts.map((p) => p.id).filter((id) => !isSame(id));
  return {
    evaluation,
    former,
    /** Parts whose record is another object. */
    touched: ids((id) => evaluation.record(id) === former.record(id)).sort(),
    /** Parts whose record says anything else. */
    changed: ids((id) => isDeepStrictEqual(evaluation.record(id), former.record(id))).sort(),
    recomputed: evaluation.recomputed,
  };
}

describe("after an edit only what it can touch is worked out again", () => {
  test.each([
    {
      name: "a longer cable: it and what lies behind it",
      after: withOptions(HOUSE, "run1", { lengthM: 30 }),
      touched: ["run1", "tv1"],
      recomputed: 2,
    },
    {
      name: "more gain: all behind the amplifier",
      after: withOptions(HOUSE, "amp", { gainDb: 20 }),
      touched: ["amp", "run1", "run2", "split", "tv1", "tv2"],
      recomputed: 6,
    },
    {
      // The two receivers share the LNB, so the currents of both lines change.
      name: "a longer cable below an LNB: its supply upwards, its signal downwards",
      after: withOptions(HOUSE, "drop1", { lengthM: 30 }),
      touched: ["drop1", "drop2", "lnb", "sat1", "sat2"],
      // The converter hears of another voltage at both, and need not send anything else.
      recomputed: 5,
    },
    {
      // With 18 V it feeds the LNB alone, so the other line carries nothing any more.
      name: "a receiver that asks for something else: its own line, and the currents of the other",
      after: withOptions(HOUSE, "sat1", { polarisation: "H", half: "high" }),
      touched: ["drop1", "drop2", "lnb", "sat1", "sat2"],
      recomputed: 5,
    },
    {
      // Copper has 7.9 % more resistance at 40 °C, so the shares of the two receivers change as well.
      name: "a warmer cable: its signal downwards, and supply as with a longer one",
      after: withOptions(HOUSE, "drop1", { temperatureC: 40 }),
      touched: ["drop1", "drop2", "lnb", "sat1", "sat2"],
      recomputed: 5,
    },
    {
      name: "another kind of receiver on the radio's place: nobody else",
      after: withOptions(HOUSE, "radio", {}),
      touched: ["radio"],
      recomputed: 1,
    },
  ])("$name", ({ after, touched, recomputed }) => {
    const found = edited(after);
    expect(found.touched).toEqual(touched);
    expect(found.recomputed).toBe(recomputed);
  });

  /** A masthead amplifier that is fed through its downlead: 40 mA, at least 10 of 12 V. */
  const fed = draw(
    {
      uhf: ["aerial-uhf"],
      mast: ["amp-masthead", { milliamps: 40, minVolts: 10 }],
      drop: ["cable", { lengthM: 20, grade: "own", loopOhmPerKm: 100 }],
      psu: ["power-inserter", { volts: 12, limitMa: 100 }],
      tv: ["receiver-tv"],
    },
    "uhf.out > mast.in, mast.out > drop.in, drop.out > psu.in, psu.out > tv.in",
  );

  // 40 mA at 100 Ω/km: 0.08 V on 20 m, 0.4 V on 100 m, and 2 V only on 500 m.
  test.each([
    { lengthM: 100, powered: true, recomputed: 3, name: "fed with less, but enough, amplifies as before" },
    { lengthM: 500, powered: true, recomputed: 3, name: "fed with just enough, too" },
  ])("an amplifier that is $name", ({ lengthM, powered, recomputed }) => {
    const found = edited(withOptions(fed, "drop", { lengthM }), fed);
    expect(found.evaluation.record("mast")?.powered).toBe(powered);
    expect(found.touched).toEqual(["drop", "mast", "psu", "tv"]);
    expect(found.recomputed).toBe(recomputed);
  });

  test("an amplifier that gets too little is worked out again, and so it is when it gets enough", () => {
    const dark = withOptions(fed, "drop", { lengthM: 500, loopOhmPerKm: 101 });
    const found = edited(dark, fed);
    expect(found.evaluation.record("mast")?.powered).toBe(false);
    expect(found.recomputed).toBe(4);
    expect(edited(fed, dark).evaluation.record("mast")?.powered).toBe(true);
  });

  test("moved or renamed: a record of its own with the new part, and no work", () => {
    const label = edited(withPart(HOUSE, "amp", (part) => ({ ...part, label: "new", at: [9, 9] })));
    expect(label.touched).toEqual(["amp"]);
    expect(label.recomputed).toBe(0);
    expect(label.evaluation.record("amp")?.part.label).toBe("new");
    expect(label.evaluation.record("amp")?.outputs.out).toBe(label.former.record("amp")?.outputs.out);
  });

  test("nothing: every record is the one before", () => {
    const same = edited({ ...HOUSE, title: "other" });
    expect([same.touched, same.recomputed]).toEqual([[], 0]);
    const listed = edited({ ...HOUSE, wires: [...HOUSE.wires] });
    expect([listed.changed, listed.recomputed]).toEqual([[], 0]);
    const shuffled = edited({ ...HOUSE, parts: HOUSE.parts.toReversed(), wires: HOUSE.wires.toReversed() });
    expect([shuffled.changed, shuffled.recomputed]).toEqual([[], 0]);
  });

  test("another derating: everything, for it touches every amplifier", () => {
    const settings: Settings = { ...USUAL_SETTINGS, derating: "power" };
    const found = edited({ ...HOUSE, settings });
    expect(found.recomputed).toBe(HOUSE.parts.length);
    expect(found.touched).toHaveLength(HOUSE.parts.length);
    const kept = edited({ ...HOUSE, settings, title: "x" }, { ...HOUSE, settings });
    expect([kept.touched, kept.recomputed]).toEqual([[], 0]);
  });
});

describe("wires and parts that come and go", () => {
  test("a wire taken away silences what lay behind it, and its supply is gone", () => {
    const { evaluation, changed, touched } = edited(without(HOUSE, "lnb.out1 > drop1.in"));
    // The LNB lives on the other receiver alone now, which its other output hands on.
    expect(changed).toEqual(["drop1", "drop2", "lnb", "sat1", "sat2"]);
    // The dish is asked about the LNB's new load, and the other drop is handed what comes out of the LNB.
    expect(
      ["amp", "radio", "run1", "run2", "split", "tv1", "tv2", "uhf"].filter((id) => touched.includes(id)),
    ).toEqual([]);
    expect(evaluation.record("sat1")?.inputs.sat?.bands).toEqual([]);
    expect(evaluation.record("lnb")?.switches.out1?.setting).toBeNull();
    expect(evaluation.record("lnb")?.joined.out1).toBeUndefined();
    expect(evaluation.record("sat1")?.demands).toEqual({});
  });

  test("a wire to another part", () => {
    const moved = joined(without(HOUSE, "run1.out > tv1.in"), "run1.out", "radio.in");
    const { evaluation, changed, touched } = edited(moved);
    expect(changed).toEqual(["radio", "run1", "tv1"]);
    expect(touched).toEqual(["radio", "run1", "tv1"]);
    expect(Object.keys(evaluation.record("radio")?.inputs ?? {})).toEqual(["in"]);
  });

  test("two leads of the LNB swapped", () => {
    const bare = without(HOUSE, "lnb.out1 > drop1.in", "lnb.out2 > drop2.in");
    const { changed } = edited(joined(joined(bare, "lnb.out1", "drop2.in"), "lnb.out2", "drop1.in"));
    // The receivers hear the other output of the LNB, which stands as they ask.
    expect(changed).toEqual(["drop1", "drop2", "lnb", "sat1", "sat2"]);
  });

  test("a part taken away, in the middle of the list", () => {
    const { evaluation, changed } = edited({
      ...HOUSE,
      parts: HOUSE.parts.filter((p) => p.id !== "amp"),
      wires: HOUSE.wires.filter((w) => w.from[0] !== "amp" && w.to[0] !== "amp"),
    });
    expect(changed).toEqual(["run1", "run2", "split", "tv1", "tv2", "uhf"]);
    expect(evaluation.record("amp")).toBeUndefined();
    expect(evaluation.record("tv1")?.sources).toEqual([]);
  });

  test("another source in the place of one", () => {
    const two = draw(
      { a: ["aerial-uhf"], b: ["aerial-uhf"], run: ["cable"], tv: ["receiver-tv"] },
      "a.out > run.in, run.out > tv.in",
    );
    const { evaluation } = edited(joined(without(two, "a.out > run.in"), "b.out", "run.in"), two);
    expect(evaluation.record("tv")?.sources).toEqual(["b"]);
  });

  test("a part put in", () => {
    const pad: Part = { ...(HOUSE.parts[3] as Part), id: "more" };
    const design = joined(
      joined(without({ ...HOUSE, parts: [pad, ...HOUSE.parts] }, "run1.out > tv1.in"), "run1.out", "more.in"),
      "more.out",
      "tv1.in",
    );
    expect(edited(design).changed).toEqual(["more", "run1", "tv1"]);
  });

  test("another kind under the same id, with other ports", () => {
    const tap = draw({ split: ["tap"] }, "").parts[0];
    if (!tap) throw new Error("no tap");
    const { evaluation, changed } = edited(withPart(HOUSE, "split", () => tap));
    // A tap has no second output: that branch is silent.
    expect(changed).toEqual(["run1", "run2", "split", "tv1", "tv2"]);
    expect(evaluation.record("tv2")?.inputs.in?.bands).toEqual([]);
  });

  test("a port that an option takes away and gives back", () => {
    const fewer = withOptions(HOUSE, "lnb", { outputs: "1" });
    const { evaluation } = edited(fewer);
    expect(evaluation.record("sat2")?.inputs.sat?.bands).toEqual([]);
    expect(edited(HOUSE, fewer).changed).toContain("sat2");
  });
});

describe("loops", () => {
  const ring = draw(
    {
      uhf: ["aerial-uhf"],
      join: ["combiner", { dc: "all" }],
      amp: ["amp-distribution"],
      split: ["splitter", { dc: "all" }],
      back: ["cable"],
      tv: ["receiver-tv"],
    },
    "uhf.out > join.in1, join.out > amp.in, amp.out > split.in, split.out1 > tv.in, split.out2 > back.in",
  );
  const closed = joined(ring, "back.out", "join.in2");

  test("parts on one are not worked out, and say so; what lies behind hears nothing", () => {
    const { evaluation } = edited(closed, ring);
    const looped = evaluation.records.filter((r) => r.looped).map((r) => r.part.id);
    expect(looped).toEqual(["join", "amp", "split", "back"]);
    for (const id of looped)
      expect(evaluation.record(id)).toMatchObject({ outputs: {}, inputs: {}, feeds: {}, offers: {} });
    expect(evaluation.record("tv")?.inputs).toEqual({});
    expect(evaluation.record("uhf")?.outputs.out?.bands.length).toBeGreaterThan(0);
    expect(evaluation.record("tv")?.sources).toEqual([]);
  });

  test("broken again, everything is as before", () => {
    expect(plain(edited(ring, closed).evaluation)).toEqual(plain(evaluate(ring)));
  });

  test("an edit beside one, and one on it", () => {
    edited(withOptions(closed, "uhf", { levelDbuv: 70 }), closed);
    edited(withOptions(closed, "amp", { gainDb: 7 }), closed);
    edited(without(closed, "uhf.out > join.in1"), closed);
    // A satellite receiver behind a loop feeds nobody above it any more.
    const rx = draw({ tv: ["receiver-sat"] }, "").parts[0];
    if (rx)
      edited(
        withPart(closed, "tv", () => rx),
        closed,
      );
  });

  test("one that closes around a supply takes it from whoever had it", () => {
    const fed = draw(
      {
        lnb: ["lnb-universal"],
        join: ["combiner", { dc: "all" }],
        split: ["splitter", { dc: "all" }],
        rx: ["receiver-sat"],
      },
      "lnb.out > join.in1, join.out > split.in, split.out1 > rx.sat",
    );
    expect(evaluate(fed).record("lnb")?.powered).toBe(true);
    expect(evaluate(fed).record("rx")?.demands.sat?.milliamps).toBe(95);
    const { evaluation } = edited(joined(fed, "split.out2", "join.in2"), fed);
    expect(evaluation.record("lnb")?.powered).toBe(false);
    expect(evaluation.record("lnb")?.feeds).toEqual({});
    expect(evaluation.record("rx")?.demands).toEqual({});
    edited(fed, joined(fed, "split.out2", "join.in2"));
  });
});

describe("what an evaluation gives", () => {
  test("records in the order of the parts, by id, and none for a stranger", () => {
    const evaluation = evaluate(HOUSE);
    expect(evaluation.records.map((r) => r.part)).toEqual(HOUSE.parts);
    expect(evaluation.record("amp")?.kind.kind).toBe("amp-distribution");
    expect(evaluation.record("nobody")).toBeUndefined();
    expect(evaluation.design).toBe(HOUSE);
  });

  test("spectra of wires, and silence where nothing is", () => {
    const evaluation = evaluate(HOUSE);
    const out = evaluation.record("amp")?.outputs.out;
    expect(evaluation.spectrum(wire("amp.out", "split.in"))).toBe(out);
    for (const from of ["nobody.out", "amp.nothing", "tv1.in", "constructor.out"])
      expect(evaluation.spectrum(wire(from, "split.in"))).toBe(SILENCE);
  });

  test("the sources above a part, each once, sorted; the same list while it is the same", () => {
    const evaluation = evaluate(HOUSE);
    expect(evaluation.record("tv1")?.sources).toEqual(["uhf"]);
    expect(evaluation.record("sat2")?.sources).toEqual(["dish"]);
    expect(evaluation.record("radio")?.sources).toEqual([]);
    expect(evaluation.record("tv1")?.sources).toBe(evaluation.record("tv2")?.sources);
    const many = draw(
      {
        z: ["aerial-uhf"],
        a: ["aerial-uhf"],
        m: ["aerial-fm"],
        // A source in the line itself.
        pick: ["pick-up"],
        one: ["combiner"],
        two: ["combiner"],
        split: ["splitter"],
        end: ["combiner"],
      },
      `z.out > one.in1, a.out > pick.in, pick.out > one.in2, one.out > split.in, split.out1 > two.in1,
       split.out2 > end.in2, m.out > two.in2, two.out > end.in1`,
    );
    const found = evaluate(many);
    expect(found.record("one")?.sources).toEqual(["a", "pick", "z"]);
    expect(found.record("end")?.sources).toEqual(["a", "m", "pick", "z"]);
    expect(found.record("split")?.sources).toBe(found.record("one")?.sources);
    const after = edited(withOptions(many, "z", { levelDbuv: 70 }), many);
    expect(after.evaluation.record("end")?.sources).toBe(after.former.record("end")?.sources);
    // Nobody hears of it, though nothing comes from there: a source without a carrier is one all the same.
    edited(withOptions(many, "a", { channels: [] }), many);
    edited(without(many, "a.out > pick.in"), many);
    edited(without(many, "m.out > two.in2"), many);
  });

  test("a part of a kind that this version does not know does nothing", () => {
    const unknown = withPart(HOUSE, "split", (part) => ({ ...part, kind: "of-another-version" }));
    const { evaluation: found } = edited(unknown);
    expect(found.record("split")).toMatchObject({ ports: [], outputs: {}, inputs: {}, powered: true });
    expect(found.record("tv1")?.inputs.in?.bands).toEqual([]);
    expect(found.record("amp")?.outputs.out?.bands.length).toBeGreaterThan(0);
  });

  // Aerial, UHF: 60 dBµV from the terminals, 15 dB more, 4 dB in a splitter less.
  test("levels by addition", () => {
    const plan = withOptions(
      withOptions(withOptions(HOUSE, "uhf", { levelDbuv: 60 }), "split", { loss: "own", ownTvDb: 4 }),
      "run1",
      { grade: "own", k1: 0, k2: 0 },
    );
    const level = evaluate(plan).record("tv1")?.inputs.in?.bands[0]?.level[0];
    expect(level).toBeCloseTo(60 + 15 - 4, 6);
  });

  test("what was left out of supplies, of alternatives and of switches in a row, in one record", () => {
    const evaluation = evaluate(HOUSE);
    expect(evaluation.records.every((r) => r.omitted === undefined)).toBe(true);
    const lines = Array.from({ length: 4 }, (_, i) => i);
    const star = draw(
      {
        lnb: ["lnb-universal"],
        trunk: ["splitter", { ways: 4, dc: "all" }],
        ...Object.fromEntries(
          lines.flatMap((n) => [
            [`s${n}`, ["splitter", { ways: 8, dc: "all" }] as const],
            ...Array.from({ length: 8 }, (_, k) => [
              `s${n}${k}`,
              ["splitter", { ways: 3, dc: "all" }] as const,
            ]),
            ...Array.from({ length: 24 }, (_, k) => [`r${n}-${k}`, ["receiver-sat"] as const]),
          ]),
        ),
      },
      [
        "lnb.out > trunk.in",
        ...lines.flatMap((n) => [
          `trunk.out${n + 1} > s${n}.in`,
          ...Array.from({ length: 8 }, (_, k) => `s${n}.out${k + 1} > s${n}${k}.in`),
          ...Array.from(
            { length: 24 },
            (_, k) => `s${n}${Math.floor(k / 3)}.out${(k % 3) + 1} > r${n}-${k}.sat`,
          ),
        ]),
      ].join(", "),
    );
    // 96 receivers: of 24 behind each branch none is left out, of 96 at the trunk 32.
    const found = evaluate(star);
    expect(found.record("s0")?.omitted).toBeUndefined();
    expect(found.record("trunk")?.omitted).toEqual({ supplies: 32 });
    expect(found.record("lnb")?.feeds.out).toHaveLength(64);
  });
});

describe("told step by step", () => {
  const steps = (design: Design, former?: Evaluation): readonly EvaluationProgress[] => {
    const told: EvaluationProgress[] = [];
    const run = withinBudget(evaluateInSteps(design, former), { work: Number.POSITIVE_INFINITY });
    for (let step = run.next(); !step.done; step = run.next()) told.push(step.value);
    return told;
  };

  test("supplies are told first, and each part is visited once by the signals", () => {
    const told = steps(HOUSE);
    expect(told.every((p) => p.total === HOUSE.parts.length)).toBe(true);
    const done = told.map((p) => p.done);
    const signals = done.slice(-HOUSE.parts.length);
    expect(signals).toEqual(HOUSE.parts.map((_, i) => i));
    expect(new Set(done.slice(0, -HOUSE.parts.length))).toEqual(new Set([0]));
  });

  test("an edit is told by the parts that are visited, and comes to the same work", () => {
    const after = withOptions(HOUSE, "run1", { lengthM: 30 });
    const told = steps(after, evaluate(HOUSE));
    expect(told.at(-1)?.work).toBe(steps(after).at(-1)?.work);
    expect(steps(HOUSE, evaluate(HOUSE))).toEqual([]);
  });

  test("work grows with the supplies that meet, and with what the signals took", () => {
    const star = (receivers: number) =>
      draw(
        {
          lnb: ["lnb-universal"],
          split: ["splitter", { ways: 8 }],
          ...Object.fromEntries(
            Array.from({ length: receivers }, (_, i) => [`r${i}`, ["receiver-sat"] as const]),
          ),
        },
        [
          "lnb.out > split.in",
          ...Array.from({ length: receivers }, (_, i) => `split.out${i + 1} > r${i}.sat`),
        ].join(),
      );
    const workOf = (receivers: number) => steps(star(receivers)).at(-1)?.work ?? 0;
    expect(workOf(8)).toBeGreaterThan(workOf(4));
    expect(workOf(4)).toBeGreaterThan(workOf(1));
  });
});
