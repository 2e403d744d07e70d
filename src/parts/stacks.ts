/** The stacking stage: inner nodes that hold what may be asked for, and outputs that carry user bands. */
import type { z } from "zod";
import { deratingDb } from "../rf/intermod.ts";
import { flat, passBand } from "../signal/response.ts";
import type { Path, Port, Rating, StackPath, SwitchDeclaration } from "./contract.ts";
import { crosstalkFrom } from "./crosstalk.ts";
import { number } from "./fields.ts";
import { LNB_REJECTION_DB, SWITCH_THRESHOLD_VOLTS } from "./lnbFields.ts";
import type { OptionTrade } from "./optionTrade.ts";
import { outputId, upTo } from "./quadrants.ts";

/** Inner node where a quadrant stands at its satellite IF. */
export const inner = (port: string): string => `#${port}`;

/** Ids of stacked outputs. */
export const stackedOutputs = (count: number): readonly string[] =>
  upTo(count).map((n) => outputId(n, count));

/** An output that listens to single-cable messages. */
export function stackSwitch(port: string): SwitchDeclaration {
  return { port, by: "stack", positions: 1, thresholdVolts: SWITCH_THRESHOLD_VOLTS };
}

type StageOptions = {
  readonly stackDbuv: number;
  readonly stackNoiseDb: number;
  readonly stackLeastDbuv: number;
  /** Loss between the inputs that the least level holds for and the stage; absent where there are none. */
  readonly inputLossDb?: number;
};

/** The stack of one output. */
export function stackPath(
  o: StageOptions,
  of: Pick<StackPath, "from" | "to" | "standard" | "userBands" | "planes" | "widebandLoMHz">,
): StackPath {
  return {
    ...of,
    levelDbuv: o.stackDbuv,
    noiseFigureDb: o.stackNoiseDb,
    leastDbuv: o.stackLeastDbuv - (o.inputLossDb ?? 0),
  };
}

/** Carriers on a full input: so many transponders has a quadrant, about (20 in the usual plan; order of magnitude). */
const FULL_INPUT = 20;

/** What lies between the satellite inputs of a unit and its stacking stage. */
export function stackInputFields(when: Pick<OptionTrade, "onlyWhen"> = {}) {
  return {
    inputLossDb: number({
      label: "Input loss",
      unit: "dB",
      help: "From an input to the stage that makes the user bands.",
      min: 0,
      max: 20,
      step: 0.5,
      default: 3,
      source: "order of magnitude, from memory",
      advanced: true,
      spreadDb: 1,
      ...when,
    }),
    inputMostDbuv: number({
      label: "Greatest input level",
      unit: "dBµV",
      help: `For each of ${FULL_INPUT} transponders on an input. There their products are 35 dB weaker; above it they grow fast.`,
      min: 60,
      max: 110,
      step: 1,
      default: 90,
      source: "60 to 90 dBµV, a trade forum on one unit",
      advanced: true,
      spreadDb: 2,
      ...when,
    }),
  };
}

export type StackInputOptions = z.output<z.ZodObject<ReturnType<typeof stackInputFields>>> & {
  readonly crosstalkDb: number;
};

/** The ways from the inputs of a unit to its stacking stage, and what the stage takes each of them for. */
export function stackInputs(
  o: StackInputOptions,
  of: {
    readonly inputs: readonly Port[];
    readonly passes: { readonly fromMHz: number; readonly toMHz: number };
    readonly holds?: true;
  },
): { readonly paths: readonly Path[] } & Required<Pick<StackPath, "from" | "planes">> {
  const { inputs, passes, holds } = of;
  const ids = inputs.map(({ id }) => id);
  const response = passBand({ ...passes, gain: flat(-o.inputLossDb), rejectionDb: LNB_REJECTION_DB });
  // What two carriers may have more than each of a full input.
  const outputDbuv = o.inputMostDbuv - o.inputLossDb + deratingDb({ rule: "power", carriers: FULL_INPUT });
  const rating: Rating = { outputDbuv, ratioDb: 35, isInput: true };
  return {
    paths: inputs.map(({ id }) => ({
      from: id,
      to: inner(id),
      response,
      rating,
      ...crosstalkFrom(ids, id, o.crosstalkDb),
      ...(holds ? { holds } : {}),
    })),
    from: inputs.map(({ id }) => inner(id)),
    planes: Object.fromEntries(inputs.flatMap(({ id, plane }) => (plane ? [[inner(id), plane]] : []))),
  };
}
