import type { SwitchState } from "../../signal/control.ts";
import type { Finding } from "../finding.ts";
import { type Rule, wireAt } from "../rule.ts";
import { list, partName } from "../words.ts";

/** User bands used twice, and receivers that hold a single-cable line with the wrong voltage. */
export const userBands: Rule = {
  id: "user-band-conflict",
  title: "User bands in conflict",
  explain:
    "On a single-cable line every tuner has a user band of its own. Two tuners on one band retune each other; a receiver left in " +
    "universal mode holds the line at 18 V or sends steady tone, and nobody else's messages get through.",
  source: "EN 50494 and EN 50607, as quoted",
  check: ({ record }) => {
    const declared = record.kind.power(record.options).switches ?? [];
    return declared
      .filter((d) => d.by === "stack")
      .flatMap((d) => {
        const state = record.switches[d.port];
        return state
          ? [
              ...twice(record.part.id, state, wireAt(record, d.port)),
              ...wrongMode(record.part.id, state, wireAt(record, d.port)),
            ]
          : [];
      });
  },
};

type Found = Omit<Finding, "rule">;

function twice(part: string, state: SwitchState, wires: readonly string[]): Found[] {
  const users = new Map<number, string[]>();
  for (const offer of state.offers)
    for (const ub of offer.request?.userBands ?? []) users.set(ub, [...(users.get(ub) ?? []), offer.part]);
  return [...users]
    .filter(([, parts]) => parts.length > 1)
    .map(([ub, parts]) => ({
      severity: "error",
      parts: [part, ...new Set(parts)],
      wires,
      message: `User band ${ub} of ${partName(part)} is used by ${list([...new Set(parts)].map(partName))}${new Set(parts).size === 1 ? " twice" : ""}: they retune each other.`,
      value: parts.length,
      limit: 1,
      unit: "users",
      source: userBands.source,
      cure: "Give each tuner a user band of its own.",
    }));
}

function wrongMode(part: string, state: SwitchState, wires: readonly string[]): Found[] {
  return state.offers
    .filter((o) => o.kind === "commands" && !o.request?.userBands)
    .map((o) => ({
      severity: "error",
      parts: [o.part, part],
      wires,
      message: `${partName(o.part)} is not in single-cable mode but hangs on the single-cable line of ${partName(part)}: it holds the line, and the other receivers cannot send their messages.`,
      source: userBands.source,
      cure: "Set the receiver to single-cable mode with a free user band, or give it another line.",
    }));
}
