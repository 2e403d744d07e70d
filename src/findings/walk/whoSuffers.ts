/** Whom a part serves: whether a receiver that is on, or at least an outlet, hangs below it. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { remembered } from "../../signal/remember.ts";
import type { Severity } from "../finding.ts";

type Served = "receiver" | "outlet";

const known = new WeakMap<Evaluation, ReadonlyMap<PartId, Served>>();

/** How grave it is when a part does nothing: an error for a receiver, less where nobody listens yet. */
export function graveness(evaluation: Evaluation, part: PartId): Severity {
  const served = remembered(known, evaluation, () => servedOf(evaluation)).get(part);
  if (served === "receiver") return "error";
  return served === "outlet" ? "warning" : "note";
}

/** For each part the most demanding of those below it, gone through from the receivers upwards. */
function servedOf(evaluation: Evaluation): ReadonlyMap<PartId, Served> {
  const served = new Map<PartId, Served>();
  const isListening = ({ kind, options }: PartRecord) => (kind.reception?.(options).wants.length ?? 0) > 0;
  climb(evaluation, evaluation.records.filter(isListening), (id) => served.set(id, "receiver"));
  // One that is off may be switched on at any time.
  const outlets = evaluation.records.filter(({ kind }) => kind.delivery ?? kind.reception);
  climb(evaluation, outlets, (id) => {
    if (!served.has(id)) served.set(id, "outlet");
  });
  return served;
}

function climb(evaluation: Evaluation, from: readonly PartRecord[], meet: (id: PartId) => void): void {
  const seen = new Set(from.map((record) => record.part.id));
  for (const id of seen) {
    meet(id);
    const record = evaluation.record(id);
    for (const port of record?.ports ?? []) {
      const far = port.side === "in" ? record?.joined[port.id] : undefined;
      if (far) seen.add(far[0]);
    }
  }
}
