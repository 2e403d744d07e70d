/** What a receiver's loop-out does to whoever is behind it, in clauses that several rules share. */
import type { Evaluation } from "../evaluate/evaluation.ts";
import { isBehindLoop, type LoopOut } from "../findings/loopOut.ts";
import { partName } from "./phrases.ts";

/** "⟦a⟧ feeds the cable itself while it is on, so ⟦b⟧ gets only the quadrant that ⟦a⟧ asks for" */
export function loopHolds(first: string, second: string, { state }: LoopOut): string {
  const when = state === "on" ? "itself while it is on" : "even in standby";
  return `${partName(first)} feeds the cable ${when}, so ${partName(second)} gets only the quadrant that ${partName(first)} asks for`;
}

/** "⟦a⟧ chooses for what is on its loop-out too", where that is why ⟦b⟧ cannot choose; undefined where it is not. */
export function heldByLoop(first: string, second: string, evaluation: Evaluation): string | undefined {
  return isBehindLoop(evaluation, second, first)
    ? `${partName(first)} chooses for whoever is on its loop-out`
    : undefined;
}

/** What lets the second receiver choose; `first` has the loop-out. */
export function loopCure(first: string, second: string, { state }: LoopOut): string {
  const lead = `Give ${partName(second)} a lead of its own`;
  return state === "on"
    ? `${lead}. While ${partName(first)} is in standby, ${partName(second)} commands as it is.`
    : `${lead}, or set ${partName(first)} to feed nothing in standby.`;
}

/** Why nothing comes out of a loop-out: "⟦a⟧ is on, and its loop-out works in standby only". */
export function loopStops(first: string, { state }: LoopOut): string {
  return state === "unplugged"
    ? `${partName(first)} is unplugged, so its loop-out passes nothing`
    : `${partName(first)} is on, and its loop-out works in standby only`;
}

/** What makes a signal come that a loop-out stops. */
export function loopPassCure(first: string, second: string, { state }: LoopOut): string {
  const lead = `Give ${partName(second)} a lead of its own`;
  return state === "unplugged"
    ? `Plug ${partName(first)} in and leave it in standby.`
    : `${lead}. While ${partName(first)} is in standby, its loop-out passes all.`;
}
