/** What the trade knows of an option beside its range: declared at the field, read by cures, faults, costs and causes. */

/**
 * What an option decides, whatever its key is: code looks for the meaning and never for a key.
 * "chosen loss": a value that is bought on purpose (pads, end plates), unlike an insertion loss that comes with a part.
 */
export type Meaning =
  | "gain"
  | "radio gain"
  | "conversion gain"
  | "terrestrial gain"
  | "user band level"
  | "output level"
  | "own channel"
  | "slope"
  | "input pad"
  | "tap loss"
  | "drop loss"
  | "chosen loss"
  | "channel list"
  | "channel raster"
  | "decoupling"
  | "screening"
  | "return loss"
  | "source level"
  | "level offset"
  | "wanted here"
  | "mast signal"
  | "rain loss"
  | "pointing loss"
  | "skew error"
  | "cross-polar isolation"
  | "feed type"
  | "crosstalk"
  | "neighbouring satellites"
  | "obstacles"
  | "further feeds"
  | "aim"
  | "bearing"
  | "pattern"
  | "beam width"
  | "front to back"
  | "polarisation"
  | "diameter"
  | "length"
  | "grade"
  | "ways"
  | "outputs"
  | "mains"
  | "converter feed"
  | "unit supply"
  | "aerial supply"
  | "supply pass"
  | "supply limit"
  | "supply volts"
  | "horizontal volts"
  | "direct current block"
  | "asked polarisation"
  | "asked half"
  | "asked position"
  | "asked uncommitted input"
  | "asked burst"
  | "motor commands"
  | "turning current"
  | "common supply limit"
  | "cable tuner"
  | "motor state"
  | "receiver state"
  | "receiver supply"
  | "standby supply"
  | "loop-out"
  | "receiver mode"
  | "receiver user bands"
  | "user band set"
  | "user band standard"
  | "receiver messages"
  | "menu oscillator"
  | "unit oscillator";

/**
 * What another value takes on site: turning a knob or a menu, turning the dish by the meter, or nothing, where the
 * value describes somebody else's transmitter or the place. Absent: another part.
 */
export type OnSite = "setting" | "aligning" | "not ours";

export type OptionTrade = {
  readonly means?: Meaning;
  /** Of several inputs that each have such an option, the port that this one belongs to. */
  readonly ofInput?: string;
  /** "factory": fixed in the part, where most else of its kind is set on site. */
  readonly onSite?: OnSite | "factory";
  /** Values that the trade sells, lowest first; any other value is somebody's own. */
  readonly sold?: { readonly values: readonly (number | string)[]; readonly source: string };
  /** Step in which the knob at the part turns. */
  readonly turnsBy?: number;
  /** Values with which supply passes, the most modest first. */
  readonly passes?: readonly unknown[];
  /**
   * What stands here once a defect is mended. A defect is any other value; where `defectValues` is given, only
   * those; where `defectAbove` is, only what lies above it.
   */
  readonly soundValue?: unknown;
  readonly defectValues?: readonly unknown[];
  readonly defectAbove?: number;
  /** Counts only while other options have these values; of a list, any one. */
  readonly onlyWhen?: Readonly<Record<string, boolean | string | readonly string[]>>;
  /** Spread of real parts about a value from a catalogue, one standard deviation [dB]. */
  readonly spreadDb?: number;
  /** The same for a loss that grows with length, as a share of the loss. */
  readonly spreadShare?: number;
  /** Where the spread comes from; from memory where none is named. */
  readonly spreadSource?: string;
};
