/**
 * What a line is there for: services and sort of satellite feed that lead to a port by how things are joined, whether
 * or not anybody supplies or asks for them just now. A converter without a receiver gives nothing yet is no empty line.
 */
import type { PortRef } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Path } from "../parts/contract.ts";
import { outputFeed } from "../parts/outputFeed.ts";
import type { FeedKind } from "../parts/trade.ts";
import { type Service, WANTED_SERVICES } from "../signal/carrier.ts";
import { isMeantFor } from "./passesService.ts";

export type Carried = {
  readonly services: ReadonlySet<Service>;
  /** Absent where no satellite comes, or none that a converter has brought down. */
  readonly feed?: FeedKind;
};

const NOTHING: Carried = { services: new Set() };

/** What leaves an output, or arrives at an input. Nothing for a port that nothing leads to. */
export function carriedAt(evaluation: Evaluation, port: PortRef): Carried {
  return at(evaluation, port, new Map());
}

/** What is known already, by port; a port on a loop gives nothing to itself. */
type Known = Map<string, Carried>;

function at(evaluation: Evaluation, [id, portId]: PortRef, known: Known): Carried {
  const record = evaluation.record(id);
  const port = record?.ports.find((p) => p.id === portId);
  if (!record || !port) return NOTHING;
  const key = `${id}/${portId}`;
  const before = known.get(key);
  if (before) return before;
  known.set(key, NOTHING);
  const source = record.joined[portId];
  const carried =
    port.side === "out"
      ? leaving(evaluation, record, portId, known)
      : source
        ? at(evaluation, source, known)
        : NOTHING;
  known.set(key, carried);
  return carried;
}

/** Whether what a source puts on a port or an inner node leaves by an output. */
export function isOrLeadsTo(port: string, output: string): boolean {
  return port === output || port.startsWith("#");
}

function leaving(evaluation: Evaluation, record: PartRecord, output: string, known: Known): Carried {
  const treatment = record.kind.signal(record.options, { id: record.part.id, powered: true });
  const services = new Set<Service>();
  for (const { port, bands } of treatment.emits ?? [])
    if (isOrLeadsTo(port, output)) for (const band of bands) services.add(band.origin.service);
  let feed: FeedKind | undefined;
  const edges: readonly Edge[] = [
    ...(treatment.paths ?? []).map((path) => ({ ...path, lets: (s: Service) => lets(path, s) })),
    ...(treatment.stacks ?? []).flatMap((stack) =>
      stack.from.map((from) => ({ from, to: stack.to, lets: isSatellite })),
    ),
  ];
  for (const input of record.ports.filter((p) => p.side === "in")) {
    const through = WANTED_SERVICES.filter((service) => leads(edges, input.id, output, service));
    if (through.length === 0) continue;
    const arriving = at(evaluation, [record.part.id, input.id], known);
    for (const service of through) if (arriving.services.has(service)) services.add(service);
    if (through.includes("satellite")) feed ??= arriving.feed;
  }
  const own = outputFeed(record.kind, record.power, output);
  const given = services.has("satellite") ? (own ?? feed) : undefined;
  return { services, ...(given ? { feed: given } : {}) };
}

type Edge = { readonly from: string; readonly to: string; readonly lets: (service: Service) => boolean };

const isSatellite = (service: Service) => service === "satellite";

/** A way that converts carries satellites and nothing else. */
function lets(path: Path, service: Service): boolean {
  return path.loMHz === undefined ? isMeantFor(path.response, service) : isSatellite(service);
}

/** Whether a service gets from a port, over inner nodes, to another port of the same part. */
function leads(edges: readonly Edge[], from: string, to: string, service: Service): boolean {
  const reached = new Set([from]);
  for (const node of reached)
    for (const edge of edges) if (edge.from === node && edge.lets(service)) reached.add(edge.to);
  return reached.has(to);
}
