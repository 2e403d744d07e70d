import { blameForBlocked } from "../blame/blocked.ts";
import type { Blamed } from "../blame/culprit.ts";
import { type Blocked, blockedAt } from "../blockedCarriers.ts";
import type { BlockedBy } from "../blocking.ts";
import { isWanted } from "../collisions.ts";
import { culpritFirst, type RuleOf, wireIdsAt } from "../rule.ts";
import { keptFor } from "../watched.ts";

export type TunerBlockedFacts = Pick<Blocked, "wanted" | "by"> & {
  /** "total": all that comes in together; "beside": one neighbour of the carrier. */
  readonly kind: BlockedBy;
  /** How many of how many carriers of the service are lost so. */
  readonly failing: number;
  readonly of: number;
  /** What makes it so; absent where no part stands out. */
  readonly culprit?: Blamed;
  /** How far the culprit itself is driven past its rated output [dB]; absent where it is not. */
  readonly drivenDb?: number;
};

/** Carriers that arrive strong and clean, at a tuner that something stronger blocks. */
export const tunerBlocked: RuleOf<"tuner-blocked"> = {
  id: "tuner-blocked",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, wanted: of, missing }) =>
      missing.flatMap(({ reason, count }) => {
        if (reason.kind !== "blocked") return [];
        const { port, by: kind } = reason;
        const found = blockedAt(record, { service, port, by: kind });
        if (!found) return [];
        const { wanted, by, value, limit } = found;
        return [
          {
            severity: "error" as const,
            at: { part: record.part.id, port, service, side: "too much" as const, band: kind },
            parts: culpritFirst(record.part.id, isWanted(by.service) ? [] : [by.part]),
            wires: wireIdsAt(record, port),
            value,
            limit,
            unit: kind === "total" ? "dBµV" : "dB",
            facts: { kind, failing: count, of, wanted, by },
          },
        ];
      }),
    ),
  blame: keptFor((draft, evaluation) => {
    const { service, part, port = "" } = draft.at;
    const culprit = service && blameForBlocked(evaluation, part, { service, port, by: draft.facts.kind });
    if (!culprit) return draft;
    const drives = evaluation.record(culprit.part)?.drives ?? [];
    const drivenDb = Math.max(0, ...drives.map((d) => d.levelDbuv - d.allowedDbuv));
    return {
      ...draft,
      parts: culpritFirst(culprit.part, draft.parts),
      facts: { ...draft.facts, culprit, ...(drivenDb > 0 ? { drivenDb } : {}) },
    };
  }),
};
