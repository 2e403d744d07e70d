import { describe, expect, test } from "vitest";
import { offersAtInputs } from "../../src/evaluate/power.ts";
import { POSITION_SWITCHES } from "../../src/parts/positionSwitch.ts";
import { NO_DEMAND } from "../../src/signal/control.ts";
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
    const options = optionsOf(SWITCH, { inputs: "4" });
    const feed = speaker({ polarisation: "H", half: "high", position: 3 });
    const { offers } = offersAtInputs(
      "part",
      SWITCH.power(options),
      () => feed,
      () => NO_DEMAND,
    );
    const awake = Object.entries(offers).filter(([, list]) => list.some((o) => !o.dormant));
    expect(awake.map(([port]) => port)).toEqual(["in3"]);
    expect(offers.in3?.[0]).toMatchObject({ toneArrives: true, volts: 18 });
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
