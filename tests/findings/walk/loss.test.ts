/**
 * Where a carrier is lost, and why: on ways made by hand, so that each reason stands alone. The mode needs 18.7 dB
 * (NorDig Unified 2.2, as quoted in a public table); limits 45 to 74 dBµV (EN 60728-1, as quoted).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import type { Evaluation, Meeting, PartRecord } from "../../../src/evaluate/evaluation.ts";
import type { LostCarrier } from "../../../src/findings/carrierResult.ts";
import { lossOf } from "../../../src/findings/walk/loss.ts";
import type { WayStep } from "../../../src/findings/walk/step.ts";
import { draw } from "../../draw.ts";
import { bandOf, carrierAt, gridOf } from "../../signal/bands.ts";
import { recordOf, stackOf } from "../byHand.ts";

type Walked = Parameters<typeof lossOf>[1];

/** Two channels from aerial “u” through amplifier “g” to a TV set; the first is followed. */
const evaluation = evaluate(
  draw({ u: ["aerial-uhf"], g: ["amp-distribution"], tv: ["receiver-tv"] }, "u.out > g.in, g.out > tv.in"),
);
const channels = gridOf([474, 482]);
const signal = bandOf({ from: "u", grid: channels });

const choice: Walked["choice"] = {
  carrier: { origin: "u", index: 0 },
  planned: carrierAt(474),
  requiredDb: 18.7,
  source: "u",
  service: "tv",
};

/** A step far above all needs. */
const step = (part: string, more: Partial<WayStep> = {}): WayStep => ({
  part,
  from: "in",
  to: "out",
  centreMHz: 474,
  levelDbuv: 60,
  cnDb: 40,
  ciDb: Number.POSITIVE_INFINITY,
  imDb: Number.POSITIVE_INFINITY,
  cniDb: 40,
  gainDb: 0,
  made: [],
  cutHere: false,
  marginDb: 21.3,
  ...more,
});

const walked = (more: Partial<Walked> = {}): Walked => ({
  receiver: recordOf(evaluation, "tv"),
  choice,
  destination: {
    port: "in",
    arrives: { band: signal, i: 0, at: { part: "g", port: "out" } },
    seen: null,
  },
  steps: [step("u"), step("g")],
  end: { levelDbuv: 60, cniDb: 38, marginDb: 19.3 },
  limits: { minDbuv: 45, maxDbuv: 74, cnDb: 26 },
  ...more,
});

/** The evaluation with another record of the amplifier. */
const withAmplifier = (more: Partial<PartRecord>): Evaluation => {
  const changed = { ...recordOf(evaluation, "g"), ...more };
  return { ...evaluation, record: (id) => (id === "g" ? changed : evaluation.record(id)) };
};

test("what comes clean and within the limits is not lost", () => {
  expect(lossOf(evaluation, walked())).toBeUndefined();
});

describe("a carrier that does not come", () => {
  const seenBefore = (next: string): Walked["destination"] => ({
    port: "in",
    arrives: null,
    seen: { at: { part: "u", port: "out" }, next },
  });

  test("with no way at all it is lost at its source", () => {
    const destination = { port: null, arrives: null, seen: null };
    expect(lossOf(evaluation, walked({ destination, steps: [] }))).toStrictEqual({
      step: 0,
      part: "u",
      why: "no way",
    });
  });

  test.each([
    { by: "loop" as const, record: { looped: true, powered: true } },
    { by: "loop" as const, record: { looped: true, powered: false } },
    { by: "no supply" as const, record: { looped: false, powered: false } },
    { by: "no way" as const, record: { looped: false, powered: true } },
  ])("it stops at the part behind the last that has it: $by ($record)", ({ by, record }) => {
    const walk = walked({ destination: seenBefore("g"), steps: [step("u")] });
    expect(lossOf(withAmplifier(record), walk)).toStrictEqual({ step: 1, part: "g", why: "stopped", by });
  });

  test("a satellite's carrier is told with its polarisation", () => {
    const walk = walked({
      choice: { ...choice, service: "satellite", polarisation: "H" },
      destination: seenBefore("g"),
      steps: [step("u")],
    });
    expect(lossOf(evaluation, walk)).toMatchObject({ why: "stopped", by: "no way", polarisation: "H" });
  });
});

describe("a carrier that is spoiled", () => {
  test("a filter that cuts it goes before the noise that it then has", () => {
    const steps = [
      step("u"),
      step("g", { cutHere: true, centreMHz: 474, cnDb: 2, cniDb: 2, marginDb: -16.7 }),
    ];
    expect(lossOf(evaluation, walked({ steps }))).toStrictEqual({
      step: 1,
      part: "g",
      why: "cut",
      centreMHz: 474,
    });
  });

  test("too noisy from its source on", () => {
    const noisy = { levelDbuv: 20, cnDb: 16, cniDb: 16, marginDb: -2.7 };
    const steps = [
      step("u", noisy),
      step("g", { ...noisy, levelDbuv: 35, cnDb: 11, cniDb: 11, marginDb: -7.7 }),
    ];
    expect(lossOf(evaluation, walked({ steps }))).toStrictEqual({
      step: 0,
      part: "u",
      why: "noisy",
      seen: "source",
      ratioDb: 16,
      requiredDb: 18.7,
      levelDbuv: 20,
    });
  });

  test("too noisy behind a part: what is left with the disturbance there", () => {
    const steps = [step("u"), step("g", { levelDbuv: 24, cnDb: 15, cniDb: 14, marginDb: -4.7 })];
    expect(lossOf(evaluation, walked({ steps }))).toStrictEqual({
      step: 1,
      part: "g",
      why: "noisy",
      seen: "part",
      ratioDb: 14,
      requiredDb: 18.7,
      levelDbuv: 24,
    });
  });

  test("just as much as it needs is enough, on the way and at the tuner", () => {
    const steps = [step("u"), step("g", { cnDb: 18.7, cniDb: 18.7, marginDb: 0 })];
    const end = { levelDbuv: 60, cniDb: 18.7, marginDb: 0 };
    expect(lossOf(evaluation, walked({ steps, end }))).toBeUndefined();
  });

  test("only the noise of the tuner makes it too noisy", () => {
    const end = { levelDbuv: 28, cniDb: 17, marginDb: -1.7 };
    expect(lossOf(evaluation, walked({ end }))).toStrictEqual({
      step: 2,
      part: "tv",
      why: "noisy",
      seen: "tuner",
      ratioDb: 17,
      requiredDb: 18.7,
      levelDbuv: 28,
    });
  });

  test("a ratio that recovers further on was not lost there", () => {
    // As where a user band takes another carrier's noise with it.
    const steps = [step("u", { cnDb: 16, cniDb: 16, marginDb: -2.7 }), step("g")];
    expect(lossOf(evaluation, walked({ steps }))).toBeUndefined();
  });
});

describe("a carrier that is disturbed, with noise low enough by itself", () => {
  const steps = [step("u"), step("g", { cnDb: 18.7, ciDb: 12, cniDb: 11.2, marginDb: -7.5 })];
  const other = bandOf({ from: "mast", service: "mobile" });
  const meeting = (victim: Meeting["victim"], carriers: readonly number[]): Meeting => ({
    port: "out",
    victim,
    other,
    echo: false,
    carriers,
    ciDb: carriers.map(() => 12),
    fromMHz: 470,
    toMHz: 478,
  });
  const drive = (levelDbuv: number): PartRecord["drives"][number] => ({
    from: "in",
    port: "out",
    rule: "beats",
    carriers: 2,
    levelDbuv,
    totalDbuv: levelDbuv,
    allowedDbuv: 97,
    ratioDb: 60,
  });
  const disturber = (record: Partial<PartRecord>) =>
    lossOf(withAmplifier({ drives: [], meetings: [], ...record }), walked({ steps }));
  const by = (what: unknown) => ({
    step: 1,
    part: "g",
    why: "disturbed",
    ratioDb: 11.2,
    requiredDb: 18.7,
    by: what,
  });

  test("by a signal that it meets", () => {
    // The first meeting is of the other channel, the second of another aerial, the third is the one.
    const meetings = [
      meeting(signal, [1]),
      meeting(bandOf({ from: "v", grid: channels }), [0]),
      { ...meeting(signal, [0, 1]), other: bandOf({ from: "phone", service: "mobile" }) },
    ];
    expect(disturber({ meetings })).toStrictEqual(by({ signal: { service: "mobile", part: "phone" } }));
  });

  test("what others meet does not disturb it", () => {
    const meetings = [meeting(signal, [1]), meeting(bandOf({ from: "v", grid: channels }), [0])];
    expect(disturber({ meetings })).toStrictEqual(by("unknown"));
  });

  test("by products of an amplifier that is driven too hard on one of its ways", () => {
    expect(disturber({ drives: [drive(90), drive(97.5)] })).toStrictEqual(by("products"));
  });

  test("an amplifier driven just as hard as it may be makes none", () => {
    expect(disturber({ drives: [drive(97)] })).toStrictEqual(by("unknown"));
  });

  test("where nothing is known to disturb", () => {
    expect(disturber({})).toStrictEqual(by("unknown"));
  });
});

describe("a carrier that the receiver cannot use or have", () => {
  const refused = (result: LostCarrier, band = signal) =>
    lossOf(
      evaluation,
      walked({
        choice: { ...choice, result },
        destination: { port: "in", arrives: { band, i: 0, at: { part: "g", port: "out" } }, seen: null },
      }),
    );
  const stacked = bandOf({ from: "u", grid: channels, more: { stack: stackOf([1, 2], [signal]) } });
  const absent = { got: false, why: "absent", reason: { kind: "does not arrive" } } as const;
  const outside = {
    got: false,
    why: "out of range",
    reason: { kind: "outside tuning range", fromMHz: 174, toMHz: 240 },
  } as const;
  const at = (part: string) => ({ step: 2, part, why: "not for this receiver" });

  test("the reason is the receiver's own, at the receiver", () => {
    expect(refused(outside)).toStrictEqual({ ...at("tv"), reason: outside.reason });
  });

  test("or at the part that the reason names", () => {
    const result = { ...outside, culprit: { part: "g" } };
    expect(refused(result)).toStrictEqual({ ...at("g"), reason: outside.reason });
  });

  test("on user bands, none of which it is set to, there is no reason but that", () => {
    expect(refused(absent, stacked)).toStrictEqual(at("tv"));
  });

  test("another reason is told on user bands too, and an absence elsewhere", () => {
    expect(refused(outside, stacked)).toStrictEqual({ ...at("tv"), reason: outside.reason });
    expect(refused(absent)).toStrictEqual({ ...at("tv"), reason: absent.reason });
  });
});

describe("a carrier outside the limits at the end", () => {
  const ending = (levels: readonly [number, number], levelDbuv: number) =>
    lossOf(
      evaluation,
      walked({
        steps: [step("u", { levelDbuv: levels[0] }), step("g", { levelDbuv: levels[1] })],
        end: { levelDbuv, cniDb: 38, marginDb: 19.3 },
      }),
    );

  test("too weak from a part on", () => {
    expect(ending([60, 40], 40)).toStrictEqual({
      step: 1,
      part: "g",
      why: "too weak",
      levelDbuv: 40,
      limitDbuv: 45,
      from: "g",
    });
  });

  test("too strong from its source on", () => {
    expect(ending([80, 90], 90)).toStrictEqual({
      step: 0,
      part: "u",
      why: "too strong",
      levelDbuv: 90,
      limitDbuv: 74,
      from: "u",
    });
  });

  test("a step that lies on the limit is still within", () => {
    expect(ending([45, 44], 44)).toMatchObject({ why: "too weak", from: "g" });
    expect(ending([74, 75], 75)).toMatchObject({ why: "too strong", from: "g" });
  });

  test("too strong only at the end: at the receiver, and no part from which on", () => {
    expect(ending([60, 70], 75)).toStrictEqual({
      step: 2,
      part: "tv",
      why: "too strong",
      levelDbuv: 75,
      limitDbuv: 74,
    });
  });

  test("on the limits it is within, as it is without limits whatever its level", () => {
    expect(ending([60, 45], 45)).toBeUndefined();
    expect(ending([60, 74], 74)).toBeUndefined();
    expect(
      lossOf(evaluation, walked({ limits: undefined, steps: [step("u", { levelDbuv: 5 })] })),
    ).toBeUndefined();
  });
});
