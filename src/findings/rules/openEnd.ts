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
    const trunk = record.ports.filter(
      (p) => p.side === "out" && isTrunk(p.id, record.kind.kind) && !record.joined[p.id],
    );
    const legs = record.ports.filter(
      (p) => p.side === "out" && isLeg(p.id, record.kind.kind) && !record.joined[p.id],
    );
    const outputs = record.ports.filter((p) => p.side === "out");
    const found = (of: OpenEndFacts["of"], open: readonly { id: string }[]): Draft<"open-end">[] => {
      const [first, ...others] = open.map((p) => p.id);
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

/** Where a riser or trunk goes on. */
function isTrunk(port: string, kind: string): boolean {
  return (port === "out" && (kind === "tap" || kind === "outlet-through")) || port.endsWith("-thru");
}

function isLeg(port: string, kind: string): boolean {
  return kind === "splitter" || (kind === "tap" && port.startsWith("tap"));
}
