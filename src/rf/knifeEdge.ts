/** A roof edge, a ridge or a row of trees before a dish: a wave bends a little over it. */
import { wavelengthM } from "./path.ts";

/** Below this the way is as good as free (Fresnel's first zone more than half clear). */
const CLEAR_NU = -0.78;

/**
 * Loss behind one sharp edge [dB, positive]. 6 dB where the ray just touches the edge; 0 well above it.
 * `shadowDeg`: how far the edge stands above the ray, negative where the ray passes over it. The other end is far away.
 * ν = θ·√(2·d/λ); L = 6.9 + 20·log10(√((ν − 0.1)² + 1) + ν − 0.1) (ITU-R P.526, from memory)
 */
export function knifeEdgeLossDb(o: {
  readonly shadowDeg: number;
  readonly distanceM: number;
  readonly frequencyMHz: number;
}): number {
  const nu = ((o.shadowDeg * Math.PI) / 180) * Math.sqrt((2 * o.distanceM) / wavelengthM(o.frequencyMHz));
  if (nu <= CLEAR_NU) return 0;
  return Math.max(0, 6.9 + 20 * Math.log10(Math.sqrt((nu - 0.1) ** 2 + 1) + nu - 0.1));
}
