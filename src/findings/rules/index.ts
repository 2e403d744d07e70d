/** All rules, in the order in which findings of equal weight are shown. */
import type { DesignRule, Rule } from "../rule.ts";
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

export const RULES: readonly Rule[] = [
  loop,
  blockedView,
  supplyOverloaded,
  noSupply,
  overVoltage,
  widebandShared,
  sharedFrequencies,
  overload,
  stackingInput,
  bandCut,
  switchedOutputShared,
  wrongQuadrant,
  commandLost,
  dishMotor,
  userBandConflict,
  wrongFeed,
  tooManyTuners,
  planeMissing,
  receiverMisses,
  tunerBlocked,
  deadStub,
  levelLimits,
  weakQuality,
  intermodulation,
  levelDifference,
  slope,
  echo,
  manyAlternatives,
  openEnd,
  aboveBandEdge,
];

export const DESIGN_RULES: readonly (DesignRule<"not-connected"> | DesignRule<"dwelling-isolation">)[] = [
  notConnected,
  dwellingIsolation,
];
