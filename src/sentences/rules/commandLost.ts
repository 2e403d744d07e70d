import {
  SURELY_HORIZONTAL_VOLTS,
  SURELY_VERTICAL_VOLTS,
  type WrongInput,
} from "../../findings/commandStop.ts";
import { type LoopOut, loopOutOf } from "../../findings/loopOut.ts";
import { skyHalfOf } from "../../parts/planSatellite.ts";
import type { Band } from "../../signal/band.ts";
import type { PositionCommand } from "../../signal/control.ts";
import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { markCarriers, pictureOf, type Spot, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { loopCure, loopHolds } from "../loopWords.ts";
import { partName } from "../phrases.ts";
import { askedWords } from "../planes.ts";
import type { RuleWords, Told } from "../ruleWords.ts";
import { lessResistance, portWords, takerMade, takerWords } from "../supplyWords.ts";

const WINDOW = `${numeralAsSet(SURELY_VERTICAL_VOLTS)} to ${numeralAsSet(SURELY_HORIZONTAL_VOLTS)} V`;

/** What a position switch waits for. */
const COMMAND_WORDS: Readonly<Record<PositionCommand, string>> = {
  committed: "position command",
  uncommitted: "command for uncommitted inputs",
  burst: "tone burst",
};

export const commandLost: RuleWords<"command-lost"> = {
  title: "A command does not arrive, or arrives too weak",
  explain:
    "Horizontal is asked for with 18 V. On a long cable with high loop resistance (copper-clad steel) the LNB’s current " +
    `eats volts. Below ${numeralAsSet(SURELY_VERTICAL_VOLTS)} V the LNB takes the request as vertical; from ${WINDOW} each LNB decides for itself. ` +
    "The high band is asked for with a 22 kHz tone, which needs a way through every part.",
  source: "14 V at most for vertical, 16 V at least for horizontal at the LNB: EN 61319-1, from memory",
  severities: ["error", "warning"],
  message: (told) => {
    const { at, facts, parts } = told.finding;
    const name = partName(at.part);
    const rx = partName(facts.receiver);
    const [volts, limit] = figures(told);
    const loop = loopOf(told);
    const asked18 = askedWords(told.record, "H");
    switch (facts.kind) {
      case "no tone":
        return `${TONE_NAMES[facts.carries]} of ${rx} ${parts[0] === facts.receiver ? "does not reach" : `stops at ${partName(parts[0])}, before`} ${name}: ${TONE_LOSS[facts.carries]}.`;
      case "no command":
        if (facts.wrongInput) {
          const { feeds, port } = inputWords(told, facts.wrongInput);
          return `${partName(parts[0])} passes the supply and commands of ${rx} to ${feeds}, but ${partName(facts.switch)} is connected to ${port}.`;
        }
        if (loop) return `${loopHolds(parts[0], facts.receiver, loop)}.`;
        return parts[0] === facts.receiver
          ? `No command of ${rx} reaches ${partName(facts.switch)}, so it cannot choose what it gets.`
          : `Supply and commands of ${rx} stop at ${partName(parts[0])}, so ${
              told.evaluation.record(facts.switch)?.powered
                ? `${rx} cannot control ${partName(facts.switch)}`
                : `${partName(facts.switch)} does nothing for it`
            }.`;
      case "no position":
        return `${rx} sends no ${COMMAND_WORDS[facts.command]}, so ${name} stays at position 1 of ${facts.positions}: the other satellites never come.`;
      case "no such position":
        return `${rx} asks ${name} for position ${facts.asked}, and it has only ${facts.positions}.`;
      case "too high":
        return `${name} may take ${askedWords(told.record, "V")} for ${asked18}: it gets ${volts} V from ${rx}, and ${limit} V at most are sure.`;
      case "too low":
        return facts.carries === "messages"
          ? `${name} may not hear messages of ${rx}: it gets ${volts} V and needs ${limit} V, since ${why(told)}.`
          : `${name} cannot select ${asked18} for ${rx}: it gets ${volts} V and needs ${limit} V, since ${why(told)}.`;
      case "undecided":
        return facts.carries === "messages"
          ? `${name} may miss messages of ${rx}: it gets ${volts} V, and ${limit} V are sure, since ${why(told)}.`
          : `${name} may fail to select ${asked18} for ${rx}: it gets ${volts} V, and ${limit} V are sure, since ${why(told)}.`;
    }
  },
  cure: (told) => {
    const { facts, parts } = told.finding;
    const [culprit] = parts;
    // A broken joint is no part that one chooses better.
    const lost = facts.kind === "no tone" || facts.kind === "no command";
    if (lost && told.evaluation.record(culprit)?.kind.trade.defect)
      return `Cut out ${partName(culprit)} and fit a new connector.`;
    if (facts.kind === "no tone")
      return culprit === facts.receiver
        ? undefined
        : `Replace ${partName(culprit)} with one that passes the 22 kHz tone.`;
    if (facts.kind === "no command" && facts.wrongInput) {
      const { feeds, port } = inputWords(told, facts.wrongInput);
      return facts.wrongInput.isMiswired
        ? `Swap the leads at ${feeds} and ${port} of ${partName(culprit)}.`
        : `Replace ${partName(culprit)} with one that passes DC and 22 kHz to ${port}.`;
    }
    const loop = loopOf(told);
    if (loop) return loopCure(culprit, facts.receiver, loop);
    if (facts.kind === "no command")
      return culprit === facts.receiver
        ? undefined
        : `Replace ${partName(culprit)} with one that passes DC and 22 kHz, or remove it.`;
    if (facts.kind === "no position")
      return `Set ${partName(facts.receiver)} to send a ${COMMAND_WORDS[facts.command]} for each satellite.`;
    if (facts.kind === "no such position")
      return `Set the position in ${partName(facts.receiver)} to the input that the wanted satellite is on.`;
    if (facts.kind === "too high" || !facts.lost.taker)
      return `Check the supply of ${partName(facts.receiver)}, or use another receiver.`;
    const record = told.evaluation.record(culprit);
    if (record?.kind.family === "run") return `${lessResistance(record)}.`;
    return `Replace ${partName(culprit)} with one that takes fewer volts.`;
  },
  customer: (told) => {
    const { at, facts, parts, severity } = told.finding;
    if (loopOf(told))
      return `${capital(plainName(told, facts.receiver))} is connected through ${plainName(told, parts[0])}, which decides what both of them can see.`;
    if (facts.kind === "no command")
      return `What ${plainName(told, facts.receiver)} asks for does not get through to ${plainName(told, facts.switch)}, so it gets nothing that it wants.`;
    if (facts.kind === "no position")
      return `${capital(plainName(told, facts.receiver))} is not set up for more than one satellite, so it sees only the first.`;
    if (facts.kind === "no such position")
      return `${capital(plainName(told, facts.receiver))} is set to a satellite that is not connected here.`;
    const costs = severity === "error" ? "costs" : "may cost";
    return `The request of ${plainName(told, facts.receiver)} arrives too weak at ${plainName(told, at.part)}, which ${costs} about half of the satellite channels.`;
  },
  trade: (told) => {
    const { at, facts, parts } = told.finding;
    const name = partName(at.part);
    const rx = partName(facts.receiver);
    if (facts.kind === "no tone") {
      const where =
        parts[0] === facts.receiver
          ? `The tone of ${rx} does not arrive at ${name}.`
          : `${partName(parts[0])} passes DC but not the tone.`;
      return (
        `The high band and all messages ride on a tone of 22 kHz (${numeral(0.6)} V peak to peak). ${where} ` +
        `So only the low band can be selected, by the oscillator at 9750 MHz instead of ${numeral(10_600)} MHz: half of the transponders.`
      );
    }
    if (facts.kind === "no command" && facts.wrongInput) {
      const { feeds, port } = inputWords(told, facts.wrongInput);
      return `${partName(parts[0])} passes DC to ${feeds} only. The lead of ${partName(facts.switch)} is on ${port}, where none comes.`;
    }
    if (facts.kind === "no command" && loopOf(told))
      return (
        `${partName(parts[0])} leads its cable on. As long as it feeds the cable itself, it keeps volts and tone of ${rx} away from there. ` +
        `So ${partName(facts.switch)} stands as ${partName(parts[0])} asks: one polarisation and one band, a quarter of the transponders. In standby volts and tone of ${rx} pass.`
      );
    if (facts.kind === "no command")
      return (
        `${rx} asks by 13 or 18 V and by tone, and the switch in ${partName(facts.switch)} hears neither. ` +
        `${parts[0] === facts.receiver ? "No part on the way was found that stops them." : `They get no further up than ${partName(parts[0])}.`} ` +
        "The switch stays where another supply holds it, or gives nothing at all."
      );
    if (facts.kind === "no position")
      return (
        `${name} has ${facts.positions} positions in use and goes to the one that a ${COMMAND_WORDS[facts.command]} asks for. ` +
        `${rx} sends none, so the switch stays at its first position, and the other satellites are never seen.`
      );
    if (facts.kind === "no such position")
      return (
        `${name} has ${facts.positions} positions, and ${rx} sends the command for position ${facts.asked}. ` +
        "No switch answers it: which input is through then, and whether its LNB is fed, is left to chance."
      );
    const [volts, limit] = figures(told);
    const window = `Up to ${numeralAsSet(SURELY_VERTICAL_VOLTS)} V every LNB takes a request as vertical, and from ${numeralAsSet(SURELY_HORIZONTAL_VOLTS)} V as horizontal; in between each one decides for itself.`;
    if (facts.kind === "too high")
      return `${capital(rx)} gives so much for ${askedWords(told.record, "V")} that ${name} gets ${volts} V; ${limit} V at most are sure. ${window}`;
    const made = takerMade(told.evaluation.record(facts.lost.taker?.part ?? ""), facts.lost);
    return (
      `${name} gets ${volts} V when ${rx} asks for ${facts.carries === "messages" ? "18 V for its messages" : askedWords(told.record, "H")}, and ${limit} V are sure. ${window} ` +
      `Of ${numeral(facts.lost.givenVolts)} V at the receiver, ${why(told)}${made ? ` (${made})` : ""}. ` +
      `A loop of ${numeral(1, 1, 1)} mm copper has about 36 Ω a kilometre, one of copper-clad steel about 130 Ω.`
    );
  },
  measure: (told) => {
    const { at, facts, parts, value = 0 } = told.finding;
    const name = partName(at.part);
    const rx = partName(facts.receiver);
    if (facts.kind === "no tone") {
      const sides =
        parts[0] === facts.receiver
          ? "Going up part by part, the first one behind which it is missing is the culprit."
          : `It is there below ${partName(parts[0])} and missing above.`;
      return `Meter with tone detection on the cable at ${name} while ${rx} is tuned to a high-band transponder: no 22 kHz there. ${sides}`;
    }
    if (facts.kind === "no command" && facts.wrongInput) {
      const { feeds, port } = inputWords(told, facts.wrongInput);
      return `Voltmeter at the inputs of ${partName(parts[0])} while ${rx} is on: volts at ${feeds} and none at ${port} prove it.`;
    }
    if (loopOf(told))
      return `Put ${partName(parts[0])} in standby: if ${rx} then finds everything, the loop-out is the cause.`;
    if (facts.kind === "no command")
      return `Voltmeter on the cable at ${partName(facts.switch)} while ${rx} is on: no volts of it there. ${parts[0] === facts.receiver ? "Then downwards, until they appear." : `On both sides of ${partName(parts[0])}: volts below it and none above.`}`;
    if (facts.kind === "no position")
      return `Look into the menu of ${rx}: its satellites have no position. A meter that sends position 2 from its plug finds the second satellite at once.`;
    if (facts.kind === "no such position")
      return `Look into the menu of ${rx}: its satellite is set to position ${facts.asked}. Set to 1, it finds the first satellite at once.`;
    if (facts.kind === "too high")
      return `Tune ${rx} to a ${askedWords(told.record, "V")} transponder and measure with a voltmeter on the cable at ${name}: about ${numeral(value)} V prove it.`;
    const { taker } = facts.lost;
    const drop = taker
      ? `On both sides of ${partName(taker.part)} the readings differ by about ${numeral(taker.volts)} V.`
      : "As little at the receiver’s own plug proves that it gives too little.";
    return `Tune ${rx} to a ${askedWords(told.record, "H")} transponder and measure with a voltmeter on the cable at ${name}, with the load on: about ${numeral(value)} V prove it. ${drop}`;
  },
  neighbours: ["no-supply", "supply-overloaded", "receiver-misses", "plane-missing"],
  picture: (told) => {
    const byTone = told.finding.facts.kind === "no tone";
    const lost = (spot: Spot) =>
      pictureOf(
        told,
        spot,
        markCarriers(
          spectrumAt(told, spot),
          (band, i) => (byTone ? isHighBand(band, i) : band.origin.polarisation === "H"),
          { kind: "lost", label: byTone ? "needs the tone" : "needs 18 V" },
        ),
      );
    // An LNB that gets too little to run shows nothing: then the sky before it is shown.
    const input = told.record?.ports.find((p) => p.side === "in")?.id;
    const [behind, before] = [spotOf(told), spotOf(told, input)];
    return (behind && lost(behind)) ?? (before && lost(before));
  },
};

/** The loop-out that keeps commands away, where it is one that does. */
function loopOf({ finding: { facts, parts }, evaluation }: Told<"command-lost">): LoopOut | undefined {
  return facts.kind === "no command" ? loopOutOf(evaluation.record(parts[0])) : undefined;
}

const TONE_NAMES = {
  "high band": "The 22 kHz tone",
  messages: "The tone for messages",
  position: "The tone for position commands",
} as const;

const TONE_LOSS = {
  "high band": "the high band is lost",
  messages: "it can ask for nothing",
  position: "it stays at position 1",
} as const;

/** The inputs of the culprit: "input SAT". */
function inputWords(
  { finding: { parts }, evaluation }: Told<"command-lost">,
  { port, feeds }: WrongInput,
): { readonly port: string; readonly feeds: string } {
  const record = evaluation.record(parts[0]);
  return { port: portWords(record, port), feeds: portWords(record, feeds) };
}

function figures({ finding }: Told<"command-lost">): readonly [string, string] {
  return besideLimit(finding.value ?? 0, finding.limit ?? 0);
}

/** What takes the volts, or who gives too few. */
function why({ finding: { facts, limit = 0 } }: Told<"command-lost">): string {
  if (facts.kind !== "too low" && facts.kind !== "undecided") return "";
  return (
    takerWords(facts.lost) ??
    `${partName(facts.receiver)} gives only ${besideLimit(facts.lost.givenVolts, limit)[0]} V`
  );
}

/** In the half of the sky band that the tone asks for: from 11.7 GHz up. */
function isHighBand(band: Band, i: number): boolean {
  return band.half === "high" || (band.shifts.length === 0 && skyHalfOf(band.grid.centre[i] ?? 0) === "high");
}
