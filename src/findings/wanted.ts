/** What whoever sits before a receiver may expect of it. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import { satelliteBandOf, skyHalfOf } from "../parts/planSatellite.ts";
import type { Band } from "../signal/band.ts";
import { type Carrier, type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { waveOf } from "../signal/leak.ts";
import { remembered } from "../signal/remember.ts";
import { carrierKey } from "./carrierResult.ts";
import type { Plane } from "./missing.ts";

/** A carrier that a source sends out. */
export type WantedCarrier = {
  readonly key: string;
  /** Part that sends it. */
  readonly source: PartId;
  readonly origin: string;
  /** Entry of the source's plan. */
  readonly index: number;
  readonly carrier: Carrier;
  /** Level at the source [dBµV]. */
  readonly sentDbuv: number;
  /** Of a satellite's carrier; one object for all carriers of a plane. */
  readonly plane?: Plane;
};

/** Carriers to expect: those of every source upstream, or else of every source drawn. */
export function wantedCarriers(
  record: PartRecord,
  sources: readonly PartRecord[],
  service: Service,
): readonly WantedCarrier[] {
  const above = new Set(record.sources);
  const sendersAbove = sources.filter((s) => above.has(s.part.id) && sentBy(s, service).length > 0);
  return oneForEachFrequency(sendersAbove.length > 0 ? sendersAbove : sources, service);
}

const together = new WeakMap<
  readonly WantedCarrier[],
  WeakMap<readonly WantedCarrier[], readonly WantedCarrier[]>
>();

/**
 * No cable brings two terrestrial signals of one frequency, so nobody may expect both: of two aerials, or of two
 * transmitters, the one that is received better is meant. So what two aerials hear of one transmitter counts once.
 */
function oneForEachFrequency(sources: readonly PartRecord[], service: Service): readonly WantedCarrier[] {
  const ordered = service === "satellite" || sources.length < 2 ? sources : [...sources].sort(byPlace);
  const all = ordered.flatMap((s) => sentBy(s, service));
  const [first = NONE, ...more] = all;
  if (more.length === 0 || service === "satellite") return more.length === 0 ? first : all.flat();
  return more.reduce((known, next) => {
    const byNext = remembered(
      together,
      known,
      () => new WeakMap<readonly WantedCarrier[], readonly WantedCarrier[]>(),
    );
    return remembered(byNext, next, () => merged(known, next));
  }, first);
}

/** Of two alike the upper one on the canvas is meant, whatever order they were drawn in. */
function byPlace({ part: a }: PartRecord, { part: b }: PartRecord): number {
  return a.at[1] - b.at[1] || a.at[0] - b.at[0];
}

const NONE: readonly WantedCarrier[] = [];

function merged(known: readonly WantedCarrier[], next: readonly WantedCarrier[]): readonly WantedCarrier[] {
  const rival = (one: WantedCarrier, others: readonly WantedCarrier[]) =>
    others.find((o) => o.carrier.airMHz === one.carrier.airMHz);
  return [
    ...known.filter((one) => (rival(one, next)?.sentDbuv ?? -Infinity) <= one.sentDbuv),
    ...next.filter((one) => (rival(one, known)?.sentDbuv ?? -Infinity) < one.sentDbuv),
  ];
}

const sourcesBy = new WeakMap<Evaluation, readonly PartRecord[]>();

/** Records of the aerials, dishes and pick-ups of a design. */
export function sourcesOf(evaluation: Evaluation): readonly PartRecord[] {
  return remembered(sourcesBy, evaluation, () =>
    evaluation.records.filter((r) => r.kind.family === "receive"),
  );
}

/** Carriers of all services that a source sends out. */
export function carriersSent(source: PartRecord): number {
  return WANTED_SERVICES.reduce(
    (sum, service) => sum + sentBy(source, service).reduce((n, list) => n + list.length, 0),
    0,
  );
}

/** A plane as a key: the dish and the quadrant. */
export function planeKey(plane: Plane): string {
  const { source, half } = plane;
  return `${source}/${waveOf(plane)}${half === "low" ? "L" : "H"}`;
}

/** Every receiver asks the same of every source. */
const known = new WeakMap<PartRecord, Map<Service, readonly (readonly WantedCarrier[])[]>>();

/** Carriers of a service that a source itself sends out, band by band. */
function sentBy(source: PartRecord, service: Service): readonly (readonly WantedCarrier[])[] {
  const byService = remembered(
    known,
    source,
    () => new Map<Service, readonly (readonly WantedCarrier[])[]>(),
  );
  return remembered(byService, service, () =>
    Object.values(source.outputs)
      .flatMap((s) => s.bands)
      .filter((b) => b.origin.part === source.part.id && b.origin.service === service)
      .map(carriersOf)
      .filter((list) => list.length > 0),
  );
}

function carriersOf({ origin, grid, level }: Band): readonly WantedCarrier[] {
  const { polarisation, satellite, part: source, key, circular } = origin;
  const isUndivided = satelliteBandOf(grid.centre[0] ?? 0) !== "Ku";
  const plane = (half: Plane["half"]): Plane | undefined =>
    polarisation && {
      source,
      ...(satellite === undefined ? {} : { position: satellite }),
      polarisation,
      half,
      ...(isUndivided ? { isUndivided } : {}),
      ...(circular ? { circular } : {}),
    };
  const planes = { low: plane("low"), high: plane("high") };
  return Array.from(grid.index).flatMap((index, i): WantedCarrier[] => {
    const carrier = grid.plan[index];
    if (!carrier || carrier.former) return [];
    const own = planes[skyHalfOf(carrier.airMHz)];
    return [
      {
        key: carrierKey(key, index),
        source,
        origin: key,
        index,
        carrier,
        sentDbuv: level[i] ?? 0,
        ...(own ? { plane: own } : {}),
      },
    ];
  });
}
