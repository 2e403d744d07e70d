/** The signal pass through one part: from the spectra at its inputs to the spectra at its outputs. */
import type { Path, SignalTreatment } from "../parts/contract.ts";
import type { Band, Spectrum } from "../signal/band.ts";
import { combine } from "../signal/combine.ts";
import type { SwitchState } from "../signal/control.ts";
import { gainDbAt } from "../signal/gain.ts";
import { takenByFeed, withCrosstalk } from "../signal/leak.ts";
import { remembered } from "../signal/remember.ts";
import { flat, series } from "../signal/response.ts";
import {
  amplifyBand,
  convertBand,
  isSetByVoltsOf,
  noiseFloor,
  passFloor,
  underCondition,
} from "../signal/treat.ts";
import { fewAlternatives, MOST_SWITCHES_IN_A_ROW } from "./alternatives.ts";
import type { Drive, Meeting, Omitted } from "./evaluation.ts";
import { type AmplifierModel, saturatedFloor, withProducts } from "./overload.ts";
import { stackBands } from "./stacking.ts";

/** What is to be said of what came together at a port or an inner node. */
export type NodeNotes = {
  readonly meetings: readonly Meeting[];
  readonly drives: readonly Drive[];
  /** Alternatives that were left out here, because there are more than are worked out. */
  readonly omitted: Omitted | undefined;
  /** What it took: carriers handed on, and bands held against each other. A count, for budgets and tests. */
  readonly work: number;
};

/** What came together at a port or an inner node. */
type Gathered = NodeNotes & {
  readonly spectrum: Spectrum;
  /** Inner nodes it came from, near and far, by name; absent where there are none. Outputs share them. */
  readonly inside?: ReadonlyMap<string, NodeNotes>;
};

export type PortResult = Gathered & {
  /** State of the port's own switch that this was made with. */
  readonly gate: SwitchState | undefined;
};

/** What came of a treatment: one result for every output port it serves. */
export type SignalResult = Readonly<Record<string, PortResult>>;

/**
 * Runs a treatment. With `before` given (same treatment, same inputs) a port keeps its former result unless its
 * own switch changed: of the outputs of a multiswitch only that one changes whose receiver asks for something else.
 */
export function runTreatment(o: {
  part: string;
  treatment: SignalTreatment;
  inputs: (port: string) => Spectrum;
  switches: Readonly<Record<string, SwitchState>>;
  /** How amplifiers are reckoned with. */
  amplifiers: AmplifierModel;
  before: SignalResult | undefined;
}): SignalResult {
  const run: Run = { ...o };
  const out: Record<string, PortResult> = {};
  for (const port of portsServed(o.treatment)) {
    const former = o.before?.[port];
    const gate = o.switches[port];
    out[port] = former && former.gate === gate ? former : { ...gather(run, port), gate };
  }
  return out;
}

type Run = {
  readonly part: string;
  readonly treatment: SignalTreatment;
  readonly inputs: (port: string) => Spectrum;
  readonly switches: Readonly<Record<string, SwitchState>>;
  // Made where a part has inner nodes or switched outputs: most have none.
  inner?: Map<string, Gathered>;
  travelled?: Map<Path["response"], Map<string, Travelled>>;
  readonly amplifiers: AmplifierModel;
};

function portsServed(t: SignalTreatment): readonly string[] {
  const ports: string[] = [];
  const add = (port: string) => {
    if (!port.startsWith("#") && !ports.includes(port)) ports.push(port);
  };
  for (const e of t.emits ?? []) add(e.port);
  for (const e of t.ingress ?? []) add(e.port);
  for (const p of t.paths ?? []) add(p.to);
  for (const s of t.stacks ?? []) add(s.to);
  return ports;
}

/** Notes of a part, each once: of its outputs, and before each of the inner nodes that no output before it came from. */
export function* notesOf(results: SignalResult): Generator<NodeNotes> {
  let seen: Set<string> | undefined;
  for (const port in results) {
    const result = results[port];
    if (!result) continue;
    for (const [node, inner] of result.inside ?? []) {
      seen ??= new Set();
      if (seen.has(node)) continue;
      seen.add(node);
      yield inner;
    }
    yield result;
  }
}

/** Everything that ends at one port or inner node, put together. */
function gather(run: Run, node: string): Gathered {
  const groups: (readonly Band[])[] = [];
  // Alternatives of one switch come in by one connector each, yet never meet: they may stand in one group.
  const conditional: Band[] = [];
  const notes: Notes = { meetings: [], drives: [], omitted: undefined, work: 0 };
  for (const e of run.treatment.emits ?? []) if (e.port === node) groups.push([...e.bands]);
  for (const e of run.treatment.ingress ?? []) if (e.port === node) groups.push([...e.bands]);
  for (const path of run.treatment.paths ?? []) {
    if (path.to !== node) continue;
    const bands = followPath(run, path, notes);
    if (path.condition) conditional.push(...bands);
    else groups.push(bands);
  }
  for (const stack of run.treatment.stacks ?? []) {
    if (stack.to !== node) continue;
    for (const from of stack.from) noteInside(run, from, notes);
    const arrived = stack.from.map((from) => ({ node: from, bands: arriving(run, from).bands }));
    groups.push(stackBands(run.part, stack, { arrived, control: run.switches[stack.to] }));
  }
  if (conditional.length > 0) groups.push(withOneFloor(conditional));
  const combined = combine(groups);
  for (const clash of combined.clashes) notes.meetings.push({ port: node, ...clash });
  const { kept: bands, left } = fewAlternatives(combined.bands);
  if (left > 0) notes.omitted = { ...notes.omitted, alternatives: left };
  const own = ownFloors(run, node);
  const spectrum = spectrumOf(own.length > 0 ? [...bands, ...own] : bands);
  return { ...notes, spectrum, work: notes.work + combined.work + sizeOf(spectrum) };
}

/**
 * The converter's own noise at a port: the same whichever quadrant it is set to, so it comes once and unconditioned.
 * It joins after everything has met, for within its own carriers that noise is counted already.
 */
function ownFloors(run: Run, node: string): Band[] {
  const seen: Path["response"][] = [];
  const floors: Band[] = [];
  for (const path of run.treatment.paths ?? []) {
    if (path.to !== node || !path.floor || seen.includes(path.response)) continue;
    seen.push(path.response);
    const { noiseFigureDb = 0, floor, response } = path;
    floors.push(passFloor(noiseFloor({ part: run.part, noiseFigureDb, ...floor }), withoutEdges(response)));
  }
  return floors;
}

const gains = new WeakMap<Path["response"], Path["response"]>();

/** The gain of a way without what its filter takes away beside its band: of its own noise the skirt tells that. */
function withoutEdges(response: Path["response"]): Path["response"] {
  if (response.type !== "series") return response;
  return remembered(gains, response, () => ({
    ...response,
    of: response.of.filter((each) => each.type !== "windows"),
  }));
}

/** Alternatives with the strongest of their floors: whichever the switch selects, about that much noise is there. */
function withOneFloor(alternatives: readonly Band[]): readonly Band[] {
  let strongest: Band | undefined;
  for (const band of alternatives) {
    // In its band, which its last slice belongs to: below it a filter may have taken more from one than another.
    if (band.isFloor && (band.level.at(-1) ?? 0) > (strongest?.level.at(-1) ?? Number.NEGATIVE_INFINITY))
      strongest = band;
  }
  if (!strongest) return alternatives;
  const floor: Band = { ...strongest, conditions: [], selected: true };
  return [...alternatives.filter((b) => !b.isFloor), floor];
}

/** Floors travel with the bands, but stand apart in a spectrum: nobody receives or draws them as signals. */
function spectrumOf(all: readonly Band[]): Spectrum {
  if (!all.some((b) => b.isFloor)) return { bands: all };
  return { bands: all.filter((b) => !b.isFloor), floors: all.filter((b) => b.isFloor) };
}

/** What a band takes beside its carriers, in carriers. */
const WORK_OF_A_BAND = 16;

function sizeOf({ bands, floors = [] }: Spectrum): number {
  let size = 0;
  for (const list of [bands, floors]) for (const band of list) size += band.level.length + WORK_OF_A_BAND;
  return size;
}

/** What is noted on the way to a port. */
type Notes = {
  readonly meetings: Meeting[];
  readonly drives: Drive[];
  omitted: Omitted | undefined;
  work: number;
  inside?: Map<string, NodeNotes>;
};

function followPath(run: Run, path: Path, notes: Notes): readonly Band[] {
  const gate = path.condition ? run.switches[path.condition.port] : undefined;
  if (path.condition && !gate) return [];
  const { bands, drive } = travelled(run, path);
  noteInside(run, path.from, notes);
  if (drive) notes.drives.push({ ...drive, port: path.to });
  if (!gate || !path.condition) return bands;
  const condition = { at: gate, setting: path.condition.setting };
  const under: Band[] = [];
  for (const band of bands) {
    if (band.conditions.length < MOST_SWITCHES_IN_A_ROW) under.push(underCondition(band, condition));
    else {
      // Behind so many switches only what is set now goes on, as if the last ones could not be set otherwise.
      if (band.selected && gate.setting === condition.setting) under.push(band);
      notes.omitted = { ...notes.omitted, behindSwitches: MOST_SWITCHES_IN_A_ROW };
    }
  }
  return under;
}

/** Outputs that differ by their switch alone send the same bands through the same stage, so they share the result. */
function travelled(run: Run, path: Path): Travelled {
  const make = () => travel(run, path);
  if (!path.condition) return make();
  const { polarisation = "", half = "", fromMHz = 0, toMHz = 0 } = path.takes ?? {};
  const way = `${path.from} ${polarisation}${half}${fromMHz}-${toMHz} ${path.loMHz ?? 0} ${path.shiftMHz ?? 0}`;
  run.travelled ??= new Map();
  return remembered(
    remembered(run.travelled, path.response, () => new Map<string, Travelled>()),
    way,
    make,
  );
}

type Travelled = { readonly bands: readonly Band[]; readonly drive: Drive | null };

function travel(run: Run, path: Path): Travelled {
  const bands: Band[] = [];
  const floors: Band[] = [];
  const noise = {
    part: run.part,
    ...(path.noiseFigureDb === undefined ? {} : { noiseFigureDb: path.noiseFigureDb }),
  };
  const { bands: arrived, floors: below = [] } = arriving(run, path.from);
  const { crosstalk } = path;
  const beside =
    crosstalk?.from.map((input) => {
      const { bands: others } = arriving(run, input);
      return others.flatMap((other) =>
        path.holds || isSetByVoltsOf(run.part, other) ? (heldBand(other) ?? []) : [other],
      );
    }) ?? [];
  const all = arrived.flatMap((band) => {
    const held = path.holds || isSetByVoltsOf(run.part, band) ? heldBand(band) : band;
    if (!held) return [];
    const mixed = crosstalk ? withCrosstalk(held, beside, crosstalk.isolationDb) : held;
    // A feed hears all waves of the beam but this one, which must be told from them by what it is now.
    const beam = mixed === band ? arrived : arrived.map((other) => (other === band ? mixed : other));
    return takeBand(mixed, path, beam) ?? [];
  });
  const response = path.levelControl ? heldAt(all, path.response, path.levelControl) : path.response;
  for (const taken of all) bands.push(amplifyBand(taken, response, noise));
  for (const floor of below) {
    const moved = moveFloor(floor, path);
    if (moved) floors.push(passFloor(moved, response));
  }
  const { rating } = path;
  if (!rating) return { bands: floors.length > 0 ? [...bands, ...floors] : bands, drive: null };
  const { bands: driven, drive } = withProducts(bands, {
    rating,
    model: run.amplifiers,
    from: path.from,
    port: path.to,
  });
  return { bands: [...driven, ...floors.map((floor) => saturatedFloor(floor, rating))], drive };
}

/** The response with the gain that level control comes to for what arrives; it never falls below its least. */
function heldAt(
  bands: readonly Band[],
  response: Path["response"],
  { outputDbuv, mostGainDb }: NonNullable<Path["levelControl"]>,
): Path["response"] {
  let power = 0;
  for (const band of bands)
    for (let i = 0; i < band.level.length; i++)
      power += 10 ** (((band.level[i] ?? 0) + gainDbAt(response, band.grid.centre[i] ?? 0)) / 10);
  const wantedDb = outputDbuv - 10 * Math.log10(power);
  return power > 0 ? series(response, flat(Math.min(mostGainDb, wantedDb))) : response;
}

function arriving(run: Run, node: string): Spectrum {
  return node.startsWith("#") ? innerNode(run, node).spectrum : run.inputs(node);
}

function innerNode(run: Run, node: string): Gathered {
  run.inner ??= new Map();
  return remembered(run.inner, node, () => gather(run, node));
}

/** Notes the inner nodes that something came from, whoever worked them out: the farthest first. */
function noteInside(run: Run, node: string, notes: Notes): void {
  if (!node.startsWith("#")) return;
  notes.inside ??= new Map();
  const { inside, meetings, drives, omitted, work } = innerNode(run, node);
  for (const [name, far] of inside ?? []) notes.inside.set(name, far);
  // Without its spectrum: nobody asks for it once the outputs are made.
  notes.inside.set(node, { meetings, drives, omitted, work });
}

/** What a part has set above it by itself is simply there; null for what it has not. */
function heldBand(band: Band): Band | null {
  if (band.conditions.length === 0) return band;
  return band.selected ? { ...band, conditions: [] } : null;
}

/** A floor lies in the IF already: what converts or picks from the sky has no use for it. */
function moveFloor(floor: Band, { takes, loMHz, shiftMHz = 0 }: Path): Band | null {
  if (shiftMHz === 0) return takes || loMHz ? null : floor;
  const { fromMHz = 0, toMHz = Number.MAX_VALUE } = takes ?? {};
  return convertBand(floor, { fromMHz, toMHz, loMHz: -shiftMHz });
}

/** Selection and conversion by a path; the band itself when the path takes all as it is. */
function takeBand(band: Band, path: Path, beam: readonly Band[]): Band | null {
  const { takes, feed, shiftMHz = 0 } = path;
  const loMHz = (path.loMHz ?? 0) - shiftMHz;
  if (!takes && loMHz === 0) return band;
  if (takes?.polarisation && takes.polarisation !== band.origin.polarisation) return null;
  return convertBand(feed ? takenByFeed(band, beam, feed) : band, {
    fromMHz: takes?.fromMHz ?? 0,
    toMHz: takes?.toMHz ?? Number.MAX_VALUE,
    loMHz,
    ...(takes?.half ? { half: takes.half } : {}),
    ...(path.isInverted ? { isInverted: true } : {}),
  });
}
