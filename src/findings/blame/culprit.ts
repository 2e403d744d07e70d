/** The part that a tradesman takes in hand, and what it does that a sound or fitting one would not. */
import type { PartId } from "../../design/design.ts";
import type { PartRecord } from "../../evaluate/evaluation.ts";

/** What a culprit does. */
export type Misdeed =
  /** A corroded, broken or shorted joint. */
  | "bad joint"
  /** A dish off its aim. */
  | "off aim"
  /** An LNB turned in its clamp by so many degrees. */
  | "turned"
  /** An LNB for linear waves in a circular field, or the other way round. */
  | "wrong polariser"
  /** A feed that keeps the two polarisations apart by so few decibels. */
  | "mixes polarisations"
  /** A switch that keeps its inputs apart by so few decibels. */
  | "mixes inputs"
  /** A dish that hears the satellites beside its own. */
  | "hears neighbours"
  /** Rain before a dish, which mixes the polarisations. */
  | "in rain"
  /** An aerial that points away from the transmitter, or whose elements lie in the other polarisation. */
  | "turned away"
  | "other polarisation"
  | "weak source"
  /** Something that feeds a signal in, and is no aerial. */
  | "low output"
  /** What feeds a signal in brings its noise with it. */
  | "unclean source"
  | "strong source"
  /** One transmitter of a source lies far above or below the others. */
  | "uneven source"
  | "switched off"
  | "unfed"
  | "low gain"
  /** A part of fixed gain that has too little of it. */
  | "little gain"
  | "high gain"
  | "noisy"
  /** An attenuator in the line; the one at an amplifier's input. */
  | "attenuates"
  | "input attenuator"
  /** A splitter with outputs, or a combiner with inputs, that nobody uses, or a resistive one. */
  | "spare ways"
  | "resistive"
  | "splits"
  | "high tap loss"
  | "low tap loss"
  /** The line goes on from a branch, and the through output feeds one place. */
  | "legs swapped"
  /** The taps of a line stand in the wrong order, from this one on. */
  | "wrong order"
  /** Nothing is wrong with any part: what arrives here is too little for all that hangs on it. */
  | "gets too little"
  /** Cable that leads nowhere hangs on it. */
  | "dead cable"
  /** A through plate where the riser ends. */
  | "through at end"
  | "poor cable"
  | "long cable"
  /** Another loss that is larger than its kind should have. */
  | "loses"
  /** Level over frequency leans here. */
  | "leans"
  | "overdriven"
  /** A signal from outside comes in here, or two signals are brought together. */
  | "lets in"
  /** An aerial hears a distant transmitter as well. */
  | "hears another"
  | "brings together";

export type Blamed = {
  readonly part: PartId;
  /** Output at which it is seen. */
  readonly port: string;
  readonly does: Misdeed;
  /** By how much it is worse than a sound part in its place [dB]. */
  readonly excessDb: number;
  /** What it does in all: its loss or its gain, of a source its level [dB, dBµV]. */
  readonly amount: number;
  /** Outputs of a splitter, or inputs of a combiner, and how many of them are used. */
  readonly ways?: { readonly of: number; readonly used: number; readonly side: "in" | "out" };
  readonly lengthM?: number;
  /** Of an aerial that receives one signal far weaker than its best: by how much [dB]. */
  readonly belowBestDb?: number;
  /** Of an aerial turned away from one transmitter: it faces another one. */
  readonly facesAnother?: true;
  /** Of a weak source: an amplifier stands right behind it. */
  readonly isAmplified?: true;
  /** A source that is a dish: its level is that of the sky, and a larger one helps. */
  readonly isDish?: true;
};

/** Marks a dish among the sources. */
export function dishField({ kind, ports }: PartRecord): Pick<Blamed, "isDish"> {
  const isDish = kind.family === "receive" && ports.some((p) => p.medium === "sky");
  return isDish ? { isDish } : {};
}
