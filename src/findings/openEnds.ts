/** Ends that nothing is connected to: which of them a receiver is without, and which are merely still open. */
import type { PartId } from "../design/design.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Service } from "../signal/carrier.ts";
import { passesService } from "./passesService.ts";
import { isAsked, missingPlanes, missingSatellites, planeInputs } from "./planeInputs.ts";

export type End = { readonly part: PartId; readonly port: string };

/** An open input, and the receivers that are without what would come in there. */
export type MissedEnd = End & { readonly receivers: readonly PartId[] };

/** Open inputs, and outputs of parts that lead nowhere; a socket or a meter may end a line. */
export function openEnds(record: PartRecord): readonly End[] {
  const part = record.part.id;
  const inputs = record.ports.filter((p) => p.side === "in" && !record.joined[p.id]);
  const outputs = record.ports.filter((p) => p.side === "out");
  const mayEnd = record.kind.delivery !== undefined || record.kind.family === "use";
  const [first] = outputs;
  const leadsNowhere = first && !mayEnd && outputs.every((p) => !record.joined[p.id]);
  return [...inputs, ...(leadsNowhere ? [first] : [])].map(({ id }) => ({ part, port: id }));
}

/** Open inputs that some receiver is connected to and suffers from. */
export function missedEnds(evaluation: Evaluation): readonly MissedEnd[] {
  const missed = new Map<string, { readonly end: End; readonly receivers: Set<PartId> }>();
  const miss = (end: End, receiver: PartId) => {
    const key = `${end.part}/${end.port}`;
    const known = missed.get(key) ?? { end, receivers: new Set<PartId>() };
    known.receivers.add(receiver);
    missed.set(key, known);
  };
  for (const record of evaluation.records) {
    for (const { end, receiver } of missedBy(evaluation, record)) miss(end, receiver);
    for (const { end, receiver } of missedAtSwitches(evaluation, record)) miss(end, receiver);
  }
  return [...missed.values()].map(({ end, receivers }) => ({ ...end, receivers: [...receivers].sort() }));
}

type Missed = { readonly end: End; readonly receiver: PartId };

/** What a receiver that is on and connected lacks because an input on the way is open. */
function missedBy(evaluation: Evaluation, record: PartRecord): readonly Missed[] {
  const receiver = record.part.id;
  const { wants, inputs } = record.kind.reception?.(record.options) ?? { wants: [], inputs: [] };
  if (!inputs.some((input) => record.joined[input.port])) return [];
  return inputs.flatMap((input): Missed[] => {
    const services = wants.filter((service) => input.services.includes(service));
    if (services.length === 0) return [];
    if (!record.joined[input.port]) return [{ end: { part: receiver, port: input.port }, receiver }];
    const bands = record.inputs[input.port]?.bands ?? [];
    const lacking = services.filter((service) => !bands.some((b) => b.origin.service === service));
    return lacking.flatMap((service) =>
      endsAbove(evaluation, record, { port: input.port, service }).map((end) => ({ end, receiver })),
    );
  });
}

/** Open inputs above an input by which a service could come; none where a source of it is connected. */
function endsAbove(
  evaluation: Evaluation,
  from: PartRecord,
  { port, service }: { readonly port: string; readonly service: Service },
): readonly End[] {
  const first = from.joined[port];
  if (!first) return [];
  const found: End[] = [];
  const seen = new Set([first[0]]);
  for (const id of seen) {
    const record = evaluation.record(id);
    if (!record || record.looped) continue;
    if (sends(record, service)) return [];
    for (const p of record.ports) {
      const far = p.side === "in" ? record.joined[p.id] : undefined;
      if (far) seen.add(far[0]);
      else if (p.side === "in" && passesService(record, p.id, service)) found.push({ part: id, port: p.id });
    }
  }
  return found;
}

function sends(record: PartRecord, service: Service): boolean {
  return (record.treatment.emits ?? []).some((e) => e.bands.some((b) => b.origin.service === service));
}

/** Inputs that a switch stands at, or that stand for a plane, where nothing comes in. */
function missedAtSwitches(evaluation: Evaluation, record: PartRecord): readonly Missed[] {
  if (!record.power.switches || !isAsked(record)) return [];
  const part = record.part.id;
  const askedBy = (port: string | undefined) =>
    Object.values(record.switches)
      .filter((state) => port === undefined || state.port === port)
      .flatMap((state) => state.offers.filter((o) => o.kind === "commands").map((o) => o.part));
  const selected = (record.treatment.paths ?? []).filter(
    ({ condition, from }) =>
      condition && !from.startsWith("#") && record.switches[condition.port]?.setting === condition.setting,
  );
  const planes = new Set(planeInputs(record).map((input) => input.port));
  const open = selected
    .filter(({ from }) => !record.joined[from] && !planes.has(from))
    .flatMap(({ from, condition }) =>
      askedBy(condition?.port).map((receiver) => ({ end: { part, port: from }, receiver })),
    );
  const all = Object.values(record.switches).flatMap((s) => s.offers.filter((o) => o.kind === "commands"));
  const askersOf = (satellite: string) =>
    all.filter((o) => String(o.request?.position ?? 1) === satellite).map((o) => o.part);
  const satellites = missingSatellites(record, (satellite) => askersOf(satellite).length > 0).flatMap(
    ({ port, satellite, gets }) => {
      const ends =
        gets.kind === "silence"
          ? endsAbove(evaluation, record, { port, service: "satellite" })
          : [{ part, port }];
      const askers = askersOf(satellite);
      const sufferers = askers.length > 0 ? askers : all.map((o) => o.part);
      return ends.flatMap((end) => sufferers.map((receiver) => ({ end, receiver })));
    },
  );
  // An open input of its own is told by the rule of quadrants; here it is one further up.
  const silent = missingPlanes(record)
    .filter(({ gets }) => gets.kind === "silence")
    .flatMap(({ port }) => endsAbove(evaluation, record, { port, service: "satellite" }))
    .filter((end) => !isToldByPlanes(evaluation, end))
    .flatMap((end) => askedBy(undefined).map((receiver) => ({ end, receiver })));
  return [...open, ...satellites, ...silent];
}

/** Whether the rule of quadrants speaks of an open input. */
export function isToldByPlanes(evaluation: Evaluation, { part, port }: End): boolean {
  const record = evaluation.record(part);
  return (
    record !== undefined && isAsked(record) && missingPlanes(record).some((input) => input.port === port)
  );
}
