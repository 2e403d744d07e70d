/** What a rule is: one question asked of one part, answered in facts. Its words are in `src/sentences/rules/`. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { PartKind } from "../parts/contract.ts";
import type { Explanation } from "../sentences/explain/explanation.ts";
import type { Service } from "../signal/carrier.ts";
import type { RuleId } from "./facts.ts";
import type { Draft, Severity, Where } from "./finding.ts";
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

/** A finding of a rule that still makes its own sentences. */
export type SpokenDraft = {
  readonly severity: Severity;
  readonly parts: readonly string[];
  readonly wires: readonly string[];
  readonly message: string;
  readonly cure?: string;
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  readonly source?: string;
  readonly port?: string;
  readonly service?: Service;
} & Pick<Where, "side" | "band" | "tuner">;

/** A rule that still makes its own sentences. */
export type SpokenRule = {
  readonly id: RuleId;
  readonly title: string;
  readonly explain: string;
  readonly source: string;
  readonly explanation: Explanation;
  readonly check: (view: RuleView) => readonly SpokenDraft[];
};

export type RuleOf<R extends RuleId> = {
  readonly id: R;
  readonly check: (view: RuleView) => readonly Draft<R>[];
  /**
   * Follows what was found to where it comes from: the same draft with the culprit first among its parts, and in
   * its facts what the culprit does. What `check` says is kept while the part's record is the same; this is asked
   * anew for every report, since the culprit lies elsewhere. Undefined: another draft of the rule, led to the same
   * culprit, says it already.
   */
  readonly blame?: (draft: Draft<R>, evaluation: Evaluation) => Draft<R> | undefined;
};

export type Rule = SpokenRule | { readonly [R in RuleId]: RuleOf<R> }[RuleId];

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
export function wireAt(record: PartRecord, port: string): readonly string[] {
  const end = record.joined[port];
  if (!end) return [];
  const own = `${record.part.id}.${port}`;
  const other = `${end[0]}.${end[1]}`;
  const isOutput = record.ports.some((p) => p.id === port && p.side === "out");
  return [isOutput ? `${own}>${other}` : `${other}>${own}`];
}

/** What a rule that still makes its own sentences said. */
export function spokenOf(finding: { readonly facts: object }): string {
  return "message" in finding.facts ? String(finding.facts.message) : "";
}
