/** One multiplex by two aerials, distant transmitters, and aerials that look elsewhere. Frequencies: channel N is 306 + 8·N MHz. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { receive } from "../../src/findings/reception.ts";
import { report } from "../../src/findings/report.ts";
import { sourcesOf, wantedCarriers } from "../../src/findings/wanted.ts";
import { isLive } from "../../src/signal/readout.ts";
import { draw, type Sketch } from "../draw.ts";

/** Needs 20.8 dB (NorDig, as quoted). */
const MODE = "dvbt2-256qam-2/3";
const row = (channel: number, o: object = {}) => ({ channel, mode: MODE, ...o });
const aerial = (channels: readonly object[], o: object = {}): Sketch[string] => [
  "aerial-uhf",
  { levelDbuv: 60, ...o, channels },
];

function seen(parts: Sketch, wires: string) {
  const evaluation = evaluate(draw({ tv: ["receiver-tv"], ...parts }, wires));
  const tv = evaluation.record("tv");
  if (!tv) throw new Error("no TV set");
  const service = receive(tv, sourcesOf(evaluation))?.services[0];
  return { evaluation, tv, service, ...report(evaluation) };
}

const JOINED = "a.out > j.in1, b.out > j.in2, j.out > tv.in";
const joiner: Sketch = { j: ["combiner", { range: "tv" }] };

describe("one multiplex by two aerials", () => {
  const hill = (channel: number) => row(channel, { transmitter: "Hill" });

  test("is wanted once, and missed once where no way is left", () => {
    const { evaluation, tv, service } = seen(
      {
        a: aerial([hill(23), hill(26)]),
        b: aerial([hill(26), hill(30)]),
        c: ["cable"],
        f: ["filter"],
        ...joiner,
      },
      "a.out > j.in1, b.out > j.in2, j.out > c.in",
    );
    // 23, 26 and 30: channel 26 comes by both.
    expect(wantedCarriers(tv, sourcesOf(evaluation), "tv")).toHaveLength(3);
    expect(service).toMatchObject({ wanted: 3, got: 0 });
  });

  test("adds up by power where the two are combined, and is an echo, not a stranger", () => {
    const { tv, findings, service } = seen(
      { a: aerial([hill(23), hill(26)]), b: aerial([hill(26), hill(30)]), ...joiner },
      JOINED,
    );
    const at = new Map(
      (tv.inputs.in?.bands ?? []).flatMap((band) =>
        Array.from(band.grid.index, (entry, i) => [entry, band.level[i] ?? 0] as const),
      ),
    );
    // Two equal levels are 3.01 dB more than one.
    expect((at.get(26) ?? 0) - (at.get(23) ?? 0)).toBeCloseTo(3.01, 1);
    expect(service).toMatchObject({ wanted: 3, got: 3 });
    const rules = findings.map((f) => f.rule);
    expect(rules).toContain("same-signal-twice");
    expect(rules).not.toContain("shared-frequencies");
  });

  // Copies 6.02 dB apart leave notches of 6.02 dB (half the voltage is gone). 52 dBµV and 6 dB less, 4 dB lost in the combiner:
  // about 49 dBµV, 5 dB above the 44 of the profile, so too little for a notch; with 8 dB more it is enough.
  test.each([
    { levelDbuv: 52, state: "edge", edge: { kind: "two ways" } },
    { levelDbuv: 60, state: "works", edge: undefined },
  ])("at $levelDbuv dBµV a notch of 6 dB: $state", ({ levelDbuv, state, edge }) => {
    const { verdicts } = seen(
      {
        a: aerial([hill(26)], { levelDbuv }),
        b: aerial([hill(26)], { levelDbuv: levelDbuv - 6.02 }),
        ...joiner,
      },
      JOINED,
    );
    const verdict = verdicts.find((v) => v.part === "tv");
    expect(verdict?.state).toBe(state);
    if (edge) expect(verdict?.edge).toMatchObject(edge);
    else expect(verdict?.edge).toBeUndefined();
  });

  // Channel 23 by one aerial: 60 − 6 − 4 in the combiner = 50 dBµV, 6 above the 44 of the profile, and so the least. Channel 26 by both:
  // 56 dBµV twice, 59 by power: 15 dB to spare; but copies of one level cancel wholly, by 20 dB at least.
  test("a notch counts for a carrier that has more to spare than another", () => {
    const { verdicts } = seen(
      {
        a: aerial([row(23, { transmitter: "Hill", levelOffsetDb: -6 }), hill(26)]),
        b: aerial([hill(26)]),
        ...joiner,
      },
      JOINED,
    );
    const verdict = verdicts.find((v) => v.part === "tv");
    expect(verdict).toMatchObject({
      state: "edge",
      edge: { kind: "two ways", neededDb: 20 },
      tightest: { carrier: "C26" },
    });
    expect(verdict?.marginDb).toBeCloseTo(15, 0);
  });

  // −20·log10(1 − 10^(−Δ/20)): equal copies cancel wholly; 6 dB apart leave notches of 6 dB, 16 dB apart of 1.5 dB.
  test.each([
    { lower: 0, severity: "warning" },
    { lower: 6, severity: "warning" },
    { lower: 16, severity: "note" },
  ] as const)("$lower dB weaker by the second aerial is a $severity", ({ lower, severity }) => {
    const { findings } = seen(
      { a: aerial([hill(23)]), b: aerial([hill(23)], { levelDbuv: 60 - lower }), ...joiner },
      JOINED,
    );
    expect(findings.find((f) => f.rule === "same-signal-twice")?.severity).toBe(severity);
  });

  test("disturbs what else has its channel behind the other aerial alone", () => {
    // Hill on 23 by a; b hears Hill on 26, and Dale on 23: 60 against 50 dBµV, a C/I of 10 dB where 20.8 are needed.
    const { tv, findings } = seen(
      {
        a: aerial([hill(23), hill(26)]),
        b: aerial([hill(26), row(23, { transmitter: "Dale", wanted: false, levelOffsetDb: -10 })]),
        ...joiner,
      },
      JOINED,
    );
    const wanted = (tv.inputs.in?.bands ?? []).filter((b) => b.origin.service === "tv");
    const ci = wanted.flatMap((band) =>
      Array.from(band.grid.index).flatMap((entry, i) =>
        entry === 23 && isLive(band, i)
          ? [(band.level[i] ?? 0) - 10 * Math.log10(band.interference[i] ?? 0)]
          : [],
      ),
    );
    expect(ci).toHaveLength(1);
    expect(ci[0]).toBeCloseTo(10, 1);
    expect(findings.find((f) => f.rule === "shared-frequencies")).toMatchObject({
      severity: "error",
      facts: { other: { service: "distant", transmitter: "Dale" } },
    });
  });

  test("by name only: what two aerials list without a transmitter are two signals", () => {
    const { findings } = seen({ a: aerial([row(23)]), b: aerial([row(23)]), ...joiner }, JOINED);
    expect(findings.map((f) => f.rule)).toContain("shared-frequencies");
  });

  test("of two transmitters on one channel of one aerial the stronger is meant, and the other disturbs it", () => {
    const { service, findings } = seen(
      { a: aerial([hill(23), row(23, { transmitter: "Dale", levelOffsetDb: -15 })]) },
      "a.out > tv.in",
    );
    expect(service).toMatchObject({ wanted: 1, got: 0 });
    expect(findings.find((f) => f.rule === "shared-frequencies")?.severity).toBe("error");
  });
});

describe("a distant transmitter", () => {
  const far = (o: object) => row(26, { transmitter: "Far", wanted: false, ...o });

  test("on a free channel is neither missed nor judged", () => {
    const { service, findings, causes } = seen(
      { a: aerial([row(23), row(30), far({ levelOffsetDb: -40 })]) },
      "a.out > tv.in",
    );
    expect(service).toMatchObject({ wanted: 2, got: 2 });
    expect(findings).toEqual([]);
    expect(causes).toEqual([]);
  });

  test("on a wanted channel drowns it, and the aerial is the culprit", () => {
    // 12 dB lower, and 20.8 dB are needed.
    const { service, causes } = seen(
      { a: aerial([row(23), row(26), far({ levelOffsetDb: -12 })]) },
      "a.out > tv.in",
    );
    expect(service).toMatchObject({ wanted: 2, got: 1 });
    expect(causes[0]?.root).toMatchObject({ rule: "shared-frequencies", parts: ["a"], severity: "error" });
    expect(causes).toHaveLength(1);
  });
});

describe("an aerial that looks elsewhere", () => {
  const east = [23, 26].map((channel) =>
    row(channel, { transmitter: "Hill", bearingDeg: 90, polarisation: "H" }),
  );
  const behind = "a.out > c.in, c.out > tv.in";
  const cable: Sketch = { c: ["cable", { lengthM: 20 }] };

  test.each([
    // BT.419-3: 16 dB from 60° on.
    { aim: { bearingDeg: 180 }, does: "turned away", db: 16 },
    { aim: { bearingDeg: 90, polarisation: "V" }, does: "other polarisation", db: 16 },
  ])("is named as the cause of low levels: $does", ({ aim, does, db }) => {
    const { causes } = seen({ a: aerial(east, { levelDbuv: 58, aim: "bearing", ...aim }), ...cable }, behind);
    const [cause] = causes;
    expect(cause?.root).toMatchObject({ rule: "level-limits", parts: ["a", "tv"] });
    expect(cause?.root.facts).toMatchObject({ culprit: { part: "a", does } });
    const { culprit } = (cause?.root.facts ?? {}) as { culprit?: { excessDb: number } };
    expect(culprit?.excessDb).toBeCloseTo(db, 6);
  });

  test("is in order where it looks at them, and where it looks past them by 20° or less", () => {
    for (const bearingDeg of [90, 75, 110])
      expect(
        seen({ a: aerial(east, { levelDbuv: 58, aim: "bearing", bearingDeg }), ...cable }, behind).findings,
      ).toEqual([]);
  });
});
