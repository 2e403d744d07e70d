/**
 * The graph evaluator: for every part, what it is fed with, what it hands on, who powers and who commands it.
 *
 * First supplies and commands, island by island of what direct current joins; then one sweep of the signals downstream.
 * Only what is marked is visited: in a first evaluation everything; afterwards the islands and parts that were
 * edited, and whoever is handed something new by a part that was visited. What is not visited keeps its very
 * objects, so a full and an incremental evaluation are equal, and whoever draws the unchanged need not look.
 */
import type { Design, PartId } from "../design/design.ts";
import { fieldOf } from "../design/outsideField.ts";
import { type Settings, settingsOf } from "../design/settings.ts";
import type { SignalTreatment } from "../parts/contract.ts";
import type { OutsideField } from "../parts/outsideField.ts";
import { SILENCE, type Spectrum } from "../signal/band.ts";
import { type Cell, NO_SOURCES, NOTHING, recordOf } from "./cell.ts";
import { findDeadEnds } from "./deadEnds.ts";
import type { Evaluation, PartRecord } from "./evaluation.ts";
import type { AmplifierModel } from "./overload.ts";
import { runTreatment, type SignalResult } from "./signals.ts";
import { finished, type Steps } from "./steps.ts";
import { structureOf } from "./structure.ts";
import { settleSupplies } from "./supply/sweep.ts";
import {
  countWork,
  markChanged,
  neighbourOf,
  ownCell,
  type Sweep,
  startSweep,
  type Workings,
} from "./sweep.ts";
import { weakerAtVertical } from "./weakerAtVertical.ts";
import { workOfSignals } from "./work.ts";

/**
 * Evaluates a design. Never throws and never yields NaN, whatever a readable design holds.
 * `former`: the evaluation of an earlier state of the same design, whose results are kept where nothing changed.
 */
export function evaluate(design: Design, former?: Evaluation): Evaluation {
  return finished(evaluateInSteps(design, former));
}

/**
 * The same, part by part, for whoever must be able to show how far it is, to stop it, or to set it a limit.
 * Each step tells how many parts are done, and what it took so far.
 */
export function* evaluateInSteps(design: Design, former?: Evaluation): Steps<Evaluation> {
  const settings = settingsOf(design);
  const { derating, cascade } = settings;
  const amplifiers: AmplifierModel = { derating, cascade };
  const field = fieldOf(settings);
  // Another way to reckon touches every amplifier, another field every cable: then nothing is kept.
  const kept = former && isSameModel(settingsOf(former.design), settings) ? former : undefined;
  const before = kept ? workings.get(kept) : undefined;
  const structure = structureOf(
    design,
    kept && before ? { design: kept.design, structure: before.structure } : undefined,
  );
  const sweep = startSweep(design, structure, before, { amplifiers, field });
  yield* settleSupplies(sweep);
  findDeadEnds(sweep);
  yield* sweepSignals(sweep);

  const records = writtenRecords(sweep, kept && before?.structure === structure ? kept : undefined);
  const evaluation: Evaluation = {
    design,
    records,
    record: (id) => records[structure.indexOf.get(id) ?? -1],
    spectrum: (wire) => records[structure.indexOf.get(wire.from[0]) ?? -1]?.outputs[wire.from[1]] ?? SILENCE,
    recomputed: sweep.recomputed,
  };
  workings.set(evaluation, { design, structure, cells: sweep.cells });
  return evaluation;
}

function isSameModel(a: Settings, b: Settings): boolean {
  return a.derating === b.derating && a.cascade === b.cascade && isSameField(fieldOf(a), fieldOf(b));
}

function isSameField(a: OutsideField | undefined, b: OutsideField | undefined): boolean {
  return (
    a?.mast?.band === b?.mast?.band &&
    a?.mast?.dbuvPerM === b?.mast?.dbuvPerM &&
    a?.cordlessDbuvPerM === b?.cordlessDbuvPerM
  );
}

const workings = new WeakMap<Evaluation, Workings>();

/** Records of all parts; copied in one go from the evaluation before where the structure is the same. */
function writtenRecords(sweep: Sweep, kept: Evaluation | undefined): readonly PartRecord[] {
  const records = kept ? kept.records.slice() : [];
  for (let i = 0; i < sweep.cells.length; i++) {
    const cell = sweep.cells[i];
    if (!cell || (kept && !sweep.owned[i])) continue;
    cell.record ??= recordOf(cell);
    records[i] = cell.record;
  }
  return records;
}

/** Signals, from the sources downwards. */
function* sweepSignals(sweep: Sweep): Steps<void> {
  const { order } = sweep.structure;
  for (let k = 0; k < order.length; k++) {
    if (!sweep.signals[k]) continue;
    const i = order[k] ?? 0;
    const cell = ownCell(sweep, i);
    if (!cell || cell.looped) continue;
    sweep.recomputed++;
    const { traits } = cell;
    const inputs: Record<string, Spectrum> = {};
    for (const port of traits.inputs) {
      const end = neighbourOf(sweep, i, port);
      const spectrum = (end && sweep.cells[end.index]?.results[end.port]?.spectrum) || SILENCE;
      if (spectrum !== SILENCE) inputs[port] = spectrum;
    }
    const sameInputs = sameSpectra(cell.inputs, inputs);
    const keep = cell.treatment !== undefined && sameInputs && !cell.dies;
    const treatment = (powered: boolean) =>
      traits.kind.signal(cell.part.options, {
        id: cell.part.id,
        powered,
        ...(cell.deadEnds === NOTHING ? {} : { deadEnds: cell.deadEnds }),
        ...(sweep.field ? { field: sweep.field } : {}),
      });
    cell.treatment ??= treatment(cell.powered);
    const former = cell.results;
    const run = (of: SignalTreatment, before?: SignalResult) =>
      runTreatment({
        part: cell.part.id,
        treatment: of,
        inputs: (port) => inputs[port] ?? SILENCE,
        switches: cell.switches,
        amplifiers: sweep.amplifiers,
        before,
      });
    const alive = run(cell.treatment, keep ? former : undefined);
    cell.results = cell.dies ? weakerAtVertical(alive, run(treatment(false)), cell.dies) : alive;
    if (!sameInputs) cell.inputs = inputs;
    const sources = sourcesOf(sweep, i, cell);
    const newSources = sources !== cell.sources;
    cell.sources = sources;
    const now = cell.results;
    markChanged(
      sweep,
      sweep.signals,
      i,
      (port) => newSources || former[port]?.spectrum !== now[port]?.spectrum,
    );
    yield countWork(sweep, cell, { done: k, work: { signals: workOfSignals(now) } });
  }
}

/** True when the same spectra lie at the same ports; an option may have taken a port away. */
function sameSpectra(a: Cell["inputs"], b: Cell["inputs"]): boolean {
  const ports = Object.keys(a);
  return ports.length === Object.keys(b).length && ports.every((port) => a[port] === b[port]);
}

/** Source parts upstream of a part, by any way; the former list where it is the same. */
function sourcesOf(sweep: Sweep, i: number, cell: Cell): readonly PartId[] {
  let found: readonly PartId[] = cell.treatment?.emits?.length ? [cell.part.id] : NO_SOURCES;
  let merged: Set<PartId> | undefined;
  for (const port of cell.traits.inputs) {
    const end = neighbourOf(sweep, i, port);
    const above = (end && sweep.cells[end.index]?.sources) || NO_SOURCES;
    if (above.length === 0 || above === found) continue;
    if (found.length === 0) found = above;
    else {
      merged ??= new Set(found);
      for (const id of above) merged.add(id);
    }
  }
  const all = merged ? [...merged].sort() : found;
  const { sources } = cell;
  return sources.length === all.length && sources.every((id, n) => id === all[n]) ? sources : all;
}
