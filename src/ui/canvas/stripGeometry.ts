/**
 * What a strip shows, as path strings: each band of a spectrum split by how its carriers stand.
 * Pure arithmetic, worked out once for each spectrum and width.
 */
import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { Medium } from "../../parts/contract.ts";
import type { Band, Spectrum } from "../../signal/band.ts";
import { coaxScale, type FrequencyScale, skyScale } from "./axis.ts";
import { bandLook } from "./bandLook.ts";
import { type CarrierState, carrierState } from "./carrierState.ts";
import type { WishedTag } from "./stripTags.ts";
import { fillOf } from "./textures.ts";

export type StripShape = {
  readonly state: CarrierState;
  readonly colour: string;
  /** The colour with the texture of the service, for the area. */
  readonly fill: string;
  /** Closed outline of the carriers, from the ground up to their levels. */
  readonly area: string;
  /** Their levels alone. */
  readonly profile: string;
};

/** One user band of a channel-stacked feed. */
export type StripBlock = {
  readonly number: number;
  readonly x: number;
  readonly width: number;
  readonly state: CarrierState;
};

export type StripDrawing = {
  /** In the order in which they are to be drawn. */
  readonly shapes: readonly StripShape[];
  readonly blocks: readonly StripBlock[];
  /** At the place where each would best stand; `placeTags` finds them room. */
  readonly tags: readonly WishedTag[];
  /** Where carriers are lost, over the whole height: hatching alone cannot be seen at this size. */
  readonly lost: readonly LostSpan[];
};

export type LostSpan = { readonly x: number; readonly width: number };

/**
 * Level that touches the ground of a strip and level that reaches its top [dBµV into 75 Ω]. Coax: from what
 * no receiver can use to what no amplifier should deliver. Sky: the power at a feed, before any gain.
 */
const LEVELS: Readonly<Record<Medium, readonly [number, number]>> = { coax: [25, 95], sky: [-10, 40] };
/** A carrier that is there stays visible, however weak [px]. */
const LEAST_HEIGHT_PX = 2.5;
const LEAST_WIDTH_PX = 1.2;
/** Carriers of a band closer than this are drawn as one shape [px]. */
const BRIDGED_GAP_PX = 1.4;
/** Lost spans nearer to each other are one; a lone carrier is marked at least this wide [px]. */
const LOST_GAP_PX = 8;
const LEAST_LOST_PX = 5;

/** Solid shapes first, outlines over them, what is wrong on top. */
const DRAWING_ORDER: readonly CarrierState[] = ["live", "cut", "idle", "touched", "hit"];

export type PlotSize = { readonly width: number; readonly height: number };

export function stripDrawing(spectrum: Spectrum, medium: Medium, plot: PlotSize): StripDrawing {
  let bySize = known.get(spectrum);
  if (!bySize) {
    bySize = new Map();
    known.set(spectrum, bySize);
  }
  const key = `${medium}${plot.width}×${plot.height}`;
  let drawing = bySize.get(key);
  if (!drawing) {
    drawing = draw(spectrum, medium, plot);
    bySize.set(key, drawing);
  }
  return drawing;
}

/** A frequency that tells in which band the satellite of a dish sends [MHz]; none where nothing is received. */
export function skyAtMHz({ bands }: Spectrum): number | undefined {
  return bands[0]?.grid.centre[0];
}

const known = new WeakMap<Spectrum, Map<string, StripDrawing>>();

/** What was filtered away needs no name while something is left that has one. */
function liveTags(tags: readonly WishedTag[]): readonly WishedTag[] {
  const live = tags.filter((t) => !t.struck);
  return live.length > 0 ? live : tags;
}

/** Lost carriers side by side make one span; none narrower than can be seen. */
function lostSpans(spans: readonly Span[]): readonly LostSpan[] {
  const joined: { x0: number; x1: number }[] = [];
  for (const { x0, x1 } of [...spans].sort((a, b) => a.x0 - b.x0)) {
    const last = joined.at(-1);
    if (last && x0 - last.x1 < LOST_GAP_PX) last.x1 = Math.max(last.x1, x1);
    else joined.push({ x0, x1 });
  }
  return joined.map(({ x0, x1 }) => {
    const width = Math.max(x1 - x0, LEAST_LOST_PX);
    return { x: (x0 + x1 - width) / 2, width };
  });
}

function draw(spectrum: Spectrum, medium: Medium, plot: PlotSize): StripDrawing {
  const x = medium === "sky" ? skyScale(plot.width, skyAtMHz(spectrum)) : coaxScale(plot.width);
  const shapes: StripShape[] = [];
  const blocks: StripBlock[] = [];
  const tags: WishedTag[] = [];
  const lost: Span[] = [];

  for (const band of spectrum.bands) {
    const look = bandLook(band);
    const states = Array.from(band.level, (_, i) => carrierState(band, i));
    const row = rowFor(band, medium, plot.height);
    for (const state of new Set(states)) {
      const spans = spansOf(band, states, state, x, row.y);
      shapes.push({ state, colour: look.colour, fill: fillOf(look.texture), ...outline(spans, row.ground) });
      if (state === "hit") lost.push(...spans);
    }
    if (band.stack) blocks.push(...blocksOf(band, states, x));
    const tag = wishedTag(band, states, x);
    if (tag) tags.push(tag);
  }

  shapes.sort((a, b) => DRAWING_ORDER.indexOf(a.state) - DRAWING_ORDER.indexOf(b.state));
  return { shapes, blocks, tags: liveTags(tags), lost: lostSpans(lost) };
}

/**
 * The sky band carries both polarisations on the same frequencies without harm, so they are drawn one above
 * the other; on a cable everything shares one row, as it shares the cable.
 */
function rowFor(
  band: Band,
  medium: Medium,
  plotPx: number,
): { ground: number; y: (levelDbuv: number) => number } {
  const isSky = medium === "sky";
  const height = isSky ? plotPx / 2 : plotPx;
  const ground = isSky && band.origin.polarisation === "V" ? height : plotPx;
  const room = isSky ? height - 1 : height;
  return { ground, y: scaleLinear(LEVELS[medium], [ground - LEAST_HEIGHT_PX, ground - room]).clamp(true) };
}

type Span = { readonly x0: number; readonly x1: number; readonly y: number };

/** Horizontal extents of the carriers in one state, left to right. */
function spansOf(
  band: Band,
  states: readonly CarrierState[],
  wanted: CarrierState,
  x: FrequencyScale,
  y: (levelDbuv: number) => number,
): Span[] {
  const spans: Span[] = [];
  states.forEach((state, i) => {
    if (state !== wanted) return;
    const centre = band.grid.centre[i] ?? 0;
    const half = (band.grid.width[i] ?? 0) / 2;
    const x0 = x(centre - half);
    spans.push({
      x0,
      x1: Math.max(x(centre + half), x0 + LEAST_WIDTH_PX),
      y: y(band.level[i] ?? Number.NEGATIVE_INFINITY),
    });
  });
  return spans.sort((a, b) => a.x0 - b.x0);
}

type ProfilePoint = { readonly x: number; readonly y: number; readonly ground: number } | null;

const areaPath = area<ProfilePoint>()
  .defined((p) => p !== null)
  .x((p) => p?.x ?? 0)
  .y0((p) => p?.ground ?? 0)
  .y1((p) => p?.y ?? 0)
  .digits(1);
const profilePath = line<ProfilePoint>()
  .defined((p) => p !== null)
  .x((p) => p?.x ?? 0)
  .y((p) => p?.y ?? 0)
  .digits(1);

function outline(spans: readonly Span[], ground: number): { area: string; profile: string } {
  const points: ProfilePoint[] = [];
  let end: number | null = null;
  for (const span of spans) {
    if (end !== null && span.x0 - end > BRIDGED_GAP_PX) points.push(null);
    points.push({ x: span.x0, y: span.y, ground }, { x: span.x1, y: span.y, ground });
    end = span.x1;
  }
  return { area: areaPath(points) ?? "", profile: profilePath(points) ?? "" };
}

function blocksOf(band: Band, states: readonly CarrierState[], x: FrequencyScale): StripBlock[] {
  return (band.stack?.numbers ?? []).map((number, i) => {
    const centre = band.grid.centre[i] ?? 0;
    const half = (band.grid.width[i] ?? 0) / 2;
    return {
      number,
      x: x(centre - half),
      width: x(centre + half) - x(centre - half),
      state: states[i] ?? "cut",
    };
  });
}

/** A tag over the middle of what is usable of a band; struck out where nothing is; none for alternatives. */
function wishedTag(band: Band, states: readonly CarrierState[], x: FrequencyScale): WishedTag | null {
  if (!band.selected || states.length === 0) return null;
  const struck = states.every((s) => s === "cut");
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  states.forEach((state, i) => {
    if (state === "cut" && !struck) return;
    from = Math.min(from, band.grid.centre[i] ?? from);
    to = Math.max(to, band.grid.centre[i] ?? to);
  });
  const look = bandLook(band);
  return {
    text: look.tag,
    shortText: look.shortTag,
    colour: look.colour,
    x: (x(from) + x(to)) / 2,
    struck,
    hit: states.includes("hit"),
  };
}
