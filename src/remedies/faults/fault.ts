/** Single faults: what can be wrong with a system that was planned well. */
import type { Design, PartId } from "../../design/design.ts";

export type Fault = {
  /** Unique within a design and stable for it: "plug-off:amp.out>drop.in". */
  readonly id: string;
  readonly type: FaultType;
  /** In plain words, with the labels of the design. */
  readonly title: string;
  /** Part to look at first. */
  readonly part: PartId;
  /** All parts at which the fault is found: both ends of a wire, for instance. */
  readonly parts: readonly PartId[];
  /** The design with the fault in it; the same object where the fault cannot be made. */
  readonly apply: (design: Design) => Design;
};

export type FaultType = keyof typeof FAULT_TYPES;

type TypeEntry = {
  /** As offered in a list of suspicions. */
  readonly name: string;
  /** What it does, for whoever has just found it. */
  readonly lesson: string;
  /** How often it is met beside the others; a rough order, common practice, no source. */
  readonly likelihood: number;
};

export const FAULT_TYPES = {
  "plug-off": {
    name: "a plug is off",
    lesson: "With a plug off nothing passes: no signal down, no supply up.",
    likelihood: 8,
  },
  "open-joint": {
    name: "the inner conductor is broken",
    lesson:
      "A broken inner conductor stops the supply altogether, yet a little signal still couples across, the more the higher the frequency.",
    likelihood: 6,
  },
  "short-joint": {
    name: "the inner conductor touches the screen",
    lesson:
      "One strand of braid on the inner conductor shorts the signal and the supply; whoever feeds that line shuts down.",
    likelihood: 5,
  },
  "corroded-joint": {
    name: "a joint is corroded",
    lesson:
      "Corrosion costs level, more at the top, and its resistance eats the supply: with the higher load of a converter too few volts arrive.",
    likelihood: 6,
  },
  "supply-blocked": {
    name: "something blocks the supply",
    lesson:
      "An isolator lets every signal through and stops direct current and tone: what it should feed stays dark.",
    likelihood: 3,
  },
  "wrong-leg": {
    name: "supply passes on the wrong leg",
    lesson:
      "Splitters and diplexers pass supply and tone on marked legs only; on the others a receiver can neither feed nor command.",
    likelihood: 3,
  },
  "mains-off": {
    name: "the mains unit is off",
    lesson:
      "Without mains an amplifier is a loss and a multiswitch or inserter feeds nothing. Look at the lamp first.",
    likelihood: 6,
  },
  "receiver-off": {
    name: "the receiver is unplugged",
    lesson:
      "A receiver without mains asks for nothing and feeds nothing; what it fed stays dark for others too.",
    likelihood: 4,
  },
  "weak-supply": {
    name: "the receiver's supply is too low",
    lesson:
      "A converter tells horizontal from vertical by the voltage. A tired supply that no longer reaches 18 V loses one polarisation.",
    likelihood: 2,
  },
  swapped: {
    name: "two cables are swapped",
    lesson:
      "Two leads on each other's sockets look tidy and carry good levels: only what arrives is the wrong thing.",
    likelihood: 5,
  },
  "wrong-converter": {
    name: "the converter is of the wrong kind",
    lesson:
      "Universal, quattro, wideband and channel-stacking converters look alike and are not interchangeable: the receivers must suit.",
    likelihood: 3,
  },
  "converter-dead": {
    name: "the converter is dead",
    lesson: "A dead converter may still draw its current: volts and tone are right, and nothing comes down.",
    likelihood: 4,
  },
  "wrong-plate": {
    name: "the plate is of the wrong kind",
    lesson:
      "A plate that separates TV and satellite cuts what lies between; a plain one lets all of it through.",
    likelihood: 4,
  },
  "wrong-user-band": {
    name: "a user band is set wrong",
    lesson:
      "On a channel-stacked line every tuner needs a user band of its own, with the number and centre that the converter has.",
    likelihood: 4,
  },
  "wrong-mode": {
    name: "a receiver is left in the wrong mode",
    lesson:
      "A receiver in universal mode puts steady voltage on a channel-stacked line, and no other receiver can send its messages.",
    likelihood: 3,
  },
  "gain-high": {
    name: "the gain is set too high",
    lesson:
      "Past its rated output an amplifier makes products of its own: the level looks splendid and the MER collapses.",
    likelihood: 3,
  },
  "gain-low": {
    name: "the gain is set too low",
    lesson:
      "Too little gain shows furthest away first: where the cable is longest the tuner's own noise wins.",
    likelihood: 3,
  },
  "wrong-tap": {
    name: "the tap value is wrong",
    lesson: "Too high a tap value starves its own branch; too low a one takes from all that follow.",
    likelihood: 2,
  },
  "aerial-off": {
    name: "the aerial points elsewhere",
    lesson:
      "An aerial that the wind has turned gives too little on every channel at once, and to every set at once.",
    likelihood: 5,
  },
  "dish-off": {
    name: "the dish points elsewhere",
    lesson: "A few millimetres at the bracket are many decibels: level and C/N fall together, everywhere.",
    likelihood: 6,
  },
  "wet-cable": {
    name: "there is water in the cable",
    lesson:
      "Water in the foam makes the loss grow with frequency: the top of the satellite IF goes first, TV is the last to suffer.",
    likelihood: 4,
  },
  "steel-cable": {
    name: "the cable is copper-clad steel",
    lesson:
      "Copper-clad steel loses hardly more signal, but four to five times the volts: long runs lose horizontal.",
    likelihood: 3,
  },
  "filter-missing": {
    name: "the filter is not there",
    lesson: "Without the filter a strong neighbour drives the amplifier: carriers far from it suffer too.",
    likelihood: 3,
  },
  "pad-missing": {
    name: "the attenuator is not there",
    lesson: "The pad was there for a reason: without it the next stage gets more than it can bear.",
    likelihood: 2,
  },
  "load-missing": {
    name: "the load is not there",
    lesson: "An open end reflects: the ripple shows on some channels and not on others.",
    likelihood: 2,
  },
} as const satisfies Record<string, TypeEntry>;

export const FAULT_TYPE_KEYS = Object.keys(FAULT_TYPES) as readonly FaultType[];

export function likelihoodOf(fault: Fault): number {
  return FAULT_TYPES[fault.type].likelihood;
}
