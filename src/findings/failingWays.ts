/**
 * Where a failure runs through a design: from the culprit of a cause down to the receivers that fail by it. What the
 * drawing shows in red from end to end.
 */
import { type PartId, wireId } from "../design/design.ts";
import type { Evaluation } from "../evaluate/evaluation.ts";
import type { Report } from "./finding.ts";

export type FailingWays = {
  /** Ids of the wires on these ways. */
  readonly wires: ReadonlySet<string>;
  /** Parts on these ways, culprits and receivers included. */
  readonly parts: ReadonlySet<PartId>;
};

/**
 * The failing ways of a report. A receiver that fails by a mistake of its own has no way: it is the culprit itself.
 * @param evaluation the one that the report is about
 */
export function failingWays(report: Report, { record }: Evaluation): FailingWays {
  const wires = new Set<string>();
  const parts = new Set<PartId>();
  const failing = new Set(report.verdicts.filter((v) => v.state === "fails" && !v.idle).map((v) => v.part));
  for (const cause of report.causes) {
    if (cause.severity !== "error") continue;
    const ends = [...cause.receivers, ...cause.outlets].filter((id) => failing.has(id));
    if (ends.length === 0) continue;
    const reached = downstream(cause.root.parts[0], record);
    // Back from the receivers, within what the culprit reaches.
    const seen = new Set(ends.filter((id) => reached.has(id)));
    for (const id of seen) {
      parts.add(id);
      const here = record(id);
      for (const port of here?.ports ?? []) {
        if (port.side !== "in") continue;
        const end = here?.joined[port.id];
        if (!end || !reached.has(end[0])) continue;
        wires.add(wireId({ from: end, to: [id, port.id] }));
        seen.add(end[0]);
      }
    }
    parts.add(cause.root.parts[0]);
  }
  return { wires, parts };
}

/** A part and all that its signal can come to. */
function downstream(start: PartId, record: Evaluation["record"]): ReadonlySet<PartId> {
  const reached = new Set([start]);
  for (const id of reached) {
    const here = record(id);
    for (const port of here?.ports ?? []) {
      const end = port.side === "out" ? here?.joined[port.id] : undefined;
      if (end) reached.add(end[0]);
    }
  }
  return reached;
}
