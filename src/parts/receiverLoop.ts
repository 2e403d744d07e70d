/** The loop-out of a satellite receiver: its own cable led on to a second one, which commands only while the first sleeps. */
import { flat, series } from "../signal/response.ts";
import type { Path, Port, PowerPath } from "./contract.ts";
import { choice, number } from "./fields.ts";
import { coaxOut, MEMORY, passing } from "./passive.ts";
import { feedsCable, type SupplyOptions } from "./receiverSupply.ts";

/** What a tuner leads on [MHz]: the satellite IF of 950–2150 MHz with some room beside it; from memory. */
const LED_ON = { fromMHz: 900, toMHz: 2200 };
/** How much less of anything else comes through [dB]; from memory. */
const REJECTION_DB = 20;

const LEADS_ON = ["always", "standby"] as const;

/** Option fields of a receiver that may lead its cable on. */
export const LOOP_FIELDS = {
  loopOut: choice({
    label: "Loop-out",
    help: "Leads the cable on to a second receiver. While this one is on, it alone feeds and commands the LNB.",
    choices: [
      { value: "none", label: "None" },
      { value: "always", label: "On and in standby" },
      { value: "standby", label: "In standby only" },
    ],
    default: "none",
    onSite: "factory",
    source: MEMORY,
    means: "loop-out",
    advanced: true,
  }),
  loopLossDb: number({
    label: "Loss to the loop-out",
    unit: "dB",
    min: 0,
    max: 10,
    step: 0.5,
    default: 3,
    onSite: "factory",
    onlyWhen: { loopOut: LEADS_ON },
    source: "a two-way split inside, made up for in part; from memory",
    spreadDb: 1,
    advanced: true,
  }),
};

type LoopOptions = SupplyOptions & {
  readonly loopOut: "none" | (typeof LEADS_ON)[number];
  readonly loopLossDb: number;
};

export function loopPorts(o: LoopOptions): readonly Port[] {
  return o.loopOut === "none" ? [] : [coaxOut("loop", "loop-out")];
}

/** The signal goes on while it has current, and where the type says so also while it is on. */
export function loopSignal(o: LoopOptions): readonly Path[] {
  const leadsOn = o.loopOut === "none" ? false : o.state === "standby" || isOnWithLoop(o);
  const response = series(flat(-o.loopLossDb), passing([LED_ON], REJECTION_DB));
  return leadsOn ? [{ from: "sat", to: "loop", response }] : [];
}

function isOnWithLoop({ state, loopOut }: LoopOptions): boolean {
  return state === "on" && loopOut === "always";
}

/** Volts, tone and messages of the second receiver pass only while this one sleeps and feeds nothing itself. */
export function loopPower(o: LoopOptions): readonly PowerPath[] {
  const passes = o.loopOut !== "none" && o.state === "standby" && !feedsCable(o);
  return passes ? [{ from: "loop", to: "sat", tone: true }] : [];
}
