/** Fittings in a run: what they cost a line that is sound, worked by hand from typical values (from memory, as the kind says). */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { draw, type Sketch } from "../draw.ts";

/** 1 km/100: 30 m at 36 Ω/km are 1.08 Ω; nothing else in the line but the fitting. */
function behind(fitting: Sketch[string]) {
  return draw(
    {
      dish: ["dish"],
      lnb: ["lnb-universal", { commonMa: 100, outputMa: 0 }],
      fit: fitting,
      run: ["cable", { lengthM: 30 }],
      rx: ["receiver-sat", { polarisation: "H", half: "high" }],
    },
    "dish.sky > lnb.sky, lnb.out > fit.in, fit.out > run.in, run.out > rx.sat",
  );
}

const levelAt = (design: ReturnType<typeof behind>, part: string) => {
  const bands = evaluate(design).record(part)?.outputs.out?.bands ?? [];
  const band = bands.find((b) => b.selected && b.level.length > 0);
  return band?.level[band.level.length - 1] ?? Number.NaN;
};

describe("a fitting in the run of a satellite line", () => {
  // The last transponder of the typical list lies near the top of the IF: a little less than the figure at 2150 MHz.
  test.each([
    ["coupler", 0.3],
    ["earthing", 0.5],
    ["arrester", 0.8],
    ["window", 2],
  ])("as a %s takes at most %d dB at the top, and more than half of it", (fitting, most) => {
    const design = behind(["line-fitting", { fitting }]);
    const loss = levelAt(design, "lnb") - levelAt(design, "fit");
    expect(loss).toBeLessThanOrEqual(most + 1e-9);
    expect(loss).toBeGreaterThan(most / 2);
  });

  test.each(["coupler", "earthing", "arrester", "window"])("leaves reception as it is: %s", (fitting) => {
    const { verdicts, findings } = report(evaluate(behind(["line-fitting", { fitting }])));
    expect(verdicts.find((v) => v.part === "rx")?.state).toBe("works");
    expect(findings.filter((f) => f.severity === "error")).toEqual([]);
  });

  // 100 mA through 1.08 Ω of cable and 0.3 Ω of a flat lead: 18 − 0.138 = 17.86 V.
  test("lets the supply through, less the drop on it", () => {
    const [offer] = evaluate(behind(["line-fitting", { fitting: "window" }])).record("lnb")?.feeds.out ?? [];
    expect(Math.abs((offer?.volts ?? Number.NaN) - 17.86)).toBeLessThan(0.01);
  });

  test("without a way for DC leaves the LNB dead, and is the cause", () => {
    const { verdicts, causes } = report(
      evaluate(behind(["line-fitting", { fitting: "arrester", dcPass: false }])),
    );
    expect(verdicts.find((v) => v.part === "rx")?.state).toBe("fails");
    expect(causes[0]?.root.parts).toContain("fit");
  });

  // Two decibels of a data sheet instead of the typical 0.8.
  test("takes what its data sheet says", () => {
    const design = behind(["line-fitting", { fitting: "arrester", loss: "own", ownTvDb: 2, ownSatDb: 2 }]);
    expect(levelAt(design, "lnb") - levelAt(design, "fit")).toBeCloseTo(2, 9);
  });
});
