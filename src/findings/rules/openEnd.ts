import type { Draft } from "../finding.ts";
import type { RuleOf } from "../rule.ts";

export type OpenEndFacts = {
  /** "trunk": the line itself ends open. "legs": some of several outputs do. */
  readonly of: "trunk" | "legs";
  readonly ports: readonly [string, ...string[]];
};

/** Open ends that reflect. */
export const openEnd: RuleOf<"open-end"> = {
  id: "open-end",
  check: ({ record }) => {
    if (record.ports.every((p) => p.side === "out" || !record.joined[p.id])) return [];
    const open = record.ports.filter((p) => !record.joined[p.id]);
    const trunk = open.filter((p) => p.role === "trunk");
    const legs = open.filter((p) => p.role === "leg" || p.role === "tap");
    const outputs = record.ports.filter((p) => p.side === "out");
    const found = (of: OpenEndFacts["of"], ends: readonly { id: string }[]): Draft<"open-end">[] => {
      const [first, ...others] = ends.map((p) => p.id);
      if (first === undefined) return [];
      const part = record.part.id;
      return [
        {
          severity: of === "trunk" ? "warning" : "note",
          at: { part },
          parts: [part],
          wires: [],
          facts: { of, ports: [first, ...others] },
        },
      ];
    };
    if (trunk.length > 0) return found("trunk", trunk);
    return legs.length === outputs.length ? [] : found("legs", legs);
  },
};
