/** What an amplifier adds of its own when many carriers drive it hard. */

/**
 * How much less each carrier may carry when there are more than the two of the rated output:
 * - "beats": third-order beats of a channel raster, 7.5·log10(n − 1); TV amplifiers, up to about 10 channels;
 * - "power": noise-like sum of many carriers, 10·log10(n/2); satellite IF.
 * Both as trade appendices give them; the first formula from memory, against a published table within 1 dB.
 */
export type DeratingRule = "beats" | "power";

/** Rated output of an amplifier: two carriers at `ratedDbuv` each, products `ratioDb` below them. */
export type RatedOutput = {
  /** Level of each of two carriers [dBµV]. */
  readonly ratedDbuv: number;
  /** Carrier to third-order product at that level [dB]: 60 for TV, 35 for satellite IF (EN 60728-3, from memory). */
  readonly ratioDb: number;
};

/** How far below its third-order intercept a stage saturates [dB]: 1 dB compression lies 10 dB below, saturation 2 dB above that. */
const SATURATION_BELOW_INTERCEPT_DB = 8;

/**
 * Most that a stage puts out, whatever drives it [dBµV, all carriers together].
 * The third-order intercept lies half the ratio above the rated level; the rest is a rule of thumb, from memory.
 */
export function saturatedDbuv(rating: RatedOutput): number {
  return rating.ratedDbuv + rating.ratioDb / 2 - SATURATION_BELOW_INTERCEPT_DB;
}

/** Reduction of the rated output for a number of carriers [dB, positive]; none for one or two. */
export function deratingDb(options: { rule: DeratingRule; carriers: number }): number {
  const { rule, carriers } = options;
  if (carriers <= 2) return 0;
  return rule === "beats" ? 7.5 * Math.log10(carriers - 1) : 10 * Math.log10(carriers / 2);
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
 * The two derating rules written out for n = (Σp)²/Σp² carriers of level L = Σp²/Σp, so that one more carrier,
 * however weak or strong, never lowers the products:
 * beats: 15·log10(Σp² − (Σp²/Σp)²) − ratio − 2·rated;  power: 10·log10(Σp·Σp²) − 6.02 − ratio − 2·rated.
 * For equal carriers this is `thirdOrderProductDbuv`.
 */
export function productsOfDbuv(options: RatedOutput & CarrierSums & { rule: DeratingRule }): number {
  const { power, squares, rule, ratioDb, ratedDbuv } = options;
  const sum =
    rule === "beats"
      ? 15 * Math.log10(Math.max(0, squares - (squares / power) ** 2))
      : 10 * Math.log10(power * squares) - 20 * Math.log10(2);
  return sum - ratioDb - 2 * ratedDbuv;
}
