/** Faults in words: their types as offered in a list, what each teaches, and one fault of a design as a sentence. */

import type { Design, Wire } from "../../design/design.ts";
import { partById, portOf, portsOf, quoted } from "../../design/lookup.ts";
import { kindOf } from "../../parts/catalogue.ts";
import { describedOptions } from "../../parts/meanings.ts";
import type { Fault, FaultType } from "../../remedies/faults/fault.ts";
import { numeralAsSet } from "../../words/numbers.ts";

type TypeWords = {
  /** As offered in a list of faults. */
  readonly name: string;
  /** What it does, for whoever has just found it. */
  readonly lesson: string;
};

export const FAULT_WORDS: Readonly<Record<FaultType, TypeWords>> = {
  "plug-off": {
    name: "a plug is off",
    lesson: "With a plug off nothing passes: no signal down, no supply up.",
  },
  "open-joint": {
    name: "the inner conductor is broken",
    lesson:
      "A broken inner conductor stops the supply. A little signal still couples across, more of it at higher frequencies.",
  },
  "short-joint": {
    name: "the inner conductor touches the screen",
    lesson:
      "One strand of braid on the inner conductor shorts signal and supply. Whatever feeds that line shuts down.",
  },
  "corroded-joint": {
    name: "a joint is corroded",
    lesson:
      "Corrosion costs level, more at the top. Its resistance takes volts: too few arrive under the load of an LNB.",
  },
  "screen-off": {
    name: "the screen is not connected",
    lesson:
      "Current needs its way back: with the screen off nothing is fed. High frequencies still couple across, low ones hardly.",
  },
  "wet-joint": {
    name: "water stands in a plug",
    lesson: "Water takes little at FM and most at satellite IF. The supply still passes for a while.",
  },
  "supply-blocked": {
    name: "something blocks the supply",
    lesson: "An isolator lets every signal through and stops DC and 22 kHz: what should be fed stays dark.",
  },
  "wrong-leg": {
    name: "DC passes on the wrong leg",
    lesson:
      "Splitters and diplexers pass DC and 22 kHz on marked legs only. On the others a receiver can neither feed nor command.",
  },
  "mains-off": {
    name: "it has no mains power",
    lesson:
      "Without mains an amplifier only loses level, and a multiswitch or inserter feeds nothing. Look at the lamp first.",
  },
  "receiver-off": {
    name: "the receiver is unplugged",
    lesson:
      "A receiver without mains asks for nothing and feeds nothing. What it fed stays dark for others too.",
  },
  "weak-supply": {
    name: "the receiver’s supply is too low",
    lesson:
      "An LNB tells horizontal from vertical by the voltage. A tired supply that no longer reaches 18 V loses one polarisation.",
  },
  "aerial-supply-off": {
    name: "the supply for the aerial is off",
    lesson:
      "An amplifier at the aerial lives on what the cable brings up. A menu that was reset takes it away without a word.",
  },
  "motor-jammed": {
    name: "the dish motor is jammed",
    lesson:
      "A motor that cannot turn draws more than one that does. The receiver’s supply gives way, and with it the LNB.",
  },
  swapped: {
    name: "two cables are swapped",
    lesson:
      "Two leads on each other’s sockets look tidy and carry good levels, but each carries the wrong signal.",
  },
  "wrong-converter": {
    name: "the LNB is of the wrong kind",
    lesson:
      "Universal, quattro, wideband and SCR/dSCR LNBs look alike and are not interchangeable: the receivers must suit.",
  },
  "converter-dead": {
    name: "the LNB is dead",
    lesson: "A dead LNB may still draw its current: volts and tone are right, and nothing comes down.",
  },
  "wrong-plate": {
    name: "the outlet is of the wrong kind",
    lesson:
      "An outlet that separates TV and satellite cuts what lies between; a plain one lets all of it through.",
  },
  "wrong-user-band": {
    name: "a user band is set wrong",
    lesson:
      "On a single-cable line every tuner needs a user band of its own, with the number and centre that the LNB has.",
  },
  "wrong-mode": {
    name: "a receiver is left in the wrong mode",
    lesson:
      "A receiver in universal mode puts steady voltage on a single-cable line, and no other receiver can send its messages.",
  },
  "gain-high": {
    name: "the gain is set too high",
    lesson:
      "Past its rated output an amplifier makes products of its own: the level looks high and the MER collapses.",
  },
  "gain-low": {
    name: "the gain is set too low",
    lesson:
      "Too little gain shows furthest away first: where the cable is longest, the tuner’s own noise wins.",
  },
  "wrong-tap": {
    name: "the tap value is wrong",
    lesson: "Too high a tap value starves its own branch; too low a value takes from all that follow.",
  },
  "aerial-off": {
    name: "the aerial points elsewhere",
    lesson:
      "An aerial that the wind has turned gives too little on every channel at once, and to every set at once.",
  },
  "dish-off": {
    name: "the dish points elsewhere",
    lesson: "A few millimetres at the bracket are many decibels: level and C/N fall together, everywhere.",
  },
  "lnb-turned": {
    name: "the LNB is turned in its clamp",
    lesson:
      "A turned LNB mixes vertical and horizontal: the level hardly falls, yet the C/N does, most where both are in use.",
  },
  "wet-cable": {
    name: "there is water in the cable",
    lesson:
      "Water in the foam makes the loss grow with frequency: the top of the satellite IF goes first, TV is the last to suffer.",
  },
  "steel-cable": {
    name: "the cable is copper-clad steel",
    lesson:
      "Copper-clad steel loses hardly more signal, but four to five times the volts: long runs lose horizontal.",
  },
  "filter-missing": {
    name: "the filter is not there",
    lesson: "Without the filter a strong neighbour drives the amplifier: carriers far from it suffer too.",
  },
  "pad-missing": {
    name: "the attenuator is not there",
    lesson: "The attenuator was there for a reason: without it the next stage gets more than it can take.",
  },
  "load-missing": {
    name: "the terminator is not there",
    lesson: "An open end reflects: the ripple shows on some channels and not on others.",
  },
  "dead-cable": {
    name: "a dead end of cable hangs on the line",
    lesson:
      "An open tail shorts the line where it is a quarter of a wave long: ten centimetres of it take a UHF channel.",
  },
  "switch-leaks": {
    name: "a switch mixes its inputs",
    lesson:
      "A damaged switch lets one input into another: levels and volts are as planned, and the C/N is poor behind it.",
  },
};

/** One fault of a design as a sentence: "The plug is off between “Amplifier” (out 2) and “Drop”." */
export function faultSentence(design: Design, fault: Fault): string {
  const name = quoted(partById(design, fault.part));
  switch (fault.type) {
    case "plug-off":
      return `The plug is off ${betweenEnds(design, fault.facts.wire)}.`;
    case "open-joint":
      return `The inner conductor is broken ${betweenEnds(design, fault.facts.wire)}.`;
    case "short-joint":
      return `The inner conductor touches the screen ${betweenEnds(design, fault.facts.wire)}.`;
    case "corroded-joint":
      return `The joint is corroded ${betweenEnds(design, fault.facts.wire)}.`;
    case "screen-off":
      return `The screen is not connected ${betweenEnds(design, fault.facts.wire)}.`;
    case "wet-joint":
      return `Water stands in the plug ${betweenEnds(design, fault.facts.wire)}.`;
    case "supply-blocked":
      return `An isolator sits ${betweenEnds(design, fault.facts.wire)} and blocks the supply.`;
    case "wrong-leg":
      return fault.facts.choice === null
        ? `${name} does not pass DC.`
        : `In ${name} DC and 22 kHz pass ${choiceLabel(design, fault.part, fault.facts.option, fault.facts.choice)}.`;
    case "mains-off":
      return `${name} has no mains power.`;
    case "receiver-off":
      return `${name} is unplugged.`;
    case "weak-supply":
      return `${name} delivers only ${numeralAsSet(fault.facts.volts)} V where it should deliver ${numeralAsSet(fault.facts.plannedVolts)} V.`;
    case "aerial-supply-off":
      return `${name} does not feed the aerial, where it should with ${numeralAsSet(fault.facts.plannedVolts)} V.`;
    case "motor-jammed":
      return `${name} is jammed: it draws ${numeralAsSet(fault.facts.milliamps)} mA and does not turn.`;
    case "swapped": {
      const [a, b] = fault.facts.ports.map((port) => portLabel(design, fault.part, port));
      return `The cables on ${fault.facts.side === "in" ? "inputs" : "outputs"} ${a} and ${b} of ${name} are swapped.`;
    }
    case "wrong-converter":
    case "wrong-plate": {
      const planned = partById(design, fault.part)?.kind ?? "";
      return `${name} is a part of the kind “${kindName(fault.facts.kind)}”, not “${kindName(planned)}”.`;
    }
    case "converter-dead":
      return `${name} is dead: it draws its current, and nothing comes out.`;
    case "wrong-user-band":
      return fault.facts.as === "another receiver"
        ? `${name} is set to the user bands of ${quoted(partById(design, fault.facts.other))}.`
        : `${name} has a wrong centre frequency for user band ${fault.facts.userBand}.`;
    case "wrong-mode":
      return `${name} is set to universal mode.`;
    case "gain-high":
    case "gain-low":
      return `The gain of ${name} is set to ${numeralAsSet(fault.facts.gainDb)} dB.`;
    case "wrong-tap":
      return `${name} has a tap value of ${numeralAsSet(fault.facts.tapLossDb)} dB.`;
    case "aerial-off":
      return `${name} points elsewhere.`;
    case "dish-off":
      return `${name} is off its satellite by a beamwidth.`;
    case "lnb-turned":
      return `${name} is turned by ${numeralAsSet(fault.facts.turnedDeg)}° in its clamp.`;
    case "wet-cable":
      return `There is water in ${name}.`;
    case "steel-cable":
      return `${name} is copper-clad steel.`;
    case "filter-missing":
    case "pad-missing":
      return `${name} was never fitted: a plain coupler sits in its place.`;
    case "load-missing":
      return `${name} was never fitted.`;
    case "dead-cable":
      return `A dead cable of ${numeralAsSet(fault.facts.lengthM)} m hangs on the line ${betweenEnds(design, fault.facts.wire)}.`;
    case "switch-leaks":
      return `${name} keeps its inputs only ${numeralAsSet(fault.facts.crosstalkDb)} dB apart.`;
  }
}

/** "between “Amplifier” (out 2) and “Drop”": ports are named where a part has several of that side. */
function betweenEnds(design: Design, wire: Wire): string {
  return `between ${endName(design, wire.from)} and ${endName(design, wire.to)}`;
}

function endName(design: Design, [id, port]: Wire["from"]): string {
  const part = partById(design, id);
  const own = part && portOf(part, port);
  const siblings = part ? portsOf(part).filter((p) => p.side === own?.side) : [];
  return siblings.length > 1 ? `${quoted(part)} (${own?.label ?? port})` : quoted(part);
}

function portLabel(design: Design, id: string, port: string): string {
  const part = partById(design, id);
  return (part && portOf(part, port)?.label) ?? port;
}

/** "to all outputs": as the option offers it. */
function choiceLabel(design: Design, id: string, option: string, choice: string): string {
  const kind = kindOf(partById(design, id)?.kind ?? "");
  const choices = kind ? describedOptions(kind).get(option)?.choices : undefined;
  return (choices?.find(({ value }) => value === choice)?.label ?? choice).toLowerCase();
}

function kindName(key: string): string {
  return kindOf(key)?.name ?? key;
}
