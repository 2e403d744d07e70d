import type { RuleOf } from "../rule.ts";

/** A signal that is led back into itself. */
export const loop: RuleOf<"loop"> = {
  id: "loop",
  check: ({ record }) =>
    record.looped
      ? [{ severity: "error", at: { part: record.part.id }, parts: [record.part.id], wires: [], facts: {} }]
      : [],
};
