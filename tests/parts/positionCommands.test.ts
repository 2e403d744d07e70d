/** Position switches for the other commands: uncommitted inputs and the tone burst (DiSEqC 1.1 and burst, from memory). */
import { describe, expect, test } from "vitest";
import { POSITION_SWITCHES } from "../../src/parts/positionSwitch.ts";
import { kindNamed, optionsOf, runPart, speaker } from "./workbench.ts";

const SWITCH = kindNamed(POSITION_SWITCHES, "position-switch");
const VL = { polarisation: "V", half: "low" } as const;

describe("a position switch", () => {
  test.each([
    // A committed command tells four positions apart, an uncommitted one 16, a tone burst A from B.
    { heeds: "committed", inputs: "16", positions: 4 },
    { heeds: "uncommitted", inputs: "16", positions: 16 },
    { heeds: "uncommitted", inputs: "8", positions: 8 },
    { heeds: "burst", inputs: "4", positions: 2 },
  ])("for $heeds commands with $inputs inputs has $positions", ({ positions, ...options }) => {
    const ports = SWITCH.ports(optionsOf(SWITCH, options));
    expect(ports.filter((p) => p.side === "in")).toHaveLength(positions);
  });

  test.each([
    { heeds: "uncommitted", asks: { uncommitted: 12, position: 3 }, setting: "12" },
    { heeds: "committed", asks: { uncommitted: 12, position: 3 }, setting: "3" },
    { heeds: "burst", asks: { burst: "B", position: 1 }, setting: "2" },
    { heeds: "burst", asks: { burst: "A" }, setting: "1" },
    // Who sends nothing that it listens to leaves it at its first input.
    { heeds: "burst", asks: { position: 2 }, setting: "1" },
    { heeds: "uncommitted", asks: { position: 2 }, setting: "1" },
  ] as const)("for $heeds commands stands at $setting when asked for $asks", ({ heeds, asks, setting }) => {
    const bench = runPart({
      kind: SWITCH,
      options: { heeds, inputs: "16" },
      speakers: { out: speaker({ ...VL, ...asks }) },
    });
    expect(bench.settings.out).toBe(setting);
  });
});
