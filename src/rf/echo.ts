/** One signal by two ways: where the copies cancel, and how deep. */

/**
 * Depth of the notches that a copy so much weaker cuts into a signal, below the stronger copy alone [dB].
 * −20·log10(1 − 10^(−Δ/20)); Infinity for copies of one level, which cancel wholly where they are half a wave apart.
 */
export function notchDepthDb(differenceDb: number): number {
  return -20 * Math.log10(1 - 10 ** (-Math.abs(differenceDb) / 20));
}

/** "deep": a channel hit by such a notch is lost unless it has much to spare; "uneven": it costs margin; "slight": nobody notices. */
export type EchoGrade = "deep" | "uneven" | "slight";

/** Grades by the depth of the notches: from 10 dB, from 3 dB. A choice of this tool. */
export function echoGrade(differenceDb: number): EchoGrade {
  const depthDb = notchDepthDb(differenceDb);
  return depthDb >= 10 ? "deep" : depthDb >= 3 ? "uneven" : "slight";
}
