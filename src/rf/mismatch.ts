/** What two imperfect ends of a line make of it: ripple of the level over frequency. */
import { LIGHT_M_PER_S } from "./path.ts";

/** Speed of light, as metres that a wave runs in one period of 1 MHz [m·MHz]. */
export const LIGHT_M_MHZ = LIGHT_M_PER_S / 1e6;

/** Most that a level is said to fall where two waves cancel [dB]: no real cancellation is complete. */
const DEEPEST_DB = 40;

/** Voltage that comes back, as a share of what went in [0..1]; a return loss of 0 dB is an open or shorted end. */
export function reflectionOf(returnLossDb: number): number {
  return 10 ** (-Math.max(0, returnLossDb) / 20);
}

/** Return loss of a share that comes back [dB]; +Infinity for none. */
export function returnLossOf(reflection: number): number {
  return -20 * Math.log10(reflection);
}

/** How far a level may be moved up and down [dB, both positive]. */
export type Ripple = { readonly upDb: number; readonly downDb: number };

/**
 * Ripple that a second wave makes, which arrives with `share` of the voltage of the first [0..1] and in any phase.
 * Down reaches further than up; equal waves cancel, which is told as 40 dB.
 * 20·log10(1 ± share)
 */
export function rippleOf(share: number): Ripple {
  return {
    upDb: 20 * Math.log10(1 + share),
    downDb: share < 1 ? Math.min(DEEPEST_DB, 0 - 20 * Math.log10(1 - share)) : DEEPEST_DB,
  };
}

/**
 * Ripple between two ends of a line. Each wave that comes late has run it twice more, so its loss counts twice.
 * 20·log10(1 ± r1·r2·a²), a the one-way voltage factor of the line.
 */
export function mismatchRipple(o: {
  readonly nearReturnLossDb: number;
  readonly farReturnLossDb: number;
  /** Loss of the line between them, one way. */
  readonly lineLossDb: number;
}): Ripple {
  return rippleOf(
    reflectionOf(o.nearReturnLossDb) * reflectionOf(o.farReturnLossDb) * reflectionOf(2 * o.lineLossDb),
  );
}

/**
 * From crest to crest of such a ripple [MHz]; Infinity where there is no line between the ends.
 * c·VF/(2·L)
 */
export function ripplePeriodMHz(o: { readonly lengthM: number; readonly velocityFactor: number }): number {
  return (LIGHT_M_MHZ * o.velocityFactor) / (2 * o.lengthM);
}

/**
 * What happens where lines of one impedance are simply joined: each sees all others in parallel.
 * Loss from any to any other [dB], 20·log10(n/2), and return loss of each [dB], 20·log10(n/(n − 2)). Three lines:
 * 3.52 dB and 9.54 dB.
 */
export function joinedLinesDb(lines: number): { readonly lossDb: number; readonly returnLossDb: number } {
  return { lossDb: 20 * Math.log10(lines / 2), returnLossDb: 20 * Math.log10(lines / (lines - 2)) };
}
