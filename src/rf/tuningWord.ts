/** The word by which a single-cable receiver tells the converter which transponder to put on its user band. */

/** What a receiver sends and does to get a transponder on its user band. */
export type TuningRequest = {
  /** The number in the message. */
  readonly word: number;
  /** Where the receiver then finds the transponder [MHz]. */
  readonly tunesToMHz: number;
};

/** The word 0 switches a user band off, so tuning starts at 1. */
const FIRST_WORD = 1;
const LAST_WORD_10_BITS = 1023;
const LAST_WORD_11_BITS = 2047;

/**
 * Tuning by EN 50494 (SCR); null where the ten bits do not reach.
 * The converter moves in steps of 4 MHz, so the transponder comes out up to 2 MHz beside the centre of the
 * user band, and the receiver has to follow it there.
 * T = round((IF + user band)/4) − 350; the receiver tunes to 4·(T + 350) − IF
 * Source: EN 50494, as implemented in public receiver code (Linux DVB patches and libraries).
 */
export function tuningScr(options: { ifMHz: number; userBandMHz: number }): TuningRequest | null {
  const { ifMHz, userBandMHz } = options;
  const steps = Math.round((ifMHz + userBandMHz) / 4);
  return within(steps - 350, LAST_WORD_10_BITS, 4 * steps - ifMHz);
}

/**
 * Tuning by EN 50607 (dSCR); null where the eleven bits do not reach: below 101 and above 2147 MHz of IF.
 * In steps of 1 MHz and whatever the user band; the receiver stays at its centre, up to half a megahertz
 * beside the transponder.
 * T = round(IF) − 100
 * Source: EN 50607, as implemented in public receiver code.
 */
export function tuningDscr(options: { ifMHz: number; userBandMHz: number }): TuningRequest | null {
  return within(Math.round(options.ifMHz) - 100, LAST_WORD_11_BITS, options.userBandMHz);
}

function within(word: number, lastWord: number, tunesToMHz: number): TuningRequest | null {
  return word >= FIRST_WORD && word <= lastWord ? { word, tunesToMHz } : null;
}
