/** How large the panes are at first, and which sizes a press on their dividers goes through [px]. */
import { usePanes } from "../kit/panes.ts";

/** The first is also the least. */
export const SIDE_WIDTHS: readonly [number, ...number[]] = [240, 300, 400, 520];
export const LOWER_HEIGHTS: readonly [number, ...number[]] = [180, 300, 420, 560];

/** Up to this width of the window the drawing needs every pixel [px]. */
const SLIM_WINDOW_PX = 1400;

export function sideWidth(): number {
  return usePanes.getState().sideWidth ?? (window.innerWidth < SLIM_WINDOW_PX ? 264 : 300);
}

/** The canvas above keeps more than half of the window. */
export function lowerHeight(): number {
  return usePanes.getState().spectrumHeight ?? Math.min(420, Math.round(window.innerHeight * 0.45));
}

/** The next larger of the usual sizes, and after the largest the smallest. */
export function nextSize(now: number, [least, ...more]: readonly [number, ...number[]]): number {
  return more.find((size) => size > now + 8) ?? least;
}
