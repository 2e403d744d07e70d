/**
 * Third-order products at a socket: Spanish Royal Decree 346/2011, Annex I 4.5: TV 30 dB, satellite 18 dB. Stages behind
 * each other: 20·log10(n) in step (published page of CATV formulas). Six like carriers: 7.5·log10(5) = 5.242 dB of derating.
 */
import { describe, expect, test } from "vitest";
import { type Settings, USUAL_SETTINGS } from "../../../src/design/settings.ts";
import { draw, type Sketch } from "../../draw.ts";
import { foundBy } from "./foundBy.ts";

/** So many amplifiers of 100 dBµV at 60 dB, each giving 106 dBµV for each of six carriers: 37.5 dB behind one. */
function chain(count: number, o: { readonly level?: number; readonly settings?: Partial<Settings> } = {}) {
  const parts: Record<string, Sketch[string]> = { z: ["aerial-uhf", { levelDbuv: o.level ?? 76 }] };
  const wires = ["z.out > a1.in"];
  for (let n = 1; n <= count; n++) {
    parts[`a${n}`] = ["amp-distribution", { gainDb: n === 1 ? 30 : 20 }];
    parts[`p${n}`] = ["attenuator", { lossDb: n === count ? 40 : 20 }];
    wires.push(`a${n}.out > p${n}.in`, `p${n}.out > ${n === count ? "plate" : `a${n + 1}`}.in`);
  }
  parts.plate = ["outlet-tv"];
  const settings = { ...USUAL_SETTINGS, limits: "rd346" as const, ...o.settings };
  return { ...draw(parts, wires.join(", ")), settings };
}

describe("products of amplifiers behind each other", () => {
  // 60 − 2·(106 − 94.758) = 37.5 dB; two 31.5, three 28.0, four 25.5 dB.
  test.each([
    { count: 3, ratio: 28 },
    { count: 4, ratio: 25.5 },
  ])("$count of them leave $ratio dB, less than the 30 dB of the decree", ({ count, ratio }) => {
    const [one, ...more] = foundBy("intermodulation", chain(count));
    expect(more).toEqual([]);
    expect(one).toMatchObject({
      severity: "warning",
      limit: 30,
      unit: "dB",
      at: { part: "plate", service: "tv" },
    });
    expect(one?.value).toBeCloseTo(ratio, 0);
    expect(one?.facts).toMatchObject({ failing: 6, of: 6, amplifiers: count });
  });

  test("two of them are within it", () => {
    expect(foundBy("intermodulation", chain(2))).toEqual([]);
  });

  // By power 37.5 − 10·log10(3) = 32.7 dB.
  test("added by power three are within it too", () => {
    expect(foundBy("intermodulation", chain(3, { settings: { cascade: "by power" } }))).toEqual([]);
  });

  test("a profile that asks for nothing finds nothing", () => {
    expect(foundBy("intermodulation", chain(4, { settings: { limits: "en60728" } }))).toEqual([]);
  });
});

// The first at 110 dBµV, 15.24 dB over the 94.76 allowed: 29.5 dB. The second at 100 dBµV: 49.5 dB. Of the voltage
// 10^−1.475 + 10^−2.475 the first makes ten elevenths, though it stands first.
test("the amplifier is named that adds most, wherever it stands", () => {
  const design = {
    ...draw(
      {
        z: ["aerial-uhf", { levelDbuv: 80 }],
        a: ["amp-distribution", { gainDb: 30 }],
        p: ["attenuator", { lossDb: 20 }],
        b: ["amp-distribution", { gainDb: 10 }],
        q: ["attenuator", { lossDb: 40 }],
        plate: ["outlet-tv"],
      },
      "z.out > a.in, a.out > p.in, p.out > b.in, b.out > q.in, q.out > plate.in",
    ),
    settings: { ...USUAL_SETTINGS, limits: "rd346" as const },
  };
  const [one] = foundBy("intermodulation", design);
  expect(one?.parts[0]).toBe("a");
  expect(one?.facts.culprit).toMatchObject({ part: "a" });
});
