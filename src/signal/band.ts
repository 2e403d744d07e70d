/** A band on a wire: one service from one origin, its carriers as flat arrays. */
import type { Carrier, Origin, SkyHalf } from "./carrier.ts";
import type { Condition, DiesAtVertical } from "./control.ts";

/**
 * The frequencies of a band, shared by identity along everything that does not convert,
 * so that a gain curve is worked out once per grid and curve and not once per wire.
 */
export type Grid = {
  readonly plan: readonly Carrier[];
  /** Entry of `plan` for each carrier. */
  readonly index: Uint16Array;
  /** Centre now [MHz]. */
  readonly centre: Float64Array;
  /** Occupied bandwidth [MHz]. */
  readonly width: Float64Array;
  /** Thermal noise kTB at 290 K in the carrier's noise bandwidth [(µV)² into 75 Ω]. */
  readonly ktb: Float64Array;
  /** C/N that the carrier needs [dB], from its mode. */
  readonly required: Float64Array;
  /** Lowest and highest occupied edge of all carriers [MHz]; 0 and 0 for an empty grid. */
  readonly fromMHz: number;
  readonly toMHz: number;
};

/** Why carriers are no longer usable from some part on. */
export type Cut = { readonly part: string; readonly reason: CutReason };
export type CutReason = "filter" | "range" | "stopped";

/** Standard of single-cable messages; "both": EN 50607, and EN 50494 up to user band 8. */
export type StackStandard = "EN 50494" | "EN 50607" | "both";

/** What a user band of a channel-stacked feed can hold. */
export type Stack = {
  readonly standard: StackStandard;
  /** Standard of the messages that each user band listens to, in the order of `numbers`. */
  readonly standards: readonly StackStandard[];
  /** Converter that stacks. */
  readonly part: string;
  readonly port: string;
  /** User band numbers, one for each carrier of the grid, in the same order. */
  readonly numbers: readonly number[];
  /** The bands at the converter's input: any live carrier of them can be put on any user band. */
  readonly holds: readonly Band[];
  /** Oscillator that the converter reckons with for whole polarisations [MHz]; absent where it takes none. */
  readonly widebandLoMHz?: number;
  /** Those of them that came in where the converter expects another plane. */
  readonly strays: ReadonlySet<Band>;
  /** Receiver inputs whose messages reach the converter. */
  readonly control: Condition["at"];
  /**
   * What makes the user bands: their level, the least level of a carrier there with which they have it [dBµV], and its
   * noise figure [dB].
   */
  readonly stage: {
    readonly levelDbuv: number;
    readonly leastDbuv: number;
    readonly noiseFigureDb: number;
  };
  /** Level of the weakest carrier as it leaves on a user band [dBµV]. */
  readonly entryLevelDbuv: number;
  /** Noise of the worst carrier there, that of the stage included, and all that disturbs it, as shares of its power. */
  readonly entryNoiseRatio: number;
  readonly entryInterferenceRatio: number;
};

export type Band = {
  readonly origin: Origin;
  readonly grid: Grid;
  /** Level of each carrier [dBµV into 75 Ω]; also of a cut carrier, whose rest may still disturb others. */
  readonly level: Float64Array;
  /** Noise in each carrier's noise bandwidth [(µV)² into 75 Ω, a linear power]. */
  readonly noise: Float64Array;
  /** Interference in each carrier from other signals [(µV)², linear]. */
  readonly interference: Float64Array;
  /**
   * Third-order products of amplifiers in each carrier [(µV)², linear]; absent where there are none. They stand apart,
   * because those of the next amplifier of the same path are in step with them: then voltages add.
   */
  readonly products?: Float64Array;
  /**
   * How much of the interference leaked in on the signal's own way, as a share of each carrier's power [linear]: from
   * neighbours in the sky, from the other polarisation, across a switch. Part of `interference`, but no collision of two
   * signals on a wire. Gain changes both alike, so the share stays. Absent where nothing leaked.
   */
  readonly leakShare?: Float64Array;
  /** 0: live; n: cut for the reason `cuts[n − 1]`. Shared by identity while nothing is cut. */
  readonly cut: Uint16Array;
  readonly cuts: readonly Cut[];
  /** Which half of the sky band a universal converter took it from. */
  readonly half?: SkyHalf;
  /** Local oscillators it went through [MHz], in order: it lies by their sum below the sky; negative where moved up. */
  readonly shifts: readonly number[];
  /** The first of them stands above the signal: the order of frequencies is turned round, and IF = LO − RF. */
  readonly isInverted?: true;
  /** On which switches it depends; bands that contradict each other are alternatives. */
  readonly conditions: readonly Condition[];
  /** True while every condition holds now. */
  readonly selected: boolean;
  /** Parts on its way that die while vertical is asked for, and how much weaker it then is [dB]; absent without any. */
  readonly failing?: readonly { readonly at: DiesAtVertical; readonly lossDb: number }[];
  /** Present on a channel-stacked feed. */
  readonly stack?: Stack;
  /** Set on a converter's noise floor. */
  readonly isFloor?: true;
};

/** Everything on one wire. The same object while nothing changed. */
export type Spectrum = {
  readonly bands: readonly Band[];
  /**
   * What converters send out between and beside their carriers: noise, cut into slices, each slice a carrier
   * of its power. Within its own carriers a converter's noise is already in their `noise`; a floor only
   * disturbs what it is brought together with. Absent where there is none.
   */
  readonly floors?: readonly Band[];
};
export const SILENCE: Spectrum = { bands: [] };
