/** How a level came about: one carrier followed from where it is back to its source, step by step. */
import type { PartId } from "../design/design.ts";
import type { Path } from "../parts/contract.ts";
import { tuningFor } from "../parts/userBands.ts";
import type { TuningRequest } from "../rf/tuningWord.ts";
import type { Band } from "../signal/band.ts";
import type { Carrier, Origin } from "../signal/carrier.ts";
import { gainDbAt } from "../signal/gain.ts";
import { convertedMHz } from "../signal/grid.ts";
import { feedGainDb } from "../signal/leak.ts";
import { ciDb, cnDb, cniDb, imDb, isLive } from "../signal/readout.ts";
import type { Response } from "../signal/response.ts";
import type { Evaluation, PartRecord } from "./evaluation.ts";
import { stackedLevelDbuv } from "./stacking.ts";

/** Which carrier: its source and its entry of the source's plan. */
export type CarrierId = { readonly origin: string; readonly index: number };

/** One part on the way, and what it did to the carrier. */
export type TraceStep = {
  readonly part: PartId;
  /** Input it came in by; null at the source. */
  readonly from: string | null;
  readonly to: string;
  /** Centre when it leaves [MHz]. */
  readonly centreMHz: number;
  /** Behind the part [dBµV, dB, dB, dB]; C/I is Infinity where nothing disturbs, products included. */
  readonly levelDbuv: number;
  readonly cnDb: number;
  readonly ciDb: number;
  /** Against third-order products alone [dB]; Infinity where there are none, and behind a channel stacker. */
  readonly imDb: number;
  readonly cniDb: number;
  /** What it gained or lost [dB]; null at the source. */
  readonly gainDb: number | null;
  /** What the gain is made of, in order. */
  readonly made: readonly { readonly what: string; readonly db: number }[];
  /** Oscillator that moved it [MHz]. */
  readonly loMHz?: number;
  /** User band that carries it from here on. */
  readonly userBand?: number;
  /** What the receiver has to say to get it there; on the step that stacks. */
  readonly tuning?: TuningRequest;
  /** True when this part cut it. */
  readonly cutHere: boolean;
};

/**
 * Steps from the source to a port, in the order of the signal; empty when the carrier is not there.
 * Of several ways into a part the strongest is followed. On a channel-stacked feed `userBand` says
 * which user band carries it; absent, the first one.
 */
export function traceCarrier(
  evaluation: Evaluation,
  at: { readonly part: PartId; readonly port: string },
  carrier: CarrierId,
  userBand?: number,
): readonly TraceStep[] {
  const steps: TraceStep[] = [];
  let here: TraceOutput | null = at;
  // A way back can't be longer than the number of parts; loops carry no signal, so this only guards.
  for (let guard = evaluation.records.length; here && guard > 0; guard--) {
    const last: TracedOutput | null = traceOutput(evaluation, here, carrier, userBand);
    if (!last) break;
    steps.push(last.step);
    here = last.before;
  }
  return steps.reverse();
}

export type TraceOutput = { readonly part: PartId; readonly port: string };

/** The step that leaves an output, and the output that it came from; null at the source. */
export type TracedOutput = { readonly step: TraceStep; readonly before: TraceOutput | null };

/** One step of a trace; null where the carrier is not there. */
export function traceOutput(
  evaluation: Evaluation,
  { part, port }: TraceOutput,
  carrier: CarrierId,
  userBand: number | undefined,
): TracedOutput | null {
  const record = evaluation.record(part);
  const out = record && findCarrier(record.outputs[port]?.bands ?? [], carrier, userBand);
  if (!record || !out) return null;
  const came = arrival(record, port, out, { carrier, userBand });
  const end = came && record.joined[came.port];
  return {
    step: stepOf(record, port, out, came, carrier),
    before: end ? { part: end[0], port: end[1] } : null,
  };
}

/** A carrier in a band: its position there. */
export type FoundCarrier = { readonly band: Band; readonly i: number };

/** The carrier among the bands of a port, or the user band that holds it; the strongest of several. */
export function findCarrier(
  bands: readonly Band[],
  carrier: CarrierId,
  userBand: number | undefined,
): FoundCarrier | undefined {
  let best: FoundCarrier | undefined;
  for (const band of bands) {
    const i = band.stack ? slotOf(band, carrier, userBand) : indexIn(band, carrier);
    if (i < 0) continue;
    if (!best || (band.level[i] ?? 0) > (best.band.level[best.i] ?? 0)) best = { band, i };
  }
  return best;
}

function indexIn(band: Band, carrier: CarrierId): number {
  return band.origin.key === carrier.origin ? band.grid.index.indexOf(carrier.index) : -1;
}

function slotOf(band: Band, carrier: CarrierId, userBand: number | undefined): number {
  const { stack } = band;
  if (!stack?.holds.some((held) => indexIn(held, carrier) >= 0)) return -1;
  return userBand === undefined ? 0 : stack.numbers.indexOf(userBand);
}

/** An input, and the paths from it to the output; none where the part stacks. */
type Arrival = FoundCarrier & { readonly port: string; readonly chain: readonly Path[] };

/** Where the carrier came into a part: the input from which most of it comes out. */
function arrival(
  record: PartRecord,
  to: string,
  out: FoundCarrier,
  { carrier, userBand }: { readonly carrier: CarrierId; readonly userBand: number | undefined },
): Arrival | null {
  if (out.band.origin.part === record.part.id && !out.band.stack) return null;
  let best: { readonly came: Arrival; readonly levelDbuv: number } | undefined;
  for (const [port, spectrum] of Object.entries(record.inputs)) {
    const found = findCarrier(spectrum.bands, carrier, userBand);
    if (!found) continue;
    const levelDbuv = found.band.level[found.i] ?? 0;
    const centreMHz = found.band.grid.centre[found.i] ?? 0;
    const ways: readonly (readonly Path[])[] =
      out.band.stack?.part === record.part.id ? [[]] : chains(record, { from: port, to }, out);
    for (const chain of ways) {
      const leaving = levelDbuv + gainDbOf(chain, centreMHz, found.band.origin);
      if (!best || leaving > best.levelDbuv) best = { came: { ...found, port, chain }, levelDbuv: leaving };
    }
  }
  return best?.came ?? null;
}

/** Paths, one after the other, from an input to an output, as the band that left there had them set. */
function chains(record: PartRecord, way: { readonly from: string; readonly to: string }, out: FoundCarrier) {
  const settings = new Map(out.band.conditions.map((c) => [c.at.id, c.setting]));
  const paths = (record.treatment.paths ?? []).filter(
    ({ condition }) =>
      !condition || settings.get(`${record.part.id}/${condition.port}`) === condition.setting,
  );
  const reach = (node: string): readonly (readonly Path[])[] =>
    paths
      .filter((p) => p.from === node)
      .flatMap((p) =>
        p.to === way.to ? [[p]] : p.to.startsWith("#") ? reach(p.to).map((rest) => [p, ...rest]) : [],
      );
  return reach(way.from);
}

/** What a carrier gains along paths; each takes it as the one before left it. */
function gainDbOf(chain: readonly Path[], centreMHz: number, origin: Origin): number {
  let db = 0;
  let f = centreMHz;
  for (const { response, feed, loMHz = 0, shiftMHz = 0, isInverted = false } of chain) {
    f = convertedMHz(f, { loMHz, isInverted }) + shiftMHz;
    db += gainDbAt(response, f) + (feed ? feedGainDb(feed, origin) : 0);
  }
  return db;
}

/** Level of the carrier itself: a user band stands at that of the worst that it may hold [dBµV]. */
function ownLevelDbuv({ band, i }: FoundCarrier, carrier: CarrierId): number {
  const level = band.level[i] ?? 0;
  const { stack } = band;
  const held = stack?.holds.find((one) => indexIn(one, carrier) >= 0);
  if (!stack || !held) return level;
  return (
    level + stackedLevelDbuv(stack.stage, held.level[indexIn(held, carrier)] ?? 0) - stack.entryLevelDbuv
  );
}

function stepOf(
  record: PartRecord,
  port: string,
  out: FoundCarrier,
  came: Arrival | null,
  carrier: CarrierId,
): TraceStep {
  const { band, i } = out;
  const centreMHz = band.grid.centre[i] ?? 0;
  const levelDbuv = ownLevelDbuv(out, carrier);
  const gainDb = came ? levelDbuv - ownLevelDbuv(came, carrier) : null;
  const cut = band.cuts[(band.cut[i] ?? 0) - 1];
  const stacksHere = band.stack?.part === record.part.id;
  const airMHz = came ? carrierOf(came)?.airMHz : undefined;
  const tuning =
    band.stack && stacksHere && airMHz !== undefined
      ? tuningFor(band.stack.standards[i] ?? band.stack.standard, { airMHz, userBandMHz: centreMHz })
      : null;
  const chain = came?.chain ?? [];
  const lo = chain.map((p) => p.loMHz ?? 0).find((f) => f > 0);
  return {
    part: record.part.id,
    from: came?.port ?? null,
    to: port,
    centreMHz,
    levelDbuv,
    cnDb: cnDb(band, i),
    ciDb: ciDb(band, i),
    imDb: imDb(band, i),
    cniDb: cniDb(band, i),
    gainDb,
    made: stacksHere ? [] : madeBy(chain, band.origin, centreMHz, gainDb ?? levelDbuv),
    ...(lo === undefined ? {} : { loMHz: lo }),
    ...(band.stack ? { userBand: band.stack.numbers[i] ?? 0 } : {}),
    ...(tuning ? { tuning } : {}),
    cutHere: !isLive(band, i) && cut?.part === record.part.id,
  };
}

/** What paths are made of; what their filters and gains leave of the whole is what level control adds. */
function madeBy(
  chain: readonly Path[],
  origin: Origin,
  centreMHz: number,
  gainDb: number,
): TraceStep["made"] {
  const made = chain.flatMap((p) => [...byFeed(p, origin), ...madeOf(p.response, centreMHz)]);
  if (!chain.some((p) => p.levelControl)) return made;
  return [...made, { what: "level control", db: gainDb - gainDbOf(chain, centreMHz, origin) }];
}

function carrierOf({ band, i }: FoundCarrier): Carrier | undefined {
  return band.grid.plan[band.grid.index[i] ?? 0];
}

/** What a feed loses that is turned against the wave, or made for another one. */
function byFeed({ feed }: Path, origin: Origin): { what: string; db: number }[] {
  const db = feed ? feedGainDb(feed, origin) : 0;
  return db === 0 ? [] : [{ what: "polarisation", db }];
}

/** A response taken apart: what each piece does at a frequency. */
function madeOf(response: Response, f: number): { what: string; db: number }[] {
  switch (response.type) {
    case "series":
      return response.of.flatMap((one) => madeOf(one, f));
    case "cable":
      return [{ what: `${response.lengthM} m of cable`, db: gainDbAt(response, f) }];
    case "flat":
      return response.db === 0 ? [] : [{ what: response.db > 0 ? "gain" : "loss", db: response.db }];
    case "curve":
      return [{ what: "gain at this frequency", db: gainDbAt(response, f) }];
    case "stub":
      return [{ what: "dead cable", db: gainDbAt(response, f) }];
    case "windows":
    case "notch": {
      const db = gainDbAt(response, f);
      return db === 0 ? [] : [{ what: "filter", db }];
    }
  }
}
