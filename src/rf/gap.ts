/** A gap in a conductor: what still couples across it. */
import { IMPEDANCE_OHM } from "./decibel.ts";

/**
 * Loss of a small capacitance in series with a matched line [dB, positive]: 6 dB less for each doubled frequency, as long as
 * it is large.
 * 10·log10(1 + (1/(2·ω·C·Z0))²)
 */
export function gapLossDb({
  picofarad,
  frequencyMHz,
}: {
  readonly picofarad: number;
  readonly frequencyMHz: number;
}): number {
  const reactance = 1 / (2 * Math.PI * frequencyMHz * 1e6 * picofarad * 1e-12);
  return 10 * Math.log10(1 + (reactance / (2 * IMPEDANCE_OHM)) ** 2);
}
