import type { Rule } from "../rule.ts";
import { list, partName } from "../words.ts";

/** Open ends that reflect. */
export const unterminated: Rule = {
  id: "open-end",
  title: "An open end that should be terminated",
  explain:
    "An open output reflects what reaches it. On a riser or trunk the reflection travels back past every tap and makes ripple; " +
    "a splitter's open leg spoils its isolation. A 75 Ω load ends it. The ripple itself is not worked out here.",
  source: "common practice, no source",
  check: ({ record }) => {
    if (record.ports.every((p) => p.side === "out" || !record.joined[p.id])) return [];
    const trunk = record.ports.filter(
      (p) => p.side === "out" && isTrunk(p.id, record.kind.kind) && !record.joined[p.id],
    );
    const legs = record.ports.filter(
      (p) => p.side === "out" && isLeg(p.id, record.kind.kind) && !record.joined[p.id],
    );
    const all = record.ports.filter((p) => p.side === "out");
    const common = { parts: [record.part.id], wires: [], source: unterminated.source };
    const name = partName(record.part.id);
    if (trunk.length > 0)
      return [
        {
          ...common,
          severity: "warning" as const,
          message: `${name} ends open: nothing terminates ${list(trunk.map((p) => p.label))}.`,
          cure: "Put a 75 Ω load (without a path for direct current where the line is powered) on the end.",
        },
      ];
    if (legs.length === 0 || legs.length === all.length) return [];
    return [
      {
        ...common,
        severity: "note" as const,
        message: `${name} has ${legs.length === 1 ? "an open leg" : "open legs"}: ${list(legs.map((p) => p.label))}.`,
        cure: "Put a 75 Ω load on each leg that stays unused.",
      },
    ];
  },
};

/** Where a riser or trunk goes on. */
function isTrunk(port: string, kind: string): boolean {
  return (port === "out" && (kind === "tap" || kind === "outlet-through")) || port.endsWith("-thru");
}

function isLeg(port: string, kind: string): boolean {
  return kind === "splitter" || (kind === "tap" && port.startsWith("tap"));
}
