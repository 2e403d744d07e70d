/** Which level is asked about, and how a click on a figure turns into that question. */
import type { CarrierId } from "../../../evaluate/trace.ts";
import type { Band, Stack } from "../../../signal/band.ts";
import { cniDb, isLive } from "../../../signal/readout.ts";

export type Question = {
  /** Where: an output port, or an input that something is joined to. */
  readonly at: { readonly part: string; readonly port: string };
  readonly carrier: CarrierId;
  /** Of a channel-stacked feed: the user band that carries it. */
  readonly userBand?: number;
  /** Why just this carrier: "the weakest of 6". */
  readonly which?: string;
};

/** The question about one carrier of a band; null for a user band that nothing could be put on. */
export function questionAt(at: Question["at"], band: Band, i: number, which?: string): Question | null {
  const why = which === undefined ? {} : { which };
  const { stack } = band;
  if (!stack) return { at, carrier: carrierId(band, i), ...why };
  const held = worstHeld(stack);
  return held && { at, carrier: held, userBand: stack.numbers[i] ?? 0, ...why };
}

function carrierId(band: Band, i: number): CarrierId {
  return { origin: band.origin.key, index: band.grid.index[i] ?? 0 };
}

/** A user band's noise is reckoned with that of the worst transponder it may hold: that one is followed. */
function worstHeld(stack: Stack): CarrierId | null {
  let worst: CarrierId | null = null;
  let leastDb = Number.POSITIVE_INFINITY;
  for (const held of stack.holds)
    for (let i = 0; i < held.level.length; i++) {
      if (!isLive(held, i) || cniDb(held, i) > leastDb) continue;
      leastDb = cniDb(held, i);
      worst = carrierId(held, i);
    }
  return worst;
}

/** Positions of the weakest and the strongest live carrier of a band; null when none lives. */
export function extremesOf(band: Band): { readonly weakest: number; readonly strongest: number } | null {
  let weakest = -1;
  let strongest = -1;
  for (let i = 0; i < band.level.length; i++) {
    const level = band.level[i] ?? Number.NaN;
    if (!isLive(band, i) || !Number.isFinite(level)) continue;
    if (weakest < 0 || level < (band.level[weakest] ?? 0)) weakest = i;
    if (strongest < 0 || level > (band.level[strongest] ?? 0)) strongest = i;
  }
  return weakest < 0 ? null : { weakest, strongest };
}
