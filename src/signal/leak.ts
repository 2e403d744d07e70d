/** What comes through from where a signal should have been kept out: the other polarisation, the other inputs of a switch. */
import { dbToRatio } from "../rf/decibel.ts";
import type { Band } from "./band.ts";
import type { Origin, Wave } from "./carrier.ts";
import { powerInside, powersOfBand } from "./overlap.ts";
import { remembered } from "./remember.ts";
import { conditionsKey, exclusive, isSameWay } from "./treat.ts";

/** Share of power that a feed takes of a wave of each polarisation [0..1]. */
export type FeedShares = Readonly<Record<Wave, number>>;

export function waveOf({ polarisation, circular }: Pick<Origin, "polarisation" | "circular">): Wave {
  if (!circular) return polarisation ?? "V";
  return polarisation === "H" ? "L" : "R";
}

/** What a feed takes less of a band than of a wave that suits it [dB, 0 or negative]. */
export function feedGainDb(feed: FeedShares, origin: Origin): number {
  return 10 * Math.log10(feed[waveOf(origin)]);
}

/**
 * A band as a feed takes it from the beam: weaker where its wave does not suit the feed, and disturbed by all other
 * waves of the beam that share its frequencies, each by the share that the feed takes of it.
 */
export function takenByFeed(band: Band, beam: readonly Band[], feed: FeedShares): Band {
  const lessDb = feedGainDb(feed, band.origin);
  const leaked = sumOf(
    beam.flatMap((other): Float64Array[] => {
      const share = feed[waveOf(other.origin)];
      if (other === band || share === 0) return [];
      const power = powerInside(band.grid, other.grid, powersOfBand(other));
      return power ? [power.map((p) => p * share)] : [];
    }),
  );
  if (lessDb === 0 && !leaked) return band;
  // Where most of the carrier is lost, so is what disturbed it in the sky; a feed adds neither noise nor loss of its own.
  const kept = dbToRatio(lessDb);
  const before = lessDb === 0 ? band.interference : band.interference.map((i) => i * kept);
  return {
    ...band,
    level: lessDb === 0 ? band.level : band.level.map((level) => level + lessDb),
    interference: leaked ? before.map((i, k) => i + (leaked[k] ?? 0)) : before,
    // Against the carrier as the feed takes it.
    ...(leaked ? leakShareOf(band, leaked, kept) : {}),
  };
}

/** The share that leaked into a band, after `leaked` came to it [(µV)²]; `kept`: share of its own power that it keeps. */
export function leakShareOf(band: Band, leaked: Float64Array, kept = 1): Pick<Band, "leakShare"> {
  const before = band.leakShare;
  const shareAt = (power: number, k: number) => power / (kept * dbToRatio(band.level[k] ?? 0));
  return {
    // A level far below anything is no power at all: of nothing, nothing has no share.
    leakShare: leaked.map((power, k) => (before?.[k] ?? 0) + (power > 0 ? shareAt(power, k) : 0)),
  };
}

/**
 * A band behind a switch that keeps its inputs only so far apart. `others`: what comes in at each other input.
 * The figure is that of the worst pair of inputs, so of several inputs the worst counts, carrier by carrier.
 */
export function withCrosstalk(band: Band, others: readonly (readonly Band[])[], isolationDb: number): Band {
  const leaked = worstOf(others.flatMap((input) => insideOf(band, input) ?? []));
  if (!leaked) return band;
  const share = dbToRatio(-isolationDb);
  const crossed = leaked.map((power) => power * share);
  return {
    ...band,
    interference: band.interference.map((i, k) => i + (crossed[k] ?? 0)),
    ...leakShareOf(band, crossed),
  };
}

/** Power of all that comes by one input inside each carrier of a band; of alternatives the worst. */
function insideOf(band: Band, input: readonly Band[]): Float64Array | null {
  const settings = new Map<string, Float64Array[]>();
  for (const other of input) {
    if (exclusive(band, other) || (band.origin.key === other.origin.key && isSameWay(band, other))) continue;
    const power = powerInside(band.grid, other.grid, powersOfBand(other));
    if (power) remembered(settings, conditionsKey(other), () => []).push(power);
  }
  const always = sumOf(settings.get("") ?? []);
  settings.delete("");
  const worst = worstOf([...settings.values()].flatMap((powers) => sumOf(powers) ?? []));
  return sumOf([always, worst].flatMap((power) => power ?? []));
}

function sumOf(powers: readonly Float64Array[]): Float64Array | null {
  return merged(powers, (a, b) => a + b);
}

function worstOf(powers: readonly Float64Array[]): Float64Array | null {
  return merged(powers, Math.max);
}

function merged(powers: readonly Float64Array[], of: (a: number, b: number) => number): Float64Array | null {
  const [first, ...rest] = powers;
  if (!first) return null;
  return rest.reduce((all, one) => all.map((a, k) => of(a, one[k] ?? 0)), first);
}
