/** What the words of a finding need beside rule, place and figures: typed rule by rule, declared by the rule. */
import type { AboveBandEdgeFacts } from "./rules/aboveBandEdge.ts";
import type { CommandLostFacts } from "./rules/commandLost.ts";
import type { ManyAlternativesFacts } from "./rules/manyAlternatives.ts";
import type { NoSupplyFacts } from "./rules/noSupply.ts";
import type { NotConnectedFacts } from "./rules/notConnected.ts";
import type { OpenEndFacts } from "./rules/openEnd.ts";
import type { SupplyOverloadedFacts } from "./rules/supplyOverloaded.ts";
import type { SwitchedOutputSharedFacts } from "./rules/switchedOutputShared.ts";
import type { TooManyTunersFacts } from "./rules/tooManyTuners.ts";
import type { UserBandConflictFacts } from "./rules/userBandConflict.ts";
import type { WrongQuadrantFacts } from "./rules/wrongQuadrant.ts";

/** Nothing beside place and figures. */
export type NoFacts = Readonly<Record<never, never>>;

/** Of a rule that still makes its own sentences. */
export type SpokenFacts = { readonly message: string; readonly cure?: string };

export type FactsByRule = {
  readonly loop: NoFacts;
  readonly "supply-overloaded": SupplyOverloadedFacts;
  readonly "no-supply": NoSupplyFacts;
  readonly "shared-frequencies": SpokenFacts;
  readonly overload: SpokenFacts;
  readonly "band-cut": SpokenFacts;
  readonly "switched-output-shared": SwitchedOutputSharedFacts;
  readonly "wrong-quadrant": WrongQuadrantFacts;
  readonly "command-lost": CommandLostFacts;
  readonly "user-band-conflict": UserBandConflictFacts;
  readonly "wrong-feed": SpokenFacts;
  readonly "too-many-tuners": TooManyTunersFacts;
  readonly "polarisation-missing": SpokenFacts;
  readonly "receiver-misses": SpokenFacts;
  readonly "level-limits": SpokenFacts;
  readonly "low-carrier-to-noise": SpokenFacts;
  readonly "level-difference": SpokenFacts;
  readonly slope: SpokenFacts;
  readonly "same-signal-twice": SpokenFacts;
  readonly "many-alternatives": ManyAlternativesFacts;
  readonly "open-end": OpenEndFacts;
  readonly "not-connected": NotConnectedFacts;
  readonly "above-band-edge": AboveBandEdgeFacts;
  readonly "dwelling-isolation": SpokenFacts;
};

export type RuleId = keyof FactsByRule;
