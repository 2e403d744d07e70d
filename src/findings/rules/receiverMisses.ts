import { blameLoss, type LossDraft, lossDrafts } from "../receiverLossRules.ts";
import { type RuleOf, type RuleView, wireIdsAt } from "../rule.ts";
import { idleReason } from "../verdict.ts";

/** Whatever else keeps a receiver from what it wants. */
export const receiverMisses: RuleOf<"receiver-misses"> = {
  id: "receiver-misses",
  check: (view) => [...lossDrafts(view, "receiver-misses"), ...withoutSource(view)],
  blame: (draft, evaluation) =>
    draft.facts.missing.reason.kind === "no source" ? draft : blameLoss(draft, evaluation),
};

/** A receiver that is connected where nothing is sent for it: an error only where some other signal comes. */
function withoutSource({ record, reception }: RuleView): readonly LossDraft[] {
  if (!reception || idleReason(record, reception) !== "no source") return [];
  const part = record.part.id;
  return reception.services.slice(0, 1).map(({ service }) => ({
    severity: record.sources.length > 0 ? "error" : "warning",
    at: { part, service, band: "no source" },
    parts: [part],
    wires: record.ports.flatMap((p) => wireIdsAt(record, p.id)),
    facts: {
      service,
      wanted: 0,
      got: 0,
      missing: { why: "absent", count: 0, reason: { kind: "no source" }, planes: [] },
      culprit: { part },
    },
  }));
}
