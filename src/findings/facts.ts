/** What the words of a finding need beside rule, place and figures: typed rule by rule, declared by the rule. */
import type { ReceiverLossFacts } from "./receiverLossRules.ts";
import type { AboveBandEdgeFacts } from "./rules/aboveBandEdge.ts";
import type { BandCutFacts } from "./rules/bandCut.ts";
import type { CommandLostFacts } from "./rules/commandLost.ts";
import type { DishMotorFacts } from "./rules/dishMotor.ts";
import type { DwellingIsolationFacts } from "./rules/dwellingIsolation.ts";
import type { EchoFacts } from "./rules/echo.ts";
import type { IntermodulationFacts } from "./rules/intermodulation.ts";
import type { LevelDifferenceFacts } from "./rules/levelDifference.ts";
import type { LevelLimitsFacts } from "./rules/levelLimits.ts";
import type { ManyAlternativesFacts } from "./rules/manyAlternatives.ts";
import type { NoSupplyFacts } from "./rules/noSupply.ts";
import type { NotConnectedFacts } from "./rules/notConnected.ts";
import type { OpenEndFacts } from "./rules/openEnd.ts";
import type { OverloadFacts } from "./rules/overload.ts";
import type { SharedFrequenciesFacts } from "./rules/sharedFrequencies.ts";
import type { SlopeFacts } from "./rules/slope.ts";
import type { StackingInputFacts } from "./rules/stackingInput.ts";
import type { SupplyOverloadedFacts } from "./rules/supplyOverloaded.ts";
import type { SwitchedOutputSharedFacts } from "./rules/switchedOutputShared.ts";
import type { TooManyTunersFacts } from "./rules/tooManyTuners.ts";
import type { UserBandConflictFacts } from "./rules/userBandConflict.ts";
import type { LowCnFacts } from "./rules/weakQuality.ts";
import type { WidebandSharedFacts } from "./rules/widebandShared.ts";
import type { WrongQuadrantFacts } from "./rules/wrongQuadrant.ts";

/** Nothing beside place and figures. */
export type NoFacts = Readonly<Record<never, never>>;

export type FactsByRule = {
  readonly loop: NoFacts;
  readonly "supply-overloaded": SupplyOverloadedFacts;
  readonly "no-supply": NoSupplyFacts;
  readonly "wideband-shared": WidebandSharedFacts;
  readonly "shared-frequencies": SharedFrequenciesFacts;
  readonly overload: OverloadFacts;
  readonly "band-cut": BandCutFacts;
  readonly "switched-output-shared": SwitchedOutputSharedFacts;
  readonly "wrong-quadrant": WrongQuadrantFacts;
  readonly "command-lost": CommandLostFacts;
  readonly "user-band-conflict": UserBandConflictFacts;
  readonly "motor-line": DishMotorFacts;
  readonly "wrong-feed": ReceiverLossFacts;
  readonly "too-many-tuners": TooManyTunersFacts;
  readonly "plane-missing": ReceiverLossFacts;
  readonly "receiver-misses": ReceiverLossFacts;
  readonly "stacking-input": StackingInputFacts;
  readonly "level-limits": LevelLimitsFacts;
  readonly "low-carrier-to-noise": LowCnFacts;
  readonly intermodulation: IntermodulationFacts;
  readonly "level-difference": LevelDifferenceFacts;
  readonly slope: SlopeFacts;
  readonly "same-signal-twice": EchoFacts;
  readonly "many-alternatives": ManyAlternativesFacts;
  readonly "open-end": OpenEndFacts;
  readonly "not-connected": NotConnectedFacts;
  readonly "above-band-edge": AboveBandEdgeFacts;
  readonly "dwelling-isolation": DwellingIsolationFacts;
};

export type RuleId = keyof FactsByRule;
