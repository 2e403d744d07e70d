/** A length of line that hangs on another and ends open or shorted: where it takes a bite out of the spectrum. */
import { LIGHT_M_MHZ, type Ripple } from "./mismatch.ts";

export type StubEnd = "open" | "shorted";

export type Stub = {
  /** Metres of the line times 1/VF: as long as it looks to a wave. */
  readonly electricalM: number;
  readonly end: StubEnd;
};

/** Most notches that are listed: a long line makes one every few megahertz. */
const MOST_NOTCHES = 4096;

/**
 * Where a stub stops most, in a range [MHz], rising.
 * Open: (2n + 1)·c·VF/(4·L); shorted: n·c·VF/(2·L), n from 0: a short stops the lowest frequencies too.
 */
export function notchesMHz(
  { electricalM, end }: Stub,
  { fromMHz, toMHz }: { readonly fromMHz: number; readonly toMHz: number },
): readonly number[] {
  const periodMHz = LIGHT_M_MHZ / (2 * electricalM);
  const first = end === "open" ? periodMHz / 2 : 0;
  const found: number[] = [];
  const start = Math.max(0, Math.ceil((fromMHz - first) / periodMHz));
  for (let n = start; found.length < MOST_NOTCHES; n++) {
    const f = first + n * periodMHz;
    if (!(f <= toMHz)) break;
    found.push(f);
  }
  return found;
}

/** No real joint cancels more [dB]: what leaks past it, and the fit of its plugs; a choice of this tool. */
const DEEPEST_DB = 40;

const DB_PER_NEPER = 20 * Math.LOG10E;

/**
 * Loss in the middle of a notch [dB]: the less the stub itself loses, the deeper. Infinity for one without loss.
 * 20·log10(1 + 1/(2·tanh(aL)))
 */
export function stubNotchDb(stubLossDb: number): number {
  return 20 * Math.log10(1 + 1 / (2 * Math.tanh(stubLossDb / DB_PER_NEPER)));
}

/**
 * Loss that a stub makes on a matched line at one frequency [dB]: 0 midway between two notches for a stub without loss.
 * 20·log10|1 + Y/2|, Y = tanh(γL) of an open stub and coth(γL) of a shorted one, in units of the line's own.
 * `lossDb`: loss of the stub at this frequency, one way.
 */
export function stubLossDb(
  { electricalM, end }: Stub,
  { frequencyMHz, lossDb }: { readonly frequencyMHz: number; readonly lossDb: number },
): number {
  // What comes back from the end: e^(−2γL), turned over by a short.
  const back = 10 ** (-lossDb / 10) * (end === "open" ? 1 : -1);
  const turn = (4 * Math.PI * frequencyMHz * electricalM) / LIGHT_M_MHZ;
  const re = back * Math.cos(turn);
  const im = -back * Math.sin(turn);
  // Y = (1 − Γ)/(1 + Γ), so 1 + Y/2 = (3 + Γ)/(2·(1 + Γ)).
  return Math.min(DEEPEST_DB, 20 * Math.log10(Math.hypot(3 + re, im) / (2 * Math.hypot(1 + re, im))));
}

/** Parts that a carrier is cut into to find its mean power. */
const SLICES = 16;

/** The same over the width of a carrier, as its mean power falls [dB]: a narrow notch hurts a wide carrier less. */
export function carrierStubLossDb(
  stub: Stub,
  o: { readonly centreMHz: number; readonly widthMHz: number; readonly lossDb: number },
): number {
  if (o.widthMHz <= 0) return stubLossDb(stub, { frequencyMHz: o.centreMHz, lossDb: o.lossDb });
  let power = 0;
  for (let k = 0; k < SLICES; k++) {
    const frequencyMHz = o.centreMHz + o.widthMHz * ((k + 0.5) / SLICES - 0.5);
    power += 10 ** (-stubLossDb(stub, { frequencyMHz, lossDb: o.lossDb }) / 10);
  }
  return -10 * Math.log10(power / SLICES);
}

/** How well the length of a dead cable is known, as a share of it: nobody measures what lies in a wall. A choice of this tool. */
const LENGTH_KNOWN_TO = 0.05;

/**
 * How far the level behind a stub may lie above and below what its length makes it [dB], for that length is not known
 * exactly: a centimetre moves a notch. Between a notch and the crest beside it the loss only rises or falls.
 */
export function stubRangeOf(
  stub: Stub,
  o: { readonly centreMHz: number; readonly widthMHz: number; readonly lossDb: number },
): Ripple {
  const now = carrierStubLossDb(stub, o);
  // Half waves on it: notches and crests lie at halves of these, in turn.
  const halfWaves = (2 * o.centreMHz * stub.electricalM) / LIGHT_M_MHZ;
  const turns = [Math.floor(2 * halfWaves), Math.ceil(2 * halfWaves)].map((n) => n / (2 * halfWaves));
  const stretches = [1 - LENGTH_KNOWN_TO, 1 + LENGTH_KNOWN_TO, ...turns];
  let upDb = 0;
  let downDb = 0;
  for (const stretch of stretches) {
    if (!(Math.abs(stretch - 1) <= LENGTH_KNOWN_TO + 1e-9)) continue;
    const tried = carrierStubLossDb({ ...stub, electricalM: stub.electricalM * stretch }, o);
    upDb = Math.max(upDb, now - tried);
    downDb = Math.max(downDb, tried - now);
  }
  return { upDb, downDb };
}
