/** What the tool has to say about a design. */
import type { PartId } from "../design/design.ts";
import type { FmStep } from "../rf/fmQuality.ts";
import type { Service, Television } from "../signal/carrier.ts";
import type { Blamed } from "./blame/culprit.ts";
import type { FactsByRule, RuleId } from "./facts.ts";
import type { Missing } from "./missing.ts";

export type Severity = "error" | "warning" | "note";

/** Where a finding is made. Together with the rule it is its identity, so it holds no numbers that change. */
export type Where = {
  /** The part that it is seen at. */
  readonly part: PartId;
  readonly port?: string;
  readonly service?: Service;
  /** Of a figure with two limits: which of them is missed. */
  readonly side?: "too little" | "too much";
  /** Which of several signals, planes or user bands at this port: a key, never shown. */
  readonly band?: string;
  /** Tuner of a receiver, counted from 1. */
  readonly tuner?: number;
};

/** One thing that is wrong, as facts; `src/sentences/` makes words of it. */
export type FindingOf<R extends RuleId> = {
  /** Its one identity: stays while its numbers change, and differs from that of every other finding. */
  readonly id: string;
  readonly rule: R;
  readonly severity: Severity;
  readonly at: Where;
  /** Parts concerned, the culprit first. */
  readonly parts: readonly [PartId, ...PartId[]];
  /** Ids of the wires concerned (`wireId`). */
  readonly wires: readonly string[];
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  /** Where the limit comes from, where the design's profile decides it; else the source of the rule. */
  readonly source?: string;
  /** What else the words need, by rule. */
  readonly facts: FactsByRule[R];
};

export type Finding = { readonly [R in RuleId]: FindingOf<R> }[RuleId];

/** A finding as its rule makes it: the report adds the rule and the identity. */
export type Draft<R extends RuleId> = Omit<FindingOf<R>, "id" | "rule">;

/** One root finding with all that follows from it. */
export type Cause = {
  /** The identity of its root finding. */
  readonly id: string;
  readonly root: Finding;
  /** That of its worst finding. */
  readonly severity: Severity;
  /** The root first, then what follows from it. */
  readonly findings: readonly Finding[];
  /** Receivers and outlets that suffer, in the order of their places. */
  readonly receivers: readonly PartId[];
  readonly outlets: readonly PartId[];
};

/** How the poorest of the stations got sounds, and how many of them sound no better. */
export type SoundFacts = { readonly step: FmStep; readonly count: number };

/** What one receiver gets of one service, or what an outlet hands on of it. */
export type ServiceVerdict = {
  readonly service: Service;
  /** Carriers; of a single-cable feed at an outlet user bands (`counted`). */
  readonly wanted: number;
  readonly got: number;
  readonly counted?: "user band";
  readonly television?: Television;
  /** Of the carriers got; absent when none [dBµV, dBµV, dB]. */
  readonly levelMin?: number;
  readonly levelMax?: number;
  readonly cnMin?: number;
  /** What its tightest carrier has to spare [dB]; absent where some are missing. */
  readonly marginDb?: number;
  /** Of FM: how the poorest station sounds, and how many sound no better; at an outlet by what is there without a radio. */
  readonly sound?: SoundFacts;
  /** Why carriers are missing, most frequent first. */
  readonly missing: readonly Missing[];
};

/** One tuner of a satellite receiver, with all others asking for what they ask for now. */
export type TunerVerdict = {
  /** Counted from 1 over all inputs. */
  readonly number: number;
  /** Port that it is fed by. */
  readonly input: string;
  readonly userBand?: number;
  readonly wanted: number;
  readonly got: number;
  /** Why: what its receiver misses as a whole, and what this tuner misses alone. */
  readonly missing: readonly Missing[];
};

/** "edge": works, but a margin is smaller than the spread of values, the rain or the design's setting asks. */
export type VerdictState = "works" | "edge" | "fails";

/** The carrier with the least to spare, and what it is short of. */
export type Tightest = {
  readonly service: Service;
  /** Its name: "C22", "11 778 V". */
  readonly carrier: string;
  readonly by: "level low" | "level high" | "C/N" | "all signals" | "neighbour";
};

/** Why a margin is too small to rely on. */
export type Edge =
  /** Beyond a limit of the profile, though it is received. */
  | { readonly kind: "outside limits" }
  /** Real parts on the way may stand that far from their values [dB, one standard deviation]. */
  | { readonly kind: "spread"; readonly neededDb: number }
  /** The design is to keep that much from either limit [dB]. */
  | { readonly kind: "kept distance"; readonly neededDb: number }
  /** It came by two ways above: their copies cancel somewhere, by up to so much [dB]. */
  | { readonly kind: "two ways"; readonly neededDb: number }
  /** Rain takes it for so long in an average year. */
  | { readonly kind: "rain"; readonly minutesAYear: number };

/** A receiver or an outlet, as facts. */
export type Verdict = {
  readonly part: PartId;
  readonly role: "receiver" | "outlet";
  readonly state: VerdictState;
  /** What its tightest carrier has to spare, above or below a limit [dB]; absent where some are missing. */
  readonly marginDb?: number;
  readonly tightest?: Tightest;
  /** Why that is too little to rely on; present in the state "edge" only. */
  readonly edge?: Edge;
  /** What makes it too little, where that is known: it lets other signals in, or has no supply; in the state "edge" only. */
  readonly culprit?: Blamed;
  /** Why nothing is judged: such a receiver is no fault of the design. */
  readonly idle?: "nothing connected" | "off" | "standby" | "no source";
  readonly services: readonly ServiceVerdict[];
  readonly tuners: readonly TunerVerdict[];
  /** Errors by which it fails although nothing is missing, such as an overloaded supply of its own; the first is told. */
  readonly failsBy?: readonly [Finding, ...Finding[]];
};

export type Report = {
  /** Worst first: by who suffers, then by place; whatever the order of drawing. */
  readonly causes: readonly Cause[];
  /** Worst first, then by place and rule, whatever the order of drawing. */
  readonly findings: readonly Finding[];
  readonly verdicts: readonly Verdict[];
};
