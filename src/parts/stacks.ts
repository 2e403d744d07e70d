/** The stacking stage: inner nodes that hold what may be asked for, and outputs that carry user bands. */
import type { StackPath, SwitchDeclaration } from "./contract.ts";
import { SWITCH_THRESHOLD_VOLTS } from "./lnbFields.ts";
import { outputId, upTo } from "./quadrants.ts";
import { type UserBandOptions, userBandsOf } from "./userBands.ts";

/** Inner node where a quadrant stands at its satellite IF. */
export const inner = (port: string): string => `#${port}`;

/** Ids of stacked outputs. */
export const stackedOutputs = (count: number): readonly string[] =>
  upTo(count).map((n) => outputId(n, count));

/** An output that listens to single-cable messages. */
export function stackSwitch(port: string): SwitchDeclaration {
  return { port, by: "stack", positions: 1, thresholdVolts: SWITCH_THRESHOLD_VOLTS };
}

/** The stack of one output. */
export function stackPath(
  o: UserBandOptions,
  ends: { readonly from: readonly string[]; readonly to: string },
): StackPath {
  return {
    ...ends,
    standard: o.standard,
    userBands: userBandsOf(o),
    levelDbuv: o.stackDbuv,
    noiseFigureDb: o.stackNoiseDb,
  };
}
