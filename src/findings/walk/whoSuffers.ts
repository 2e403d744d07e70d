/** Whom a part serves: whether a receiver that is on, or at least an outlet, hangs below it. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type Service, WANTED_SERVICES } from "../../signal/carrier.ts";
import { remembered } from "../../signal/remember.ts";
import { servicesAt } from "../causes/ways.ts";
import type { Severity } from "../finding.ts";

type Served = "receiver" | "outlet";

const known = new WeakMap<Evaluation, ReadonlyMap<Service, ReadonlyMap<PartId, Served>>>();

/**
 * How grave it is when a part does nothing: an error for a receiver of a service that comes to it, less where nobody
 * listens yet. To whom nothing comes may be meant for anything.
 */
export function graveness(evaluation: Evaluation, record: PartRecord): Severity {
  const served = remembered(
    known,
    evaluation,
    () => new Map(WANTED_SERVICES.map((service) => [service, servedOf(evaluation, service)])),
  );
  const coming = WANTED_SERVICES.filter((service) => servicesAt(record).has(service));
  const of = (coming.length > 0 ? coming : WANTED_SERVICES).map((service) =>
    served.get(service)?.get(record.part.id),
  );
  if (of.includes("receiver")) return "error";
  return of.includes("outlet") ? "warning" : "note";
}

/** For each part the most demanding of those below it, gone through from the receivers of a service upwards. */
function servedOf(evaluation: Evaluation, service: Service): ReadonlyMap<PartId, Served> {
  const served = new Map<PartId, Served>();
  const isListening = ({ kind, options }: PartRecord) =>
    kind.reception?.(options).wants.includes(service) === true;
  climb(evaluation, service, evaluation.records.filter(isListening), (id) => served.set(id, "receiver"));
  const outlets = evaluation.records.filter(({ kind, options }) =>
    kind.delivery
      ? kind.delivery(options).sockets.some((s) => s.services.includes(service))
      : // One that is off may be switched on at any time.
        kind.reception?.(options).inputs.some((i) => i.services.includes(service)),
  );
  climb(evaluation, service, outlets, (id) => {
    if (!served.has(id)) served.set(id, "outlet");
  });
  return served;
}

function climb(
  evaluation: Evaluation,
  service: Service,
  from: readonly PartRecord[],
  meet: (id: PartId) => void,
): void {
  const seen = new Set(from.map((record) => record.part.id));
  for (const id of seen) {
    meet(id);
    const record = evaluation.record(id);
    const own = record?.kind.reception?.(record.options).inputs;
    for (const port of record?.ports ?? []) {
      const isAnother = own?.some((i) => i.port === port.id && !i.services.includes(service));
      const far = port.side === "in" && !isAnother ? record?.joined[port.id] : undefined;
      if (far) seen.add(far[0]);
    }
  }
}
