/** What the words of a finding need beside rule, place and figures: typed rule by rule, declared by the rule. */
import type { ReceiverLossFacts } from "./receiverLossRules.ts";
import type { AboveBandEdgeFacts } from "./rules/aboveBandEdge.ts";

/** Nothing beside place and figures. */
export type NoFacts = Readonly<Record<never, never>>;

/** Of a rule that still makes its own sentences. */
export type SpokenFacts = { readonly message: string; readonly cure?: string };

export type FactsByRule = {
  readonly loop: NoFacts;
  readonly "supply-overloaded": SpokenFacts;
  readonly "no-supply": SpokenFacts;
  readonly "shared-frequencies": SpokenFacts;
  readonly overload: SpokenFacts;
  readonly "band-cut": SpokenFacts;
  readonly "switched-output-shared": SpokenFacts;
  readonly "wrong-quadrant": SpokenFacts;
  readonly "command-lost": SpokenFacts;
  readonly "user-band-conflict": SpokenFacts;
  readonly "wrong-feed": ReceiverLossFacts;
  readonly "too-many-tuners": SpokenFacts;
  readonly "plane-missing": ReceiverLossFacts;
  readonly "receiver-misses": ReceiverLossFacts;
  readonly "level-limits": SpokenFacts;
  readonly "low-carrier-to-noise": SpokenFacts;
  readonly "level-difference": SpokenFacts;
  readonly slope: SpokenFacts;
  readonly "same-signal-twice": SpokenFacts;
  readonly "many-alternatives": SpokenFacts;
  readonly "open-end": SpokenFacts;
  readonly "not-connected": SpokenFacts;
  readonly "above-band-edge": AboveBandEdgeFacts;
  readonly "dwelling-isolation": SpokenFacts;
};

export type RuleId = keyof FactsByRule;
