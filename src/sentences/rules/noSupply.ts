import type { PartRecord } from "../../evaluate/evaluation.ts";
import { loopOutOf } from "../../findings/loopOut.ts";
import type { NoSupplyFacts } from "../../findings/rules/noSupply.ts";
import type { SupplyStop } from "../../findings/walk/supplyStop.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import { numeral } from "../../words/numbers.ts";
import { pictureOf, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { besideLimit } from "../figures.ts";
import { loopPassCure, loopStops } from "../loopWords.ts";
import { partName } from "../phrases.ts";
import { askedWords } from "../planes.ts";
import type { RuleWords, Told } from "../ruleWords.ts";
import {
  lessResistance,
  optionSetWords,
  portOfPart,
  portWords,
  takerMade,
  takerWords,
  voltsDo,
} from "../supplyWords.ts";

type ToldHere = Told<"no-supply">;

export const noSupply: RuleWords<"no-supply"> = {
  title: "No supply at an LNB or amplifier",
  explain:
    "LNBs and amplifiers on the roof are fed through the cable by a receiver or a mains unit. Without supply an LNB " +
    "converts nothing, and an amplifier is a loss. Look for a part on the way that passes no DC, or for a unit that is off.",
  source: "Min supply voltage of the part",
  severities: ["error", "warning", "note"],
  message: (told) => {
    const { at, facts } = told.finding;
    const name = partName(at.part);
    const [volts, needs] = figures(told);
    switch (facts.kind) {
      case "unfed":
        return `${stopWords(told, facts.stop)}${lossWords(name, "supply", facts)}`;
      case "mains off":
        return `The mains of ${name} is off, so it does nothing.${lossWords(name, "mains", facts)}`;
      case "only with others":
        return othersWords(told, facts);
      case "edge":
        return `${name} gets ${volts} V and needs ${needs} V${facts.lost.failsAtC === undefined ? "" : `: with cables at ${numeral(facts.lost.failsAtC, 0)} °C it fails`}.`;
      default: {
        if (isTogether(facts))
          return isOnUserBands(told)
            ? `${name} gets ${volts} V when all receivers rest at 13 V, and needs ${needs} V.`
            : `${name} gets ${volts} V when all receivers ask for ${askedWords(told.record, "V")} at once, and needs ${needs} V.`;
        const atRest = isOnUserBands(told)
          ? " when receivers rest at 13 V"
          : ` when ${askedWords(told.record, "V")} is asked for`;
        const when = facts.kind === "too low" ? "" : atRest;
        const taker = takerWords(facts.lost);
        if (!taker)
          return `${partName(facts.lost.supply)} gives only ${besideLimit(facts.lost.givenVolts, told.finding.limit ?? 0)[0]} V${when}; ${name} needs ${needs} V.`;
        return `${name} gets ${volts} V${when} and needs ${needs} V: ${taker} of ${numeral(facts.lost.givenVolts)} V.`;
      }
    }
  },
  cure: (told) => {
    const { at, facts } = told.finding;
    if (facts.kind === "unfed") return stopCure(told, facts.stop);
    if (facts.kind === "mains off") return `Switch the mains of ${partName(at.part)} on.`;
    if (facts.kind === "only with others") return othersCure(partName(at.part), facts);
    if (isTogether(facts))
      return `Use cable of lower resistance to ${partName(at.part)}, or replace ${partName(at.part)} with one that draws less.`;
    const { taker, supply } = facts.lost;
    if (!taker) return `Replace ${partName(supply)} with a unit of a higher voltage.`;
    if (told.evaluation.record(taker.part)?.kind.family === "run")
      return `${lessResistance(told.evaluation.record(taker.part))}.`;
    return `Replace ${partName(taker.part)} with one that takes fewer volts, or feed ${partName(at.part)} from nearby.`;
  },
  customer: (told) => {
    const name = plainName(told, told.finding.at.part);
    switch (told.finding.facts.kind) {
      case "unfed":
        return `No power reaches ${name}, so nothing comes out of it.`;
      case "mains off":
        return `${capital(name)} is switched off, so nothing works behind it.`;
      case "only with others":
        return `${capital(name)} gets power only while a certain receiver is on. Switched off, it may leave another one dark.`;
      case "edge":
        return `Just enough power reaches ${name}, and on a hot day it may fail.`;
      default:
        return `Too little power reaches ${name}, so it does not work all the time.`;
    }
  },
  trade: (told) => {
    const { finding } = told;
    const name = partName(finding.at.part);
    const dead =
      "Without supply an LNB gives no output at all, and an amplifier is a loss instead of a gain.";
    if (finding.facts.kind === "mains off")
      return `${name} runs on a mains unit of its own, and its mains is off. It converts, switches and amplifies nothing, and feeds nothing above it. ${dead}`;
    if (finding.facts.kind === "only with others")
      return `${othersWords(told, finding.facts)} Nothing is wrong while all receivers are on, so this shows up weeks after the job. ${dead}`;
    const [volts, needs] = figures(told);
    const held = `${name} needs at least ${needs} V and gets ${volts} V.`;
    return `${held} ${detail(told, finding.facts)} ${dead}`;
  },
  measure: (told) => {
    const { finding } = told;
    const name = partName(finding.at.part);
    if (finding.facts.kind === "mains off")
      return `Look at the lamp of ${name}, and measure at its mains plug: without mains there, the plug or the fuse is the cause.`;
    if (finding.facts.kind === "only with others")
      return `Switch off ${finding.facts.others.map(partName).slice(0, 3).join(", ")} and measure at ${name} from inner conductor to screen: no volts there prove it.`;
    const [volts, needs] = figures(told);
    const at = `Voltmeter from inner conductor to screen on the cable at ${name}: ${volts} V, where ${needs} V or more belong.`;
    if (finding.facts.kind !== "unfed") {
      const { taker } = finding.facts.lost;
      if (isTogether(finding.facts))
        return isOnUserBands(told) ? at : `${at} Set all receivers to a vertical channel for it.`;
      if (!taker)
        return `${at} Then at ${partName(finding.facts.lost.supply)} itself: as little there proves it.`;
      return `${at} Then on both sides of ${partName(taker.part)}, with the load on: ${numeral(taker.volts)} V between them prove it.`;
    }
    return `${at} ${stopMeasure(told, finding.facts.stop)}`;
  },
  neighbours: ["supply-overloaded", "command-lost", "receiver-misses"],
  picture: (told) => {
    const input = told.record?.ports.find((p) => p.side === "in" && told.record?.joined[p.id]);
    return input ? pictureOf(told, spotOf(told, input.id), []) : null;
  },
};

function figures({ finding }: ToldHere): readonly [string, string] {
  return besideLimit(finding.value ?? 0, finding.limit ?? 0);
}

/** Whether all lines that feed it are single-cable ones: receivers rest at 13 V there, and ask by messages. */
function isOnUserBands({ record }: ToldHere): boolean {
  const ports = record?.power.load?.ports ?? [];
  const switches = record?.power.switches ?? [];
  return ports.length > 0 && ports.every((port) => switches.some((s) => s.port === port && s.by === "stack"));
}

/** What it costs, which some reception survives: a strong signal gets through a dead amplifier. */
function lossWords(
  name: string,
  lacks: "supply" | "mains",
  { lossDb }: { readonly lossDb?: number },
): string {
  return lossDb === undefined || lossDb < LEAST_LOSS_DB
    ? ""
    : ` Without ${lacks} ${name} loses ${numeral(lossDb)} dB.`;
}

/** Less is not worth a sentence [dB]; our choice. */
const LEAST_LOSS_DB = 0.5;

function isTogether(facts: NoSupplyFacts): boolean {
  return "isTogether" in facts && facts.isTogether === true;
}

type OthersFacts = Extract<NoSupplyFacts, { kind: "only with others" }>;

/** Who goes without, and when. */
function othersWords(told: ToldHere, facts: OthersFacts): string {
  const name = partName(told.finding.at.part);
  const victim = partName(facts.victim);
  const [first, ...more] = facts.others;
  const whileOff =
    first !== undefined && more.length === 0
      ? `while ${partName(first)} is ${givesNothing(told, first)}`
      : "while all other receivers are off or in standby";
  if (facts.asleep !== undefined)
    return `${partName(facts.asleep)} saves energy: ${whileOff}, it does not feed ${name}, so ${victim} gets nothing from there.`;
  if (facts.isTooWeak)
    return `${victim} is too weak to feed ${name} alone: ${whileOff}, it gets nothing from there.`;
  return `No supply of ${victim} reaches ${name}: ${whileOff}, ${victim} gets nothing from there.`;
}

/** When a receiver feeds nothing; some feed the cable in standby too. */
function givesNothing({ evaluation }: ToldHere, receiver: string): string {
  const record = evaluation.record(receiver);
  const key = record && optionMeaning(record.kind, "standby supply");
  return key !== undefined && record?.options[key] === true ? "unplugged" : "off or in standby";
}

function othersCure(name: string, facts: OthersFacts): string {
  if (facts.asleep !== undefined)
    return `Feed ${name} from a mains unit of its own, or replace ${partName(facts.asleep)} with a unit that never sleeps.`;
  if (facts.isTooWeak) return `Replace ${name} with one that draws less, or feed it from a mains unit.`;
  return `Let the supply of ${partName(facts.victim)} reach ${name}, or feed ${name} from a mains unit.`;
}

/** What stops the supply, where, and who is left without. */
function stopWords(told: ToldHere, stop: SupplyStop): string {
  const victim = partName(told.finding.at.part);
  const name = partName(stop.part);
  const record = told.evaluation.record(stop.part);
  switch (stop.why) {
    case "short":
      return `${name} shorts the supply of ${partName(stop.supply)}, so ${victim} gets none.`;
    case "overloaded":
      return `${name} has shut down: ${numeral(stop.milliamps, 0)} mA are drawn of the ${numeral(stop.limitMa, 0)} it gives. So ${victim} gets no supply.`;
    case "blocks": {
      const loop = loopOutOf(record);
      if (loop?.state === "unplugged") return `${loopStops(stop.part, loop)}, and ${victim} gets no supply.`;
      if (loop)
        return `${name} is set to feed nothing, and while it is on its loop-out passes no supply: ${victim} is dead.`;
      const from = portWords(record, stop.port);
      const what = stop.isBroken
        ? "it is broken"
        : stop.feeds === undefined
          ? `it passes no DC${from === "its output" ? "" : ` from ${from}`}`
          : `it passes DC to ${portWords(record, stop.feeds)} only`;
      return `${voltsDo(stop.volts, { one: "stops", other: "stop" }).replace(" V ", ` V from ${partName(stop.supply)} `)} at ${name}: ${what}, so ${victim} is dead.`;
    }
    case "wrong input": {
      const does = stop.supply === stop.part ? "feeds" : "passes DC to";
      return `${name} ${does} ${portWords(record, stop.feeds)}, but ${victim} is connected to ${portWords(record, stop.port)}.`;
    }
    case "mains off":
      return `The mains of ${name} is off, so ${victim} gets no supply.`;
    case "nothing above feeds":
      return headWords(victim, stop);
    case "asleep":
      return `${name} saves energy: none of its receivers is on, so it does not feed ${victim}.`;
    case "receiver off":
      return `${name} ${feedsNothing(record)}, so ${victim} gets no supply.`;
    case "not set to feed":
      return `${name} is not set to feed ${victim}, which gets no supply.`;
    case "wrong side":
      if (stop.isDown)
        return `${name} is on the wrong side of ${victim}: its ${voltsDo(stop.volts, { one: "comes", other: "come" })} to an input that takes no supply.`;
      return `${name} is on the wrong side of ${victim}: its ${voltsDo(stop.volts, { one: "goes", other: "go" })} up and away from there.`;
    case "open":
      return `${victim} gets no supply: nothing is connected to ${portOfPart(record, stop.part, stop.port)}.`;
    case "nothing feeds":
      return stop.setting && stop.nearest !== undefined
        ? `${victim} gets no supply: ${partName(stop.nearest)} could feed it, but is not set to.`
        : `${victim} gets no supply: nothing below feeds it.`;
  }
}

function headWords(victim: string, stop: Extract<SupplyStop, { why: "nothing above feeds" }>): string {
  const nothing = `${victim} gets no supply over its trunks`;
  if (stop.nearest === undefined) return `${nothing}: nothing above feeds them.`;
  const nearest = partName(stop.nearest);
  return stop.setting
    ? `${nothing}: ${nearest} could feed them, but is not set to.`
    : `${nothing}: ${nearest} feeds nothing down to it.`;
}

function stopCure(told: ToldHere, stop: SupplyStop): string {
  const victim = partName(told.finding.at.part);
  const name = partName(stop.part);
  const record = told.evaluation.record(stop.part);
  switch (stop.why) {
    case "short":
      return `Repair or replace ${name}.`;
    case "overloaded":
      return `Take load off ${name}, or feed ${victim} from a mains unit.`;
    case "blocks": {
      const loop = loopOutOf(record);
      if (loop?.state === "unplugged") return loopPassCure(stop.part, stop.supply, loop);
      if (loop) return `Set ${name} to feed the cable.`;
      if (stop.isBroken) return `Cut out ${name} and fit a new connector.`;
      if (stop.passesFrom !== undefined) {
        const move = `Move the lead of ${partName(stop.supply)} to ${portOfPart(record, stop.part, stop.passesFrom)}`;
        return stop.setting ? `${move}, or replace it with one that passes DC there.` : `${move}.`;
      }
      if (stop.setting) return `Replace ${name} with one that passes DC there.`;
      return record?.kind.inline
        ? `Remove ${name}, or feed ${victim} above it.`
        : `Feed ${victim} above ${name}.`;
    }
    case "wrong input":
      return `Move the lead to ${portOfPart(record, stop.part, stop.feeds)}.`;
    case "mains off":
      return `Switch the mains of ${name} on.`;
    case "nothing above feeds":
      return stop.setting && stop.nearest !== undefined
        ? `${optionSetWords(told.evaluation.record(stop.nearest), stop.setting)}.`
        : `Feed the trunks from the head end, or replace ${victim} with a unit that has mains.`;
    case "asleep":
      return `Feed ${victim} from a mains unit of its own, or replace ${name} with a unit that never sleeps.`;
    case "receiver off":
      return isOn(record) ? `${optionSetWords(record, stop.setting)}.` : `Switch ${name} on.`;
    case "not set to feed":
      return `${optionSetWords(record, stop.setting)}.`;
    case "wrong side":
      return `Move ${name} below ${victim}.`;
    case "open":
      return `Connect a receiver or a mains unit to ${portOfPart(record, stop.part, stop.port)}.`;
    case "nothing feeds":
      if (stop.setting && stop.nearest !== undefined)
        return `${optionSetWords(told.evaluation.record(stop.nearest), stop.setting)}, or put a power inserter below ${victim}.`;
      return stop.nearest === undefined
        ? `Put a power inserter below ${victim}.`
        : `Connect ${partName(stop.nearest)}, which can feed it, or put a power inserter below ${victim}.`;
  }
}

/** Where the supply ends, or what takes the volts. */
function detail(
  told: ToldHere,
  facts: Extract<NoSupplyFacts, { kind: "unfed" } | { lost: unknown }>,
): string {
  if (facts.kind === "unfed") {
    const { stop } = facts;
    const name = partName(stop.part);
    if (stop.why === "blocks")
      return `The supply of ${partName(stop.supply)} gets no further up than ${name}.`;
    if (stop.why === "short") return `${name} connects inner conductor and screen, so the supply shuts down.`;
    if (stop.why === "nothing above feeds") return headWords(partName(told.finding.at.part), stop);
    if (stop.why === "nothing feeds")
      return "No part below gives a supply: a receiver that is off, or made without one, feeds nothing.";
    return stopWords(told, stop);
  }
  if (isTogether(facts)) return "Each receiver alone gives enough; together on 13 V they do not.";
  const { lost } = facts;
  const taker = takerWords(lost);
  if (!taker)
    return `${partName(lost.supply)} gives ${besideLimit(lost.givenVolts, told.finding.limit ?? 0)[0]} V from the start.`;
  const made = takerMade(told.evaluation.record(lost.taker?.part ?? ""), lost);
  const heat =
    lost.failsAtC === undefined
      ? ""
      : ` Copper gains ${numeral(0.39, 2)} % of resistance for each degree: with cables at ${numeral(lost.failsAtC, 0)} °C nothing is left to spare.`;
  return `Of ${numeral(lost.givenVolts)} V from ${partName(lost.supply)}, ${taker}${made ? ` (${made})` : ""}.${heat}`;
}

function stopMeasure(told: ToldHere, stop: SupplyStop): string {
  const name = partName(stop.part);
  switch (stop.why) {
    case "blocks":
      return `Then on both sides of ${name}: volts below it and none above prove that it passes none.`;
    case "short":
      return `Unplug ${name}: if volts come back below it, it was the short.`;
    case "overloaded":
      return `Then at ${name} with the cable off: volts that come back prove the overload.`;
    case "mains off":
    case "receiver off":
    case "asleep":
    case "not set to feed":
      return `Then at ${name}: no volts on its own plug either prove that it gives none.`;
    case "wrong input":
    case "wrong side":
      return `Then on every lead of ${name}: the one with volts shows where its supply goes.`;
    case "nothing above feeds":
      return `Then unit by unit upwards from ${partName(told.finding.at.part)}: without volts anywhere, nothing feeds.`;
    default:
      return `Then part by part downwards from ${partName(told.finding.at.part)}: without volts anywhere, nothing feeds.`;
  }
}

/** Why a receiver gives its cable nothing: it is unplugged, in standby, or set so. */
function feedsNothing(record: PartRecord | undefined): string {
  if (isOn(record)) return "is set to feed nothing";
  return stateOf(record) === "standby" ? "is in standby and feeds nothing" : "is off and feeds nothing";
}

function stateOf(record: PartRecord | undefined): unknown {
  const key = record && optionMeaning(record.kind, "receiver state");
  return key === undefined ? undefined : record?.options[key];
}

/** A receiver that is on may still be set to give its cable nothing. */
function isOn(record: PartRecord | undefined): boolean {
  return stateOf(record) === "on";
}
