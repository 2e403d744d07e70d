/** One way from a source to a receiver, part by part, with what comes in beside it and where the signal is lost. */
import { type PartId, wireId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { metresOf } from "../parts/meanings.ts";
import type { Spectrum } from "../signal/band.ts";
import type { Service, SkyHalf } from "../signal/carrier.ts";
import { isLive } from "../signal/readout.ts";
import type { Cause, Verdict } from "./finding.ts";

/** A signal that comes in beside the way. */
export type ChainSide = {
  /** Wire by which it comes in. */
  readonly wire: string;
  /** Nearest part upstream that is no cable, and the output it comes from. */
  readonly from: PartId;
  readonly port: string;
  /** What the receiver fails by begins on this side. */
  readonly isCause: boolean;
};

export type ChainStep = {
  readonly part: PartId;
  /** A run of cable: it stands on the line rather than in it. */
  readonly isCable: boolean;
  readonly sides: readonly ChainSide[];
  /** Wire that leads on; absent at the receiver. */
  readonly wire?: string;
  /** Here the receiver loses what it misses. */
  readonly isLost: boolean;
  /** At the part where it is lost, or below. */
  readonly fails: boolean;
};

type Followed = { readonly service: Service; readonly key?: string; readonly half?: SkyHalf | undefined };

/**
 * From the source down to the receiver, which is the last step; it alone where nothing is joined to it. Where several
 * inputs are joined, the way goes by the one that brings most of one service: of what the receiver lacks most, where
 * none is named.
 */
export function receiverChain(
  evaluation: Evaluation,
  verdict: Verdict,
  causes: readonly Cause[],
  service?: Service,
): readonly ChainStep[] {
  const own = causes.filter((c) => c.severity === "error" && c.receivers.includes(verdict.part));
  const upwards: BareStep[] = [];
  const passed = new Set<PartId>();
  let followed: Followed | undefined = service ? { service } : wantedOf(verdict, evaluation);
  let at = evaluation.record(verdict.part);
  let wire: string | undefined;
  while (at && !passed.has(at.part.id)) {
    const here: PartRecord = at;
    passed.add(here.part.id);
    const inputs = joinedInputs(here);
    const main = followed && mainInput(evaluation, here, inputs, followed);
    const way = main ?? inputs[0];
    const sides = inputs.filter((port) => port !== way);
    upwards.push({
      part: here.part.id,
      isCable: isCable(here),
      sides: sides.flatMap((port) => sideAt(evaluation, here, port, own)),
      ...(wire === undefined ? {} : { wire }),
    });
    const end = way === undefined ? undefined : here.joined[way];
    if (way === undefined || !end) break;
    wire = wireId({ from: end, to: [here.part.id, way] });
    followed = followed && narrowed(followed, here.inputs[way]);
    at = evaluation.record(end[0]);
  }
  const steps = upwards.reverse();
  const lost = steps.findIndex(({ part }) => part === lostAt(verdict, steps, own));
  return steps.map((step, n) => ({ ...step, isLost: n === lost, fails: lost >= 0 && n >= lost }));
}

type BareStep = Omit<ChainStep, "isLost" | "fails">;

/** The part on the way that takes most from the receiver; else the culprit of a cause by which it fails. */
function lostAt(
  { part, state, idle, services, tuners }: Verdict,
  steps: readonly BareStep[],
  causes: readonly Cause[],
): PartId | undefined {
  if (state !== "fails" || idle) return undefined;
  const missing = [...services, ...tuners].flatMap((each) => each.missing).sort((a, b) => b.count - a.count);
  const suspects = [...missing.map((m) => m.culprit?.part), ...causes.map((cause) => cause.root.parts[0])];
  return suspects.find((id) => id !== part && steps.some((step) => step.part === id));
}

/** What comes in there, named by the nearest part upstream that is no cable. */
function sideAt(
  evaluation: Evaluation,
  record: PartRecord,
  input: string,
  causes: readonly Cause[],
): readonly ChainSide[] {
  const end = record.joined[input];
  if (!end) return [];
  const wire = wireId({ from: end, to: [record.part.id, input] });
  const above = upstreamOf(evaluation, end[0]);
  const isCause = causes.some(({ root }) => above.has(root.parts[0]));
  let [from, port] = end;
  for (const passed = new Set<PartId>(); !passed.has(from); ) {
    passed.add(from);
    const cable = evaluation.record(from);
    const next = cable && isCable(cable) ? cable.joined[joinedInputs(cable)[0] ?? ""] : undefined;
    if (next) [from, port] = next;
  }
  return [{ wire, from, port, isCause }];
}

function upstreamOf(evaluation: Evaluation, start: PartId): ReadonlySet<PartId> {
  const above = new Set([start]);
  for (const id of above) {
    const record = evaluation.record(id);
    if (!record) continue;
    for (const port of joinedInputs(record)) above.add(record.joined[port]?.[0] ?? id);
  }
  return above;
}

function isCable({ kind, options }: PartRecord): boolean {
  return metresOf(kind, options) !== undefined;
}

/** The service that lacks most of what is wanted, else the first wanted. */
function wantedOf({ services, part }: Verdict, evaluation: Evaluation): Followed | undefined {
  const lacking = services
    .filter((s) => s.wanted > 0)
    .sort((a, b) => a.got / a.wanted - b.got / b.wanted)[0]?.service;
  const record = evaluation.record(part);
  const service = lacking ?? record?.kind.reception?.(record.options).wants[0];
  return service && { service };
}

function joinedInputs(record: PartRecord): readonly string[] {
  return record.ports.flatMap(({ side, id }) => (side === "in" && record.joined[id] ? [id] : []));
}

/** The input with most of what is followed; where none has any, the one that a source of it stands above. */
function mainInput(
  evaluation: Evaluation,
  record: PartRecord,
  inputs: readonly string[],
  followed: Followed,
): string | undefined {
  if (inputs.length < 2) return inputs[0];
  const rated = inputs.map((port) => ({ port, points: carriersOf(record.inputs[port], followed) }));
  const best = rated.reduce((a, b) => (b.points > a.points ? b : a));
  if (best.points > 0) return best.port;
  return inputs.find((port) => {
    const above = evaluation.record(record.joined[port]?.[0] ?? "");
    const sources = above ? [above.part.id, ...above.sources] : [];
    return sources.some((id) => sends(evaluation.record(id), followed.service));
  });
}

function sends(source: PartRecord | undefined, service: Service): boolean {
  return Object.values(source?.outputs ?? {}).some(({ bands }) =>
    bands.some((b) => b.origin.part === source?.part.id && b.origin.service === service),
  );
}

/** How well an input brings what is followed: the very signal first, then the number of carriers, cut ones last. */
function carriersOf(spectrum: Spectrum | undefined, { service, key, half }: Followed): number {
  let points = 0;
  for (const band of spectrum?.bands ?? []) {
    if (band.origin.service !== service) continue;
    const isSame =
      band.origin.key === key && (half === undefined || band.half === undefined || band.half === half);
    let live = 0;
    for (let i = 0; i < band.level.length; i++) if (isLive(band, i)) live++;
    const own = live * (band.selected ? 100 : 10) + (band.level.length - live) / 1000;
    points += isSame ? own * 1e6 : own;
  }
  return points;
}

/** Once a signal is chosen it is followed to its own source: the aerial, the polarisation and half of a dish. */
function narrowed(followed: Followed, spectrum: Spectrum | undefined): Followed {
  if (followed.key !== undefined) return followed;
  let best: { points: number; key: string; half: SkyHalf | undefined } = {
    points: 0,
    key: "",
    half: undefined,
  };
  for (const band of spectrum?.bands ?? []) {
    if (band.origin.service !== followed.service || band.stack) continue;
    const points = carriersOf({ bands: [band] }, followed);
    if (points > best.points) best = { points, key: band.origin.key, half: band.half };
  }
  return best.points > 0 ? { service: followed.service, key: best.key, half: best.half } : followed;
}
