/** An installation as it is: its design with what was worked out and found, and questions about its ways. */
import type { Design, PartId, PortRef } from "../design/design.ts";
import { evaluate } from "../evaluate/evaluate.ts";
import type { Evaluation, PartRecord } from "../evaluate/evaluation.ts";
import type { Report } from "../findings/finding.ts";
import { inletsOf } from "../findings/inlets.ts";
import { report } from "../findings/report.ts";
import { metresOf } from "../parts/meanings.ts";
import type { Service } from "../signal/carrier.ts";
import { remembered } from "../signal/remember.ts";

export type Site = { readonly design: Design; readonly evaluation: Evaluation; readonly report: Report };

/** `former`: an evaluation of a design that differs little, of which as much as possible is kept. */
export function siteOf(design: Design, former?: Evaluation): Site {
  const evaluation = evaluate(design, former);
  return { design, evaluation, report: report(evaluation) };
}

/** One part of a way, with the ports that the way uses. */
export type Step = { readonly record: PartRecord; readonly in: string | null; readonly out: string };

/**
 * The way upstream from an input: the part nearest to it first, the source last.
 * Where a part brings several lines together, the one that leads to a source of the service is taken.
 */
export function wayUp(site: Site, at: PortRef, service: Service): readonly Step[] {
  const steps: Step[] = [];
  let end = site.evaluation.record(at[0])?.joined[at[1]];
  // A way is never longer than the number of parts; a loop would otherwise never end.
  for (let guard = site.design.parts.length; end && guard > 0; guard--) {
    const record = site.evaluation.record(end[0]);
    if (!record) break;
    const input = inputTowards(site, record, end[1], service);
    steps.push({ record, in: input, out: end[1] });
    end = input === null ? undefined : record.joined[input];
  }
  return steps;
}

function inputTowards(site: Site, record: PartRecord, out: string, service: Service): string | null {
  const inputs = inputsBehind(record, out).filter((port) => record.joined[port]);
  const carries = inputs.find((port) =>
    record.inputs[port]?.bands.some((b) => b.origin.service === service || b.stack),
  );
  return carries ?? inputs.find((port) => leadsTo(site, record, port, service)) ?? inputs[0] ?? null;
}

function leadsTo(site: Site, record: PartRecord, port: string, service: Service): boolean {
  const above = site.evaluation.record(record.joined[port]?.[0] ?? "");
  if (!above) return false;
  return [above.part.id, ...above.sources].some((id) => offers(site.evaluation.record(id), service));
}

/** Whether a source sends out a service of its own. */
export function offers(record: PartRecord | undefined, service: Service): boolean {
  if (record?.kind.family !== "receive") return false;
  return Object.values(record.outputs).some((s) =>
    s.bands.some((b) => b.origin.part === record.part.id && b.origin.service === service),
  );
}

/** Inputs from which some way leads to an output, as if the part were supplied. */
export function inputsBehind(record: PartRecord, out: string): readonly string[] {
  const leading = new Set(inletsOf(record, out).map((inlet) => inlet.port));
  return record.ports.filter((p) => leading.has(p.id)).map((p) => p.id);
}

/** An output of a converter, and the parts between it and whoever is fed by it (nearest to the receiver first). */
export type Feeding = {
  readonly converter: PartRecord;
  readonly port: string;
  readonly between: readonly Step[];
};

/** The converter that feeds an input with satellite signals; undefined where there is none. */
export function feedingOf(site: Site, at: PortRef): Feeding | undefined {
  const way = wayUp(site, at, "satellite");
  const index = way.findIndex(({ record }) => record.kind.trade.gives !== undefined);
  const step = way[index];
  return step && { converter: step.record, port: step.out, between: way.slice(0, index) };
}

/** A satellite input of a receiver and what feeds it. */
export type SatelliteInput = {
  readonly receiver: PartRecord;
  readonly port: string;
  readonly feeding: Feeding;
};

const satellite = new WeakMap<Site, readonly SatelliteInput[]>();

/** Every satellite input that is fed by some converter, in the order of the design. */
export function satelliteInputs(site: Site): readonly SatelliteInput[] {
  return remembered(satellite, site, () => findSatelliteInputs(site));
}

function findSatelliteInputs(site: Site): readonly SatelliteInput[] {
  return site.evaluation.records.flatMap((receiver) =>
    (receiver.kind.reception?.(receiver.options).inputs ?? [])
      .filter((input) => input.services.includes("satellite") && receiver.joined[input.port])
      .flatMap(({ port }) => {
        const feeding = feedingOf(site, [receiver.part.id, port]);
        return feeding ? [{ receiver, port, feeding }] : [];
      }),
  );
}

/** Those of them that hang on one converter. */
export function fedBy(site: Site, converter: PartId): readonly SatelliteInput[] {
  return satelliteInputs(site).filter((input) => input.feeding.converter.part.id === converter);
}

/** Metres of cable on a way. */
export function lengthM(steps: readonly Step[]): number {
  return steps.reduce((sum, { record }) => sum + (metresOf(record.kind, record.options) ?? 0), 0);
}

/** Whether supply runs on the wire at an output: what is put there must let it pass. */
export function isFed(record: PartRecord, out: string): boolean {
  return (record.feeds[out]?.length ?? 0) > 0;
}
