/** Rain turns a little of one polarisation into the other: drops are flat, and fall aslant. */

/** Spread of the drops' canting for a share of the time [degrees]: 0 at 1 %, 5 at 0.1 %, 10 at 0.01 %, 15 at 0.001 %. */
function cantingDeg(timePercent: number): number {
  return Math.min(15, Math.max(0, -5 * Math.log10(timePercent)));
}

/** Terms of frequency [dB] and of attenuation [dB per decade] (P.618-13 §4.1 steps 1 and 2, from 6 to 36 GHz; from memory). */
function termsAt(frequencyGHz: number): { readonly base: number; readonly perDecade: number } {
  const f = frequencyGHz;
  const base = f < 9 ? 60 * Math.log10(f) - 28.3 : 26 * Math.log10(f) + 4.1;
  const perDecade = f < 9 ? 30.8 * f ** -0.21 : f < 20 ? 12.8 * f ** 0.19 : 22.6;
  return { base, perDecade };
}

/** The method begins here; below, the same rain is looked at here and carried over (step of P.618-13 §4.1.2) [GHz]. */
const LEAST_GHZ = 6;

/** How attenuation grows from C band to 6 GHz: 6.3 to 7.1 times from 4 GHz in 50 mm/h by P.838-3, which is f^4.6. */
const GROWS_BY = 4.6;

/**
 * What rain and ice leave between two polarisations [dB, positive] (ITU-R P.618-13 §4.1, up to 36 GHz; below 6 GHz its
 * scaling: 20·log10(6/f) more than at 6 GHz in the same rain). +∞ without rain. `tiltDeg`: of the wave against the horizon; 45 stands for a circular one and is the worst.
 * From 9 to 20 GHz XPD = 26·log10(f) + 4.1 − 12.8·f^0.19·log10(A) − 10·log10(1 − 0.484·(1 + cos 4τ)) − 40·log10(cos el) + 0.0053·σ², less ice.
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
  const f = Math.max(LEAST_GHZ, o.frequencyMHz / 1000);
  const carriedBy = f / (o.frequencyMHz / 1000);
  const attenuationDb = o.attenuationDb * carriedBy ** GROWS_BY;
  const { base, perDecade } = termsAt(f);
  const elevation = (Math.min(60, Math.max(0, o.elevationDeg)) * Math.PI) / 180;
  const rain =
    base -
    perDecade * Math.log10(attenuationDb) -
    10 * Math.log10(1 - 0.484 * (1 + Math.cos((4 * o.tiltDeg * Math.PI) / 180))) -
    40 * Math.log10(Math.cos(elevation)) +
    0.0053 * cantingDeg(o.timePercent) ** 2;
  const ice = (rain * (0.3 + 0.1 * Math.log10(o.timePercent))) / 2;
  return rain - ice + 20 * Math.log10(carriedBy);
}
