/** Which ideas are tried for which finding, the likeliest first. */
import type { Idea } from "../candidate.ts";
import { aerialCable } from "./aerialCable.ts";
import { amplifierAway, lineAmplifier, tvAmplifier } from "./amplifiers.ts";
import { bandCombiner } from "./bandCombiner.ts";
import { bandConverter } from "./bandConverter.ts";
import { filterBefore, otherChannels, trap, trapIntruder, trapNeighbour } from "./bands.ts";
import { cableGrade } from "./cable.ts";
import { plugIn } from "./connect.ts";
import { otherConverter, quattroConverter, rightQuadrants, widebandForUnit } from "./converters.ts";
import type { CurableRule } from "./curable.ts";
import { freeMotor, lesserMotor, ownLimits, strongerSupply } from "./currents.ts";
import { terminateOutputs, wireOff } from "./ends.ts";
import { placedFeed } from "./feedPlace.ts";
import { freeChannel } from "./freeChannel.ts";
import { gradedTaps } from "./graded.ts";
import { houseAmplifier } from "./houseAmplifier.ts";
import { betterDecoupling } from "./isolation.ts";
import { deadCableOff, splitterForJoint } from "./joints.ts";
import { otherGain, padBefore, padValue, sourcePad } from "./levels.ts";
import { firstInStandby, leadInsteadOfLoop } from "./loopOut.ts";
import { mend } from "./mend.ts";
import { menuOscillator, ownMessages } from "./menu.ts";
import { betterDish, lessLossBefore, masthead } from "./noise.ts";
import { otherOutput } from "./otherOutput.ts";
import { otherUserBands } from "./otherUserBands.ts";
import { letSupplyPass } from "./pass.ts";
import { betterScreen, phoneFilter, screenCable } from "./phones.ts";
import { otherPlate } from "./plates.ts";
import { askedPosition, motorCommands } from "./position.ts";
import { cableTuner, otherReceiver } from "./receivers.ts";
import { secondAerial } from "./secondAerial.ts";
import { secondLead } from "./secondLead.ts";
import { secondCable, separateCables } from "./separate.ts";
import { multiswitchForSplitter, ownOutputs } from "./share.ts";
import { ownPositionLines } from "./sharePositions.ts";
import { endShort } from "./shorts.ts";
import { amplifierSlope, equaliser } from "./slope.ts";
import { stackForSwitch, stackUnderTheRoof } from "./stack.ts";
import { higherSupply, inserter, lowerSupply, mainsUnit, supplyOn } from "./supply.ts";
import { otherSocket, swapLeads } from "./swapLeads.ts";
import { smallerSplit, tapValue } from "./taps.ts";
import { missingTrunks } from "./trunks.ts";
import { narrowAerial, turnAerial } from "./turn.ts";
import { forOneTrunk, trunkAmplifiers, trunkGrade, trunkPads, unitUp } from "./unitTrunks.ts";
import { ownUserBands } from "./userBands.ts";
import { clearView } from "./view.ts";
import { cutterAway, widerType } from "./wider.ts";

/** What whoever is called to a fault looks at first, whatever the finding says. */
export const FIRST: readonly Idea[] = [
  plugIn,
  mend,
  deadCableOff,
  clearView,
  placedFeed,
  letSupplyPass,
  missingTrunks,
  otherPlate,
  swapLeads,
  otherSocket,
];

/** Less of everything, where nothing in particular is too strong. */
const LESS_LEVEL: readonly Idea[] = [padValue, otherGain, sourcePad, padBefore, amplifierAway];

/** A receiver behind the loop-out of another one. */
const BEHIND_LOOP: readonly Idea[] = [leadInsteadOfLoop, firstInStandby];

/** A feed that shares its cables with what else is on them, or gets cables of its own. */
const OTHER_FEED: readonly Idea[] = [stackUnderTheRoof, otherConverter, separateCables];

export const IDEAS: Readonly<Record<CurableRule, readonly Idea[]>> = {
  loop: [wireOff],
  "blocked-view": [clearView],
  "supply-overloaded": [endShort, freeMotor, ownLimits, strongerSupply, mainsUnit, otherConverter],
  "no-supply": [...BEHIND_LOOP, supplyOn, inserter, mainsUnit, higherSupply, bandCombiner],
  "not-connected": [askedPosition, secondLead, stackForSwitch],
  "wideband-shared": [aerialCable, ...OTHER_FEED],
  "shared-frequencies": [
    freeChannel,
    turnAerial,
    narrowAerial,
    otherUserBands,
    ...OTHER_FEED,
    phoneFilter,
    screenCable,
    betterScreen,
    trapIntruder,
    bandCombiner,
    wireOff,
  ],
  overload: [betterScreen, filterBefore, phoneFilter, trap, ...LESS_LEVEL],
  "band-cut": [widerType, otherChannels, cutterAway, ownUserBands, ...OTHER_FEED],
  "switched-output-shared": [
    ownOutputs,
    ownPositionLines,
    otherConverter,
    multiswitchForSplitter,
    stackForSwitch,
  ],
  "wrong-quadrant": [rightQuadrants, quattroConverter, widebandForUnit],
  "command-lost": [askedPosition, ...BEHIND_LOOP, cableGrade],
  "motor-line": [motorCommands, strongerSupply, otherConverter, lesserMotor],
  "user-band-conflict": [lowerSupply, otherOutput, ownUserBands, otherReceiver],
  "wrong-feed": [
    menuOscillator,
    ownMessages,
    otherOutput,
    ownUserBands,
    otherReceiver,
    otherConverter,
    stackUnderTheRoof,
  ],
  "too-many-tuners": [ownUserBands, otherConverter, stackUnderTheRoof],
  "plane-missing": [bandConverter, secondCable, ...OTHER_FEED],
  "receiver-misses": [
    bandConverter,
    ...BEHIND_LOOP,
    cableTuner,
    freeChannel,
    turnAerial,
    narrowAerial,
    secondAerial,
    tvAmplifier,
    widerType,
    otherChannels,
    cutterAway,
    ownUserBands,
    ...OTHER_FEED,
    betterDish,
    masthead,
    houseAmplifier,
    lessLossBefore,
    smallerSplit,
    otherGain,
    filterBefore,
    phoneFilter,
    trapIntruder,
    cableGrade,
    lineAmplifier,
    wireOff,
  ],
  "stacking-input": [
    padValue,
    otherGain,
    lessLossBefore,
    trunkPads,
    trunkAmplifiers,
    unitUp,
    trunkGrade,
    forOneTrunk(padBefore),
    amplifierAway,
    forOneTrunk(lineAmplifier),
    betterDish,
    forOneTrunk(cableGrade),
  ],
  "tuner-blocked": [phoneFilter, screenCable, trapNeighbour, trap, ...LESS_LEVEL],
  "level-limits": [
    turnAerial,
    secondAerial,
    padValue,
    tapValue,
    gradedTaps,
    trap,
    otherGain,
    sourcePad,
    bandCombiner,
    smallerSplit,
    lessLossBefore,
    padBefore,
    amplifierAway,
    equaliser,
    lineAmplifier,
    masthead,
    houseAmplifier,
    cableGrade,
  ],
  "low-carrier-to-noise": [
    turnAerial,
    narrowAerial,
    secondAerial,
    lessLossBefore,
    bandCombiner,
    filterBefore,
    phoneFilter,
    screenCable,
    betterScreen,
    masthead,
    betterDish,
    smallerSplit,
    lineAmplifier,
    cableGrade,
    otherGain,
  ],
  intermodulation: [filterBefore, phoneFilter, trap, ...LESS_LEVEL],
  "level-difference": [turnAerial, secondAerial, trap, equaliser, amplifierSlope, cableGrade],
  slope: [equaliser, amplifierSlope, cableGrade],
  "same-signal-twice": [wireOff],
  "open-end": [terminateOutputs],
  "dwelling-isolation": [betterDecoupling, splitterForJoint],
  "dead-stub": [splitterForJoint],
};
