/** Transmitters near the whole installation, whose field gets in wherever a screen is poor. */

export type OutsideField = {
  /** A phone mast: which band, and its field at the building [dBµV/m]. */
  readonly mast?: { readonly band: "700" | "800" | "1800"; readonly dbuvPerM: number };
  /** Field of a cordless phone (DECT) at the parts [dBµV/m]; absent where there is none. */
  readonly cordlessDbuvPerM?: number;
};
