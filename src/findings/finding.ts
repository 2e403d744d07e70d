/** What the tool has to say about a design. */
import type { PartId } from "../design/design.ts";
import type { Service } from "../signal/carrier.ts";

export type Severity = "error" | "warning" | "note";

export type Finding = {
  readonly rule: string;
  readonly severity: Severity;
  /** Parts concerned, the culprit first. */
  readonly parts: readonly PartId[];
  /** Ids of the wires concerned (`wireId`). */
  readonly wires: readonly string[];
  /** One plain sentence. */
  readonly message: string;
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  /** Where the limit comes from. */
  readonly source?: string;
  /** What would cure it, as a sentence. */
  readonly cure?: string;
  /** Port of the first part that it is about, and the service, where there is one. */
  readonly port?: string;
  readonly service?: Service;
};

/** What one receiver gets of one service. */
export type ServiceVerdict = {
  readonly name: string;
  readonly carriersWanted: number;
  readonly carriersGot: number;
  /** Of the carriers got; absent when none [dBµV, dBµV, dB]. */
  readonly levelMin?: number;
  readonly levelMax?: number;
  readonly cnMin?: number;
  /** Why carriers are missing, most frequent first: "31 fall to the filter in Plate 2". */
  readonly reasons: readonly string[];
};

/** A receiver or an outlet in one sentence. */
export type Verdict = {
  readonly part: PartId;
  readonly role: "receiver" | "outlet";
  readonly works: boolean;
  /** Plain words for a customer: "Gets all 80 satellite channels." */
  readonly sentence: string;
  readonly services: readonly ServiceVerdict[];
};

export type Report = {
  /** Worst first, then in the order of the design. */
  readonly findings: readonly Finding[];
  readonly verdicts: readonly Verdict[];
};
