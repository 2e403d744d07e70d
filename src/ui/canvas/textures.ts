/**
 * The textures by which fills differ where colours alone would not tell them apart. Upright and level lines are the two
 * polarisations; slanting ones are kept for what a collision does, so that no service looks lost.
 */

export type Texture = {
  /** Side of the square that repeats [px]. */
  readonly tile: number;
  /** Lines over the ground, within one square; empty for a plain fill. */
  readonly lines: string;
  /** Of the lines [px]. */
  readonly width: number;
  /** Turns the lines [°]. */
  readonly turn?: number;
};

export const SERVICE_TEXTURE_KEYS = [
  "tv",
  "dab",
  "fm",
  "sat-v",
  "sat-vl",
  "sat-vh",
  "sat-h",
  "sat-hl",
  "sat-hh",
  "sat",
  "sat-stack",
  "distant",
  "mobile",
  "cordless",
] as const;
export type ServiceTexture = (typeof SERVICE_TEXTURE_KEYS)[number];

const slanting = (tile: number, width: number, turn: number): Texture => ({
  tile,
  lines: `M${tile / 2} 0V${tile}`,
  width,
  turn,
});

const upright = (tile: number, width: number): Texture => ({
  tile,
  lines: `M${tile / 2} 0V${tile}`,
  width,
});

const level = (tile: number, width: number): Texture => ({
  tile,
  lines: `M0 ${tile / 2}H${tile}`,
  width,
});

/** Low bands have few lines, high bands many. */
export const SERVICE_TEXTURES: Readonly<Record<ServiceTexture, Texture>> = {
  tv: { tile: 8, lines: "", width: 0 },
  dab: { tile: 4, lines: "M1.3 2H2.7", width: 1.4 },
  fm: { tile: 6, lines: "M0 1.5L1.5 4.5L3 1.5L4.5 4.5L6 1.5", width: 0.8 },
  "sat-v": upright(4, 0.9),
  "sat-vl": upright(6, 1.1),
  "sat-vh": upright(2.6, 0.7),
  "sat-h": level(4, 0.9),
  "sat-hl": level(6, 1.1),
  "sat-hh": level(2.6, 0.7),
  sat: { tile: 5, lines: "M2.5 0V5M0 2.5H5", width: 0.8 },
  "sat-stack": { tile: 6, lines: "M0 1.5H6M0 4.5H6M1.5 1.5V4.5M4.5 4.5V6M4.5 0V1.5", width: 0.8 },
  distant: { tile: 7, lines: "M1 2.5H4M3.5 6H6.5", width: 1 },
  mobile: { tile: 8, lines: "M1 2L4 6L7 2", width: 1 },
  cordless: { tile: 8, lines: "M2 4A2 2 0 0 1 6 4A2 2 0 0 1 2 4", width: 1 },
};

/** What a collision does: taken, lines as wide as their gaps; margin lost, single lines that slant the other way. */
export const HARM_TEXTURES: Readonly<Record<"hit" | "touched", Texture>> = {
  hit: slanting(3.4, 1.5, 45),
  touched: slanting(6, 1.5, -45),
};

/** A service's fill as styles take it: its colour with its texture. */
export function fillOf(texture: ServiceTexture): string {
  return `url("#fill-${texture}")`;
}

/** The token of the theme; what comes from a satellite of no polarisation has the colour of a stacked feed. */
export function colourOf(texture: ServiceTexture): string {
  return `var(--service-${texture === "sat" ? "sat-stack" : texture})`;
}
