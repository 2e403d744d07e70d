/** Where a supply that a part lacks gets stuck: searched from that part downwards. */
import type { PartId, PortRef } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";

export type Barrier = {
  readonly part: PartId;
  /** "blocks": passes no direct current this way. "silent": could end the search, but gives no supply. */
  readonly why: "blocks" | "silent";
};

/** Parts below an unfed part that keep a supply from it, nearest first. */
export function supplyBarriers(evaluation: Evaluation, part: PartId): readonly Barrier[] {
  const record = evaluation.record(part);
  const ports = record?.power.load?.ports ?? [];
  const found = new Map<PartId, Barrier>();
  const seen = new Set<string>();
  let row = record ? joinedTo(record, ports) : [];
  while (row.length > 0) {
    row = row.flatMap(([id, input]) => {
      const below = evaluation.record(id);
      if (!below || seen.has(`${id}.${input}`)) return [];
      seen.add(`${id}.${input}`);
      const { paths = [], supplies = [] } = below.power;
      if (supplies.some((s) => s.port === input)) return [];
      const legs = paths.filter((p) => p.to === input).map((p) => p.from);
      // A supply waits on a leg that leads nowhere up: this part is what keeps it back.
      const waiting = Object.keys(below.feeds).some((port) => !legs.includes(port));
      const isEnd = below.ports.every((p) => p.side === "in");
      if (isEnd) found.set(id, { part: id, why: "silent" });
      else if (legs.length === 0 || waiting) found.set(id, { part: id, why: "blocks" });
      return joinedTo(below, legs);
    });
  }
  return [...found.values()];
}

function joinedTo({ joined }: PartRecord, ports: readonly string[]): readonly PortRef[] {
  return ports.flatMap((port) => {
    const end = joined[port];
    return end ? [end] : [];
  });
}
