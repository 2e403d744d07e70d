/** Gain of a response on every carrier of a grid, worked out once and remembered. */
import { coaxLossDb } from "../rf/coax.ts";
import { carrierStubLossDb } from "../rf/stub.ts";
import type { Grid } from "./band.ts";
import { remembered } from "./remember.ts";
import type { Response } from "./response.ts";

export type GainTable = {
  /** Gain per carrier [dB], and the same as a power ratio. */
  readonly db: Float64Array;
  readonly ratio: Float64Array;
  /** 1 where the carrier is cut; null when none is. */
  readonly cut: Uint8Array | null;
};

/** Share of a carrier's power that must get through a filter edge for it to stay receivable. */
export const LIVE_SHARE = 0.9;

const tables = new WeakMap<Grid, Map<string, GainTable>>();
const keys = new WeakMap<Response, string>();
/** A slider makes a new response at every step; the memory of a grid starts afresh beyond this many. */
const MOST_TABLES = 2048;

export function gainTable(response: Response, grid: Grid): GainTable {
  const known = remembered(tables, grid, () => new Map<string, GainTable>());
  const key = keyOf(response);
  const found = known.get(key);
  if (found) return found;
  const table = work(response, grid);
  if (known.size >= MOST_TABLES) known.clear();
  known.set(key, table);
  return table;
}

/** Gain at one frequency, for drawing and for tables; a filter stops fully outside its windows. [dB] */
export function gainDbAt(response: Response, frequencyMHz: number): number {
  return carrierGain(response, frequencyMHz, 0).db;
}

function keyOf(response: Response): string {
  return remembered(keys, response, () => JSON.stringify(response));
}

function work(response: Response, grid: Grid): GainTable {
  const n = grid.centre.length;
  const db = new Float64Array(n);
  const ratio = new Float64Array(n);
  let cut: Uint8Array | null = null;
  for (let i = 0; i < n; i++) {
    const noiseMHz = grid.plan[grid.index[i] ?? 0]?.noiseMHz ?? 0;
    const gain = carrierGain(response, grid.centre[i] ?? 0, noiseMHz);
    db[i] = gain.db;
    ratio[i] = 10 ** (gain.db / 10);
    if (gain.share < LIVE_SHARE) {
      cut ??= new Uint8Array(n);
      cut[i] = 1;
    }
  }
  return { db, ratio, cut };
}

type CarrierGain = { readonly db: number; readonly share: number };

/** Gain of one carrier and the share of its power that filter windows let through. */
function carrierGain(response: Response, centreMHz: number, widthMHz: number): CarrierGain {
  switch (response.type) {
    case "flat":
      return { db: response.db, share: 1 };
    case "cable":
      return { db: -coaxLossDb({ ...response, frequencyMHz: centreMHz }), share: 1 };
    case "curve":
      return { db: onCurve(response.points, centreMHz), share: 1 };
    case "windows": {
      const share = shareInside(response.windows, centreMHz, widthMHz);
      const stopped = stopBandDb(response.windows, centreMHz, response.rejectionDb);
      return { db: mixed(share, stopped), share };
    }
    case "notch": {
      const share = 1 - shareInside(response.windows, centreMHz, widthMHz);
      return { db: mixed(share, response.rejectionDb), share };
    }
    case "stub": {
      const lossDb = -carrierGain(response.loss, centreMHz, 0).db;
      return { db: -carrierStubLossDb(response.stub, { centreMHz, widthMHz, lossDb }), share: 1 };
    }
    case "series": {
      let db = 0;
      let share = 1;
      for (const one of response.of) {
        const gain = carrierGain(one, centreMHz, widthMHz);
        db += gain.db;
        share = Math.min(share, gain.share);
      }
      return { db, share };
    }
  }
}

function onCurve(points: readonly (readonly [number, number])[], f: number): number {
  const first = points[0];
  if (!first) return 0;
  if (f <= first[0]) return first[1];
  for (let i = 1; i < points.length; i++) {
    const [f0, g0] = points[i - 1] ?? first;
    const [f1, g1] = points[i] ?? first;
    if (f <= f1) return f1 > f0 ? g0 + ((g1 - g0) * (f - f0)) / (f1 - f0) : g1;
  }
  return points[points.length - 1]?.[1] ?? 0;
}

type Windows = readonly { readonly fromMHz: number; readonly toMHz: number }[];

/** Share of a carrier [0..1] that lies inside any window; windows don't overlap. */
function shareInside(windows: Windows, centreMHz: number, widthMHz: number): number {
  if (widthMHz <= 0) return windows.some((w) => centreMHz >= w.fromMHz && centreMHz <= w.toMHz) ? 1 : 0;
  let inside = 0;
  for (const w of windows) {
    const from = Math.max(w.fromMHz, centreMHz - widthMHz / 2);
    const to = Math.min(w.toMHz, centreMHz + widthMHz / 2);
    inside += Math.max(0, to - from);
  }
  return Math.min(1, inside / widthMHz);
}

/** Stop-band attenuation [dB]: 20 dB beside the edge, the whole rejection a tenth of the edge away. */
function stopBandDb(windows: Windows, f: number, rejectionDb: number): number {
  let away = Number.POSITIVE_INFINITY;
  for (const w of windows) {
    if (f >= w.fromMHz && f <= w.toMHz) return Math.min(20, rejectionDb);
    const edge = f < w.fromMHz ? w.fromMHz : w.toMHz;
    away = Math.min(away, Math.abs(f - edge) / Math.max(edge, 1));
  }
  const beside = Math.min(20, rejectionDb);
  return beside + (rejectionDb - beside) * Math.min(1, away / 0.1);
}

/** Gain of a carrier of which `share` passes freely and the rest is stopped. [dB, ≤ 0] */
function mixed(share: number, stoppedDb: number): number {
  return 10 * Math.log10(share + (1 - share) * 10 ** (-stoppedDb / 10));
}
