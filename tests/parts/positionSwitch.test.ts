import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { POSITION_SWITCHES } from "../../src/parts/positionSwitch.ts";
import { draw } from "../draw.ts";
import { kindNamed, optionsOf, runPart, speaker } from "./workbench.ts";

const SWITCH = kindNamed(POSITION_SWITCHES, "position-switch");

describe("a position switch", () => {
  // DiSEqC 1.0 committed switch: four positions, from position A/B and option A/B (public technicians' page).
  test.each([
    { inputs: "2", position: 1, setting: "1" },
    { inputs: "2", position: 2, setting: "2" },
    { inputs: "4", position: 3, setting: "3" },
    { inputs: "4", position: 4, setting: "4" },
  ])("with $inputs inputs stands at $setting when position $position is sent", (row) => {
    const bench = runPart({
      kind: SWITCH,
      options: { inputs: row.inputs },
      speakers: { out: speaker({ polarisation: "V", half: "low", position: row.position }) },
    });
    expect(bench.settings).toEqual({ out: row.setting });
  });

  test("leads supply, tone and commands to the chosen converter and to no other", () => {
    const evaluation = evaluate(
      draw(
        {
          ...Object.fromEntries([1, 2, 3, 4].map((n) => [`l${n}`, ["lnb-universal"] as const])),
          s: ["position-switch", { inputs: "4" }],
          r: ["receiver-sat", { polarisation: "H", half: "high", position: "3" }],
        },
        "l1.out > s.in1, l2.out > s.in2, l3.out > s.in3, l4.out > s.in4, s.out > r.sat",
      ),
    );
    const awake = Object.entries(evaluation.record("s")?.offers ?? {}).filter(([, list]) =>
      list.some((o) => !o.dormant),
    );
    expect(awake.map(([port]) => port)).toEqual(["in3"]);
    expect(evaluation.record("s")?.offers.in3?.[0]).toMatchObject({ toneArrives: true });
    // 95 mA of the one LNB that is chosen and 15 of the switch: the other three draw nothing.
    expect(evaluation.record("r")?.demands.sat?.milliamps).toBeCloseTo(110, 3);
    // 18 V less 1 Ω · 95 mA in the switch; so much would arrive at any of the others, were it chosen.
    expect(evaluation.record("l3")?.feeds.out?.[0]?.volts).toBeCloseTo(17.905, 3);
    expect(evaluation.record("l1")?.feeds.out?.[0]?.volts).toBeCloseTo(17.905, 3);
    expect(evaluation.record("l1")?.drawsMa).toBe(0);
  });

  test("costs 1 to 4 dB over the satellite IF", () => {
    // Usual data sheets, from memory.
    const [path] = SWITCH.signal(optionsOf(SWITCH), { id: "part", powered: true }).paths ?? [];
    const points = path?.response.type === "curve" ? path.response.points : [];
    expect(points.map(([mhz]) => mhz)).toEqual([950, 2150]);
    for (const [, db] of points) {
      expect(-db).toBeGreaterThanOrEqual(1);
      expect(-db).toBeLessThanOrEqual(4);
    }
  });
});
