/** What feeds signals in beside aerials: modulators, cable networks, aerials with an amplifier inside. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { RECEIVE } from "../../src/parts/receive.ts";
import { serviceName } from "../../src/signal/carrier.ts";
import { cnDb } from "../../src/signal/readout.ts";
import { draw, type Sketch } from "../draw.ts";
import { kindNamed, runPart } from "./workbench.ts";

const MODE = "dvbt2-256qam-2/3";

function levelsAt(part: string, port: string, parts: Sketch, wires: string) {
  const record = evaluate(draw(parts, wires)).record(part);
  const bands = record?.inputs[port]?.bands ?? [];
  return new Map(
    bands.flatMap((band) =>
      Array.from(band.level, (levelDbuv, i) => {
        const name = band.grid.plan[band.grid.index[i] ?? 0]?.name ?? "";
        const ciDb = levelDbuv - 10 * Math.log10(band.interference[i] ?? 0);
        return [name, { levelDbuv, cnDb: cnDb(band, i), ciDb }] as const;
      }),
    ),
  );
}

describe("a modulator", () => {
  const parts: Sketch = {
    tv: ["receiver-tv"],
    j: ["combiner", { range: "tv" }],
    a: ["aerial-uhf", { levelDbuv: 55, channels: [{ channel: 30, mode: MODE }] }],
    m: ["modulator", { channel: "42", levelDbuv: 80, merDb: 35, noiseDbc: 65 }],
  };
  const wires = "a.out > j.in1, m.out > j.in2, j.out > tv.in";

  // By hand. Into channel 30 it puts 80 − 65 = 15 dBµV in 8 MHz, of which 7.61 MHz count: 15 − 0.22 = 14.78 dBµV. Both
  // lose the same in the combiner, so C/I = 55 − 14.78 = 40.22 dB. Its own channel has its MER.
  test("puts noise beside its channel, and its own channel has its MER", () => {
    const seen = levelsAt("tv", "in", parts, wires);
    expect(seen.get("C30")?.ciDb).toBeCloseTo(40.22, 2);
    expect(seen.get("C42")?.cnDb).toBeCloseTo(35, 1);
    expect((seen.get("C42")?.levelDbuv ?? 0) - (seen.get("C30")?.levelDbuv ?? 0)).toBeCloseTo(25, 1);
  });

  // 85 dB too strong a neighbour: 100 − 45 = 55 dBµV of noise in a channel of 55 dBµV.
  test("that is noisy and far too strong drowns the aerial’s channel by its noise", () => {
    const loud: Sketch = { ...parts, m: ["modulator", { channel: "42", levelDbuv: 100, noiseDbc: 45 }] };
    const { findings } = report(evaluate(draw(loud, wires)));
    expect(findings.find((f) => f.rule === "shared-frequencies")).toMatchObject({
      severity: "error",
      facts: { other: { part: "m", sort: "noise" } },
    });
  });

  test("that is off sends nothing and is told as a mains unit that is off", () => {
    const off: Sketch = { ...parts, m: ["modulator", { switchedOn: false }] };
    const { findings, verdicts } = report(evaluate(draw(off, wires)));
    expect(findings.map((f) => [f.rule, f.parts[0]])).toEqual([["no-supply", "m"]]);
    expect(verdicts.find((v) => v.part === "tv")?.services[0]).toMatchObject({ wanted: 1, got: 1 });
  });

  test("in order is silent, and its channel is one more", () => {
    const quiet: Sketch = { ...parts, m: ["modulator", { channel: "42", levelDbuv: 58 }] };
    const { findings, verdicts } = report(evaluate(draw(quiet, wires)));
    expect(findings).toEqual([]);
    expect(verdicts.find((v) => v.part === "tv")?.services[0]).toMatchObject({ wanted: 2, got: 2 });
  });
});

describe("the hand-over point of a cable network", () => {
  const channels = [
    { frequencyMHz: 330, mode: "dvbc-256qam" },
    { frequencyMHz: 338, mode: "dvbc-64qam", levelOffsetDb: -6 },
  ];

  // EN 300 429, from memory: 6.9 MBd and a roll-off of 0.15 occupy 7.935 MHz; noise counts in 6.9 MHz.
  test("sends channels of 6.9 MBd with their level and C/N", () => {
    const { bands } = runPart({
      kind: kindNamed(RECEIVE, "cable-entry"),
      options: { levelDbuv: 70, cnDb: 40, channels },
    });
    const [band] = bands("out");
    expect(Array.from(band?.grid.width ?? [])).toEqual([expect.closeTo(7.935, 6), expect.closeTo(7.935, 6)]);
    expect(Array.from(band?.level ?? [])).toEqual([70, 64]);
    expect(band && cnDb(band, 0)).toBeCloseTo(40, 6);
    // NorDig, as quoted: 256QAM needs 32 dB, 64QAM 26 dB.
    expect(Array.from(band?.grid.required ?? [])).toEqual([32, 26]);
  });

  const set = (tv: object, e: object = {}) => {
    const parts: Sketch = {
      tv: ["receiver-tv", { ...tv }],
      e: ["cable-entry", { channels, levelDbuv: 65, ...e }],
    };
    return report(evaluate(draw(parts, "e.out > tv.in")));
  };

  test("serves a TV set that has a tuner for it", () => {
    const { findings, verdicts } = set({});
    expect(verdicts[0]?.services[0]).toMatchObject({ wanted: 2, got: 2 });
    expect(findings).toEqual([]);
  });

  test("serves none without, and that is said", () => {
    const { findings, verdicts } = set({ cableTuner: false });
    expect(verdicts[0]?.services[0]).toMatchObject({ wanted: 2, got: 0 });
    expect(findings[0]).toMatchObject({
      rule: "receiver-misses",
      parts: ["tv"],
      facts: { missing: { reason: { kind: "no tuner for it", system: "DVB-C" } } },
    });
  });

  test("is told as cable television, not as terrestrial; beside an aerial as both", () => {
    expect(set({}).verdicts[0]?.services.map(serviceName)).toEqual(["Cable TV"]);
    const aerial = draw({ tv: ["receiver-tv"], a: ["aerial-uhf"] }, "a.out > tv.in");
    expect(report(evaluate(aerial)).verdicts[0]?.services.map(serviceName)).toEqual(["Terrestrial TV"]);
    const both = draw(
      {
        tv: ["receiver-tv"],
        a: ["aerial-uhf"],
        e: ["cable-entry", { channels }],
        c: ["combiner"],
      },
      "a.out > c.in1, e.out > c.in2, c.out > tv.in",
    );
    expect(report(evaluate(both)).verdicts[0]?.services.map(serviceName)).toEqual([
      "Terrestrial and cable TV",
    ]);
  });

  // A receiver for DVB-T only shows nothing of a DVB-T2 multiplex (another modulation and error protection, EN 302 755).
  test("leaves an old set for DVB-T alone with the DVB-T channels of an aerial", () => {
    const old = (mode: string) => {
      const aerial = ["aerial-uhf", { channels: [{ channel: 30, mode, levelOffsetDb: 0 }] }] as const;
      const design = draw(
        { tv: ["receiver-tv", { secondGeneration: false }], a: [...aerial] },
        "a.out > tv.in",
      );
      return report(evaluate(design));
    };
    expect(old("dvbt-64qam-2/3").verdicts[0]?.services[0]).toMatchObject({ wanted: 1, got: 1 });
    const lost = old("dvbt2-256qam-2/3");
    expect(lost.verdicts[0]?.services[0]).toMatchObject({ wanted: 1, got: 0 });
    expect(lost.findings[0]?.facts).toMatchObject({
      missing: { reason: { kind: "no tuner for it", system: "DVB-T2" } },
    });
  });

  // A cable tuner reaches down to about 110 MHz, the terrestrial one of the same set to 174 MHz (from memory).
  test("is tuned below the terrestrial bands", () => {
    const { verdicts } = set({}, { channels: [{ frequencyMHz: 122, mode: "dvbc-64qam" }] });
    expect(verdicts[0]?.services[0]).toMatchObject({ wanted: 1, got: 1 });
  });

  test("that hands over too much noise is the culprit, not the level", () => {
    const { findings } = set({}, { cnDb: 29 });
    const poor = findings.find((f) => f.rule === "low-carrier-to-noise");
    expect(poor?.facts).toMatchObject({ culprit: { part: "e", does: "unclean source" } });
  });
});

describe("an active aerial", () => {
  const parts = (tv: object): Sketch => ({
    tv: ["receiver-tv", { ...tv }],
    a: [
      "aerial-active",
      { levelDbuv: 48, gainDb: 15, noiseFigureDb: 2.5, channels: [{ channel: 30, mode: MODE }] },
    ],
  });

  // By hand: 48 + 15 dBµV. Noise at its elements: kTB in 7.61 MHz, 3.59 dBµV, and a noise figure of 2.5 dB above it:
  // 48 − 3.59 − 2.5 = 41.91 dB, the elements at 290 K.
  test("amplifies what its elements receive, and adds its noise", () => {
    const seen = levelsAt("tv", "in", parts({ aerialSupply: "5" }), "a.out > tv.in").get("C30");
    expect(seen?.levelDbuv).toBeCloseTo(63, 6);
    expect(seen?.cnDb).toBeCloseTo(41.91, 1);
  });

  test("without supply is told, and the TV set that could feed it is named", () => {
    const { findings } = report(evaluate(draw(parts({}), "a.out > tv.in")));
    const unfed = findings.find((f) => f.rule === "no-supply");
    expect(unfed).toMatchObject({ severity: "error", at: { part: "a" } });
    expect(unfed?.facts).toMatchObject({ stop: { why: "nothing feeds", nearest: "tv" } });
  });

  test("with its 5 V is in order", () => {
    expect(report(evaluate(draw(parts({ aerialSupply: "5" }), "a.out > tv.in"))).findings).toEqual([]);
  });
});
