/**
 * The graph evaluator: for every part, what it is fed with, what it hands on, who powers and who commands it.
 *
 * Three sweeps over the parts: loads downstream, supplies and commands upstream, signals downstream.
 * Incremental by identity: a part whose options and neighbours' results are the same objects as in the
 * former evaluation keeps its own results, so a full and an incremental evaluation are equal, and
 * whatever did not change is not even looked at by those who draw it.
 */
import { z } from "zod";
import type { Design, Part, PartId } from "../design/design.ts";
import { kindOf } from "../parts/catalogue.ts";
import {
  type AnyOptions,
  define,
  type PartKind,
  type Port,
  type PowerTreatment,
  type SignalTreatment,
} from "../parts/contract.ts";
import { SILENCE, type Spectrum } from "../signal/band.ts";
import { type Demand, type Feed, NO_DEMAND, NO_FEED, type SwitchState } from "../signal/control.ts";
import type { Evaluation, Meeting, PartRecord } from "./evaluation.ts";
import { demandsAtOutputs, isPowered, offersAtInputs, switchStates } from "./power.ts";
import { runTreatment, type SignalResult } from "./signals.ts";
import { type Structure, structureOf } from "./structure.ts";

/**
 * Evaluates a design. Never throws and never yields NaN, whatever a readable design holds.
 * `former`: the evaluation of an earlier state of the same design, whose results are kept where nothing changed.
 */
export function evaluate(design: Design, former?: Evaluation): Evaluation {
  const before = former ? workings.get(former) : undefined;
  const structure = structureOf(
    design,
    former && before ? { design: former.design, structure: before.structure } : undefined,
  );
  const sweep = startSweep(design, structure, before);

  const { order } = structure;
  for (let k = 0; k < order.length; k++) sweepLoads(sweep, order[k] ?? 0);
  for (let k = order.length - 1; k >= 0; k--) sweepSupplies(sweep, order[k] ?? 0);
  for (let k = 0; k < order.length; k++) sweepSignals(sweep, order[k] ?? 0);

  const records = sweep.cells.map((cell) => cell.record ?? recordOf(cell, {}));
  const evaluation: Evaluation = {
    design,
    records,
    record: (id) => records[structure.indexOf.get(id) ?? -1],
    spectrum: (wire) => records[structure.indexOf.get(wire.from[0]) ?? -1]?.outputs[wire.from[1]] ?? SILENCE,
    recomputed: sweep.recomputed,
  };
  workings.set(evaluation, { structure, cells: sweep.cells });
  return evaluation;
}

/** What an evaluation keeps for the next one. */
type Workings = { readonly structure: Structure; readonly cells: readonly Cell[] };
const workings = new WeakMap<Evaluation, Workings>();

type Traits = {
  readonly kind: PartKind;
  readonly options: AnyOptions;
  readonly ports: readonly Port[];
  readonly inputs: readonly string[];
  readonly outputs: readonly string[];
  readonly power: PowerTreatment;
};

/** Everything about one part while it is being worked out. */
type Cell = {
  readonly part: Part;
  readonly traits: Traits;
  readonly looped: boolean;
  readonly joined: PartRecord["joined"];
  demands: Readonly<Record<string, Demand>>;
  feeds: Readonly<Record<string, Feed>>;
  offers: Readonly<Record<string, Feed>>;
  switches: Readonly<Record<string, SwitchState>>;
  powered: boolean;
  treatment: SignalTreatment;
  results: SignalResult;
  /** Written at the end of the signal sweep. */
  record?: PartRecord;
};

type Sweep = {
  readonly structure: Structure;
  readonly cells: Cell[];
  readonly before: (id: PartId) => Cell | undefined;
  recomputed: number;
};

function startSweep(design: Design, structure: Structure, before: Workings | undefined): Sweep {
  const formerCell = (id: PartId) => before?.cells[before.structure.indexOf.get(id) ?? -1];
  const sameStructure = before?.structure === structure;
  const cells = design.parts.map((part, i): Cell => {
    const former = formerCell(part.id);
    const joined = structure.joined[i] ?? {};
    if (former && former.part === part && sameStructure) return { ...former };
    const traits =
      former && former.part.options === part.options && former.part.kind === part.kind
        ? former.traits
        : traitsOf(part);
    return {
      part,
      traits,
      looped: structure.looped[i] === 1,
      joined: former && sameEnds(former.joined, joined) ? former.joined : joined,
      demands: {},
      feeds: {},
      offers: {},
      switches: {},
      powered: true,
      treatment: {},
      results: {},
    };
  });
  return { structure, cells, before: formerCell, recomputed: 0 };
}

function sameEnds(a: PartRecord["joined"], b: PartRecord["joined"]): boolean {
  return sameValues(a, b, (x, y) => x?.[0] === y?.[0] && x?.[1] === y?.[1]);
}

const traitsByOptions = new WeakMap<AnyOptions, Traits>();

function traitsOf(part: Part): Traits {
  const known = traitsByOptions.get(part.options);
  if (known && known.kind.kind === part.kind) return known;
  const kind = kindOf(part.kind) ?? UNKNOWN_KIND;
  const ports = kind.ports(part.options);
  const traits: Traits = {
    kind,
    options: part.options,
    ports,
    inputs: ports.filter((p) => p.side === "in").map((p) => p.id),
    outputs: ports.filter((p) => p.side === "out").map((p) => p.id),
    power: kind.power(part.options),
  };
  traitsByOptions.set(part.options, traits);
  return traits;
}

/** Loads, from the roof downwards. */
function sweepLoads(sweep: Sweep, i: number): void {
  const cell = sweep.cells[i];
  if (!cell || cell.looped) return;
  const arriving = (port: string) => across(sweep, cell, port)?.demands;
  const former = sweep.before(cell.part.id);
  const at = (port: string): Demand => {
    const end = cell.joined[port];
    return (end && arriving(port)?.[end[1]]) || NO_DEMAND;
  };
  if (former && !former.looped && former.traits === cell.traits) {
    if (cell.traits.inputs.every((port) => (former.demands[port] ?? NO_DEMAND) === at(port))) {
      cell.demands = former.demands;
      return;
    }
  }
  const demands: Record<string, Demand> = {};
  for (const port of cell.traits.inputs) {
    const demand = at(port);
    if (demand !== NO_DEMAND) demands[port] = demand;
  }
  cell.demands = Object.assign(demands, demandsAtOutputs(cell.part.id, cell.traits.power, at));
}

/** Supplies and commands, from the receivers upwards. */
function sweepSupplies(sweep: Sweep, i: number): void {
  const cell = sweep.cells[i];
  if (!cell || cell.looped) return;
  const { traits } = cell;
  const at = (port: string): Feed => {
    const end = cell.joined[port];
    return (end && across(sweep, cell, port)?.offers[end[1]]) || NO_FEED;
  };
  const former = sweep.before(cell.part.id);
  const same =
    former &&
    !former.looped &&
    former.traits === traits &&
    former.demands === cell.demands &&
    traits.outputs.every((port) => (former.feeds[port] ?? NO_FEED) === at(port));
  if (same) {
    cell.feeds = former.feeds;
    cell.offers = former.offers;
    cell.switches = former.switches;
    cell.powered = former.powered;
    return;
  }
  const feeds: Record<string, Feed> = {};
  for (const port of traits.outputs) {
    const feed = at(port);
    if (feed !== NO_FEED) feeds[port] = feed;
  }
  const arriving = (port: string) => feeds[port] ?? NO_FEED;
  cell.feeds = feeds;
  cell.offers = offersAtInputs(
    cell.part.id,
    traits.power,
    arriving,
    (port) => cell.demands[port] ?? NO_DEMAND,
  );
  cell.switches = switchStates(cell.part.id, traits.power, arriving, former?.switches);
  cell.powered = isPowered(traits.power, arriving);
}

/** Signals, from the sources downwards; then everything is put into the part's record. */
function sweepSignals(sweep: Sweep, i: number): void {
  const cell = sweep.cells[i];
  if (!cell) return;
  const { part, traits } = cell;
  const former = sweep.before(part.id);
  if (cell.looped) {
    cell.record = keptOrNew(former?.record, { ...recordOf(cell, {}), sources: [] });
    return;
  }
  const at = (port: string): Spectrum => {
    const end = cell.joined[port];
    return (end && across(sweep, cell, port)?.results[end[1]]?.spectrum) || SILENCE;
  };
  const sameTreatment =
    former !== undefined && !former.looped && former.traits === traits && former.powered === cell.powered;
  cell.treatment = sameTreatment
    ? former.treatment
    : traits.kind.signal(part.options, { id: part.id, powered: cell.powered });
  const sameInputs =
    sameTreatment && traits.inputs.every((port) => (former.record?.inputs[port] ?? SILENCE) === at(port));

  if (sameInputs && former.switches === cell.switches) {
    cell.results = former.results;
  } else {
    sweep.recomputed++;
    cell.results = runTreatment({
      part: part.id,
      treatment: cell.treatment,
      inputs: at,
      switches: cell.switches,
      before: sameInputs ? { results: former.results, switches: former.switches } : undefined,
    });
  }
  const inputs: Record<string, Spectrum> = {};
  for (const port of traits.inputs) {
    const spectrum = at(port);
    if (spectrum !== SILENCE) inputs[port] = spectrum;
  }
  const sources = sourcesOf(sweep, cell, former?.record?.sources);
  cell.record = keptOrNew(former?.record, {
    ...recordOf(cell, sameInputs && former.record ? former.record.inputs : inputs),
    sources,
  });
}

function across(sweep: Sweep, cell: Cell, port: string): Cell | undefined {
  const end = cell.joined[port];
  return end ? sweep.cells[sweep.structure.indexOf.get(end[0]) ?? -1] : undefined;
}

function recordOf(cell: Cell, inputs: PartRecord["inputs"]): PartRecord {
  const outputs: Record<string, Spectrum> = {};
  const meetings: Meeting[] = [];
  for (const [port, result] of Object.entries(cell.results)) {
    outputs[port] = result.spectrum;
    meetings.push(...result.meetings);
  }
  return {
    part: cell.part,
    kind: cell.traits.kind,
    options: cell.traits.options,
    ports: cell.traits.ports,
    looped: cell.looped,
    powered: cell.powered,
    joined: cell.joined,
    inputs,
    outputs,
    feeds: cell.feeds,
    offers: cell.offers,
    demands: cell.demands,
    switches: cell.switches,
    meetings: withoutRepeats(meetings),
    sources: NO_SOURCES,
  };
}

/** An inner node that feeds several outputs reports its meetings once. */
function withoutRepeats(meetings: readonly Meeting[]): readonly Meeting[] {
  if (meetings.length < 2) return meetings;
  const seen = new Set<string>();
  return meetings.filter((m) => {
    const key = `${m.port}|${bandKey(m.victim)}|${bandKey(m.other)}`;
    return !seen.has(key) && seen.add(key);
  });
}

function bandKey(band: Meeting["victim"]): string {
  return `${band.origin.key}${band.half ?? ""}${band.conditions.map((c) => c.at.id + c.setting).join()}`;
}

/** Source parts upstream of a part, by any way. */
function sourcesOf(sweep: Sweep, cell: Cell, former: readonly PartId[] | undefined): readonly PartId[] {
  const lists: (readonly PartId[])[] = [];
  if (cell.treatment.emits && cell.treatment.emits.length > 0) lists.push([cell.part.id]);
  for (const port of cell.traits.inputs) {
    const above = across(sweep, cell, port)?.record?.sources;
    if (above && above.length > 0 && !lists.includes(above)) lists.push(above);
  }
  const only = lists[0];
  if (!only) return NO_SOURCES;
  const all = lists.length === 1 ? only : [...new Set(lists.flat())].sort();
  return former && sameLists(former, all) ? former : all;
}

function sameLists(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((x, i) => x === b[i]);
}

/** The former record where nothing in the new one differs. */
function keptOrNew(former: PartRecord | undefined, record: PartRecord): PartRecord {
  if (!former) return record;
  const same =
    former.part === record.part &&
    former.kind === record.kind &&
    former.looped === record.looped &&
    former.powered === record.powered &&
    former.joined === record.joined &&
    former.inputs === record.inputs &&
    former.feeds === record.feeds &&
    former.offers === record.offers &&
    former.demands === record.demands &&
    former.switches === record.switches &&
    former.sources === record.sources &&
    sameValues(former.outputs, record.outputs, Object.is);
  return same ? former : record;
}

function sameValues<V>(
  a: Readonly<Record<string, V>>,
  b: Readonly<Record<string, V>>,
  equal: (x: V | undefined, y: V | undefined) => boolean,
): boolean {
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => equal(a[key], b[key]));
}

const NO_SOURCES: readonly PartId[] = [];

/** Stands in for a kind that the catalogue does not know: no ports, does nothing. */
const UNKNOWN_KIND: PartKind = define({
  kind: "unknown",
  family: "run",
  name: "Unknown part",
  summary: "A part that this version does not know.",
  keywords: [],
  prefix: "part",
  options: z.object({}),
  symbol: "load",
  caption: () => "unknown kind",
  ports: () => [],
  signal: () => ({}),
});
