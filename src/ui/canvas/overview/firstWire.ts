import type { PortId, Wire } from "../../../design/design.ts";
import type { PartRecord } from "../../../evaluate/evaluation.ts";

/** The wire on an output of a part, or on the first that has one. */
export function firstWireOf({ part, ports, joined }: PartRecord, output?: PortId): Wire | undefined {
  for (const { side, id, role } of ports) {
    if (side !== "out" || (output === undefined ? role === "trunk" : id !== output)) continue;
    const to = joined[id];
    if (to) return { from: [part.id, id], to };
  }
  return undefined;
}
