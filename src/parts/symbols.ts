/**
 * Part symbols as plain line drawings on a 48 × 32 grid, in the manner of IEC 60617 where it has one,
 * drawn for this program. Each is a list of SVG path strings; `fill` paths are solid.
 */
export type SymbolDrawing = { readonly lines: readonly string[]; readonly fill?: readonly string[] };

export const SYMBOLS = {
  dish: { lines: ["M8 4 A22 22 0 0 0 30 28", "M8 4 L30 28", "M19 16 L34 8"], fill: ["M34 5 h4 v6 h-4 z"] },
} as const satisfies Record<string, SymbolDrawing>;

export type SymbolName = keyof typeof SYMBOLS;
