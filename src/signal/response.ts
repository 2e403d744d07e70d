/**
 * Gain over frequency, as data: what a part does to a carrier on one of its paths.
 * Gains are in dB, losses negative; frequencies in MHz.
 */

import type { Stub } from "../rf/stub.ts";

export type Response =
  /** The same gain everywhere. */
  | { readonly type: "flat"; readonly db: number }
  /** Coaxial cable: loss = (k1·√f + k2·f) · length/100, k1 and k2 per 100 m; conductor term +0.2 %/K from 20 °C. */
  | {
      readonly type: "cable";
      readonly k1: number;
      readonly k2: number;
      readonly lengthM: number;
      readonly temperatureC: number;
    }
  /** Points [MHz, dB], rising in frequency; straight between them, held beyond the ends. */
  | { readonly type: "curve"; readonly points: readonly (readonly [number, number])[] }
  /**
   * Passes only what lies in one of the windows; elsewhere it stops by up to `rejectionDb`
   * (20 dB just beside an edge, the full value from a tenth of the edge frequency away).
   * A carrier of which less than 90 % of the power gets through counts as cut.
   */
  | {
      readonly type: "windows";
      readonly windows: readonly { readonly fromMHz: number; readonly toMHz: number }[];
      readonly rejectionDb: number;
    }
  /** The opposite: stops what lies in one of the windows. */
  | {
      readonly type: "notch";
      readonly windows: readonly { readonly fromMHz: number; readonly toMHz: number }[];
      readonly rejectionDb: number;
    }
  /**
   * A matched line on which another hangs that ends open or shorted, simply joined. `loss`: what that one loses one way, as a gain.
   * Over a carrier its mean power counts.
   */
  | { readonly type: "stub"; readonly stub: Stub; readonly loss: Response }
  | { readonly type: "series"; readonly of: readonly Response[] };

export const flat = (db: number): Response => ({ type: "flat", db });

export const curve = (...points: (readonly [number, number])[]): Response => ({ type: "curve", points });

export const series = (...of: Response[]): Response => ({ type: "series", of });

/** Pass band from..to with a loss inside (a number, or a curve). */
export function passBand(options: {
  fromMHz: number;
  toMHz: number;
  gain: Response;
  rejectionDb: number;
}): Response {
  const { fromMHz, toMHz, gain, rejectionDb } = options;
  return series(gain, { type: "windows", windows: [{ fromMHz, toMHz }], rejectionDb });
}
