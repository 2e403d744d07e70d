/** What a rule is: one question asked of one part, with its explanation beside it. */
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { PartKind } from "../parts/contract.ts";
import type { Explanation } from "./explain/explanation.ts";
import type { Finding } from "./finding.ts";
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

export type Rule = {
  readonly id: string;
  readonly title: string;
  /** Why this matters, in plain words. */
  readonly explain: string;
  /** Where the rule or its limit comes from. */
  readonly source: string;
  /** What a finding of it means, in several voices. */
  readonly explanation: Explanation;
  readonly check: (view: RuleView) => readonly Omit<Finding, "rule">[];
};

/** A question that only the whole design can answer. */
export type DesignRule = Omit<Rule, "check"> & {
  /** Goes from part to part; before each it tells how much work that is (see `evaluate/work.ts`). */
  readonly checkDesign: (
    evaluation: Evaluation,
    profile: Profile,
  ) => Generator<number, readonly Omit<Finding, "rule">[], void>;
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
