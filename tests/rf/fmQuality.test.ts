import { describe, expect, test } from "vitest";
import { fmStep } from "../../src/rf/fmQuality.ts";

// Threshold about 12 dB, from memory; 38 dB in stereo by Spanish Royal Decree 346/2011, Annex I 4.5; clean 38 dB in mono and
// 48 dB in stereo by EN 60728-1, from memory; stereo needs about 20 dB more than mono, from memory.
describe("an FM station", () => {
  test.each([
    { cnDb: 11.9, stereo: true, step: undefined },
    { cnDb: 12, stereo: true, step: "heard" },
    { cnDb: 37.9, stereo: true, step: "heard" },
    { cnDb: 38, stereo: true, step: "good" },
    { cnDb: 47.9, stereo: true, step: "good" },
    { cnDb: 48, stereo: true, step: "clean" },
    { cnDb: 11.9, stereo: false, step: undefined },
    { cnDb: 17.9, stereo: false, step: "heard" },
    { cnDb: 18, stereo: false, step: "good" },
    { cnDb: 37.9, stereo: false, step: "good" },
    { cnDb: 38, stereo: false, step: "clean" },
  ])("with C/N $cnDb dB, stereo $stereo: $step", ({ cnDb, stereo, step }) => {
    expect(fmStep({ cnDb, stereo, isClear: true })).toBe(step);
  });

  test("with a neighbour in it is heard at best", () => {
    expect(fmStep({ cnDb: 60, stereo: true, isClear: false })).toBe("heard");
    expect(fmStep({ cnDb: 11, stereo: true, isClear: false })).toBeUndefined();
  });
});
