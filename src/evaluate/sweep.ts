/** The cells of an evaluation under way, and the marks that say which of them are still to be visited. */
import type { Design } from "../design/design.ts";
import type { OutsideField } from "../parts/outsideField.ts";
import { type Cell, NOTHING, newCell, traitsOf } from "./cell.ts";
import type { PartRecord } from "./evaluation.ts";
import type { AmplifierModel } from "./overload.ts";
import type { EvaluationProgress } from "./steps.ts";
import type { Structure } from "./structure.ts";
import { totalOf } from "./work.ts";

/** What an evaluation keeps for the next one. */
export type Workings = {
  readonly design: Design;
  readonly structure: Structure;
  readonly cells: readonly Cell[];
};

/** One evaluation under way. */
export type Sweep = {
  readonly structure: Structure;
  readonly cells: Cell[];
  /** 1: the cell is this sweep's own; 0: it still belongs to the evaluation before. */
  readonly owned: Uint8Array;
  /** By place in the order: parts whose islands are to be worked out again, and what signals still have to visit. */
  readonly supplies: Uint8Array;
  readonly signals: Uint8Array;
  readonly amplifiers: AmplifierModel;
  readonly field: OutsideField | undefined;
  recomputed: number;
  /** Of all parts, see `work.ts`: of those not visited as it was when they were. */
  work: number;
};

/**
 * Lays out the cells: those of unchanged parts as they were, new ones for what was edited or joined otherwise,
 * and marks where the sweeps have to begin.
 */
export function startSweep(
  design: Design,
  structure: Structure,
  before: Workings | undefined,
  { amplifiers, field }: Pick<Sweep, "amplifiers" | "field">,
): Sweep {
  const n = design.parts.length;
  const sameStructure = before?.structure === structure;
  const sweep: Sweep = {
    structure,
    cells: sameStructure ? before.cells.slice() : [],
    owned: new Uint8Array(n),
    supplies: new Uint8Array(n),
    signals: new Uint8Array(n),
    amplifiers,
    field,
    recomputed: 0,
    work: 0,
  };
  const formerParts = sameStructure ? before.design.parts : undefined;
  for (let i = 0; i < n; i++) {
    const part = design.parts[i];
    if (!part || part === formerParts?.[i]) continue;
    const former = before?.cells[sameStructure ? i : (before.structure.indexOf.get(part.id) ?? -1)];
    const place = structure.place[i] ?? 0;
    const joined = structure.joined[i] ?? NOTHING;
    const looped = structure.looped[i] === 1;
    const traits =
      former && former.part.options === part.options && former.part.kind === part.kind
        ? former.traits
        : traitsOf(part);
    const asBefore =
      former && former.traits === traits && former.looped === looped && sameEnds(former.joined, joined);
    if (asBefore && former.part === part) {
      // Other wires came or went: the record stays the same object.
      sweep.cells[i] = former;
      continue;
    }
    sweep.owned[i] = 1;
    if (asBefore) {
      // Moved or renamed: nothing to work out, but the record shows the new part.
      sweep.cells[i] = { ...former, part, record: undefined };
      continue;
    }
    sweep.cells[i] = startOver(former, newCell(part, traits, { looped, joined }));
    markAll(sweep, place);
    // Whoever is joined to it may have been on one island with it; and a part on a loop is not visited at all.
    for (const port in structure.neighbours[i]) {
      const far = structure.place[neighbourOf(sweep, i, port)?.index ?? i] ?? 0;
      if (looped) markAll(sweep, far);
      else sweep.supplies[far] = 1;
    }
  }
  for (const cell of sweep.cells) sweep.work += totalOf(cell.work);
  return sweep;
}

function markAll(sweep: Sweep, place: number): void {
  sweep.supplies[place] = 1;
  sweep.signals[place] = 1;
}

/** Keeps a former cell's results: the sweeps compare with them, to see whom they must tell of a change. */
function startOver(former: Cell | undefined, cell: Cell): Cell {
  if (!former || former.looped || cell.looped) return cell;
  cell.demands = former.demands;
  cell.feeds = former.feeds;
  cell.offers = former.offers;
  cell.switches = former.switches;
  cell.suppliesLeft = former.suppliesLeft;
  cell.supplyStatesLeft = former.supplyStatesLeft;
  cell.drawsMa = former.drawsMa;
  cell.shutDown = former.shutDown;
  cell.shorts = former.shorts;
  cell.powered = former.powered;
  cell.dies = former.dies;
  cell.inputs = former.inputs;
  cell.results = former.results;
  cell.sources = former.sources;
  return cell;
}

function sameEnds(a: PartRecord["joined"], b: PartRecord["joined"]): boolean {
  if (a === b) return true;
  const ports = Object.keys(a);
  return (
    ports.length === Object.keys(b).length &&
    ports.every((port) => a[port]?.[0] === b[port]?.[0] && a[port]?.[1] === b[port]?.[1])
  );
}

/** The cell of part i, copied first if it belongs to the evaluation before. */
export function ownCell(sweep: Sweep, i: number): Cell | undefined {
  const cell = sweep.cells[i];
  if (!cell || sweep.owned[i]) return cell;
  const copy = { ...cell, record: undefined };
  sweep.cells[i] = copy;
  sweep.owned[i] = 1;
  return copy;
}

type Neighbour = { readonly index: number; readonly port: string } | undefined;

export function neighbourOf(sweep: Sweep, i: number, port: string): Neighbour {
  return sweep.structure.neighbours[i]?.[port];
}

/**
 * Marks whoever is joined to a port that hands on something new. All joined ports are asked, not only those
 * that the part has now: an option may have taken a port away. A mark against the run of a sweep does nothing.
 */
export function markChanged(
  sweep: Sweep,
  visits: Uint8Array,
  i: number,
  changed: (port: string) => boolean,
): void {
  const ends = sweep.structure.neighbours[i];
  for (const port in ends) {
    const end = ends[port];
    if (end && changed(port)) visits[sweep.structure.place[end.index] ?? 0] = 1;
  }
}

/** Counts the work of a part in the place of what it was before. */
export function countWork(
  sweep: Sweep,
  cell: Cell,
  { done, work }: { readonly done: number; readonly work: Partial<Cell["work"]> },
): EvaluationProgress {
  const after = { ...cell.work, ...work };
  sweep.work += totalOf(after) - totalOf(cell.work);
  cell.work = after;
  return { done, total: sweep.cells.length, work: sweep.work };
}
