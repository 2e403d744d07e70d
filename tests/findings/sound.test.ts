/** How FM stations sound at a radio: steps as in tests/rf/fmQuality.test.ts, noise by hand. */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { checkRecordOf } from "../../src/sentences/check/record.ts";
import { customerVerdict, verdictSentence } from "../../src/sentences/verdict.ts";
import { draw } from "../draw.ts";

type Station = { readonly frequencyMHz: number; readonly mode?: string; readonly levelOffsetDb?: number };

function radio(levelDbuv: number, stations: readonly Station[] = [{ frequencyMHz: 98 }]) {
  const evaluation = evaluate(
    draw(
      {
        fm: [
          "aerial-fm",
          {
            levelDbuv,
            noiseKelvin: 290,
            stations: stations.map((s) => ({ mode: "fm-stereo", levelOffsetDb: 0, ...s })),
          },
        ],
        r: ["receiver-fm"],
      },
      "fm.out > r.in",
    ),
  );
  const verdict = report(evaluation).verdicts.find((v) => v.part === "r");
  if (!verdict) throw new Error("no verdict");
  const [service] = verdict.services;
  return { service, words: verdictSentence(verdict, evaluation), customer: customerVerdict(verdict) };
}

// kTB·R at 290 K of 0.2 MHz: 1.380649·10⁻²³ · 290 · 2·10⁵ · 75 · 10¹² = 0.0601 µV², −12.2 dBµV; with 8 dB of the tuner −4.2 dBµV.
describe("an FM station at a radio of 8 dB noise figure", () => {
  test.each([
    { levelDbuv: 44, mode: "fm-stereo", step: "clean" }, // C/N 48.2 dB
    { levelDbuv: 43, mode: "fm-stereo", step: "good" },
    { levelDbuv: 34, mode: "fm-stereo", step: "good" }, // 38.2 dB
    { levelDbuv: 33, mode: "fm-stereo", step: "heard" },
    { levelDbuv: 8, mode: "fm-stereo", step: "heard" }, // 12.2 dB
    { levelDbuv: 34, mode: "fm-mono", step: "clean" },
    { levelDbuv: 14, mode: "fm-mono", step: "good" }, // 18.2 dB
    { levelDbuv: 13, mode: "fm-mono", step: "heard" },
  ])("of $levelDbuv dBµV in $mode is $step", ({ levelDbuv, mode, step }) => {
    expect(radio(levelDbuv, [{ frequencyMHz: 98, mode }]).service).toMatchObject({
      got: 1,
      sound: { step, count: 1 },
    });
  });

  test("of 7 dBµV is not heard, and has no step", () => {
    const { service } = radio(7);
    expect(service).toMatchObject({ got: 0, missing: [{ why: "noisy" }] });
    expect(service).not.toHaveProperty("sound");
  });

  // 400 kHz away −20 dB keep it clear (BS.412, from memory): 21 dB stronger is heard in it, 41 dB block it.
  test.each([
    { above: 19, got: 2, step: "clean" },
    { above: 21, got: 2, step: "heard" },
  ])("with a neighbour $above dB above it at 400 kHz is $step", ({ above, got, step }) => {
    const { service } = radio(60, [{ frequencyMHz: 98 }, { frequencyMHz: 98.4, levelOffsetDb: above }]);
    expect(service).toMatchObject({ got, sound: { step } });
  });
});

describe("said of a radio", () => {
  test.each([
    [60, "free of hiss"],
    [40, "with faint hiss"],
    [30, "with clear hiss"],
  ])("at %i dBµV: %s", (levelDbuv, says) => {
    expect(radio(levelDbuv).words).toContain(`Gets the only FM station, ${says}`);
  });

  test("how many of several hiss", () => {
    const stations = [95, 98, 101].map((frequencyMHz, n) => ({ frequencyMHz, levelOffsetDb: -15 * n }));
    expect(radio(50, stations).words).toContain("Gets all 3 FM stations, one of them with clear hiss");
  });

  test("to whoever listens, nothing of pictures", () => {
    expect(radio(30).customer).toMatch(/may cost the sound/);
    expect(radio(30).customer).not.toMatch(/picture/);
  });
});

// The noise stays kTB·R through a plate of 290 K, −12.2 dBµV; EN 60728-1 asks its C/N at the outlet, without a radio.
describe("an outlet that loses 1 dB, with a radio behind", () => {
  const through = (levelDbuv: number) => {
    const stations = [{ frequencyMHz: 98, mode: "fm-stereo", levelOffsetDb: 0 }];
    const evaluation = evaluate(
      draw(
        {
          fm: ["aerial-fm", { levelDbuv, noiseKelvin: 290, stations }],
          o: ["outlet-tv"],
          r: ["receiver-fm"],
        },
        "fm.out > o.in, o.tv > r.in",
      ),
    );
    const reported = report(evaluation);
    const verdict = reported.verdicts.find((v) => v.part === "o");
    if (!verdict) throw new Error("no verdict");
    return { record: checkRecordOf(evaluation, reported), words: verdictSentence(verdict, evaluation) };
  };

  test.each([
    // At the outlet 48.2 dB; the radio adds 8 dB of noise: 40.2 dB.
    { levelDbuv: 37, outlet: "clean", radio: "good", says: "free of hiss" },
    // 47.2 and 39.2 dB.
    { levelDbuv: 36, outlet: "good", radio: "good", says: "with faint hiss" },
    // 39.2 and 31.2 dB.
    { levelDbuv: 28, outlet: "good", radio: "heard", says: "with faint hiss" },
    // 37.2 and 29.2 dB.
    { levelDbuv: 26, outlet: "heard", radio: "heard", says: "with clear hiss" },
  ])("at $levelDbuv dBµV is $outlet, and the radio $radio", ({ levelDbuv, outlet, radio: heard, says }) => {
    const { record, words } = through(levelDbuv);
    expect(record.outlets).toMatchObject([{ id: "o", services: [{ name: "FM radio", sound: outlet }] }]);
    expect(record.receivers).toMatchObject([{ id: "r", services: [{ sound: heard }] }]);
    expect(words).toContain(`Delivers the only FM station, ${says}`);
  });

  test("digital services have no such step", () => {
    const evaluation = evaluate(draw({ a: ["aerial-uhf"], o: ["outlet-tv"] }, "a.out > o.in"));
    const [outlet] = checkRecordOf(evaluation, report(evaluation)).outlets;
    expect(outlet?.services).toHaveLength(1);
    expect(outlet?.services[0]).not.toHaveProperty("sound");
  });
});
