/** A loss in one clause, the culprit first, and what would put it right. */

import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { isLeak } from "../findings/blame/quality.ts";
import { isBehindLoop, loopOutOf } from "../findings/loopOut.ts";
import type { Missing } from "../findings/missing.ts";
import type { ReceiverLossFacts } from "../findings/receiverLossRules.ts";
import { type MisplacedLead, wrongInput } from "../findings/wrongInput.ts";
import { optionMeaning } from "../parts/meanings.ts";
import { satelliteBandOf } from "../parts/planSatellite.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { culpritClause, culpritCure } from "./culpritWords.ts";
import { capital } from "./explain/plainWords.ts";
import { besideLimit } from "./figures.ts";
import { heldByLoop, loopCure, loopPassCure, loopStops } from "./loopWords.ts";
import { isFarOff, MESSAGES, portLabelOf, portName, shiftWords } from "./missingWords.ts";
import { carriers, list, nameOfBand, partName } from "./phrases.ts";
import { askedWords, bandLnbWords, planesWords, polarisationName } from "./planes.ts";
import { serviceNameIn } from "./serviceWords.ts";

/** The receiver, or one of its tuners, that a loss is seen at. */
export type Sufferer = { readonly part: string; readonly tuner?: number };

/** "⟦rx⟧", "tuner 2 of ⟦rx⟧" */
export function suffererWords({ part, tuner }: Sufferer): string {
  return tuner === undefined ? partName(part) : `tuner ${tuner} of ${partName(part)}`;
}

/** "The input HH of ⟦ms⟧ is open": a clause that another may follow behind a colon. */
export function lossWords(facts: ReceiverLossFacts, at: Sufferer, evaluation: Evaluation): string {
  const { missing, culprit, service } = facts;
  const { reason, count, planes } = missing;
  const receiver = partName(at.part);
  const lacking = planes.length > 0 ? planesWords(planes, evaluation) : carriers(count, service);
  const blocked =
    culprit.part === at.part || !evaluation.record(culprit.part) ? null : partName(culprit.part);
  switch (reason.kind) {
    case "does not arrive":
      return `No way leads ${lacking} to ${receiver}`;
    case "no source":
      return `Nothing drawn here sends ${serviceNameIn(evaluation, service)} to ${receiver}`;
    case "no lead":
      return `Nothing is connected to ${portName(at.part, reason.port, evaluation, "in")}`;
    case "open input":
      return isSky(reason.part, reason.port, evaluation)
        ? `${partName(reason.part)} is on no dish`
        : `${capital(portName(reason.part, reason.port, evaluation, "in"))} is open`;
    case "wrong lead":
      return `${capital(portName(reason.part, reason.port, evaluation, "in"))} has the lead from ${portName(reason.from.part, reason.from.port, evaluation, "out")}`;
    case "other output":
      // What a quattro LNB is made for says more than a list of its outputs.
      if (evaluation.record(reason.part)?.kind.trade.gives === "planes")
        return `${partName(reason.part)} gives one quadrant at each output, for a multiswitch`;
      return `${partName(reason.part)} gives ${lacking} at ${list(reason.outputs.map((port) => portLabelOf(reason.part, port, evaluation)))} only, not at ${portLabelOf(reason.part, reason.port, evaluation)}`;
    case "no way through": {
      const loop = loopOutOf(evaluation.record(reason.part));
      if (loop) return loopStops(reason.part, loop);
      if (hasChannelList(evaluation.record(reason.part)))
        return `The channel list of ${partName(reason.part)} lacks ${lacking}`;
      return `${partName(reason.part)} passes nothing of it from ${portLabelOf(reason.part, reason.from, evaluation)} to ${portLabelOf(reason.part, reason.to, evaluation)}`;
    }
    case "outside its range": {
      const { fromMHz, toMHz, band } = reason;
      const range = `${numeralAsSet(fromMHz)} to ${numeralAsSet(toMHz)} MHz`;
      const made = satelliteBandOf(fromMHz);
      return made === band
        ? `${partName(reason.part)} converts ${range} only, not ${lacking}`
        : `${partName(reason.part)} converts ${made} band only (${range}), and the satellite sends in ${band} band`;
    }
    case "no supply":
      if (culprit.part === reason.part) return `${partName(reason.part)} has no supply`;
      // A cable or a joint on the way never gave any.
      return (evaluation.record(culprit.part)?.power.supplies ?? []).length > 0
        ? `${partName(culprit.part)} gives no supply to ${partName(reason.part)}`
        : `${partName(culprit.part)} leaves ${partName(reason.part)} without enough supply`;
    case "loop":
      return `${partName(reason.part)} lies on a loop`;
    case "open output":
      return isSky(reason.part, reason.port, evaluation)
        ? `No LNB is on ${feedName(reason.part, reason.port, evaluation)}`
        : `${capital(portName(reason.part, reason.port, evaluation, "out"))} leads nowhere`;
    case "cut": {
      const wrong = wrongInput(evaluation.record(reason.part), service);
      return wrong === undefined
        ? `${partName(reason.part)} stops ${lacking}`
        : `${serviceNameIn(evaluation, service)} comes into ${portName(reason.part, wrong.arrives, evaluation, "in")}, which stops ${lacking}`;
    }
    case "outside tuning range":
      return `${capital(lacking)} outside ${numeralAsSet(reason.fromMHz)} to ${numeralAsSet(reason.toMHz)} MHz cannot be tuned by ${receiver}`;
    case "no tuner for it":
      return `${receiver} has no ${reason.system} tuner for ${lacking}`;
    case "not converted":
      return `No LNB converts ${lacking} on the way to ${receiver}`;
    case "switched feed on a wideband input":
      return blocked
        ? `${blocked} gives a switched feed, but ${receiver} needs a wideband one`
        : `${receiver} needs a wideband feed, but its cable carries a switched one, as others there need it`;
    case "wideband feed on a switched input":
      return blocked
        ? `${blocked} gives a wideband feed, which ${receiver} cannot tune`
        : `${receiver} cannot tune the wideband feed on its cable, which others there need`;
    case "other oscillator":
      if (reason.unit !== undefined)
        return `${partName(reason.unit)} is set for an LNB oscillator of ${numeralAsSet(reason.menuMHz)} MHz, and the LNB has ${numeralAsSet(reason.realMHz)} MHz. So all appears ${shiftWords(reason)}`;
      return [
        blocked
          ? `${blocked} has an oscillator of ${numeralAsSet(reason.realMHz)} MHz, and the menu of ${receiver} says ${numeralAsSet(reason.menuMHz)} MHz`
          : `The menu of ${receiver} says ${numeralAsSet(reason.menuMHz)} MHz, and the LNB has ${numeralAsSet(reason.realMHz)} MHz`,
        isFarOff(reason) ? "So it looks where nothing is" : `So all appears ${shiftWords(reason)}`,
      ].join(". ");
    case "other messages":
      if (reason.knows === "both" || reason.sends === reason.knows)
        return `${receiver} sends SCR messages, which reach user bands 1 to 8 but not user band ${reason.userBand} of ${partName(reason.part)}`;
      if (blocked)
        return `${blocked} obeys ${MESSAGES[reason.knows]} messages only, and ${receiver} sends ${MESSAGES[reason.sends]}`;
      return `${receiver} sends ${MESSAGES[reason.sends]} messages, and user band ${reason.userBand} of ${partName(reason.part)} obeys ${MESSAGES[reason.knows]} only`;
    case "plain feed on a single-cable input":
      return blocked
        ? `${blocked} gives no user bands, but ${receiver} is set to single-cable mode`
        : `${receiver} is set to single-cable mode, but its cable carries no user bands`;
    case "single-cable feed on a plain input":
      return `${receiver} cannot ask for user bands, and its line carries nothing else`;
    case "wrong polarisation at the input":
      return new Set(planes.map((p) => p.polarisation)).size > 1
        ? `The two leads at ${receiver} are on each other’s inputs`
        : `${capital(portName(at.part, reason.port, evaluation, "in"))} gets the ${polarisationName({ ...reason, polarisation: reason.arrives })} feed`;
    case "leads changed":
      return `Leads are on the wrong inputs of ${partName(reason.part)}`;
    case "no user band set":
      return `No user band is set for ${suffererWords(at)}`;
    case "no such user band":
      return `User band ${reason.userBand}, set at ${receiver}, does not exist at ${partName(reason.part)}`;
    case "other centre":
      return `User band ${reason.userBand} is set to ${numeral(reason.hereMHz)} MHz at ${receiver}, but to ${numeral(reason.thereMHz)} MHz at ${partName(reason.part)}`;
    case "user band used twice":
      return reason.by === at.part
        ? `User band ${reason.userBand} is set for two tuners of ${receiver}`
        : `${partName(reason.by)} and ${receiver} are both set to user band ${reason.userBand}`;
    case "line held":
      if (reason.volts !== undefined)
        return `${partName(reason.by)} keeps ${numeral(reason.volts)} V on the line, so no message is noticed`;
      return `${partName(reason.by)} is not in single-cable mode and blocks the line`;
    case "fixed supply":
      return `${receiver} gives a fixed voltage and no tone`;
    case "no command":
      return blocked
        ? `${blocked} passes no command from ${receiver} to ${partName(reason.part)}`
        : `No command gets from ${receiver} to ${partName(reason.part)}`;
    case "no message":
      return blocked
        ? `${blocked} passes no message from ${receiver} to ${partName(reason.part)}`
        : `No message gets from ${receiver} to ${partName(reason.part)}`;
    case "no tone":
      return blocked
        ? `${blocked} passes no 22 kHz tone from ${receiver} to ${partName(reason.part)}`
        : `No 22 kHz tone gets from ${receiver} to ${partName(reason.part)}`;
    case "too few volts":
      if (reason.volts === 0)
        return `${receiver} shuts down under the load of ${partName(reason.part)} when it asks for horizontal`;
      return blocked
        ? `Only ${numeral(reason.volts)} V of the 18 V get past ${blocked} to ${partName(reason.part)}`
        : `${receiver} gives so little for ${askedWords(evaluation.record(reason.part), "H")} that ${partName(reason.part)} gets only ${numeral(reason.volts)} V`;
    case "dies at vertical":
      return blocked
        ? `Only ${besideLimit(reason.volts, reason.leastVolts)[0]} V of the 13 V get past ${blocked} to ${partName(reason.part)}, which dies`
        : `${reason.by ? partName(reason.by.part) : receiver} gives so little ${restWords(reason.by?.part ?? at.part, reason.part, evaluation)} that ${partName(reason.part)} gets only ${besideLimit(reason.volts, reason.leastVolts)[0]} V and dies`;
    case "set by another": {
      const held = heldByLoop(reason.by, at.part, evaluation);
      if (held !== undefined) return held;
      return blocked && culprit.part !== reason.part
        ? `${blocked} puts ${receiver} and ${partName(reason.by)} on one output of ${partName(reason.part)}`
        : `${receiver} and ${partName(reason.by)} share one output of ${partName(reason.part)}`;
    }
    case "not handed on":
      return `${receiver} does not pass on ${lacking}`;
    case "blocked":
      if (missing.blamed) return culpritClause(missing.blamed);
      return reason.by === "total"
        ? `All signals together are too strong for ${receiver}`
        : `A far stronger signal beside it blocks ${lacking} at ${receiver}`;
    case "disturbed":
      return disturbedWords(missing, lacking, receiver);
    case "noisy":
      if (missing.blamed) return culpritClause(missing.blamed);
      return `${capital(lacking)} ${count === 1 ? "is" : "are"} too weak or too noisy at ${receiver}`;
  }
}

/** Where the lead of a service belongs. */
function movedLead(part: PartId, { arrives, meant }: MisplacedLead, evaluation: Evaluation): string {
  const [from, to] = [arrives, meant].map((port) => portLabelOf(part, port, evaluation));
  return evaluation.record(part)?.joined[meant]
    ? `Swap the leads on ${from} and ${to} of ${partName(part)}.`
    : `Move the lead from ${from} to ${to} of ${partName(part)}.`;
}

function disturbedWords({ spoiler, blamed }: Missing, lacking: string, receiver: string): string {
  if (blamed && spoiler && isLeak(spoiler)) return culpritClause(blamed);
  if (spoiler?.by === "products")
    return `${partName(spoiler.part)} is overdriven, and its products drown ${lacking}`;
  if (spoiler?.by === "foreign" && spoiler.signal && spoiler.part !== undefined)
    return capital(`${nameOfBand(spoiler.signal)} drowns ${lacking} from ${partName(spoiler.part)} on`);
  return `Another signal drowns ${lacking} at ${receiver}`;
}

/** Whether a part passes what its list names and nothing else, as channel filters and channel amplifiers do. */
export function hasChannelList(record: PartRecord | undefined): boolean {
  return record !== undefined && optionMeaning(record.kind, "channel list") !== undefined;
}

export function addedChannels(part: PartId): string {
  return `Add the missing channels to the list of ${partName(part)}.`;
}

/** What puts a loss right, in a sentence; undefined where the site has to be looked at first. */
export function lossCure(facts: ReceiverLossFacts, at: Sufferer, evaluation: Evaluation): string | undefined {
  const { missing, culprit } = facts;
  const { reason } = missing;
  const output = (end: { readonly part: string; readonly port: string } | undefined) =>
    end && portName(end.part, end.port, evaluation, "out");
  switch (reason.kind) {
    case "open input":
    case "no lead": {
      const free = reason.kind === "open input" ? output(reason.free) : undefined;
      return free
        ? `Connect ${free} to ${portName(culprit.part, culprit.port ?? "", evaluation, "in")}.`
        : `Connect ${portName(culprit.part, culprit.port ?? "", evaluation, "in")}.`;
    }
    case "open output":
      if (isSky(reason.part, reason.port, evaluation))
        return `Fit an LNB on ${feedName(reason.part, reason.port, evaluation)}.`;
      return `Connect ${output(reason)} to where its signal is missing.`;
    case "wrong lead": {
      const right = output(reason.right);
      return right
        ? `Move the lead of ${portName(reason.part, reason.port, evaluation, "in")} to ${right}.`
        : undefined;
    }
    case "leads changed":
      return `Put each lead at ${partName(reason.part)} on the input of its own name.`;
    case "wrong polarisation at the input":
      return `Swap the two leads at ${partName(at.part)}.`;
    case "no supply":
      return culprit.part === reason.part
        ? `Give ${partName(reason.part)} its supply.`
        : `Let ${partName(culprit.part)} give or pass the supply for ${partName(reason.part)}, or take it out.`;
    case "loop":
      return "Remove one wire of the loop.";
    case "cut": {
      const wrong = wrongInput(evaluation.record(reason.part), facts.service);
      if (hasChannelList(evaluation.record(reason.part))) return addedChannels(reason.part);
      return wrong
        ? movedLead(reason.part, wrong, evaluation)
        : `Replace ${partName(reason.part)} with a type of wider range, or take it out.`;
    }
    case "outside its range": {
      const { fromMHz, band } = reason;
      return satelliteBandOf(fromMHz) === band
        ? `Replace ${partName(reason.part)} with a type of wider range.`
        : `Replace ${partName(reason.part)} with ${bandLnbWords(band)}.`;
    }
    case "no user band set":
      return `Set a free user band for ${suffererWords(at)}.`;
    case "no such user band":
      return `Set ${suffererWords(at)} to a user band that ${partName(reason.part)} has.`;
    case "other centre":
      return `Set user band ${reason.userBand} of ${partName(at.part)} to ${numeral(reason.thereMHz)} MHz.`;
    case "other oscillator":
      if (reason.unit !== undefined)
        return `Set the LNB oscillator of ${partName(reason.unit)} to ${numeralAsSet(reason.realMHz)} MHz, or use an LNB of ${numeralAsSet(reason.menuMHz)} MHz.`;
      return `Set the oscillator in the menu of ${partName(at.part)} to ${numeralAsSet(reason.realMHz)} MHz.`;
    case "other messages":
      if (culprit.part !== at.part)
        return `Replace ${partName(culprit.part)} with one that obeys ${MESSAGES[reason.sends]} too, or set the receivers to ${MESSAGES[reason.knows]}.`;
      return reason.knows === "both" || reason.sends === reason.knows
        ? `Set ${partName(at.part)} to dSCR messages, or to a user band from 1 to 8.`
        : `Set ${partName(at.part)} to ${MESSAGES[reason.knows]} messages, or to a user band that obeys ${MESSAGES[reason.sends]}.`;
    case "user band used twice":
      return `Set ${suffererWords(at)} to a user band of its own.`;
    case "line held":
      if (reason.volts !== undefined) return `Let ${partName(reason.by)} give 14 V at most.`;
      return `Set ${partName(reason.by)} to single-cable mode with a free user band.`;
    case "fixed supply":
      return `Set ${partName(at.part)} to 13/18 V and 22 kHz, or use a receiver that gives them.`;
    case "no command":
    case "no message":
    case "no tone":
      return culprit.part === at.part
        ? undefined
        : `Replace ${partName(culprit.part)} with a type that passes DC, 22 kHz and messages.`;
    case "too few volts":
      if (reason.volts === 0)
        return `Replace ${partName(at.part)} with one of stronger supply, or feed ${partName(reason.part)} from a mains unit.`;
      return `Use copper cable of lower resistance, or feed ${partName(reason.part)} from a supply near it.`;
    case "dies at vertical":
      return `Use copper cable of lower resistance, or feed ${partName(reason.part)} from a supply near it.`;
    case "set by another": {
      const loop = isBehindLoop(evaluation, at.part, reason.by)
        ? loopOutOf(evaluation.record(reason.by))
        : undefined;
      return loop ? loopCure(reason.by, at.part, loop) : `Give ${partName(at.part)} an output of its own.`;
    }
    case "no way through": {
      const loop = loopOutOf(evaluation.record(reason.part));
      if (loop) return loopPassCure(reason.part, at.part, loop);
      return hasChannelList(evaluation.record(reason.part)) ? addedChannels(reason.part) : undefined;
    }
    case "switched feed on a wideband input":
    case "wideband feed on a switched input":
    case "plain feed on a single-cable input":
    case "single-cable feed on a plain input":
      return culprit.part === at.part
        ? `Use a receiver that suits the LNB in the place of ${partName(at.part)}.`
        : `Use an LNB that suits ${partName(at.part)}, or a receiver that suits the LNB.`;
    case "noisy":
    case "disturbed":
    case "blocked":
      return culpritCure(missing.blamed);
    case "other output":
      return `Connect all outputs of ${partName(reason.part)} to a multiswitch, or use an LNB whose every output gives all.`;
    default:
      return undefined;
  }
}

/** "⟦dish⟧"; "feed 2 of ⟦dish⟧" where it has several. */
function feedName(part: string, port: string, evaluation: Evaluation): string {
  const feeds = evaluation.record(part)?.ports.filter((p) => p.role === "beam") ?? [];
  const number = feeds.findIndex((p) => p.id === port) + 1;
  return feeds.length > 1 ? `feed ${number} of ${partName(part)}` : partName(part);
}

function isSky(part: string, port: string, evaluation: Evaluation): boolean {
  return evaluation.record(part)?.ports.find((p) => p.id === port)?.medium === "sky";
}

/** When a receiver gives 13 V: a single-cable one rests at them, whatever it watches. */
function restWords(receiver: PartId, fed: PartId, evaluation: Evaluation): string {
  const record = evaluation.record(receiver);
  const inputs = record?.kind.reception?.(record.options).inputs ?? [];
  return inputs.some(({ feed }) => feed === "stacked")
    ? "at rest"
    : `for ${askedWords(evaluation.record(fed), "V")}`;
}
