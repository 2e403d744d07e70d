/** Receivers that lead their cable on to another one, and who is behind which of them. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { optionMeaning } from "../parts/meanings.ts";

export type LoopOut = {
  /** "feeding": in standby, and still on the cable with a supply of its own. */
  readonly state: "on" | "standby" | "feeding" | "unplugged";
  /** Whether the signal goes on while the receiver is on. */
  readonly isAlways: boolean;
};

/** The loop-out of a receiver; undefined for a part without one. */
export function loopOutOf(record: PartRecord | undefined): LoopOut | undefined {
  const mode = record && optionMeaning(record.kind, "loop-out");
  const state = record && optionMeaning(record.kind, "receiver state");
  if (!record || mode === undefined || state === undefined || record.options[mode] === "none")
    return undefined;
  const isAlways = record.options[mode] === "always";
  if (record.options[state] === "unplugged") return { state: "unplugged", isAlways };
  if (record.options[state] === "on") return { state: "on", isAlways };
  return { state: (record.power.supplies ?? []).length > 0 ? "feeding" : "standby", isAlways };
}

/** Whether the cable of a receiver comes from the loop-out of another one, by whatever parts between them. */
export function isBehindLoop(evaluation: Evaluation, receiver: PartId, first: PartId): boolean {
  if (!loopOutOf(evaluation.record(first))) return false;
  const seen = new Set<PartId>();
  const open: PartId[] = [receiver];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const record = evaluation.record(next);
    for (const { id, side } of record?.ports ?? []) {
      const end = side === "in" ? record?.joined[id]?.[0] : undefined;
      if (end === first) return true;
      if (end === undefined || seen.has(end)) continue;
      seen.add(end);
      open.push(end);
    }
  }
  return false;
}
