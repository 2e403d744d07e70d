/** The evaluator's own notes on one part, and the record that it shows to others. */
import { z } from "zod";
import type { Part, PartId } from "../design/design.ts";
import { kindOf } from "../parts/catalogue.ts";
import {
  type AnyOptions,
  type DeadEnd,
  define,
  type PartKind,
  type Port,
  type PowerTreatment,
  type SignalTreatment,
} from "../parts/contract.ts";
import { SILENCE, type Spectrum } from "../signal/band.ts";
import type { Demand, DiesAtVertical, Feed, SwitchState } from "../signal/control.ts";
import { conditionsKey } from "../signal/treat.ts";
import type { Drive, Meeting, Omitted, PartRecord } from "./evaluation.ts";
import { notesOf, type SignalResult } from "./signals.ts";
import { tiedPorts } from "./supply/ties.ts";
import { type EvaluationWork, NO_WORK } from "./work.ts";

/** What follows from kind and options alone. */
export type Traits = {
  readonly kind: PartKind;
  readonly options: AnyOptions;
  readonly ports: readonly Port[];
  readonly inputs: readonly string[];
  readonly outputs: readonly string[];
  readonly power: PowerTreatment;
  /** Groups of ports that have to do with one another for direct current. */
  readonly tied: readonly (readonly string[])[];
};

/** Everything about one part while it is being worked out; left alone once its evaluation is done. */
export type Cell = {
  part: Part;
  traits: Traits;
  looped: boolean;
  joined: PartRecord["joined"];
  /** By port: what draws above it. */
  demands: Readonly<Record<string, Demand>>;
  feeds: Readonly<Record<string, Feed>>;
  offers: Readonly<Record<string, Feed>>;
  switches: Readonly<Record<string, SwitchState>>;
  /** Supplies that were left out because there are too many. */
  suppliesLeft: number;
  /** Requests and switch positions of its island that were not solved by themselves; told of one part of each island. */
  supplyStatesLeft: number;
  drawsMa: number;
  /** Own supplies that shut down, and those of others that do because of a short here. */
  shutDown: readonly string[];
  shorts: readonly PartId[];
  /** By group of ports: what the island of the group says of this part. */
  islands: readonly IslandNote[];
  powered: boolean;
  /** Present while it is powered, and would not be if everybody asked for vertical. */
  dies: DiesAtVertical | undefined;
  inputs: Readonly<Record<string, Spectrum>>;
  /** By leg of a joint: dead cable on it. */
  deadEnds: Readonly<Record<string, DeadEnd>>;
  /** Made for these traits, dead ends and this state of power; undefined until the signal sweep first comes by. */
  treatment: SignalTreatment | undefined;
  results: SignalResult;
  sources: readonly PartId[];
  work: EvaluationWork;
  /** Undefined while the notes have changed since it was written. */
  record: PartRecord | undefined;
};

export type IslandNote = {
  /** This part's share of what the island took to work out. */
  readonly work: number;
  /** Supplies that were left out, and states that were not solved by themselves. */
  readonly left: number;
  readonly statesLeft: number;
  /** Most that it gets when all ask for vertical at once, where its offers do not tell [V]. */
  readonly verticalVolts?: number;
  readonly drawsMa: number;
  readonly shutDown: readonly string[];
  readonly shorts: readonly PartId[];
};

export function newCell(
  part: Part,
  traits: Traits,
  o: { looped: boolean; joined: PartRecord["joined"] },
): Cell {
  return {
    part,
    traits,
    ...o,
    demands: NOTHING,
    feeds: NOTHING,
    offers: NOTHING,
    switches: NOTHING,
    suppliesLeft: 0,
    supplyStatesLeft: 0,
    drawsMa: 0,
    shutDown: NO_PORTS,
    shorts: NO_SOURCES,
    islands: [],
    powered: true,
    dies: undefined,
    inputs: NOTHING,
    deadEnds: NOTHING,
    treatment: undefined,
    results: NOTHING,
    sources: NO_SOURCES,
    work: NO_WORK,
    record: undefined,
  };
}

/** The shared "nothing at any port", so that a part without it stays the same from one evaluation to the next. */
export const NOTHING: Readonly<Record<string, never>> = Object.freeze({});
export const NO_SOURCES: readonly PartId[] = [];
export const NO_PORTS: readonly string[] = [];

const traitsByOptions = new WeakMap<AnyOptions, Traits>();

export function traitsOf(part: Part): Traits {
  const known = traitsByOptions.get(part.options);
  if (known && known.kind.kind === part.kind) return known;
  const kind = kindOf(part.kind) ?? UNKNOWN_KIND;
  const ports = kind.ports(part.options);
  const power = kind.power(part.options);
  const outputs = ports.filter((p) => p.side === "out").map((p) => p.id);
  const traits: Traits = {
    kind,
    options: part.options,
    ports,
    inputs: ports.filter((p) => p.side === "in").map((p) => p.id),
    outputs,
    power,
    tied: tiedPorts(power, outputs),
  };
  traitsByOptions.set(part.options, traits);
  return traits;
}

/** Stands in for a kind that the catalogue does not know: no ports, does nothing. */
const UNKNOWN_KIND: PartKind = define({
  kind: "unknown",
  family: "run",
  name: "Unknown part",
  summary: "A part that this version does not know.",
  keywords: [],
  prefix: "part",
  trade: { job: "block", price: 0, workMinutes: 0 },
  options: z.object({}),
  symbol: "load",
  caption: () => "unknown kind",
  ports: () => [],
  signal: () => ({}),
});

export function recordOf(cell: Cell): PartRecord {
  const outputs: Record<string, Spectrum> = {};
  const meetings: Meeting[] = [];
  const drives: Drive[] = [];
  let omitted: Omitted | undefined = cell.suppliesLeft > 0 ? { supplies: cell.suppliesLeft } : undefined;
  if (cell.supplyStatesLeft > 0) omitted = { ...omitted, supplyStates: cell.supplyStatesLeft };
  let work = 0;
  for (const port in cell.results) outputs[port] = cell.results[port]?.spectrum ?? SILENCE;
  for (const notes of notesOf(cell.results)) {
    for (const m of notes.meetings) meetings.push(m);
    for (const d of notes.drives) drives.push(d);
    if (notes.omitted) omitted = { ...omitted, ...notes.omitted };
    work += notes.work;
  }
  return {
    part: cell.part,
    kind: cell.traits.kind,
    options: cell.traits.options,
    ports: cell.traits.ports,
    power: cell.traits.power,
    treatment: cell.treatment ?? NOTHING,
    deadEnds: cell.deadEnds,
    looped: cell.looped,
    powered: cell.powered,
    joined: cell.joined,
    inputs: cell.inputs,
    outputs,
    feeds: cell.feeds,
    offers: cell.offers,
    demands: cell.demands,
    switches: cell.switches,
    drawsMa: cell.drawsMa,
    shutDown: cell.shutDown,
    shorts: cell.shorts,
    meetings: withoutRepeats(meetings),
    drives,
    ...(omitted ? { omitted } : {}),
    work,
    sources: cell.sources,
  };
}

/** Meetings of the same signals at the same place are said once, in however many bands they come. */
function withoutRepeats(meetings: readonly Meeting[]): readonly Meeting[] {
  if (meetings.length < 2) return meetings;
  const seen = new Set<string>();
  return meetings.filter((m) => {
    const key = `${m.port}|${bandKey(m.victim)}|${bandKey(m.other)}`;
    return !seen.has(key) && seen.add(key);
  });
}

function bandKey(band: Meeting["victim"]): string {
  // What a transmitter sends may stand in several bands, by the ways that it came.
  if (band.origin.transmitter !== undefined) return `${band.origin.key}${band.grid.index.join()}`;
  return `${band.origin.key}${band.half ?? ""}${conditionsKey(band)}`;
}
