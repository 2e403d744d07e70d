/** What travels on a wire, before any wire touches it: services and the carriers of a plan. */

/**
 * A service as the trade names it. "distant" is broadcasting that nobody here wants (a far transmitter on the same
 * channels); it, "mobile" and "cordless" (phone masts, DECT) are unwanted guests.
 */
export type Service = "tv" | "dab" | "fm" | "satellite" | "distant" | "mobile" | "cordless";

export const SERVICES: readonly Service[] = ["tv", "dab", "fm", "satellite", "distant", "mobile", "cordless"];

/** Services that somebody may want to receive; the others only disturb. */
export const WANTED_SERVICES = ["tv", "dab", "fm", "satellite"] as const satisfies readonly Service[];

export const SERVICE_NAMES: Readonly<Record<Service, string>> = {
  tv: "Terrestrial TV",
  dab: "DAB radio",
  fm: "FM radio",
  satellite: "Satellite",
  distant: "A distant transmitter",
  mobile: "Mobile phone",
  cordless: "Cordless phone (DECT)",
};

/** Whether a modulation is one of cable television, DVB-C. */
export function isCableMode(mode: string): boolean {
  return mode.startsWith("dvbc-");
}

/** How television comes, where it does not come from the air alone. */
export type Television = "by cable" | "by air and cable";

/** How carriers of these modulations come; nothing where all of them are from the air, or none is television. */
export function televisionOf(
  service: Service,
  modes: Iterable<string>,
): { readonly television?: Television } {
  if (service !== "tv") return {};
  let cable = 0;
  let all = 0;
  for (const mode of modes) {
    all++;
    if (isCableMode(mode)) cable++;
  }
  return cable === 0 ? {} : { television: cable === all ? "by cable" : "by air and cable" };
}

const TELEVISION_NAMES: Readonly<Record<Television, string>> = {
  "by cable": "Cable TV",
  "by air and cable": "Terrestrial and cable TV",
};

/** A service by its name; television by the way it comes. */
export function serviceName(of: { readonly service: Service; readonly television?: Television }): string {
  return of.television ? TELEVISION_NAMES[of.television] : SERVICE_NAMES[of.service];
}

export type Polarisation = "V" | "H";
/** A wave on its way from a satellite: upright, level, or turning to the right or to the left. */
export type Wave = Polarisation | "R" | "L";
export type SkyHalf = "low" | "high";

/** Polarisation and sky band as one word: what 13/18 V and the 22 kHz tone select. */
export type Quadrant = "VL" | "VH" | "HL" | "HH";
export const QUADRANTS: readonly Quadrant[] = ["VL", "VH", "HL", "HH"];

/** One carrier of a source's plan. */
export type Carrier = {
  /** Short name for strips and tables: "C22", "12B", "11 778 V". */
  readonly name: string;
  /** Centre frequency on air [MHz]. */
  readonly airMHz: number;
  /** Occupied bandwidth [MHz], for drawing and for overlaps. */
  readonly widthMHz: number;
  /** Bandwidth in which noise counts [MHz]: the symbol rate, or the occupied width. */
  readonly noiseMHz: number;
  /** Modulation, a key of `rf/thresholds.ts`; decides the C/N that the carrier needs. */
  readonly mode: string;
  /** A channel that was given to phones: listed, and nobody sends there or misses it. */
  readonly former?: true;
};

/** Where a band came from. Two bands with the same `key` are one signal on two ways. */
export type Origin = {
  /** Unique within a design: source part, and polarisation where there is one; or the transmitter. */
  readonly key: string;
  readonly service: Service;
  /** Id of the source part (aerial, dish, pick-up), or of the converter for a stacked feed. */
  readonly part: string;
  /** Orbital position as the user wrote it, for instance "20.0°E". */
  readonly satellite?: string;
  /**
   * Terrestrial transmitter as the user wrote it. Bands of one transmitter have one `key`, by whichever aerial they
   * come, and an entry of their plans means the same carrier: so their ways are joined carrier by carrier.
   */
  readonly transmitter?: string;
  /** What a receiver has to ask for: right-hand circular stands for V (13 V), left-hand for H (18 V). */
  readonly polarisation?: Polarisation;
  /** The wave turns on its way: right-hand where `polarisation` is V, left-hand where it is H. */
  readonly circular?: true;
};
