/** How far real parts on a carrier's way may stand from the values that they are calculated with. */

import type { Part } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import {
  type CarrierId,
  findCarrier,
  type TraceOutput,
  type TraceStep,
  traceCarrier,
} from "../evaluate/trace.ts";
import type { AnyOptions, Path, SignalTreatment } from "../parts/contract.ts";
import { describedOptions, doesCount } from "../parts/meanings.ts";
import { noiseFactor } from "../rf/noise.ts";
import { SILENCE } from "../signal/band.ts";
import { gainDbAt } from "../signal/gain.ts";
import { remembered } from "../signal/remember.ts";
import { heldDbuv } from "./blame/shortcomings.ts";

/** One standard deviation of a carrier's level and of its C/N where it arrives [dB]. */
export type Spread = { readonly levelDb: number; readonly cnDb: number };

/**
 * Independent spreads add as squares. Behind a stage that holds its output level only what follows spreads the
 * level. `end`: the output where it is judged. C/N is spread by all up to the first stage with noise of its own, and by that noise.
 */
export function spreadOf(
  evaluation: Evaluation,
  end: TraceOutput | undefined,
  carrier: CarrierId & { readonly userBand?: number },
): Spread {
  if (!end) return { levelDb: 0, cnDb: 0 };
  return spreadAlong(evaluation, traceCarrier(evaluation, end, carrier, carrier.userBand), carrier);
}

/** The same of a trace that is known already. */
export function spreadAlong(
  evaluation: Evaluation,
  steps: readonly TraceStep[],
  { origin, index }: CarrierId,
): Spread {
  const id = { origin, index };
  let level = 0;
  let cn = 0;
  let isFront = true;
  for (const step of steps) {
    const record = evaluation.record(step.part);
    if (!record) continue;
    const own = stepSpread(record, step, id);
    level = (own.holdsLevel ? 0 : level) + own.level;
    if (isFront) cn += own.isActive ? own.noise : own.level;
    if (own.isActive) isFront = false;
  }
  return { levelDb: Math.sqrt(level), cnDb: Math.sqrt(cn) };
}

/** Squares of what one part adds [dB²]. */
type StepSpread = {
  readonly level: number;
  readonly noise: number;
  readonly isActive: boolean;
  readonly holdsLevel: boolean;
};

const known = new WeakMap<PartRecord, Map<string, StepSpread>>();

function stepSpread(record: PartRecord, step: TraceStep, id: { origin: string; index: number }): StepSpread {
  const byWay = remembered(known, record, () => new Map<string, StepSpread>());
  const way = `${step.from} ${step.to} ${step.centreMHz} ${step.from === null ? id.index : ""}`;
  return remembered(byWay, way, () => workOut(record, step, id));
}

function workOut(record: PartRecord, step: TraceStep, id: { origin: string; index: number }): StepSpread {
  const { now, strays, fixed, share } = remembered(
    record.powered ? treatments.fed : treatments.unfed,
    record.part,
    () => strayingOf(record),
  );
  const base = levelThrough(now, step, id);
  const figure = noiseFigureOf(now, step);
  let level = fixed + (share * (step.gainDb ?? 0)) ** 2;
  let noise = 0;
  for (const other of strays) {
    level += finite(levelThrough(other, step, id) - base) ** 2;
    const otherFigure = noiseFigureOf(other, step);
    if (figure !== undefined && otherFigure !== undefined && otherFigure !== figure)
      noise += noiseRise(record, step, id, { from: figure, to: otherFigure }) ** 2;
  }
  const holdsLevel = stackOf(now, step) !== undefined || heldDbuv(now.paths ?? [], step) !== undefined;
  return { level, noise, isActive: figure !== undefined, holdsLevel };
}

/** What a part does to signals, and what it would do with each of its values one standard deviation higher. */
type Straying = {
  readonly now: SignalTreatment;
  readonly strays: readonly SignalTreatment[];
  /** Spread of what is chosen by a word [dB²], and share of a loss that grows with length. */
  readonly fixed: number;
  readonly share: number;
};

/** By part, unfed and fed: what a part would do depends on nothing else of its record. */
const treatments = { unfed: new WeakMap<Part, Straying>(), fed: new WeakMap<Part, Straying>() };

function strayingOf({ part, kind, options, powered }: PartRecord): Straying {
  const treated = (o: AnyOptions) => kind.signal(o, { id: part.id, powered });
  const strays: SignalTreatment[] = [];
  let fixed = 0;
  let share = 0;
  for (const [key, { spreadDb, spreadShare, ...meta }] of describedOptions(kind)) {
    if (!doesCount(meta, options)) continue;
    if (spreadShare !== undefined) share += spreadShare;
    if (spreadDb === undefined) continue;
    const value = options[key];
    if (typeof value === "number") strays.push(treated({ ...options, [key]: value + spreadDb }));
    else fixed += spreadDb ** 2;
  }
  return { now: treated(options), strays, fixed, share };
}

/** Level that a source gives, that a stage holds, or gain of the way through [dBµV or dB]. */
function levelThrough(t: SignalTreatment, step: TraceStep, id: { origin: string; index: number }) {
  const { from, to, centreMHz } = step;
  if (from === null) {
    for (const { port, bands } of t.emits ?? []) {
      const found = findCarrier(bands, id, undefined);
      if (!found) continue;
      const behind = port === to ? [[]] : waysBetween(t.paths ?? [], port, to);
      return (found.band.level[found.i] ?? 0) + Math.max(...behind.map((way) => gainOf(way, centreMHz)));
    }
    return 0;
  }
  const stack = stackOf(t, step);
  if (stack) return stack.levelDbuv;
  const held = heldDbuv(t.paths ?? [], step);
  if (held !== undefined) return held;
  return Math.max(...waysBetween(t.paths ?? [], from, to).map((way) => gainOf(way, centreMHz)));
}

/** The gain control that holds a carrier's user band; what passes beside the user bands is not held. */
function stackOf({ stacks = [] }: SignalTreatment, { to, userBand }: TraceStep) {
  return userBand === undefined ? undefined : stacks.find((s) => s.to === to);
}

function gainOf(way: readonly Path[], centreMHz: number): number {
  return way.reduce((sum, path) => sum + gainDbAt(path.response, centreMHz), 0);
}

function waysBetween(paths: readonly Path[], from: string, to: string): readonly (readonly Path[])[] {
  return paths
    .filter((p) => p.from === from)
    .flatMap((p) => {
      if (p.to === to) return [[p]];
      return p.to.startsWith("#") ? waysBetween(paths, p.to, to).map((rest) => [p, ...rest]) : [];
    });
}

/** Noise figure of the first active path on the way; undefined where all is passive. */
function noiseFigureOf(t: SignalTreatment, step: TraceStep): number | undefined {
  const { from, to } = step;
  if (from === null) return undefined;
  const stack = stackOf(t, step);
  const own = waysBetween(t.paths ?? [], from, to)
    .flat()
    .find((p) => p.noiseFigureDb !== undefined)?.noiseFigureDb;
  const before = (t.paths ?? []).find((p) => p.from === from && p.noiseFigureDb !== undefined)?.noiseFigureDb;
  return own ?? (stack ? (before ?? stack.noiseFigureDb) : undefined);
}

/** What C/N behind the stage loses when its noise figure is higher: by its share of all noise at its input [dB]. */
function noiseRise(
  { inputs }: PartRecord,
  { from }: TraceStep,
  id: { origin: string; index: number },
  figure: { readonly from: number; readonly to: number },
): number {
  const found = findCarrier((inputs[from ?? ""] ?? SILENCE).bands, id, undefined);
  if (!found) return figure.to - figure.from;
  const arriving = found.band.noise[found.i] ?? 0;
  const ktb = found.band.grid.ktb[found.i] ?? 0;
  const with_ = (db: number) => arriving + ktb * (noiseFactor(db) - 1);
  return 10 * Math.log10(with_(figure.to) / with_(figure.from));
}

function finite(db: number): number {
  return Number.isFinite(db) ? db : 0;
}
