/** The words of all rules, by rule. */
import type { RuleId } from "../../findings/facts.ts";
import { DESIGN_RULES, RULES } from "../../findings/rules/index.ts";
import type { RuleWords } from "../ruleWords.ts";
import { aboveBandEdge } from "./aboveBandEdge.ts";
import { bandCut } from "./bandCut.ts";
import { blockedView } from "./blockedView.ts";
import { commandLost } from "./commandLost.ts";
import { deadStub } from "./deadStub.ts";
import { dishMotor } from "./dishMotor.ts";
import { dwellingIsolation } from "./dwellingIsolation.ts";
import { echo } from "./echo.ts";
import { intermodulation } from "./intermodulation.ts";
import { levelDifference } from "./levelDifference.ts";
import { levelLimits } from "./levelLimits.ts";
import { loop } from "./loop.ts";
import { manyAlternatives } from "./manyAlternatives.ts";
import { noSupply } from "./noSupply.ts";
import { notConnected } from "./notConnected.ts";
import { openEnd } from "./openEnd.ts";
import { overload } from "./overload.ts";
import { overVoltage } from "./overVoltage.ts";
import { planeMissing } from "./planeMissing.ts";
import { receiverMisses } from "./receiverMisses.ts";
import { sharedFrequencies } from "./sharedFrequencies.ts";
import { slope } from "./slope.ts";
import { stackingInput } from "./stackingInput.ts";
import { supplyOverloaded } from "./supplyOverloaded.ts";
import { switchedOutputShared } from "./switchedOutputShared.ts";
import { tooManyTuners } from "./tooManyTuners.ts";
import { tunerBlocked } from "./tunerBlocked.ts";
import { userBandConflict } from "./userBandConflict.ts";
import { weakQuality } from "./weakQuality.ts";
import { widebandShared } from "./widebandShared.ts";
import { wrongFeed } from "./wrongFeed.ts";
import { wrongQuadrant } from "./wrongQuadrant.ts";

const WORDS: { readonly [R in RuleId]: RuleWords<R> } = {
  loop,
  "blocked-view": blockedView,
  "supply-overloaded": supplyOverloaded,
  "no-supply": noSupply,
  "over-voltage": overVoltage,
  "switched-output-shared": switchedOutputShared,
  "wrong-quadrant": wrongQuadrant,
  "command-lost": commandLost,
  "motor-line": dishMotor,
  "user-band-conflict": userBandConflict,
  "too-many-tuners": tooManyTuners,
  "many-alternatives": manyAlternatives,
  "open-end": openEnd,
  "not-connected": notConnected,
  "above-band-edge": aboveBandEdge,
  "wideband-shared": widebandShared,
  "shared-frequencies": sharedFrequencies,
  overload,
  "stacking-input": stackingInput,
  "band-cut": bandCut,
  "tuner-blocked": tunerBlocked,
  "level-limits": levelLimits,
  "low-carrier-to-noise": weakQuality,
  intermodulation,
  "level-difference": levelDifference,
  slope,
  "same-signal-twice": echo,
  "dwelling-isolation": dwellingIsolation,
  "dead-stub": deadStub,
  "wrong-feed": wrongFeed,
  "plane-missing": planeMissing,
  "receiver-misses": receiverMisses,
};

/** All rules, in the order in which findings of equal weight are shown. */
export const RULE_IDS: readonly RuleId[] = [...RULES, ...DESIGN_RULES].map((rule) => rule.id);

/** The words of a rule, for findings of that rule only. */
export function wordsOf(rule: RuleId): RuleWords<RuleId> {
  // Whoever asks has a finding of this rule: its facts are those that the words expect.
  return WORDS[rule] as unknown as RuleWords<RuleId>;
}
