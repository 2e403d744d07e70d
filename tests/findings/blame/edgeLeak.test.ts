/**
 * What lets other signals in where a receiver is left with too little to spare. A feed turned by θ keeps the other polarisation
 * 20·log10(cot θ) down: 11.4 dB at 15°, 8.8 dB at 20°. Who is to be named is common practice, no source.
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { leakBehind } from "../../../src/findings/blame/edgeLeak.ts";
import { leaksAt } from "../../../src/findings/blame/leaks.ts";
import { stagesTo } from "../../../src/findings/blame/stages.ts";
import { report } from "../../../src/findings/report.ts";
import { verdictSentence } from "../../../src/sentences/verdict.ts";
import { draw, type Sketch } from "../../draw.ts";

const END = { part: "l", port: "out" };
/** Between other carriers of the other polarisation, which cover it wholly. */
const MIDDLE = { origin: "d/V", index: 5 };

function house(lnb: Record<string, unknown>, dish: Record<string, unknown> = {}) {
  const parts: Sketch = { rx: ["receiver-sat"], l: ["lnb-universal", lnb], d: ["dish", dish] };
  return evaluate(draw(parts, "d.sky > l.sky, l.out > rx.sat"));
}

describe("of too little to spare", () => {
  test("a turned LNB is named", () => {
    expect(leakBehind(house({ skewErrorDeg: 15 }), END, MIDDLE)).toMatchObject({
      part: "l",
      does: "turned",
      amount: 15,
    });
  });

  test("a feed that keeps the polarisations badly apart is named", () => {
    expect(leakBehind(house({ crossPolarDb: 10 }), END, MIDDLE)).toMatchObject({
      part: "l",
      does: "mixes polarisations",
    });
  });

  // A dish of 40 cm is too wide for satellites 3° apart (common practice, no source).
  test("a dish too small for its neighbours is named", () => {
    const beside = { diameterM: 0.4, neighbours: [{ separationDeg: 3, eirpDifferenceDb: 0 }] };
    expect(leakBehind(house({}, beside), END, MIDDLE)).toMatchObject({ part: "d", does: "hears neighbours" });
  });

  test("nobody is named where all parts are usual", () => {
    expect(leakBehind(house({}), END, MIDDLE)).toBeUndefined();
    expect(leakBehind(house({ skewErrorDeg: 3 }), END, MIDDLE)).toBeUndefined();
  });
});

// sin²/cos² of 20° is tan² 20° = 0.1325, of which both polarisations' equal density lets in no more; with an isolation of 40 dB
// nothing else counts. Transponders of 36 MHz in a raster of 39 MHz leave a little less.
test("a carrier never counts as what disturbs itself", () => {
  const evaluation = house({ skewErrorDeg: 20, crossPolarDb: 40 });
  const lnb = stagesTo(evaluation, END, MIDDLE).at(-1);
  const [leak] = lnb ? leaksAt(lnb) : [];
  expect(leak).toMatchObject({ by: "cross-polarisation", part: "l" });
  expect(leak?.share).toBeLessThan(0.1325 * 1.05);
});

test("the verdict names it with what is to be done", () => {
  const evaluation = house({ skewErrorDeg: 15 });
  const verdict = report(evaluation).verdicts.find((v) => v.part === "rx");
  if (!verdict) throw new Error("no verdict");
  expect(verdict.state).toBe("edge");
  expect(verdictSentence(verdict, evaluation)).toMatch(
    /is turned by 15° against the satellite’s polarisation\. Turn “.*” in its clamp until a meter shows the best C\/N\.$/,
  );
});
