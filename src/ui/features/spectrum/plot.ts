/** Where things lie on the full spectrum: scales and shapes, without drawing. */
import { type ScaleLinear, scaleLinear } from "d3-scale";
import type { Band } from "../../../signal/band.ts";
import type { CarrierRow, CarrierRowState } from "./rows.ts";

export const MARGIN = { left: 46, right: 12, top: 32, bottom: 36 } as const;

export type Domain = readonly [fromMHz: number, toMHz: number];

/** Edges of all carriers with a little air; null for an empty wire. [MHz] */
export function wholeDomain(rows: readonly CarrierRow[]): Domain | null {
  if (rows.length === 0) return null;
  const from = Math.min(...rows.map((r) => r.hereMHz - r.widthMHz / 2));
  const to = Math.max(...rows.map((r) => r.hereMHz + r.widthMHz / 2));
  const air = Math.max((to - from) * 0.03, 2);
  return [Math.max(0, from - air), to + air];
}

/** A domain zoomed by `factor` about a frequency, never wider than the whole and never below 4 MHz. */
export function zoomedDomain(domain: Domain, whole: Domain, aboutMHz: number, factor: number): Domain {
  const width = Math.min(whole[1] - whole[0], Math.max(4, (domain[1] - domain[0]) / factor));
  const share = (aboutMHz - domain[0]) / (domain[1] - domain[0]);
  return held([aboutMHz - share * width, aboutMHz + (1 - share) * width], whole);
}

/** A domain moved by some megahertz, held inside the whole. */
export function movedDomain(domain: Domain, whole: Domain, byMHz: number): Domain {
  return held([domain[0] + byMHz, domain[1] + byMHz], whole);
}

function held(domain: Domain, whole: Domain): Domain {
  const width = domain[1] - domain[0];
  const from = Math.min(Math.max(domain[0], whole[0]), whole[1] - width);
  return [from, from + width];
}

export type LevelScale = ScaleLinear<number, number>;

/**
 * Level axis [dBµV]: from just below the noise to just above the strongest carrier, on tens, at least 40 dB.
 * A carrier 60 dB below the strongest disturbs nothing; what lies deeper does not stretch the axis.
 */
export function levelDomain(rows: readonly CarrierRow[]): readonly [number, number] {
  const finite = (values: readonly number[]): number[] => values.filter(Number.isFinite);
  const levels = finite(rows.map((r) => r.level));
  if (levels.length === 0) return [0, 80];
  const top = Math.ceil((Math.max(...levels) + 4) / 10) * 10;
  const lows = [...finite(rows.map((r) => r.noise)), ...levels];
  const bottom = Math.floor((Math.min(...lows) - 2) / 10) * 10;
  return [Math.max(Math.min(bottom, top - 40), top - 90), top];
}

export function levelScale(rows: readonly CarrierRow[], height: number): LevelScale {
  return scaleLinear()
    .domain(levelDomain(rows))
    .range([height - MARGIN.bottom, MARGIN.top])
    .clamp(true);
}

/**
 * The row nearest to a frequency; where several lie there, the one whose top is nearest to a level.
 * Shown carriers win over the outlines of other settings.
 */
export function nearestRow(
  rows: readonly CarrierRow[],
  at: { readonly mhz: number; readonly dbuv: number },
): CarrierRow | undefined {
  let best: CarrierRow | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const row of rows) {
    // Inside a carrier's own width the distance is nil, so that wide carriers are as easy to hit as narrow ones.
    const aside = Math.max(0, Math.abs(row.hereMHz - at.mhz) - row.widthMHz / 2);
    const above = Number.isFinite(row.level) ? Math.min(Math.abs(row.level - at.dbuv), 200) : 200;
    const distance = aside + above * 1e-4 + (row.state === "idle" ? 0.1 : 0);
    if (distance < least) {
      best = row;
      least = distance;
    }
  }
  return best;
}

/**
 * The carrier before or after another one, in order of frequency, passing over outlines of other settings.
 * Without a carrier to start from, the first or last one that lies in the domain.
 */
export function neighbourRow(
  rows: readonly CarrierRow[],
  start: { readonly key: string | undefined; readonly domain: Domain },
  step: 1 | -1,
): CarrierRow | undefined {
  const shown = rows.filter((r) => r.state !== "idle");
  const at = shown.findIndex((r) => r.key === start.key);
  if (at >= 0) return shown[Math.min(shown.length - 1, Math.max(0, at + step))];
  const [from, to] = start.domain;
  const inView = shown.filter((r) => r.hereMHz >= from && r.hereMHz <= to);
  return step > 0 ? inView[0] : inView.at(-1);
}

/** The domain moved just so far that a frequency lies in it; the same one if it does already. */
export function domainShowing(domain: Domain, whole: Domain, mhz: number): Domain {
  if (mhz >= domain[0] && mhz <= domain[1]) return domain;
  return movedDomain(domain, whole, mhz - (domain[0] + domain[1]) / 2);
}

export type BandSpan = {
  readonly band: Band;
  readonly fromMHz: number;
  readonly toMHz: number;
  /** 0 for the first line of labels, 1 for the second, where spans overlap. */
  readonly line: 0 | 1;
  /** Nothing of it is left. */
  readonly isGone: boolean;
};

/** From where to where each shown band reaches, for the labels above the plot. */
export function bandSpans(rows: readonly CarrierRow[]): readonly BandSpan[] {
  const spans: BandSpan[] = [];
  for (const band of new Set(rows.filter((r) => r.state !== "idle").map((r) => r.band))) {
    const own = rows.filter((r) => r.band === band);
    const fromMHz = Math.min(...own.map((r) => r.hereMHz - r.widthMHz / 2));
    const toMHz = Math.max(...own.map((r) => r.hereMHz + r.widthMHz / 2));
    const crosses = spans.some((s) => s.line === 0 && s.fromMHz < toMHz && fromMHz < s.toMHz);
    spans.push({ band, fromMHz, toMHz, line: crosses ? 1 : 0, isGone: own.every((r) => r.state === "cut") });
  }
  return spans;
}

export type LimitLine = {
  readonly fromMHz: number;
  readonly toMHz: number;
  readonly minDbuv: number;
  readonly maxDbuv: number;
};

/** Level limits of an outlet: one pair of lines for the carriers of a band that share them. */
export function limitLines(rows: readonly CarrierRow[]): readonly LimitLine[] {
  const lines = new Map<string, LimitLine>();
  for (const row of rows) {
    if (row.state === "idle" || row.state === "cut" || !row.limits) continue;
    const { minDbuv, maxDbuv } = row.limits;
    const key = `${row.band.origin.key} ${minDbuv} ${maxDbuv}`;
    const fromMHz = row.hereMHz - row.widthMHz / 2;
    const toMHz = row.hereMHz + row.widthMHz / 2;
    const known = lines.get(key);
    lines.set(key, {
      fromMHz: Math.min(fromMHz, known?.fromMHz ?? fromMHz),
      toMHz: Math.max(toMHz, known?.toMHz ?? toMHz),
      minDbuv,
      maxDbuv,
    });
  }
  return [...lines.values()];
}

/** Runs of neighbouring carriers in one state, as frequency spans for the hatching. [MHz] */
export function spansOf(rows: readonly CarrierRow[], state: CarrierRowState): readonly Domain[] {
  const spans: [number, number][] = [];
  for (const row of rows) {
    if (row.state !== state) continue;
    const from = row.hereMHz - row.widthMHz / 2;
    const to = row.hereMHz + row.widthMHz / 2;
    const last = spans.at(-1);
    if (last && from <= last[1] + 1) last[1] = Math.max(last[1], to);
    else spans.push([from, to]);
  }
  return spans;
}
