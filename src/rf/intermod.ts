/** What an amplifier adds of its own when many carriers drive it hard. */

/**
 * How much less each carrier may carry when there are more than the two of the rated output:
 * - "beats": third-order beats of a channel raster, 7.5·log10(n − 1); TV amplifiers, up to about 10 channels;
 * - "channels": the same with every beat in the worst phase, 10·log10(n − 1); what cautious planners take off;
 * - "power": noise-like sum of many carriers, 10·log10(n/2); satellite IF.
 * The first and the last as trade appendices give them (the first formula from memory, against a published table within
 * 1 dB); the second is common practice, no source.
 */
export type DeratingRule = "beats" | "channels" | "power";

export const DERATING_RULES: readonly DeratingRule[] = ["beats", "channels", "power"];

/** Rated output of an amplifier: two carriers at `ratedDbuv` each, products `ratioDb` below them. */
export type RatedOutput = {
  /** Level of each of two carriers [dBµV]. */
  readonly ratedDbuv: number;
  /** Carrier to third-order product at that level [dB]: 60 for TV, 35 for satellite IF (EN 60728-3, from memory). */
  readonly ratioDb: number;
};

/**
 * 1 dB compression of one carrier lies this far below the two-tone intercept of a cubic curve [dB], as the output would be
 * without compression: 10·log10(1 − 10^(−1/20)) = −9.64 dB. Real amplifiers: 10 to 15 dB, from memory.
 */
const COMPRESSION_BELOW_INTERCEPT_DB = -10 * Math.log10(1 - 10 ** (-1 / 20));

/** How abruptly a stage saturates: exponent of Rapp's law; 2 to 3 are usual for transistor amplifiers, from memory. */
const SMOOTHNESS = 2;

/** Rapp's law takes 1 dB where the output would lie so far below saturation [dB]: (10/p)·log10(10^(p/10) − 1) = −1.16. */
const ONE_DB_FROM_SATURATION_DB = (10 / SMOOTHNESS) * Math.log10(10 ** (SMOOTHNESS / 10) - 1);

/**
 * Most that a stage puts out, whatever drives it [dBµV, all carriers together].
 * The third-order intercept lies half the ratio above the rated level.
 */
export function saturatedDbuv(rating: RatedOutput): number {
  const interceptDbuv = rating.ratedDbuv + rating.ratioDb / 2;
  return interceptDbuv - COMPRESSION_BELOW_INTERCEPT_DB - ONE_DB_FROM_SATURATION_DB;
}

/**
 * How much less comes out of a stage than its gain promises [dB, positive].
 * `totalDbuv`: power of all carriers as it would come out without compression. Nothing far below saturation, 1 dB at the
 * compression point, and all that is too much far above: a smooth curve (Rapp's law for the amplitude, p = 2).
 * ΔL = (10/p)·log10(1 + 10^(p·x/10)), x: total over saturation
 */
export function compressionDb(options: RatedOutput & { totalDbuv: number }): number {
  const x = options.totalDbuv - saturatedDbuv(options);
  // Written so that no power of a large number is taken.
  return Math.max(0, x) + (10 / SMOOTHNESS) * Math.log10(1 + 10 ** ((-SMOOTHNESS * Math.abs(x)) / 10));
}

/**
 * Products of two stages of one path [(µV)², linear]: alike amplifiers distort alike, so their products are in step and
 * voltages add. Two equal ones give 6 dB more, n of them 20·log10(n). Powers add in `a + b` (10·log10(n)).
 */
export function sumInStep(a: number, b: number): number {
  return a + b + 2 * Math.sqrt(a * b);
}

/** Reduction of the rated output for a number of carriers [dB, positive]; none for one or two. */
export function deratingDb(options: { rule: DeratingRule; carriers: number }): number {
  const { rule, carriers } = options;
  if (carriers <= 2) return 0;
  switch (rule) {
    case "beats":
      return 7.5 * Math.log10(carriers - 1);
    case "channels":
      return 10 * Math.log10(carriers - 1);
    case "power":
      return 10 * Math.log10(carriers / 2);
  }
}

/** Highest level of each carrier that keeps the rated ratio with so many carriers [dBµV]. */
export function highestOutputDbuv(options: RatedOutput & { rule: DeratingRule; carriers: number }): number {
  return options.ratedDbuv - deratingDb(options);
}

/**
 * Carrier to third-order product at a given output [dB].
 * Every decibel more at the output costs two. Far above the rated output a real amplifier compresses
 * and is worse than this.
 * C/I = ratio + 2·(rated − derating − level)
 */
export function thirdOrderRatioDb(
  options: RatedOutput & { rule: DeratingRule; carriers: number; levelDbuv: number },
): number {
  return options.ratioDb + 2 * (highestOutputDbuv(options) - options.levelDbuv);
}

/**
 * Level of the third-order products in a carrier's channel [dBµV]: they move 3:1 with the carriers.
 * A single carrier has nothing to beat with: −Infinity, no product.
 */
export function thirdOrderProductDbuv(
  options: RatedOutput & { rule: DeratingRule; carriers: number; levelDbuv: number },
): number {
  if (options.carriers < 2) return Number.NEGATIVE_INFINITY;
  return options.levelDbuv - thirdOrderRatioDb(options);
}

/** Carriers of any levels driving one stage, as the sums that third-order products depend on. */
export type CarrierSums = {
  /** Σp and Σp² over the carriers' powers p [(µV)², (µV)⁴]. */
  readonly power: number;
  readonly squares: number;
};

/**
 * Carriers of unequal levels as so many equal ones: n = (Σp)²/Σp², each at L = Σp²/Σp.
 * Weak ones hardly count, one that towers over the rest counts nearly alone; equal carriers give their number.
 */
export function equalCarriers(sums: CarrierSums): { carriers: number; levelDbuv: number } {
  return {
    carriers: (sums.power * sums.power) / sums.squares,
    levelDbuv: 10 * Math.log10(sums.squares / sums.power),
  };
}

/**
 * Level of the third-order products of carriers of any levels [dBµV].
 * The derating rules written out for n = (Σp)²/Σp² carriers of level L = Σp²/Σp, so that one more carrier,
 * however weak or strong, never lowers the products:
 * beats: 15·log10(Σp² − (Σp²/Σp)²) − ratio − 2·rated;  power: 10·log10(Σp·Σp²) − 6.02 − ratio − 2·rated;
 * channels: 20·log10(Σp² − (Σp²/Σp)²) + 10·log10(Σp/Σp²) − ratio − 2·rated.
 * For equal carriers this is `thirdOrderProductDbuv`.
 */
export function productsOfDbuv(options: RatedOutput & CarrierSums & { rule: DeratingRule }): number {
  const { power, squares, rule, ratioDb, ratedDbuv } = options;
  return sumFor(rule, power, squares) - ratioDb - 2 * ratedDbuv;
}

function sumFor(rule: DeratingRule, power: number, squares: number): number {
  const mixed = Math.max(0, squares - (squares / power) ** 2);
  switch (rule) {
    case "beats":
      return 15 * Math.log10(mixed);
    case "channels":
      return 20 * Math.log10(mixed) + 10 * Math.log10(power / squares);
    case "power":
      return 10 * Math.log10(power * squares) - 20 * Math.log10(2);
  }
}
