/** What a rule is: one question asked of one part, answered in facts. Its words are in `src/sentences/rules/`. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { PartKind } from "../parts/contract.ts";
import type { RuleId } from "./facts.ts";
import type { Draft } from "./finding.ts";
import type { Profile } from "./limits.ts";
import type { ReceptionResult } from "./reception.ts";

/** What a rule may look at beside the record of the part. */
export type RuleView = {
  readonly record: PartRecord;
  /** For a receiver: what it gets. */
  readonly reception: ReceptionResult | undefined;
  /** Kind of the part at the other end of a port; undefined where nothing is joined. */
  readonly kindAt: (port: string) => PartKind | undefined;
  /** Limits that the design is held to. */
  readonly profile: Profile;
};

export type RuleOf<R extends RuleId> = {
  readonly id: R;
  readonly check: (view: RuleView) => readonly Draft<R>[];
  /**
   * Follows what was found to where it comes from: the same draft with the culprit first among its parts, and in
   * its facts what the culprit does. What `check` says is kept while the part's record is the same; this is asked
   * for every report, since the culprit lies elsewhere: `keptFor` keeps what it says while the way there is the
   * same. Undefined: another draft of the rule, led to the same
   * culprit, says it already.
   */
  readonly blame?: (draft: Draft<R>, evaluation: Evaluation) => Draft<R> | undefined;
};

export type Rule = { readonly [R in RuleId]: RuleOf<R> }[RuleId];

/** A question that only the whole design can answer. */
export type DesignRule<R extends RuleId> = {
  readonly id: R;
  /** Goes from part to part; before each it tells how much work that is (see `evaluate/work.ts`). */
  readonly checkDesign: (
    evaluation: Evaluation,
    profile: Profile,
  ) => Generator<number, readonly Draft<R>[], void>;
};

/** Id of the wire at a port of a part; an empty list when nothing is joined. */
export function wireIdsAt(record: PartRecord, port: string): readonly string[] {
  const end = record.joined[port];
  if (!end) return [];
  const own = `${record.part.id}.${port}`;
  const other = `${end[0]}.${end[1]}`;
  const isOutput = record.ports.some((p) => p.id === port && p.side === "out");
  return [isOutput ? `${own}>${other}` : `${other}>${own}`];
}

/** Parts of a finding: the culprit first, each once. */
export function culpritFirst(culprit: PartId, others: readonly PartId[]): readonly [PartId, ...PartId[]] {
  return [culprit, ...[...new Set(others)].filter((id) => id !== culprit)];
}
