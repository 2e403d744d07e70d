/** Specific attenuation of rain, ITU-R P.838-3, 1 to 1000 GHz. */

/** One bell curve over log frequency: height, centre, width. */
type Bell = readonly [a: number, b: number, c: number];
/** Sum of bells on a slope. */
type Fit = { readonly bells: readonly Bell[]; readonly m: number; readonly c0: number };

// P.838-3 Tables 1 to 4, as implemented in a public propagation library.
const LOG_K_H: Fit = {
  bells: [
    [-5.3398, -0.10008, 1.13098],
    [-0.35351, 1.2697, 0.454],
    [-0.23789, 0.86036, 0.15354],
    [-0.94158, 0.64552, 0.16817],
  ],
  m: -0.18961,
  c0: 0.71147,
};
const LOG_K_V: Fit = {
  bells: [
    [-3.80595, 0.56934, 0.81061],
    [-3.44965, -0.22911, 0.51059],
    [-0.39902, 0.73042, 0.11899],
    [0.50167, 1.07319, 0.27195],
  ],
  m: -0.16398,
  c0: 0.63297,
};
const ALPHA_H: Fit = {
  bells: [
    [-0.14318, 1.82442, -0.55187],
    [0.29591, 0.77564, 0.19822],
    [0.32177, 0.63773, 0.13164],
    [-5.3761, -0.9623, 1.47828],
    [16.1721, -3.2998, 3.4399],
  ],
  m: 0.67849,
  c0: -1.95537,
};
const ALPHA_V: Fit = {
  bells: [
    [-0.07771, 2.3384, -0.76284],
    [0.56727, 0.95545, 0.54039],
    [-0.20238, 1.1452, 0.26809],
    [-48.2991, 0.791669, 0.116226],
    [48.5833, 0.791459, 0.116479],
  ],
  m: -0.053739,
  c0: 0.83433,
};

function fitted(fit: Fit, frequencyMHz: number): number {
  const x = Math.log10(frequencyMHz / 1000);
  const bells = fit.bells.reduce((sum, [a, b, c]) => sum + a * Math.exp(-(((x - b) / c) ** 2)), 0);
  return bells + fit.m * x + fit.c0;
}

export type RainPath = {
  readonly frequencyMHz: number;
  readonly elevationDeg: number;
  /** Tilt of the polarisation from horizontal [degrees]: 0 horizontal, 90 vertical, 45 circular. */
  readonly tiltDeg: number;
};

/**
 * Coefficients k and α of the specific attenuation γ = k·R^α [dB/km, R in mm/h].
 * Horizontal suffers more than vertical in heavy rain, since falling drops are flattened.
 * k = (k_H + k_V + (k_H − k_V)·cos²θ·cos 2τ)/2, and the same for k·α
 */
export function rainCoefficients(path: RainPath): { k: number; alpha: number } {
  const kH = 10 ** fitted(LOG_K_H, path.frequencyMHz);
  const kV = 10 ** fitted(LOG_K_V, path.frequencyMHz);
  const kAlphaH = kH * fitted(ALPHA_H, path.frequencyMHz);
  const kAlphaV = kV * fitted(ALPHA_V, path.frequencyMHz);
  const lean =
    Math.cos((path.elevationDeg * Math.PI) / 180) ** 2 * Math.cos((2 * path.tiltDeg * Math.PI) / 180);
  const k = (kH + kV + (kH - kV) * lean) / 2;
  return { k, alpha: (kAlphaH + kAlphaV + (kAlphaH - kAlphaV) * lean) / (2 * k) };
}
