/** Which ideas are tried for which finding, the likeliest first. */
import type { Finding } from "../../findings/finding.ts";
import type { Candidate, Idea } from "../candidate.ts";
import type { Site } from "../site.ts";
import { aerialCable } from "./aerialCable.ts";
import { cableGrade } from "./cable.ts";
import { plugIn } from "./connect.ts";
import { otherConverter, quattroConverter, rightQuadrants, widebandForUnit } from "./converters.ts";
import { terminateOutputs, wireOff } from "./ends.ts";
import { betterDecoupling } from "./isolation.ts";
import { amplifierAway, lineAmplifier, otherGain, padBefore, padValue } from "./levels.ts";
import { mend } from "./mend.ts";
import { betterDish, lessLossBefore, masthead } from "./noise.ts";
import { otherUserBands } from "./otherUserBands.ts";
import { letSupplyPass } from "./pass.ts";
import { phoneFilter, screenCable } from "./phones.ts";
import { otherPlate } from "./plates.ts";
import { otherReceiver } from "./receivers.ts";
import { secondCable, separateCables } from "./separate.ts";
import { multiswitchForSplitter, ownOutputs } from "./share.ts";
import { endShort, strongerSupply } from "./shorts.ts";
import { amplifierSlope, equaliser } from "./slope.ts";
import { stackForSwitch, stackUnderTheRoof } from "./stack.ts";
import { inserter, supplyOn } from "./supply.ts";
import { swapLeads } from "./swapLeads.ts";
import { smallerSplit, tapValue } from "./taps.ts";
import { missingTrunks } from "./trunks.ts";
import { ownUserBands } from "./userBands.ts";
import { cutterAway, widerType } from "./wider.ts";

/** What whoever is called to a fault looks at first, whatever the finding says. */
const FIRST: readonly Idea[] = [plugIn, mend, letSupplyPass, missingTrunks, otherPlate, swapLeads];

const IDEAS: Readonly<Record<string, readonly Idea[]>> = {
  loop: [wireOff],
  "supply-overloaded": [endShort, strongerSupply, otherConverter],
  "no-supply": [supplyOn, inserter],
  "wideband-shared": [aerialCable, stackUnderTheRoof, otherConverter, separateCables],
  "shared-frequencies": [
    otherUserBands,
    stackUnderTheRoof,
    otherConverter,
    separateCables,
    phoneFilter,
    screenCable,
    wireOff,
  ],
  overload: [phoneFilter, padValue, otherGain, padBefore, amplifierAway],
  "band-cut": [widerType, cutterAway, ownUserBands, stackUnderTheRoof, otherConverter, separateCables],
  "switched-output-shared": [ownOutputs, otherConverter, multiswitchForSplitter, stackForSwitch],
  "wrong-quadrant": [rightQuadrants, quattroConverter, widebandForUnit],
  "command-lost": [cableGrade],
  "user-band-conflict": [ownUserBands, otherReceiver],
  "wrong-feed": [ownUserBands, otherReceiver, otherConverter, stackUnderTheRoof],
  "too-many-tuners": [ownUserBands, otherConverter, stackUnderTheRoof],
  "plane-missing": [secondCable, stackUnderTheRoof, otherConverter, separateCables],
  "not-connected": [stackForSwitch],
  "receiver-misses": [
    widerType,
    cutterAway,
    ownUserBands,
    stackUnderTheRoof,
    otherConverter,
    separateCables,
    betterDish,
    masthead,
    lessLossBefore,
    otherGain,
    phoneFilter,
    cableGrade,
    lineAmplifier,
    wireOff,
  ],
  "level-limits": [
    padValue,
    otherGain,
    tapValue,
    smallerSplit,
    lessLossBefore,
    padBefore,
    amplifierAway,
    equaliser,
    lineAmplifier,
    masthead,
    cableGrade,
  ],
  "low-carrier-to-noise": [
    lessLossBefore,
    phoneFilter,
    screenCable,
    masthead,
    betterDish,
    smallerSplit,
    lineAmplifier,
    cableGrade,
    otherGain,
  ],
  "level-difference": [equaliser, amplifierSlope, cableGrade],
  slope: [equaliser, amplifierSlope, cableGrade],
  "same-signal-twice": [wireOff],
  "open-end": [terminateOutputs],
  "dwelling-isolation": [betterDecoupling],
};

/** Rules that some idea of their own exists for. */
export const CURABLE_RULES: readonly string[] = Object.keys(IDEAS);

/**
 * Candidates for some findings, each once. Those that most findings ask for come first, then those at a part that is
 * named as the culprit, then the likeliest: the cure of a common cause is wanted by all that follows from it.
 */
export function candidatesFor(site: Site, findings: readonly Finding[]): readonly Candidate[] {
  const found = new Map<string, { readonly one: Candidate; votes: number; readonly rank: number }>();
  findings.forEach((finding) => {
    const asked = new Set<string>();
    [...FIRST, ...(IDEAS[finding.rule] ?? [])].forEach((idea, rank) => {
      for (const one of idea(site, finding)) {
        if (asked.has(one.id)) continue;
        asked.add(one.id);
        const known = found.get(one.id);
        if (known) known.votes++;
        else found.set(one.id, { one, votes: 1, rank });
      }
    });
  });
  const culprits = new Set(findings.map((f) => f.parts[0]));
  const isNamed = ({ one }: { readonly one: Candidate }) => Number(culprits.has(one.step.place));
  return [...found.values()]
    .sort((a, b) => b.votes - a.votes || isNamed(b) - isNamed(a) || a.rank - b.rank)
    .map(({ one }) => one);
}
