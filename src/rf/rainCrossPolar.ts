/** Rain turns a little of one polarisation into the other: drops are flat, and fall aslant. */

/** Spread of the drops' canting for a share of the time [degrees]: 0 at 1 %, 5 at 0.1 %, 10 at 0.01 %, 15 at 0.001 %. */
function cantingDeg(timePercent: number): number {
  return Math.min(15, Math.max(0, -5 * Math.log10(timePercent)));
}

/**
 * What rain and ice leave between two polarisations [dB, positive] (ITU-R P.618-13 §4.1, here for 9 to 20 GHz).
 * +∞ without rain. `tiltDeg`: of the wave against the horizon; 45 stands for a circular one and is the worst.
 * XPD = 26·log10(f) + 4.1 − 12.8·f^0.19·log10(A) − 10·log10(1 − 0.484·(1 + cos 4τ)) − 40·log10(cos el) + 0.0053·σ², less ice.
 * The elevation counts up to 60°, where the method ends.
 */
export function rainCrossPolarDb(o: {
  readonly frequencyMHz: number;
  readonly attenuationDb: number;
  readonly elevationDeg: number;
  readonly tiltDeg: number;
  readonly timePercent: number;
}): number {
  if (!(o.attenuationDb > 0)) return Number.POSITIVE_INFINITY;
  const f = o.frequencyMHz / 1000;
  const elevation = (Math.min(60, Math.max(0, o.elevationDeg)) * Math.PI) / 180;
  const rain =
    26 * Math.log10(f) +
    4.1 -
    12.8 * f ** 0.19 * Math.log10(o.attenuationDb) -
    10 * Math.log10(1 - 0.484 * (1 + Math.cos((4 * o.tiltDeg * Math.PI) / 180))) -
    40 * Math.log10(Math.cos(elevation)) +
    0.0053 * cantingDeg(o.timePercent) ** 2;
  const ice = (rain * (0.3 + 0.1 * Math.log10(o.timePercent))) / 2;
  return rain - ice;
}
